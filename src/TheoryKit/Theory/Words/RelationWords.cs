using TheoryKit.Theory.Relations;
using TheoryKit.Values;

namespace TheoryKit.Theory.Words;

/// <summary>How chords relate, in English.</summary>
public static class RelationWords
{
    /// <summary>The chords, the number of common tones and the distance: <c>Cm7 and Ebmaj7: 3 common, 1 semitone apart</c>.</summary>
    /// <param name="pair">The pair.</param>
    /// <param name="format">"G" (or null) plain, "P" with printed signs.</param>
    /// <param name="naming">A <see cref="TheoryKit.Theory.Notes.NoteNaming"/>; null for English.</param>
    public static string InWords(this ChordPair pair, string? format = null, IFormatProvider? naming = null)
    {
        ArgumentNullException.ThrowIfNull(pair);
        return $"{pair.First.ToString(format, naming)} and {pair.Second.ToString(format, naming)}: {pair.CommonTones.Count} common, {English.Count(pair.Distance, "semitone")} apart";
    }
}
