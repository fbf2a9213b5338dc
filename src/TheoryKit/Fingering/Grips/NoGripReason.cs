using TheoryKit.Fingering.Hands;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Values;

namespace TheoryKit.Fingering.Grips;

/// <summary>
/// Why a question has no grip: the hand's reach, or the first limit without which there are grips. Equal when kind and figures are.
/// </summary>
[Checked]
public abstract partial record NoGripReason
{
    private NoGripReason() { }

    /// <summary>The hand does not reach.</summary>
    /// <param name="Nearest">The grip for which it lacks least.</param>
    /// <param name="One">A finger of the widest stretch.</param>
    /// <param name="Other">The other finger.</param>
    /// <param name="Excess">What it lacks between them, in mm.</param>
    public sealed partial record OutOfReach(Grip Nearest, Finger One, Finger Other, double Excess) : NoGripReason;

    /// <summary>The hand's barres and its thumb do not do.</summary>
    /// <param name="Chord">The chord.</param>
    public sealed partial record BarresAndThumb(Chord Chord) : NoGripReason;

    /// <summary>It takes more fingers.</summary>
    /// <param name="Chord">The chord.</param>
    /// <param name="Most">How many are allowed.</param>
    public sealed partial record Fingers(Chord Chord, int Most) : NoGripReason;

    /// <summary>It takes a muted string between two that sound.</summary>
    /// <param name="Chord">The chord.</param>
    public sealed partial record InnerMutes(Chord Chord) : NoGripReason;

    /// <summary>None has this pitch on top.</summary>
    /// <param name="Chord">The chord.</param>
    /// <param name="Pitch">The pitch.</param>
    public sealed partial record Top(Chord Chord, Pitch Pitch) : NoGripReason;

    /// <summary>None has this note in the bass.</summary>
    /// <param name="Chord">The chord.</param>
    /// <param name="Note">The note.</param>
    public sealed partial record Bass(Chord Chord, NoteName Note) : NoGripReason;

    /// <summary>None lies on the strings asked for.</summary>
    /// <param name="Chord">The chord.</param>
    public sealed partial record Strings(Chord Chord) : NoGripReason;

    /// <summary>None lies between these frets.</summary>
    /// <param name="Chord">The chord.</param>
    /// <param name="First">The first fret.</param>
    /// <param name="Last">The last fret.</param>
    public sealed partial record Frets(Chord Chord, int First, int Last) : NoGripReason;

    /// <summary>None uses open strings as asked.</summary>
    /// <param name="Chord">The chord.</param>
    public sealed partial record OpenStrings(Chord Chord) : NoGripReason;

    /// <summary>None sounds so many strings.</summary>
    /// <param name="Chord">The chord.</param>
    /// <param name="Least">How many at least.</param>
    public sealed partial record FewestStrings(Chord Chord, int Least) : NoGripReason;

    /// <summary>None sounds so few strings.</summary>
    /// <param name="Chord">The chord.</param>
    /// <param name="Most">How many at most.</param>
    public sealed partial record MostStrings(Chord Chord, int Most) : NoGripReason;

    /// <summary>None has every tone that may not be left out.</summary>
    /// <param name="Chord">The chord.</param>
    public sealed partial record RequiredTones(Chord Chord) : NoGripReason;

    /// <summary>No limit alone is in the way.</summary>
    /// <param name="Chord">The chord.</param>
    public sealed partial record SeveralLimits(Chord Chord) : NoGripReason;
}
