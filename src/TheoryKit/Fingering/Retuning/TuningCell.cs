using TheoryKit.Fingering.Grips;
using TheoryKit.Fingering.Zones;
using TheoryKit.Theory.Chords;
using TheoryKit.Tunings.Necks;
using TheoryKit.Values;

namespace TheoryKit.Fingering.Retuning;

/// <summary>What one tuning does to one chord. Equal when chord, neck, hand and limits are.</summary>
[EqualBy(nameof(query))]
public sealed partial class TuningCell : IEquatable<TuningCell>
{
    private readonly GripQuery query;
    private readonly Lazy<GripAnswer> grips;
    private readonly Lazy<HashSet<UInt128>> shapeKeys;
    private readonly Lazy<IReadOnlyList<Zone>> zones;

    internal TuningCell(TuningComparison comparison, Neck neck, Chord chord)
    {
        query = comparison.Limits.For(chord, neck, comparison.Hand);
        grips = new(() => GripSearch.Find(query));
        shapeKeys = new(() => [.. Grips.Select(static grip => ShapeKey(grip.Grip))]);
        zones = new(() => Chord.Zones(Neck, query.Hand).ToSequence());
    }

    /// <summary>The chord.</summary>
    public Chord Chord => query.Chord;

    /// <summary>The neck.</summary>
    public Neck Neck => query.Neck;

    /// <summary>Every grip of the chord under the limits of the comparison; where there is none, why.</summary>
    public GripAnswer Grips => grips.Value;

    /// <summary>How many grips there are.</summary>
    public int Count => Grips.Count;

    /// <summary>The effort of the easiest grip; null where there is none.</summary>
    public double? LeastEffort => Best?.Effort;

    /// <summary>The easiest grip; null where there is none.</summary>
    public ChordGrip? Best => Grips.Count > 0 ? Grips[0] : null;

    /// <summary>
    /// How many different shapes the hand takes in these grips: two grips have the same shape when the same strings are muted,
    /// the same are open, and the same are held at the same frets counted from the lowest held one. So a grip that returns
    /// elsewhere on the neck counts once, whichever fingers hold it there.
    /// </summary>
    public int DistinctShapes => ShapeKeys.Count;

    /// <summary>The zones of the chord up the neck.</summary>
    public IReadOnlyList<Zone> Zones => zones.Value;

    /// <summary>How many of the zones miss no tone.</summary>
    public int CompleteZones => Zones.Count(static zone => zone.Shape.IsComplete);

    /// <summary>How many open strings the easiest grip uses; null where there is no grip.</summary>
    public int? OpenStringsInUse => Best?.Grip.Strings.Count(static each => each.Sounds && each.Finger is null);

    /// <summary>The shapes, a number for each.</summary>
    internal IReadOnlySet<UInt128> ShapeKeys => shapeKeys.Value;

    /// <summary>The best grip, or the chord alone where there is none.</summary>
    public override string ToString() => Best?.ToString() ?? $"{Chord}: no grip";

    /// <summary>Six bits for each of at most twelve strings: muted, open, or the fret counted from the lowest held one.</summary>
    private static UInt128 ShapeKey(Grip grip)
    {
        const int muted = 0;
        const int open = 1;
        const int held = 2;
        var lowest = grip.LowestFret ?? 0;
        var key = UInt128.Zero;
        foreach (var each in grip.Strings)
        {
            key =
                (key << 6)
                | (uint)(
                    !each.Sounds ? muted
                    : each.Finger is null ? open
                    : held + each.Fret!.Value - lowest
                );
        }

        return key;
    }
}
