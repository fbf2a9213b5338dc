using TheoryKit.Values;

namespace TheoryKit.Licks.Practice;

/// <summary>A line of a practice log that is not understood. It stays in the file and counts for nothing.</summary>
/// <param name="Line">Its number, from 1.</param>
/// <param name="Text">The line.</param>
/// <param name="Error">What is wrong with it, with the line and a caret under the place.</param>
[EqualBy(nameof(Line), nameof(Text))]
[Checked]
public sealed partial record BrokenLogLine(int Line, string Text, PlacedFormatException Error)
{
    /// <summary>What is wrong with it, with the line and a caret under the place.</summary>
    public PlacedFormatException Error
    {
        get;
        init => field = Check.NotNull(value, nameof(Error));
    } = Check.NotNull(Error);

    /// <summary>What is wrong with it.</summary>
    public override string ToString() => Error.Message;
}
