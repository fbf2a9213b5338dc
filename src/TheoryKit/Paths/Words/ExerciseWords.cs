using TheoryKit.Paths.Exercises;
using TheoryKit.Values;

namespace TheoryKit.Paths.Words;

/// <summary>Exercises in English.</summary>
public static class ExerciseWords
{
    /// <summary>The chord, the zones and the way: <c>Ebmaj7 through 5 zones, up the neck</c>.</summary>
    /// <param name="travel">The exercise.</param>
    /// <param name="format">"G" (or null) plain, "P" with printed signs.</param>
    /// <param name="naming">A <see cref="TheoryKit.Theory.Notes.NoteNaming"/>; null for English.</param>
    public static string InWords(this ZoneTravel travel, string? format = null, IFormatProvider? naming = null)
    {
        ArgumentNullException.ThrowIfNull(travel);
        return $"{travel.Zones[0].Chord.ToString(format, naming)} through {English.Count(travel.Zones.Count, "zone")}, {(travel.IsDown ? "down" : "up")} the neck";
    }
}
