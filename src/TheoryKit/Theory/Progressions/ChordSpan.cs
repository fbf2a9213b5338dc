using Fractions;
using TheoryKit.Theory.Chords;

namespace TheoryKit.Theory.Progressions;

/// <summary>A chord, or none, for a time. Equal when chord, start and length agree.</summary>
/// <param name="Chord">The chord; null for <c>N.C.</c>, when no chord is played.</param>
/// <param name="Start">Where it starts, in beats from the beginning of the bar or of the changes.</param>
/// <param name="Length">How long it lasts, in beats.</param>
public readonly record struct ChordSpan(Chord? Chord, Fraction Start, Fraction Length)
{
    /// <summary>Where it ends, in beats: start and length.</summary>
    public Fraction End => Start + Length;

    /// <summary>The same so many beats later.</summary>
    public ChordSpan After(Fraction beats) => this with { Start = Start + beats };

    /// <summary>The chord, its start and its length: <c>Fm7 at 0 for 2</c>.</summary>
    public override string ToString() => $"{Chord?.ToString() ?? Changes.NoChord} at {Start} for {Length}";
}
