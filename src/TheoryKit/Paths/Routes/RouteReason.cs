using Fractions;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Values;

namespace TheoryKit.Paths.Routes;

/// <summary>Why a note of a route is there. Equal when kind and figures are.</summary>
[Checked]
public abstract partial record RouteReason : NoteReason
{
    private RouteReason() { }

    /// <summary>It enters a chord.</summary>
    /// <param name="Chord">The chord.</param>
    /// <param name="Function">What it is to the chord.</param>
    /// <param name="Triad">The triad that the line keeps to; null for the whole chord.</param>
    public sealed partial record Enters(Chord Chord, Degree Function, Chord? Triad) : RouteReason;

    /// <summary>It enters a chord before its time.</summary>
    /// <param name="Chord">The chord.</param>
    /// <param name="Function">What it is to the chord.</param>
    /// <param name="Triad">The triad that the line keeps to; null for the whole chord.</param>
    /// <param name="Ahead">How many beats ahead.</param>
    public sealed partial record Anticipates(Chord Chord, Degree Function, Chord? Triad, Fraction Ahead) : RouteReason;
}
