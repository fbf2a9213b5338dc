using TheoryKit.Theory.Chords;
using TheoryKit.Values;

namespace TheoryKit.Theory.Relations;

/// <summary>A tone that two chords share, as each of them has it.</summary>
/// <param name="InFirst">Name and function in the first chord.</param>
/// <param name="InSecond">Name and function in the second chord.</param>
public readonly record struct CommonTone(ChordTone InFirst, ChordTone InSecond)
{
    /// <summary>Whether the two chords spell it differently.</summary>
    public bool IsRespelled => InFirst.Name != InSecond.Name;
}

/// <summary>Two chords beside each other: what they share and how far apart they lie. Equal when the chords are.</summary>
[EqualBy(nameof(First), nameof(Second))]
public sealed partial class ChordPair : IEquatable<ChordPair>
{
    private ChordPair(Chord first, Chord second)
    {
        First = first;
        Second = second;
        Motion = VoiceMotion.Between(first, second);
        var others = ChordTone.Of(second);
        CommonTones = (
            from tone in ChordTone.Of(first)
            from other in others
            where tone.PitchClass == other.PitchClass
            select new CommonTone(tone, other)
        ).ToSequence();
    }

    /// <summary>The first chord.</summary>
    public Chord First { get; }

    /// <summary>The second chord.</summary>
    public Chord Second { get; }

    /// <summary>The tones that sound in both, in the order of the first.</summary>
    public IReadOnlyList<CommonTone> CommonTones { get; }

    /// <summary>The least motion from the first to the second.</summary>
    public VoiceMotion Motion { get; }

    /// <summary>How many semitones the voices go in all; the same from the second to the first.</summary>
    public int Distance => Motion.Total;

    /// <summary>The pair of two chords.</summary>
    /// <exception cref="OverflowException">A tone would need more accidentals than a note name has.</exception>
    public static ChordPair Of(Chord first, Chord second)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        return new(first, second);
    }

    /// <summary>Both chords.</summary>
    public override string ToString() => $"{First}, {Second}";
}
