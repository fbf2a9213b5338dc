namespace TheoryKit.Interactive.Cells;

/// <summary>Something in a cell that can't be read: what a reader is told, and the place in the cell.</summary>
/// <param name="message">The message, with the line and a caret.</param>
/// <param name="line">The line of the cell, from 1.</param>
/// <param name="column">The character, from 1.</param>
/// <param name="length">How many characters.</param>
internal sealed class CellException(string message, int line, int column, int length) : Exception(message)
{
    public int Line { get; } = line;

    public int Column { get; } = column;

    public int Length { get; } = length;

    /// <summary>An error whose message gets the line, with carets under the place.</summary>
    public static CellException At(string message, string lineText, int line, int column, int length)
    {
        // Tabs and such count as one character, so that the carets stand under the place.
        var shown = string.Concat(lineText.Select(static c => char.IsControl(c) ? ' ' : c));
        var from = Math.Clamp(column - 1, 0, shown.Length);
        var carets = new string('^', Math.Max(1, Math.Min(length, shown.Length - from)));
        return new($"{message}\n  {shown}\n  {new string(' ', from)}{carets}", line, column, length);
    }
}
