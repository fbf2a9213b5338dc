using System.Text;
using Fractions;
using TheoryKit.Drawing.Hands;
using TheoryKit.Drawing.Necks;
using TheoryKit.Paths;
using TheoryKit.Values;

namespace TheoryKit.Drawing.Tab;

/// <summary>A tab said in words.</summary>
internal static class TabWords
{
    /// <summary>"12 notes over Gm9 and C13", "12 notes in 4/4".</summary>
    public static string Title(TheoryKit.Paths.Path path, string format, IFormatProvider? naming)
    {
        var chords = Chords(path).Distinct().Select(chord => chord.ToString(format, naming)).ToList();
        var notes = Notes(path);
        return chords.Count switch
        {
            0 => $"{notes} in {path.Time}",
            <= 4 => $"{notes} over {English.List(chords)}",
            _ => $"{notes} over {English.Count(chords.Count, "chord")}",
        };
    }

    /// <summary>"5 notes", "5 notes and 3 dead ones", "3 dead notes".</summary>
    public static string Notes(TheoryKit.Paths.Path path)
    {
        var dead = path.Notes.Count(static note => note.IsDead);
        var sounding = path.Notes.Count - dead;
        return dead == 0 ? English.Count(sounding, "note")
            : sounding == 0 ? English.Count(dead, "dead note")
            : $"{English.Count(sounding, "note")} and {English.Count(dead, "dead one")}";
    }

    public static string Describe(TabDrawing drawing)
    {
        var (path, naming) = (drawing.Path, drawing.Naming);
        var words = new StringBuilder(1024);
        words.Append($"Tab for {Printed.Number(path.Neck.StringCount)} strings, ");
        words.Append($"{Printed.Of(path.Neck.Tuning, naming)} from string {path.Neck.StringCount} to string 1");
        words.Append(path.Neck.Capo > 0 ? $", {Capo(path.Neck)}" : "").Append($", in {path.Time}.");
        var parts = WrittenRhythm.Of(WrittenRhythm.Events(path), TabParts.WholeBeats(path), path.Time);
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
    public static string Capo(TheoryKit.Tunings.Necks.Neck neck) => $"capo {neck.Capo}, frets from the nut";

    /// <summary>"1/2 beat", "1 beat", "3/2 beats".</summary>
    public static string Beats(Fraction beats) => $"{beats.Reduce()} {(beats > Fraction.One ? "beats" : "beat")}";

    private static IEnumerable<TheoryKit.Theory.Chords.Chord> Chords(TheoryKit.Paths.Path path) =>
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

    // "string 4 fret 5, G3, the 1 of Gm9, for 1/2 beat, finger 3, hammer-on".
    // "string 2 fret 8, G4, bend by a whole tone to A4, the 13 of C13, for 1 beat".
    // "dead note on string 2, for 1/2 beat, accent".
    private static string Note(TabDrawing drawing, PathNote note)
    {
        var path = drawing.Path;
        if (note.IsDead)
        {
            var others = note.Techniques.Where(static technique => technique != Technique.Dead);
            return string.Join(
                ", ",
                [
                    TabNote.Dead(note),
                    $"for {Beats(note.Length)}",
                    .. note.Finger is { } held ? [HandValues.Word(held)] : Array.Empty<string>(),
                    .. others.Select(static technique => technique.Name),
                ]
            );
        }

        var isOpen = note.Position.Fret == path.Neck.OpenFret(note.Position.String);
        return string.Concat(
            $"string {note.Position.String} {(isOpen ? "open" : $"fret {note.Position.Fret}")}, {note.Pitch.ToString("P", drawing.Naming)}",
            string.Concat(
                note.Techniques.Where(IsOfPitch)
                    .Select(technique => $", {technique.Name}{Pitched(path, note, technique, drawing.Naming)}")
            ),
            path.FunctionOf(note) is { } function
                ? $", {(note.Bend % 100 == 0 ? "" : "a quarter tone above ")}the {function.ToString("P")} of {path.ChordAt(note.Start)!.ToString("P", drawing.Naming)}"
                : "",
            $", for {Beats(note.Length)}",
            note.Finger is { } finger ? $", {HandValues.Word(finger)}" : "",
            string.Concat(
                note.Techniques.Where(static technique => !IsOfPitch(technique))
                    .Select(technique =>
                        $", {technique.Name}{(technique == Technique.Trill ? Trilled(drawing, note) : "")}"
                    )
            )
        );
    }

    /// <summary>"a whole tone", "half a tone", "a quarter tone", "1½ tones".</summary>
    public static string Tones(int cents) =>
        cents switch
        {
            50 => "a quarter tone",
            100 => "half a tone",
            150 => "three quarter tones",
            200 => "a whole tone",
            _ => $"{TabSigns.Amount(cents)} tones",
        };

    /// <summary>As <see cref="TabSigns.Amount"/>, in plain letters: "full", "1/2", "1 1/2", "2".</summary>
    public static string PlainAmount(int cents) =>
        cents == 200 ? "full"
        : cents % 200 == 0 ? $"{cents / 200}"
        : $"{(cents > 200 ? $"{cents / 200} " : "")}{new Fraction(cents % 200, 200).Reduce()}";

    /// <summary>Whether a technique makes another pitch sound than the fret's.</summary>
    public static bool IsOfPitch(Technique technique) =>
        technique.IsBent
        || technique == Technique.Release
        || technique == Technique.NaturalHarmonic
        || technique == Technique.ArtificialHarmonic;

    /// <summary>What a technique makes of the fret's pitch: " by a whole tone to A4", " to G4", " sounding E4".</summary>
    public static string Pitched(TheoryKit.Paths.Path path, PathNote note, Technique technique, IFormatProvider? naming)
    {
        var sounding = path.SoundingPitch(note).ToString("P", naming);
        var to = note.Bend % 100 == 0 ? sounding : $"a quarter tone above {sounding}";
        return technique.IsBent ? $" by {Tones(note.Bend)} to {to}"
            : technique == Technique.Release
                ? note.Bend == 0 ? ""
                    : $" to {Tones(note.Bend)} above the fret, {to}"
            : $" sounding {sounding}";
    }

    // " with fret 7, D4".
    private static string Trilled(TabDrawing drawing, PathNote note)
    {
        var (path, other) = (
            drawing.Path,
            new TheoryKit.Tunings.Necks.Position(note.Position.String, note.TrillFret!.Value)
        );
        var midi = path.Neck.MidiNumberAt(other);
        var pitch = path.ChordAt(note.Start)?.Spell(midi) ?? TheoryKit.Theory.Notes.Pitch.FromMidi(midi);
        var place = other.Fret == path.Neck.OpenFret(other.String) ? "the open string" : $"fret {other.Fret}";
        return $" with {place}, {pitch.ToString("P", drawing.Naming)}";
    }
}
