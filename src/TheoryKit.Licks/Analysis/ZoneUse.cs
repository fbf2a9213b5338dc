using Fractions;
using TheoryKit.Fingering.Zones;
using TheoryKit.Values;

namespace TheoryKit.Licks.Analysis;

/// <summary>The zone of a chord that most of the notes over it lie in. Equal when all of that agrees.</summary>
/// <param name="Zone">The zone; of several with as many of the notes the lowest.</param>
/// <param name="Start">When the chord begins, in beats from the beginning of the path.</param>
/// <param name="Inside">How many of the notes lie in its frets, or are open.</param>
/// <param name="Count">How many notes there are over the chord.</param>
[Checked]
public sealed partial record ZoneUse(Zone Zone, Fraction Start, int Inside, int Count)
{
    /// <summary>The zone.</summary>
    public Zone Zone
    {
        get;
        init => field = Check.NotNull(value, nameof(Zone));
    } = Check.NotNull(Zone);

    /// <summary>Chord, frets and how many notes: <c>Gm9 3-6: 7/8</c>.</summary>
    public override string ToString() => $"{Zone.Chord} {Zone.Window}: {Inside}/{Count}";
}
