using Fractions;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Progressions;
using TheoryKit.Tunings.Necks;
using TheoryKit.Values;

namespace TheoryKit.Paths.Joins;

/// <summary>
/// A join that a cycle makes: from which function of one chord to which function of the next, octaves aside. Equal when all of that agrees.
/// </summary>
/// <param name="From">The chord that ends.</param>
/// <param name="FromFunction">What its last tone is to it; a note that leads into the next chord in place of that tone does not count.</param>
/// <param name="To">The chord that begins.</param>
/// <param name="ToFunction">What the tone that is entered is to it.</param>
/// <param name="Way">How the line comes there.</param>
/// <param name="Count">How often it occurs in the cycle; 0 for one that it leaves out.</param>
[Checked]
public sealed partial record Join(Chord From, Degree FromFunction, Chord To, Degree ToFunction, JoinWay Way, int Count);

/// <summary>How much there is of a joined line. Equal when all four agree.</summary>
/// <param name="Chords">How many chords are played.</param>
/// <param name="Notes">How many notes.</param>
/// <param name="Beats">How many beats, silence among them.</param>
/// <param name="Bars">How many bars.</param>
public readonly record struct JoinExtent(int Chords, int Notes, Fraction Beats, Fraction Bars);

/// <summary>One chord of a joined line. Equal when all of it agrees.</summary>
/// <param name="Span">The chord and its time, counted from the beginning of the exercise.</param>
/// <param name="Notes">How many notes it gets.</param>
/// <param name="Entry">The tone it is entered on.</param>
/// <param name="Direction">In which direction the line goes on from there.</param>
/// <param name="Way">How the line came from the chord before; null for the first.</param>
/// <param name="Last">The tone it is left from.</param>
/// <param name="Approach">The pitch that is played in place of <paramref name="Last"/> to lead into the next chord; null for none.</param>
[Checked]
public sealed partial record JoinedChord(
    ChordSpan Span,
    int Notes,
    Place Entry,
    Direction Direction,
    JoinWay? Way,
    Place Last,
    Pitch? Approach
)
{
    /// <summary>The chord, where it is entered and left.</summary>
    public override string ToString() => $"{Span.Chord} from {Entry.Pitch} {Direction} to {Approach ?? Last.Pitch}";
}
