using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Scales;
using TheoryKit.Values;

namespace TheoryKit.Paths.MadeLines;

/// <summary>Why a note of a made line is there. Equal when kind and figures are.</summary>
[Checked]
public abstract partial record MadeReason : NoteReason
{
    private MadeReason() { }

    /// <summary>It is a target, where the chord begins.</summary>
    /// <param name="Function">What it is to the chord.</param>
    /// <param name="Chord">The chord.</param>
    public sealed partial record Target(Degree Function, Chord Chord) : MadeReason;

    /// <summary>It is a tone of the chord.</summary>
    /// <param name="Function">What it is to the chord.</param>
    /// <param name="Chord">The chord.</param>
    public sealed partial record ChordTone(Degree Function, Chord Chord) : MadeReason;

    /// <summary>It passes through a scale to a tone of the chord.</summary>
    /// <param name="Scale">The scale.</param>
    /// <param name="Function">What that tone is to the chord.</param>
    /// <param name="Chord">The chord.</param>
    public sealed partial record Passing(Scale Scale, Degree Function, Chord Chord) : MadeReason;

    /// <summary>It leads to a target, as one neighbour of it.</summary>
    /// <param name="Way">The approach.</param>
    /// <param name="Stage">Which of its neighbours, from 0.</param>
    /// <param name="IsAbove">Whether it is higher than the target.</param>
    /// <param name="Scale">The scale over the target's chord; null where the neighbour is of none.</param>
    /// <param name="Function">What the target is to its chord.</param>
    /// <param name="Chord">The target's chord.</param>
    public sealed partial record Leading(
        Approach Way,
        int Stage,
        bool IsAbove,
        Scale? Scale,
        Degree Function,
        Chord Chord
    ) : MadeReason;
}
