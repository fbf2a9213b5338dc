namespace TheoryKit.Values;

/// <summary>A text that could not be read, with the place where reading ended, for those who want to point at it.</summary>
public sealed class PlacedFormatException : FormatException
{
    /// <summary>An error at a place of which the message tells.</summary>
    /// <param name="message">What was read, where it went wrong and what would have worked.</param>
    /// <param name="line">The line, from 1.</param>
    /// <param name="column">The character in the line, from 1.</param>
    /// <param name="length">How many characters are wrong, at least 1.</param>
    public PlacedFormatException(string message, int line, int column, int length = 1)
        : base(message)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(line, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(column, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(length, 1);
        (Line, Column, Length) = (line, column, length);
    }

    internal PlacedFormatException(string message, ReadOnlySpan<char> text, int position)
        : this(
            message,
            text[..Math.Min(position, text.Length)].Count('\n') + 1,
            Math.Min(position, text.Length) - text[..Math.Min(position, text.Length)].LastIndexOf('\n')
        ) { }

    /// <summary>The line, from 1.</summary>
    public int Line { get; }

    /// <summary>The character in the line, from 1; one beyond the end where something is missing there.</summary>
    public int Column { get; }

    /// <summary>How many characters are wrong, at least 1.</summary>
    public int Length { get; }

    /// <summary>
    /// An error in a text of lines whose message shows the line with a caret under the place: what, the line's number, the line,
    /// the caret, and what was expected.
    /// </summary>
    internal static PlacedFormatException WithCaret(
        string what,
        int line,
        ReadOnlySpan<char> lineText,
        int column,
        int length,
        string expected
    )
    {
        const int Around = 60;
        var from = Math.Max(0, column - 1 - Around);
        var to = Math.Min(lineText.Length, column - 1 + Around);
        var shown = new System.Text.StringBuilder(from > 0 ? "…" : "");
        var lead = shown.Length + column - 1 - from;
        foreach (var c in lineText[Math.Min(from, lineText.Length)..to])
        {
            // One character each, so that the caret stays under the place.
            shown.Append(
                char.IsControl(c)
                || char.IsSurrogate(c)
                || char.GetUnicodeCategory(c) is System.Globalization.UnicodeCategory.NonSpacingMark
                    ? '\uFFFD'
                    : c
            );
        }

        shown.Append(to < lineText.Length ? "…" : "");
        var carets = new string('^', Math.Clamp(length, 1, Math.Max(1, to - column + 1)));
        return new(
            $"This is not {what}: in line {line}, at character {column}, expected {expected}.\n  {shown}\n  {new string(' ', lead)}{carets}",
            line,
            column,
            length
        );
    }
}
