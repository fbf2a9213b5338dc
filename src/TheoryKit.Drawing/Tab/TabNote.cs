using TheoryKit.Drawing.Necks;
using TheoryKit.Drawing.Sheets;
using TheoryKit.Paths;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Necks;
using Path = TheoryKit.Paths.Path;

namespace TheoryKit.Drawing.Tab;

/// <summary>What tab says of a note beside its place.</summary>
internal static class TabNote
{
    /// <summary>
    /// What stands on the line: the fret, x for a dead note; in parentheses for a ghost note and where a bend is released to, in
    /// angle brackets for a natural harmonic, in square ones for an artificial one. A string that begins up the neck says 0 when
    /// open, as any string does.
    /// </summary>
    public static string Sign(Neck neck, PathNote note, string format = "G")
    {
        var start = neck.Tuning[note.Position.String].Start;
        var fret = start >= neck.Capo && note.Position.Fret == start ? 0 : note.Position.Fret;
        var sign = note.IsDead ? "x" : $"{fret}";
        return note.Has(Technique.NaturalHarmonic) ? (format == "P" ? $"‹{sign}›" : $"<{sign}>")
            : note.Has(Technique.ArtificialHarmonic) ? $"[{sign}]"
            : note.Has(Technique.Ghost) || note.Has(Technique.Release) ? $"({sign})"
            : sign;
    }

    /// <summary>Half the width in the picture of what stands on the line, in px.</summary>
    public static double HalfWidth(Neck neck, PathNote note) => Sign(neck, note).Length * 3.7;

    /// <summary>The sign after a function or a name where a quarter tone sounds higher than it says.</summary>
    public static string Quarter(PathNote note, string? format) =>
        note.Bend % 100 == 0 ? ""
        : format == "P" ? "↑"
        : "^";

    /// <summary>A pitch at which a note sounds, "C4 and a quarter tone" where it sounds higher than the name says.</summary>
    public static Words Sounded(Pitch pitch, PathNote note) =>
        note.Bend % 100 == 0 ? Words.Of(pitch) : $"{pitch} and a quarter tone";

    /// <summary>What a dead note is in words.</summary>
    public static string Dead(PathNote note) => $"{Technique.Dead.Name} on string {note.Position.String}";

    /// <summary>What a note does, for the mark: nothing where there is no chord.</summary>
    public static ToneRole? Role(Path path, PathNote note) =>
        path.ChordAt(note.Start) is not { } chord || path.FunctionOf(note) is not { } function
            ? null
            : ToneRoles.Over(function, chord.Formula);

    /// <summary>
    /// What is written below a note: what it does or is called at the pitch that sounds; null for nothing, and for a dead note. A quarter
    /// tone above that has an arrow.
    /// </summary>
    public static string? Label(Path path, PathNote note, Labels labels, string? format, IFormatProvider? naming) =>
        labels switch
        {
            _ when note.IsDead => null,
            Labels.Functions when path.FunctionOf(note) is { } function => function.ToString(format, naming)
                + Quarter(note, format),
            Labels.NoteNames => path.SoundingPitch(note).Name.ToString(format, naming) + Quarter(note, format),
            Labels.Fingers when note.Finger is { } finger => Mark.FingerSign((int)finger),
            Labels.Fingers when note.Position.Fret == path.Neck.OpenFret(note.Position.String) => "o",
            _ => null,
        };
}
