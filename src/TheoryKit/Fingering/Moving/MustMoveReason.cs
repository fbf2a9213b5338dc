using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Necks;
using TheoryKit.Values;

namespace TheoryKit.Fingering.Moving;

/// <summary>Why a grip can't stay in another tuning. Equal when kind and figures are.</summary>
[Checked]
public abstract partial record MustMoveReason
{
    private MustMoveReason() { }

    /// <summary>Some positions give what is no tone of the chord.</summary>
    public sealed record ForeignTones : MustMoveReason
    {
        private readonly Sequence<ForeignTone> tones;

        internal ForeignTones(Chord chord, IEnumerable<ForeignTone> tones) =>
            (Chord, this.tones) = (chord, tones.ToSequence());

        /// <summary>The chord.</summary>
        public Chord Chord { get; }

        /// <summary>Which, string 1 first.</summary>
        public IReadOnlyList<ForeignTone> Tones => tones;
    }

    /// <summary>Tones would be missing that may not be left out.</summary>
    /// <param name="Chord">The chord.</param>
    /// <param name="Tones">Which.</param>
    public sealed partial record MissingTones(Chord Chord, Formula Tones) : MustMoveReason;

    /// <summary>Another note would be lowest than the bass.</summary>
    /// <param name="Lowest">What would be.</param>
    /// <param name="Bass">The bass.</param>
    public sealed partial record OtherBass(Pitch Lowest, NoteName Bass) : MustMoveReason;

    /// <summary>The limits leave it out in the new tuning.</summary>
    public sealed record OutsideLimits : MustMoveReason;
}

/// <summary>A position that gives no tone of its chord.</summary>
/// <param name="Position">String and fret.</param>
/// <param name="IsOpen">Whether the string is open there.</param>
/// <param name="Pitch">What it gives.</param>
public readonly record struct ForeignTone(Position Position, bool IsOpen, Pitch Pitch);
