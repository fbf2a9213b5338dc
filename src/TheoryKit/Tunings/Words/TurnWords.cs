using TheoryKit.Tunings.Turns;
using TheoryKit.Values;

namespace TheoryKit.Tunings.Words;

/// <summary>What is turned, and how the ear checks it, in English.</summary>
public static class TurnWords
{
    /// <summary>What is done to a string: <c>string 6: E2 down 2 semitones to D2</c>.</summary>
    /// <param name="turn">The turn.</param>
    /// <param name="format">"G" (or null) plain, "P" with printed signs.</param>
    /// <param name="naming">A <see cref="TheoryKit.Theory.Notes.NoteNaming"/>; null for English.</param>
    public static string InWords(this StringTurn turn, string? format = null, IFormatProvider? naming = null)
    {
        var to = turn.To.ToString(format, naming);
        return turn.Direction == Turn.Leave
            ? $"string {turn.Number}: {to} stays"
            : $"string {turn.Number}: {turn.From.ToString(format, naming)} {(turn.Semitones > 0 ? "up" : "down")} {English.Count(Math.Abs(turn.Semitones), "semitone")} to {to}";
    }

    /// <summary>The check: <c>6:0 an octave below 4:0</c>.</summary>
    public static string InWords(this TuningCheck check)
    {
        var away = Math.Abs(check.Octaves);
        return check.Octaves == 0
            ? $"{check.Turned} as {check.InTune}"
            : $"{check.Turned} {(away == 1 ? "an octave" : $"{away} octaves")} {(check.Octaves < 0 ? "below" : "above")} {check.InTune}";
    }
}
