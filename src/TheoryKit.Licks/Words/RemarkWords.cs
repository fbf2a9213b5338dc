using System.Diagnostics;
using System.Globalization;
using Fractions;
using TheoryKit.Licks.Analysis;
using TheoryKit.Paths;
using TheoryKit.Values;

namespace TheoryKit.Licks.Words;

/// <summary>The sentences of remarks that follow each other: a chord that was named last needs no naming again.</summary>
internal sealed class RemarkWords(Speech speech)
{
    private readonly NoteWords notes = new(speech);

    public string Say(LineRemark remark) =>
        remark switch
        {
            LineRemark.Nothing => "There are no notes to read.",
            LineRemark.Extent at => Extent(at),
            LineRemark.Parts at => Parts(at.Line),
            LineRemark.StrongBeats at => StrongBeats(at.Line),
            LineRemark.OneChange at => speech.Say(
                $"It meets {at.Change.To} on its {notes.Name(at.Change.Function!.Value, at.Change.To)}{Before(at.Change)}."
            ),
            LineRemark.GuideTones at => GuideTones(at),
            LineRemark.Resolution at => speech.Say(
                $"Into {at.To} the {notes.Name(at.Leaving, at.From)} of {at.From} {(at.Step > 0 ? "rises" : "falls")} a {NoteWords.Steps[Math.Abs(at.Step)]} to the {notes.Name(at.Function, at.To)}."
            ),
            LineRemark.Techniques at => $"It is played with {English.List(at.Counts.Select(Uses))}.",
            LineRemark.Rests at => $"Bar {at.Bar} rests.",
            LineRemark.DeadOnly at => $"Bar {at.Bar} has dead notes only.",
            LineRemark.Holds at => Holds(at),
            LineRemark.Opening at => Opening(at),
            LineRemark.Figures at => Figures(at),
            LineRemark.ChordTonesOnly at => ChordTonesOnly(at),
            LineRemark.InnerChange at => InnerChange(at.Change),
            LineRemark.StrongNotes at =>
                $"{(at.Notes.Count == 1 ? "Its strong beat carries" : "Its strong beats carry")} {English.List(at.Notes.Select(note => $"the {notes.Named(note)}").Distinct())}.",
            LineRemark.Made at => $"That note is {notes.How(at.Note, at.How)}.",
            LineRemark.Ends { Note.Part: NotePart.NoChord } at =>
                $"It ends on {speech.Text(at.Note.Sounding)}{How(at.Note, at.How)}.",
            LineRemark.Ends at => $"It ends on the {notes.Named(at.Note)}{How(at.Note, at.How)}.",
            _ => throw new UnreachableException(),
        };

    private string Extent(LineRemark.Extent at)
    {
        var line = at.Line;
        var range =
            line.Range == 0
                ? speech.Say($"all on {line.Lowest!.Sounding}")
                : speech.Say($"from {line.Lowest!.Sounding} up to {line.Highest!.Sounding}");
        return speech.Say(
            $"{English.Count(line.Count, "note")} in {English.Count(at.Bars, "bar")} of {at.Time.ToString()}, {range}: {Density(line.Density)} a beat."
        );
    }

    private static string Parts(LineSummary line)
    {
        var tones = line.CountOf(NotePart.ChordTone);
        var others = English.List(
            line.Parts.Where(static part => part is { Share: > 0, Part: not NotePart.ChordTone }).Select(Several)
        );
        if (line.CountOf(NotePart.NoChord) == line.Count)
        {
            return "No chord sounds under it.";
        }

        if (others.Length == 0)
        {
            return line.Count == 1 ? "It is a chord tone." : "All of them are chord tones.";
        }

        return tones switch
        {
            0 => $"None of them is a chord tone: {others}.",
            1 => $"1 of the {line.Count} is a chord tone ({Percent(line.ChordToneShare)}); beside it {others}.",
            _ => $"{tones} of the {line.Count} are chord tones ({Percent(line.ChordToneShare)}); beside them {others}.",
        };
    }

    private static string Several(PartCount part) =>
        part.Part switch
        {
            NotePart.Approach => English.Count(part.Count, "approach", "approaches"),
            NotePart.Enclosure =>
                $"{English.Count(part.Count, "note")} that {(part.Count == 1 ? "encloses" : "enclose")}",
            NotePart.Outside => $"{English.Count(part.Count, "note")} outside the chord",
            NotePart.NoChord => $"{English.Count(part.Count, "note")} over no chord",
            _ => English.Count(part.Count, part.Part.InWords()),
        };

    private string StrongBeats(LineSummary line)
    {
        var strong = line.Functions.Where(static count => count.Strong > 0).ToList();
        var functions = English.List(
            strong.Select(count =>
                $"{speech.Text(count.Function)}{(count.Strong > 1 ? $" ({English.Times(count.Strong)})" : "")}"
            )
        );
        return strong.Sum(static count => count.Strong) switch
        {
            0 => "No note starts on a strong beat.",
            1 => $"One note starts on a strong beat, {functions}.",
            _ => $"The strong beats carry {functions}.",
        };
    }

    private static string GuideTones(LineRemark.GuideTones at) =>
        (at.Hits, at.Changes) switch
        {
            (0, 2) => "Neither change is met on a guide tone.",
            (0, var all) => $"None of the {all} changes is met on a guide tone.",
            (2, 2) => "Both changes are met on a guide tone.",
            (1, var all) => $"1 of the {all} changes is met on a guide tone.",
            var (hits, all) => hits == all
                ? $"All {all} changes are met on a guide tone."
                : $"{hits} of the {all} changes are met on a guide tone.",
        };

