using TheoryKit.Fingering.Zones;
using TheoryKit.Values;

namespace TheoryKit.Fingering.Words;

/// <summary>Why there is no zone, in English.</summary>
public static class ZoneReasonWords
{
    /// <summary>Why there is no zone, in a sentence.</summary>
    /// <param name="reason">The reason.</param>
    /// <param name="format">"G" (or null) plain, "P" with printed signs.</param>
    /// <param name="naming">A <see cref="TheoryKit.Theory.Notes.NoteNaming"/>; null for English.</param>
    public static string InWords(this NoZoneReason reason, string? format = null, IFormatProvider? naming = null) =>
        reason switch
        {
            NoZoneReason.NoFrets none =>
                $"There are no zones: the capo lies on the last fret, {none.Capo}, so that there is none to hold.",
            NoZoneReason.RootNowhere root =>
                $"There are no zones: no string gives the root {root.Root.ToString(format, naming)} between frets {root.First} and {root.Last}, and zones lie between root frets.",
            _ => throw Check.NoKind(reason),
        };
}
