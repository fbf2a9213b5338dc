using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Values;

namespace TheoryKit.Paths.Joins;

/// <summary>Why a note of joined changes is there. Equal when kind and figures are.</summary>
[Checked]
public abstract partial record JoinReason : NoteReason
{
    private JoinReason() { }

    /// <summary>It is the start.</summary>
    /// <param name="LowestRootOf">The chord whose lowest root it is; null where it isn't that, or was asked for.</param>
    public sealed partial record Start(Chord? LowestRootOf) : JoinReason;

    /// <summary>The line turned round.</summary>
    /// <param name="AtTop">Whether at the top of the shape, or at the bottom.</param>
    public sealed partial record Turned(bool AtTop) : JoinReason;

    /// <summary>It enters a chord.</summary>
    /// <param name="Chord">The chord.</param>
    /// <param name="From">The last tone of the chord before.</param>
    /// <param name="Way">How the line comes from there.</param>
    /// <param name="IsAbove">Whether it is higher than that tone.</param>
    public sealed partial record Entry(Chord Chord, Pitch From, JoinWay Way, bool IsAbove) : JoinReason;

    /// <summary>It leads by a semitone into the tone on which the next chord is entered.</summary>
    /// <param name="To">That tone.</param>
    /// <param name="IsBelow">Whether it is lower.</param>
    public sealed partial record LeadsInto(Pitch To, bool IsBelow) : JoinReason;
}
