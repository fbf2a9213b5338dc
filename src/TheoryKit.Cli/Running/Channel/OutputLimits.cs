using System.Globalization;

namespace TheoryKit.Cli.Running.Channel;

/// <summary>
/// How much of what cells show goes on a page. A page of the project's own notebooks has some 0.5 million characters; what
/// goes beyond these limits no browser scrolls and nobody prints, but it would fill the memory of this program.
/// </summary>
internal static class OutputLimits
{
    /// <summary>Characters of all outputs of a cell.</summary>
    public const int CellCharacters = 8_000_000;

    /// <summary>Outputs of a cell; text written to the console in one go is one.</summary>
    public const int CellOutputs = 2_000;

    /// <summary>Characters of all outputs of a notebook.</summary>
    public const int NotebookCharacters = 16_000_000;

    /// <summary>Characters of an error.</summary>
    public const int ErrorCharacters = 20_000;

    /// <summary>What the page says where something is left out.</summary>
    public static string Said(long characters, long outputs) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"Left out here: {characters:N0} characters{(outputs > 0 ? $" and {outputs:N0} outputs" : "")}. "
                + $"A page shows at most {CellCharacters:N0} characters and {CellOutputs:N0} outputs of a cell, "
                + $"and {NotebookCharacters:N0} characters of a notebook."
        );

    /// <summary>The beginning of a text that has at most <paramref name="characters"/>; no surrogate pair is torn.</summary>
    public static string Start(string text, long characters) =>
        text.Length <= characters ? text
        : characters <= 0 ? ""
        : text[..(int)(char.IsHighSurrogate(text[(int)characters - 1]) ? characters - 1 : characters)];

    /// <summary>An error as long as a page shows it.</summary>
    public static string Error(string text) =>
        text.Length <= ErrorCharacters
            ? text
            : string.Create(
                CultureInfo.InvariantCulture,
                $"{Start(text, ErrorCharacters)}\n({text.Length - ErrorCharacters:N0} characters more.)"
            );
}
