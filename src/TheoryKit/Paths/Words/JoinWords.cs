using Fractions;
using TheoryKit.Paths.Joins;
using TheoryKit.Values;

namespace TheoryKit.Paths.Words;

/// <summary>Joined changes in English.</summary>
public static class JoinWords
{
    /// <summary>The rule in a sentence.</summary>
    public static string InWords(this JoinRule rule) =>
        rule switch
        {
            JoinRule.BeyondRule =>
                "The nearest tone of the new chord strictly beyond the last note in the direction of travel; if there is none, the line turns and takes the nearest on the other side.",
            JoinRule.CommonToneRule =>
                "If the new chord has the last note too, that again; else the nearest tone strictly beyond it in the direction of travel, and if there is none, the nearest on the other side.",
            JoinRule.NearestRule =>
                "The nearest tone of the new chord above or below the last note, of two equally near the one in the direction of travel; the line goes on in the direction of that step.",
            JoinRule.SemitoneRule =>
                "The nearest tone strictly beyond, as ever, but the last note of the old chord gives way to the pitch a semitone before that tone where it fits.",
            _ => throw Check.NoKind(rule),
        };

    /// <summary>The two functions with their chords: <c>b7 of Gm9 to 3 of C13, 4 times</c>.</summary>
    /// <param name="join">The join.</param>
    /// <param name="format">"G" (or null) plain, "P" with printed signs.</param>
    /// <param name="naming">A <see cref="TheoryKit.Theory.Notes.NoteNaming"/>; null for English.</param>
    public static string InWords(this Join join, string? format = null, IFormatProvider? naming = null)
    {
        ArgumentNullException.ThrowIfNull(join);
        return $"{join.FromFunction.ToString(format)} of {join.From.ToString(format, naming)} to {join.ToFunction.ToString(format)} of {join.To.ToString(format, naming)}, {(join.Count == 1 ? "once" : $"{join.Count} times")}";
    }

    /// <summary>Chords, bars and notes: <c>24 chords, 24 bars, 192 notes</c>.</summary>
    public static string InWords(this JoinExtent extent) =>
        $"{English.Count(extent.Chords, "chord")}, {extent.Bars} {(extent.Bars == Fraction.One ? "bar" : "bars")}, {English.Count(extent.Notes, "note")}";

    /// <summary>Lead-in and cycle.</summary>
    public static string InWords(this JoinedChanges joined)
    {
        ArgumentNullException.ThrowIfNull(joined);
        return $"lead-in: {joined.LeadIn.InWords()}; cycle: {joined.Cycle.InWords()}";
    }

    /// <summary>The frets, the notes, lead-in and cycle.</summary>
    public static string InWords(this JoinCell cell)
    {
        ArgumentNullException.ThrowIfNull(cell);
        return $"frets {cell.Window}, {English.Count(cell.NotesPerChord, "note")} per chord: lead-in {cell.LeadIn}, cycle {English.Count(cell.Cycle, "chord")}";
    }

    /// <summary>How many zones and numbers of notes, the rule, and the longest cycle.</summary>
    public static string InWords(this JoinTable table)
    {
        ArgumentNullException.ThrowIfNull(table);
        return $"{English.Count(table.Windows.Length, "zone")} by {English.Count(table.Notes.Length, "number")} of notes, {table.Rule}; the longest: {table.Longest?.InWords() ?? "none"}";
    }
}
