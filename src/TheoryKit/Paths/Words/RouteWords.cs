using TheoryKit.Paths.Routes;
using TheoryKit.Values;

namespace TheoryKit.Paths.Words;

/// <summary>How routes go, and why there is none, in English.</summary>
public static class RouteWords
{
    /// <summary>The plan, after "a route that": <c>climbs from fret 3 to fret 12</c>.</summary>
    public static string InWords(this RoutePlan plan) =>
        plan switch
        {
            RoutePlan.Stay { Place: { } place } => $"stays at frets {place}",
            RoutePlan.Stay => "stays in one place",
            RoutePlan.Climb climb =>
                $"{(climb.Goal >= climb.From ? "climbs" : "goes down")} from fret {climb.From} to fret {climb.Goal}"
                    + (climb.By is { } times ? $" in {English.Count(times, "time")} through" : ""),
            RoutePlan.Roam { MinZones: 1 } => "roams",
            RoutePlan.Roam roam => $"roams through at least {roam.MinZones} zones",
            _ => throw Check.NoKind(plan),
        };

    /// <summary>Why there is no route, in a sentence that counts chords from 1.</summary>
    /// <param name="reason">The reason.</param>
    /// <param name="format">"G" (or null) plain, "P" with printed signs.</param>
    /// <param name="naming">A <see cref="TheoryKit.Theory.Notes.NoteNaming"/>; null for English.</param>
    public static string InWords(this NoRouteReason reason, string? format = null, IFormatProvider? naming = null) =>
        reason switch
        {
            NoRouteReason.NoNotes => "No chord gets a note.",
            NoRouteReason.TooFewWindows few =>
                $"The chords' zones don't make {few.Windows} different windows for {English.Count(few.Chords, "chord")}.",
            NoRouteReason.Blocked blocked =>
                $"Chord {blocked.Index + 1}, {blocked.Chord.ToString(format, naming)}, {blocked.Lack.InWords()}",
            _ => throw Check.NoKind(reason),
        };

    /// <summary>What a chord lacks for a route, as the end of a sentence about it.</summary>
    public static string InWords(this ChordLack lack) =>
        lack switch
        {
            ChordLack.ShapeAt at =>
                $"has no shape at frets {at.Window}: no tone lies there, or they are wider than the hand.",
            ChordLack.Zone => "has no zone on this neck.",
            ChordLack.Target target =>
                $"can't start on {string.Join(" or ", target.Numbers)}: no shape of it has such a tone.",
            ChordLack.Reach => "can't be played through: the fingers of its shapes don't reach from tone to tone.",
            ChordLack.ZoneInPlan left => $"has no zone left for a route that {left.Plan.InWords()}.",
            _ => throw Check.NoKind(lack),
        };
}
