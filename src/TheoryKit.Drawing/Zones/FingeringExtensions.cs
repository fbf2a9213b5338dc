using TheoryKit.Drawing.Grips;
using TheoryKit.Drawing.Lines;
using TheoryKit.Drawing.Necks;
using TheoryKit.Fingering.Grips;
using TheoryKit.Fingering.Lines;
using TheoryKit.Fingering.Zones;
using TheoryKit.Theory.Chords;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Drawing.Zones;

/// <summary>Short ways from fingering values to their pictures, for notebooks.</summary>
public static class FingeringExtensions
{
    /// <summary>The zones as bands of the whole neck.</summary>
    /// <exception cref="ArgumentException">No zone, or not all of one chord on one neck.</exception>
    public static ZoneMap Map(this IEnumerable<Zone> zones) => new(zones);

    /// <summary>The page of the zone.</summary>
    public static ZonePage Page(this Zone zone) => new(zone);

    /// <summary>All twelve roots in the window of the zone.</summary>
    public static RootSheet InAllRoots(this Zone zone) => new(zone);

    /// <summary>The same zone for other qualities over its root.</summary>
    public static ZoneAcrossQualities Across(this Zone zone, params IEnumerable<ChordQuality> qualities) =>
        ZoneAcrossQualities.Of(zone, qualities);

    /// <summary>The shape on its frets of a neck, with fingers.</summary>
    /// <exception cref="ArgumentException">A tone of it is not on the neck.</exception>
    public static NeckDrawing On(this Shape shape, Neck neck)
    {
        ArgumentNullException.ThrowIfNull(shape);
        ArgumentNullException.ThrowIfNull(neck);
        return ZoneSheets.Drawing(neck, shape, shape.Window);
    }

    /// <summary>The line on a neck, with the order of its notes.</summary>
    /// <exception cref="ArgumentException">A note of it is not on the neck.</exception>
    public static LineDrawing On(this FingeredLine line, Neck neck) => new(line, neck);

    /// <summary>The box of the grip.</summary>
    public static GripDrawing Draw(this ChordGrip grip) => GripDrawing.Of(grip);

    /// <summary>The boxes of the grips.</summary>
    public static GripSheet Draw(this IEnumerable<ChordGrip> grips) => new(grips);
}
