using TheoryKit.Theory;

namespace TheoryKit.Paths;

/// <summary>Something in a tab that could be read in more than one way, or was passed over, and what was made of it.</summary>
/// <param name="Line">The line, from 1.</param>
/// <param name="Column">The character in the line, from 1.</param>
/// <param name="Length">How many characters it is about.</param>
/// <param name="Text">What was made of it, in words.</param>
public sealed record TabRemark(int Line, int Column, int Length, string Text)
{
    /// <summary>The place and the words.</summary>
    public override string ToString() => $"Line {Line}, character {Column}: {Text}";
}

/// <summary>What a tab says.</summary>
public sealed record TabReading
{
    private readonly Sequence<TabRemark> remarks = new([]);

    /// <summary>The notes, with their neck, time and changes.</summary>
    public required Path Path { get; init; }

    /// <summary>What was ambiguous or passed over, in the order of the lines.</summary>
    public IReadOnlyList<TabRemark> Remarks
    {
        get => remarks;
        init => remarks = value.ToSequence();
    }

    /// <summary>The lines that are no tab, as they stand, those that begin with # without it; empty for none.</summary>
    public string Words { get; init; } = "";
}
