using TheoryKit.Fingering.Moving;
using TheoryKit.Values;

namespace TheoryKit.Fingering.Words;

/// <summary>What becomes of grips and lines in another tuning, in English.</summary>
public static class MovingWords
{
    /// <summary>Why a grip can't stay, in a few words: <c>string 6 at fret 3 gives F2: no tone of G</c>.</summary>
    /// <param name="reason">The reason.</param>
    /// <param name="format">"G" (or null) plain, "P" with printed signs.</param>
    /// <param name="naming">A <see cref="TheoryKit.Theory.Notes.NoteNaming"/>; null for English.</param>
    public static string InWords(this MustMoveReason reason, string? format = null, IFormatProvider? naming = null)
    {
        return reason switch
        {
            MustMoveReason.ForeignTones foreign =>
                $"{string.Join(", ", foreign.Tones.Select(Gives))}: no {(foreign.Tones.Count > 1 ? "tones" : "tone")} of {foreign.Chord.ToString(format, naming)}",
            MustMoveReason.MissingTones missing =>
                $"{English.List(missing.Tones.Select(tone => tone.ToString(format)))} of {missing.Chord.ToString(format, naming)} would be missing",
            MustMoveReason.OtherBass other =>
                $"{other.Lowest.ToString(format, naming)} would be lowest, not {other.Bass.ToString(format, naming)}",
            MustMoveReason.OutsideLimits => "the limits leave it out in the new tuning",
            _ => throw Check.NoKind(reason),
        };

        string Gives(ForeignTone tone) =>
            $"{(tone.IsOpen ? $"open string {tone.Position.String}" : $"string {tone.Position.String} at fret {tone.Position.Fret}")} gives {tone.Pitch.ToString(format, naming)}";
    }

    /// <summary>What becomes of a position: <c>6:3 G2, then F2</c>.</summary>
    /// <param name="moved">The position.</param>
    /// <param name="format">"G" (or null) plain, "P" with printed signs.</param>
    /// <param name="naming">A <see cref="TheoryKit.Theory.Notes.NoteNaming"/>; null for English.</param>
    public static string InWords(this MovedPosition moved, string? format = null, IFormatProvider? naming = null)
    {
        var before = $"{moved.Position} {moved.Before.ToString(format, naming)}";
        return moved.Stays ? before : $"{before}, then {moved.After.ToString(format, naming)}";
    }

    /// <summary>What becomes of a note: <c>G3 at 4:5, then 4:5</c>.</summary>
    /// <param name="moved">The note.</param>
    /// <param name="format">"G" (or null) plain, "P" with printed signs.</param>
    /// <param name="naming">A <see cref="TheoryKit.Theory.Notes.NoteNaming"/>; null for English.</param>
    public static string InWords(this MovedNote moved, string? format = null, IFormatProvider? naming = null) =>
        $"{moved.Pitch.ToString(format, naming)} at {moved.Before}, then {moved.Easiest?.ToString() ?? "nowhere"}";
}
