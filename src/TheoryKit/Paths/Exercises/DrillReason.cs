using TheoryKit.Fingering.Hands;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Values;

namespace TheoryKit.Paths.Exercises;

/// <summary>Why a note of a drill is there. Equal when kind and figures are.</summary>
[Checked]
public abstract partial record DrillReason : NoteReason
{
    private DrillReason() { }

    /// <summary>It is a tone of the chord.</summary>
    /// <param name="Function">What it is to the chord.</param>
    /// <param name="Chord">The chord.</param>
    public sealed partial record Tone(Degree Function, Chord Chord) : DrillReason;

    /// <summary>It is a tone of the chord's grip.</summary>
    /// <param name="Function">What it is to the chord.</param>
    /// <param name="Chord">The chord.</param>
    public sealed partial record OfGrip(Degree Function, Chord Chord) : DrillReason;

    /// <summary>It is a tone of the chord, and the first in a further zone.</summary>
    /// <param name="Function">What it is to the chord.</param>
    /// <param name="Chord">The chord.</param>
    /// <param name="Window">The frets of the zone.</param>
    public sealed partial record IntoZone(Degree Function, Chord Chord, Window Window) : DrillReason;
}
