using Fractions;
using TheoryKit.Theory.Progressions;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Licks.Tab.Options;

/// <summary>How the time of typed tab is read.</summary>
public enum TabTiming
{
    /// <summary>By a row of rhythm or a count where there is one, else by the spacing where it is even, else as equal notes.</summary>
    AsWritten,

    /// <summary>By the spacing: what stands a third into its bar starts a third into it.</summary>
    Spacing,

    /// <summary>As equal notes, one after the other, whatever the spacing.</summary>
    Even,
}

/// <summary>What a tab does not say itself.</summary>
public sealed record TabReadOptions
{
    /// <summary>Where it is played; a neck with the strings that the tab names, else a guitar, if null.</summary>
    public Neck? Neck { get; init; }

    /// <summary>The changes; those of the chord row if null.</summary>
    public Changes? Changes { get; init; }

    /// <summary>The time signature; that of the changes, else 4/4, if null.</summary>
    public TimeSignature? Time { get; init; }

    /// <summary>How the time is read.</summary>
    public TabTiming Timing { get; init; }

    /// <summary>How many beats one of equal notes lasts; half a beat unless told.</summary>
    public Fraction Even { get; init; } = new(1, 2);

    /// <summary>The number of the first line in the text that the tab is part of.</summary>
    internal int FirstLine { get; init; } = 1;
}
