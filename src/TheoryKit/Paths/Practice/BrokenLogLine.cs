using TheoryKit.Theory;

namespace TheoryKit.Paths;

/// <summary>A line of a practice log that is not understood. It stays in the file and counts for nothing.</summary>
/// <param name="Line">Its number, from 1.</param>
/// <param name="Text">The line.</param>
/// <param name="Error">What is wrong with it, with the line and a caret under the place.</param>
public sealed record BrokenLogLine(int Line, string Text, PlacedFormatException Error)
{
    /// <inheritdoc/>
    public bool Equals(BrokenLogLine? other) => other is not null && Line == other.Line && Text == other.Text;

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Line, Text);

    /// <summary>What is wrong with it.</summary>
    public override string ToString() => Error.Message;
}