    /// <summary>Where the line comes from, unless that was told as a lead.</summary>
    private string Before(ChangeAnalysis? change) =>
        change is { IsLed: false, Last.Function: { } leaving }
            ? speech.Say($", {From(change.Step!.Value)} the {notes.Name(leaving, change.From)} of {change.From}")
            : "";

    private static string Uses(TechniqueCount use)
    {
        var (name, count) = (use.Technique.Name, use.Count);
        return name.EndsWith('o') ? $"{name} on {English.Count(count, "note")}"
            : name.StartsWith("slide ", StringComparison.Ordinal)
                ? English.Count(count, name, "slides" + name["slide".Length..])
            : English.Count(count, name, name + (name.EndsWith('h') ? "es" : "s"));
    }

    private string Holds(LineRemark.Holds at) =>
        at.Note is { Anticipates: { } early, AnticipatedFunction: { } function }
            ? speech.Say($"Bar {at.Bar} holds the {notes.Name(function, early)} of {early}.")
        : at.Over is { } over
            ? speech.Say(
                $"Bar {at.Bar} holds {at.Note.Sounding}, the {notes.Name(Path.FunctionOver(over, at.Note.Sounding), over)} of {over}."
            )
        : speech.Say($"Bar {at.Bar} holds {at.Note.Sounding}.");

    private string Opening(LineRemark.Opening at)
    {
        var (first, name) = (at.Note, $"Bar {at.Bar}");
        if (at.How == BarOpening.NoChord)
        {
            return speech.Say($"{name} starts over no chord, on {first.Sounding}.");
        }

        var what = first.Part is NotePart.ChordTone or NotePart.ColourTone or NotePart.Anticipation
            ? $"the {notes.Named(first)}"
            : speech.Say($"{first.Sounding.Name}, the {notes.Named(first)}");
        notes.Current = first.Chord;
        var from = Before(at.Met);
        return at.How switch
        {
            BarOpening.Lands => $"{name} lands on {what}{from}{How(first, at.Bend)}.",
            BarOpening.Starts => $"{name} starts on {what}{from}.",
            BarOpening.SlidesInto => $"{name} slides into {what}{from}.",
            BarOpening.GoesOn => speech.Say(
                $"{name} holds the {notes.Name(at.Held!.AnticipatedFunction!.Value, at.Held.Anticipates!)} of {at.Held.Anticipates!} from before the bar line and goes on with {what}, {At(first)}."
            ),
            BarOpening.ComesIn => $"{name} comes in {At(first)} with {what}.",
            _ => throw new UnreachableException(),
        };
    }

    /// <summary>One phrase for each figure, those alike told once.</summary>
    private string Figures(LineRemark.Figures at)
    {
        var told = at
            .All.Select(notes.Say)
            .GroupBy(static phrase => phrase)
            .Select(static group => group.Count() == 1 ? group.Key : $"{group.Key} {English.Times(group.Count())}");
        return $"It {English.List(told)}.";
    }

    private string ChordTonesOnly(LineRemark.ChordTonesOnly at)
    {
        var tones = at.Notes.Select(note => speech.Text(note.Function!.Value)).Distinct().ToList();
        return tones.Count == 1
            ? "It stays on that tone."
            : $"All {at.Notes.Count} notes are chord tones: {English.List(tones)}.";
    }

    private string InnerChange(ChangeAnalysis change)
    {
        var early = change.First!.Anticipates is null ? "" : ", early";
        notes.Current = change.To;
        return speech.Say(
            $"It meets {change.To} on its {notes.Name(change.Function!.Value, change.To)}{early}{Before(change)}."
        );
    }

    private string How(AnalysedNote note, Technique? how) => how is null ? "" : $", {notes.How(note, how)}";

    private static string At(AnalysedNote note)
    {
        var whole = (int)(note.Beat.Numerator / note.Beat.Denominator);
        var rest = (note.Beat - whole).Reduce();
        return rest.IsZero ? $"on beat {whole + 1}"
            : rest == new Fraction(1, 2) ? $"on the second half of beat {whole + 1}"
            : $"{rest} of a beat after beat {whole + 1}";
    }

    private static string From(int step) =>
        step == 0 ? "the same note as"
        : Math.Abs(step) <= 12
            ? $"{(Math.Abs(step) == 12 ? "an" : "a")} {NoteWords.Steps[Math.Abs(step)]} {(step > 0 ? "up" : "down")} from"
        : $"more than an octave {(step > 0 ? "up" : "down")} from";

    /// <summary>"1 note", "1 1/2 notes", "about 0.8 notes".</summary>
    private static string Density(Fraction value)
    {
        var whole = value.Numerator / value.Denominator;
        var rest = (value - whole).Reduce();
        var notes = value > Fraction.One || value.Denominator > 4 ? "notes" : "note";
        return value.Denominator > 4 ? $"about {value.ToDouble().ToString("0.0", CultureInfo.InvariantCulture)} {notes}"
            : rest.IsZero ? $"{whole} {notes}"
            : whole.IsZero ? $"{rest} {notes}"
            : $"{whole} {rest} {notes}";
    }

    private static string Percent(double share) =>
        $"{Math.Round(100 * share, MidpointRounding.AwayFromZero).ToString(CultureInfo.InvariantCulture)}\u00a0%";
}
