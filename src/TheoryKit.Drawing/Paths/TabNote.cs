using TheoryKit.Paths;
using TheoryKit.Theory;
using TheoryKit.Tunings;
using Path = TheoryKit.Paths.Path;

namespace TheoryKit.Drawing;

/// <summary>What tab says of a note beside its place.</summary>
internal static class TabNote
{
    /// <summary>
    /// What stands on the line: the fret, x for a dead note, parentheses around a ghost note. A string that begins up the neck
    /// says 0 when open, as any string does.
    /// </summary>
    public static string Sign(Neck neck, PathNote note)
    {
        var start = neck.Tuning[note.Position.String].Start;
        var fret = start >= neck.Capo && note.Position.Fret == start ? 0 : note.Position.Fret;
        var sign = note.Has(Technique.Dead) ? "x" : $"{fret}";
        return note.Has(Technique.Ghost) ? $"({sign})" : sign;
    }

    /// <summary>What a note does, for the mark: nothing where there is no chord.</summary>
    public static ToneRole? Role(Path path, PathNote note) =>
        path.ChordAt(note.Start) is not { } chord || path.FunctionOf(note) is not { } function
            ? null
            : ToneRoles.Of(function, chord.Formula);

    /// <summary>What is written below a note; null for nothing.</summary>
    public static string? Label(Path path, PathNote note, Labels labels, string? format, IFormatProvider? naming) =>
        labels switch
        {
            Labels.Functions => path.FunctionOf(note)?.ToString(format, naming),
            Labels.NoteNames => note.Pitch.Name.ToString(format, naming),
            Labels.Fingers when note.Finger is { } finger => Mark.FingerSign((int)finger),
            Labels.Fingers when note.Position.Fret == path.Neck.OpenFret(note.Position.String) => "o",
            _ => null,
        };

    /// <summary>The note that sounds on its string up to its start, from which a joined note goes on; null if there is none.</summary>
    public static PathNote? Before(Path path, PathNote note) =>
        path.Notes.LastOrDefault(other => other.Position.String == note.Position.String && other.End == note.Start);
}
