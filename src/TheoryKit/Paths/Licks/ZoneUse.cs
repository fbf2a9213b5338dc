using Fractions;
using TheoryKit.Fingering;

namespace TheoryKit.Paths;

/// <summary>The zone of a chord that most of the notes over it lie in. Equal when all of that agrees.</summary>
/// <param name="Zone">The zone; of several with as many of the notes the lowest.</param>
/// <param name="Start">When the chord begins, in beats from the beginning of the path.</param>
/// <param name="Inside">How many of the notes lie in its frets, or are open.</param>
/// <param name="Count">How many notes there are over the chord.</param>
public sealed record ZoneUse(Zone Zone, Fraction Start, int Inside, int Count)
{
    /// <summary>Chord, frets and how many notes: <c>Gm9 in frets 3-6: 7 of 8 notes</c>.</summary>
    public override string ToString() =>
        $"{Zone.Chord} in frets {Zone.Window}: {Inside} of {Count} {(Count == 1 ? "note" : "notes")}";
}
