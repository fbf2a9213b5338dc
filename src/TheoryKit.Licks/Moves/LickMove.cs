using Fractions;
using TheoryKit.Fingering.Hands;
using TheoryKit.Fingering.Zones;
using TheoryKit.Paths.Timing;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Progressions;
using TheoryKit.Theory.Scales;
using TheoryKit.Tunings.Necks;
using TheoryKit.Values;

namespace TheoryKit.Licks.Moves;

/// <summary>What was done with a lick: one of the moves of <see cref="LickMoves"/>. Equal when kind and figures are.</summary>
[Checked]
public abstract partial record LickMove
{
    private LickMove() { }

    /// <summary>Transposed.</summary>
    /// <param name="Interval">How far.</param>
    public sealed partial record ByInterval(Interval Interval) : LickMove;

    /// <summary>Into another key.</summary>
    /// <param name="Key">The key.</param>
    public sealed partial record ToKey(Key Key) : LickMove;

    /// <summary>Octaves away.</summary>
    /// <param name="Octaves">How many higher; lower where negative.</param>
    public sealed partial record ByOctaves(int Octaves) : LickMove;

    /// <summary>Into a zone.</summary>
    /// <param name="Zone">The zone.</param>
    public sealed partial record ToZone(Zone Zone) : LickMove;

    /// <summary>Onto some strings.</summary>
    public sealed record ToStrings : LickMove
    {
        private readonly Sequence<int> strings;

        /// <summary>Onto some strings.</summary>
        public ToStrings(IEnumerable<int> strings) => this.strings = Check.Items(strings).Order().ToSequence();

        /// <summary>The strings, from the lowest number.</summary>
        public IReadOnlyList<int> Strings => strings;
    }

    /// <summary>Onto another neck in the same tuning.</summary>
    /// <param name="Neck">The neck.</param>
    public sealed partial record ToNeck(Neck Neck) : LickMove;

    /// <summary>Onto a neck in another tuning.</summary>
    /// <param name="Neck">The neck.</param>
    public sealed partial record ToTuning(Neck Neck) : LickMove;

    /// <summary>Fingered for a hand.</summary>
    /// <param name="Hand">The hand.</param>
    public sealed partial record ForHand(Hand Hand) : LickMove;

    /// <summary>Refitted to one chord.</summary>
    /// <param name="Chord">The chord.</param>
    public sealed partial record ToChord(Chord Chord) : LickMove;

    /// <summary>Refitted to changes.</summary>
    /// <param name="Changes">The changes.</param>
    public sealed partial record ToChanges(Changes Changes) : LickMove;

    /// <summary>From the last note to the first.</summary>
    public sealed record Backwards : LickMove;

    /// <summary>To another time.</summary>
    /// <param name="Beats">How many beats later; earlier where negative.</param>
    public sealed partial record ByBeats(Fraction Beats) : LickMove;

    /// <summary>Into another rhythm.</summary>
    /// <param name="Rhythm">The rhythm.</param>
    public sealed partial record ToRhythm(Rhythm Rhythm) : LickMove;
}
