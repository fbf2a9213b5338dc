using System.Text;
using Fractions;
using TheoryKit.Paths;

namespace TheoryKit.Drawing;

/// <summary>A tab said in words.</summary>
internal static class TabWords
{
    /// <summary>"12 notes over Gm9 and C13", "12 notes in 4/4".</summary>
    public static string Title(TheoryKit.Paths.Path path, string format, IFormatProvider? naming)
    {
        var chords = Chords(path).Distinct().Select(chord => chord.ToString(format, naming)).ToList();
        var notes = InWords.Count(path.Notes.Count, "note");
        return chords.Count switch
        {
            0 => $"{notes} in {path.Time}",
            <= 4 => $"{notes} over {InWords.List(chords)}",
            _ => $"{notes} over {InWords.Count(chords.Count, "chord")}",
        };
    }

    public static string Describe(TabDrawing drawing)
    {
        var (path, naming) = (drawing.Path, drawing.Naming);
        var words = new StringBuilder(1024);
        words.Append($"Tab for {Printed.Number(path.Neck.StringCount)} strings, ");
        words.Append($"{Printed.Of(path.Neck.Tuning, naming)} from string {path.Neck.StringCount} to string 1");
        words.Append(path.Neck.Capo > 0 ? $", {Capo(path.Neck)}" : "").Append($", in {path.Time}.");
        var parts = WrittenRhythm.Of(WrittenRhythm.Events(path), TabLayout.WholeBeats(path), path.Time);
        for (var bar = 0; bar < path.BarCount; bar++)
        {
            var (from, to) = ((Fraction)(bar * path.Time.Beats), (Fraction)((bar + 1) * path.Time.Beats));
            words.Append($" Bar {bar + 1}: ");
            var said = new List<string>();
            foreach (var part in parts.Where(part => part.Start >= from && part.Start < to && !part.IsTied))
            {
                said.Add(Event(drawing, part, part.Start - from));
            }

            words.Append(said.Count == 0 ? "nothing new" : string.Join("; ", said)).Append('.');
        }

        return words.Append(path.Notes.Count == 0 ? " There is no note." : "").ToString();
    }

    /// <summary>"beat 2½": counted from 1, halves and quarters of a beat as players say them.</summary>
    public static string Beat(Fraction start)
    {
        var whole = WrittenRhythm.Whole(start);
        var rest = (start - (Fraction)whole).Reduce();
        return rest == Fraction.Zero ? $"beat {whole + 1}" : $"beat {whole + 1} and {rest}";
    }

    /// <summary>"capo 2, frets from the nut": where the numbers are counted from.</summary>
    public static string Capo(Tunings.Neck neck) => $"capo {neck.Capo}, frets from the nut";

    /// <summary>"1/2 beat", "1 beat", "3/2 beats".</summary>
    public static string Beats(Fraction beats) => $"{beats.Reduce()} {(beats > Fraction.One ? "beats" : "beat")}";

    private static IEnumerable<Theory.Chord> Chords(TheoryKit.Paths.Path path) =>
        path.Changes is null
            ? []
            : path
                .Changes.Chords.Where(span => span.Start < path.Beats)
                .Select(static span => span.Chord!)
                .Where(static chord => chord is not null);

    private static string Event(TabDrawing drawing, RhythmPart part, Fraction beat)
    {
        var path = drawing.Path;
        var value = part.Value?.ToString() ?? Beats(part.Beats);
        if (part.IsRest)
        {
            return $"{Beat(beat)} rest, {value}";
        }

        var notes = path.Notes.Where(note => note.Start == part.Start).Select(note => Note(drawing, note));
        return $"{Beat(beat)} {string.Join(" with ", notes)}";
    }

    // "string 4 fret 5, G3, the 1, for 1/2 beat, finger 3, hammer-on".
    private static string Note(TabDrawing drawing, PathNote note)
    {
        var path = drawing.Path;
        var isOpen = note.Position.Fret == path.Neck.OpenFret(note.Position.String);
        return string.Concat(
            $"string {note.Position.String} {(isOpen ? "open" : $"fret {note.Position.Fret}")}, {note.Pitch.ToString("P", drawing.Naming)}",
            path.FunctionOf(note) is { } function
                ? $", the {function.ToString("P")} of {path.ChordAt(note.Start)!.ToString("P", drawing.Naming)}"
                : "",
            $", for {Beats(note.Length)}",
            note.Finger is { } finger ? $", {Hands.Word(finger)}" : "",
            string.Concat(note.Techniques.Select(static technique => $", {technique.Name}"))
        );
    }
}
