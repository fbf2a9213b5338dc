using System.Diagnostics.CodeAnalysis;
using TheoryKit.Theory;

namespace TheoryKit.Paths;

/// <summary>Tab as players type it: read into a path, and written so that it reads back to the same path.</summary>
public static class PlainTab
{
    /// <summary>Reads tab.</summary>
    /// <param name="text">The text.</param>
    /// <param name="options">What the text does not say.</param>
    /// <exception cref="PlacedFormatException">It is not tab; the message shows the line with a caret and says what would have worked.</exception>
    public static TabReading Read(string text, TabReadOptions? options = null) => throw new NotImplementedException();

    /// <summary>Reads tab, or says that it is none.</summary>
    public static bool TryRead(
        [NotNullWhen(true)] string? text,
        TabReadOptions? options,
        [NotNullWhen(true)] out TabReading? reading
    ) => throw new NotImplementedException();

    /// <summary>The path as tab that reads back to it, given its neck, time and changes.</summary>
    public static string Write(Path path) => throw new NotImplementedException();
}
