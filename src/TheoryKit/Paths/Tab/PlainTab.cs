using System.Diagnostics.CodeAnalysis;
using TheoryKit.Theory;

namespace TheoryKit.Paths;

/// <summary>Tab as players type it: read into a path, and written so that it reads back to the same path.</summary>
public static class PlainTab
{
    internal const string What = "tab";

    /// <summary>Reads tab.</summary>
    /// <param name="text">The text.</param>
    /// <param name="options">What the text does not say.</param>
    /// <exception cref="PlacedFormatException">It is not tab; the message shows the line with a caret and says what would have worked.</exception>
    public static TabReading Read(string text, TabReadOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(text);
        return new TabReader(text, options ?? new()).Read();
    }

    /// <summary>Reads tab, or says that it is none.</summary>
    public static bool TryRead(
        [NotNullWhen(true)] string? text,
        TabReadOptions? options,
        [NotNullWhen(true)] out TabReading? reading
    )
    {
        reading = null;
        if (text is null)
        {
            return false;
        }

        try
        {
            reading = Read(text, options);
            return true;
        }
        catch (PlacedFormatException)
        {
            return false;
        }
    }

    /// <summary>The path as tab that reads back to it, given its neck, time and changes.</summary>
    public static string Write(Path path, TabWriteOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(path);
        return TabWriter.Write(path, options ?? new());
    }
}
