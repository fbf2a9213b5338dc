using TheoryKit.Tunings.Necks;
using TheoryKit.Values;

namespace TheoryKit.Fingering.Lines;

/// <summary>Why a line can't be played: the first note that can't, and what is in the way. Equal when kind, note and figures are.</summary>
/// <param name="Note">The note, from 0.</param>
[Checked]
public abstract partial record NoLineReason(int Note)
{
    /// <summary>It lies nowhere on the neck.</summary>
    /// <param name="Note">The note, from 0.</param>
    /// <param name="Neck">The neck.</param>
    public sealed partial record NowhereOnNeck(int Note, Neck Neck) : NoLineReason(Note);

    /// <summary>It lies only on open strings, which are not allowed.</summary>
    /// <param name="Note">The note, from 0.</param>
    public sealed partial record OnlyOnOpenStrings(int Note) : NoLineReason(Note);

    /// <summary>Between the frets asked for the hand has no place on the neck.</summary>
    /// <param name="Note">The note, from 0.</param>
    /// <param name="First">The lowest fret asked for.</param>
    /// <param name="Last">The highest.</param>
    /// <param name="Neck">The neck.</param>
    public sealed partial record NoPlaceForHand(int Note, int First, int Last, Neck Neck) : NoLineReason(Note);

    /// <summary>No finger reaches it.</summary>
    /// <param name="Note">The note, from 0.</param>
    /// <param name="First">The lowest place of the hand.</param>
    /// <param name="Last">The highest.</param>
    /// <param name="Excess">What is lacking, in mm.</param>
    public sealed partial record OutOfReach(int Note, int First, int Last, double Excess) : NoLineReason(Note);

    /// <summary>The hand does not reach it, or has no finger or string left, while the notes before ring on.</summary>
    /// <param name="Note">The note, from 0.</param>
    /// <param name="First">The lowest place of the hand.</param>
    /// <param name="Last">The highest.</param>
    public sealed partial record OthersRingOn(int Note, int First, int Last) : NoLineReason(Note);

    /// <summary>It does not lie on the string of the note before, on which it is to stay.</summary>
    /// <param name="Note">The note, from 0.</param>
    public sealed partial record OffItsString(int Note) : NoLineReason(Note);

    /// <summary>After the note before it the fingers would cross or do not reach, and the hand has no place to shift to.</summary>
    /// <param name="Note">The note, from 0.</param>
    /// <param name="First">The lowest place of the hand.</param>
    /// <param name="Last">The highest.</param>
    public sealed partial record CannotFollow(int Note, int First, int Last) : NoLineReason(Note);
}
