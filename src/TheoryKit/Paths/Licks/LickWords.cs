using System.Globalization;
using Fractions;
using TheoryKit.Theory;

namespace TheoryKit.Paths;

/// <summary>An analysis in sentences. Each says one thing; what there is nothing to say about is left out.</summary>
internal sealed class LickWords
{
    private static readonly string[] Steps =
    [
        "unison",
        "half step",
        "whole step",
        "minor third",
        "major third",
        "fourth",
        "tritone",
        "fifth",
        "minor sixth",
        "major sixth",
        "minor seventh",
        "major seventh",
        "octave",
    ];

    private readonly LickAnalysis lick;
    private readonly string? format;
    private readonly IFormatProvider? naming;

    /// <summary>The chord that was named last, which needs no naming again.</summary>
    private Chord? current;

    public LickWords(LickAnalysis lick, string? format, IFormatProvider? naming)
    {
        (this.lick, this.format, this.naming) = (lick, format, naming);
        _ = TextFormat.IsPrinted(format);
    }

    public IReadOnlyList<string> Whole()
    {
        var sum = lick.Summary;
        if (sum.Count == 0)
        {
            return ["There are no notes to read."];
        }

        List<string> said = [Extent(sum), Parts(sum)];
        AddStrongBeats(said, sum);
        AddChanges(said);
        AddTechniques(said);
        return said;
    }

    public IReadOnlyList<string> Of(BarAnalysis bar)
    {
        var line = bar.Summary.Line;
        var name = $"Bar {bar.Bar + 1}";
        if (line.Length == 0)
        {
            return [Silent(bar, name)];
        }

        var first = line.Where(note => note.Note.Start == line[0].Note.Start).MaxBy(static note => note.Sounding)!;
        List<string> said = [Opening(bar, name, first)];
        AddInside(said, bar, first);
        if (said.Count == 1)
        {
            AddAllChordTones(said, line);
        }

        AddInnerChanges(said, bar);
        AddStrong(said, bar);
        AddEnd(said, line, first);
        return said;
    }

    private string Extent(LineSummary sum)
    {
        var bars = Count(lick.Path.BarCount, "bar");
        var range =
            sum.Range == 0
                ? $"all on {Text(sum.Lowest!.Sounding)}"
                : $"from {Text(sum.Lowest!.Sounding)} up to {Text(sum.Highest!.Sounding)}";
        return $"{Count(sum.Count, "note")} in {bars} of {lick.Path.Time}, {range}: {Density(sum.Density)} a beat.";
    }

    private static string Parts(LineSummary sum)
    {
        var tones = sum.CountOf(NotePart.ChordTone);
        var others = List(
            sum.Parts.Where(static part => part is { Share: > 0, Part: not NotePart.ChordTone }).Select(Several)
        );
        if (sum.CountOf(NotePart.NoChord) == sum.Count)
        {
            return "No chord sounds under it.";
        }

        if (others.Length == 0)
        {
            return sum.Count == 1 ? "It is a chord tone." : "All of them are chord tones.";
        }

        return tones == 0
            ? $"None of them is a chord tone: {others}."
            : $"{tones} of the {sum.Count} {Be(tones)} {(tones == 1 ? "a chord tone" : "chord tones")} ({Percent(sum.ChordToneShare)}); beside {(tones == 1 ? "it" : "them")} {others}.";
    }

    private static string Several(PartCount part) =>
        part.Part switch
        {
            NotePart.Approach => Count(part.Count, "approach", "approaches"),
            NotePart.Enclosure => $"{Count(part.Count, "note")} that {(part.Count == 1 ? "encloses" : "enclose")}",
            NotePart.Outside => $"{Count(part.Count, "note")} outside the chord",
            NotePart.NoChord => $"{Count(part.Count, "note")} over no chord",
            _ => Count(part.Count, NoteParts.Words(part.Part)),
        };

    private void AddStrongBeats(List<string> said, LineSummary sum)
    {
        var strong = sum.Functions.Where(static count => count.Strong > 0).ToList();
        if (strong.Count > 0)
        {
            var functions = List(
                strong.Select(count => $"{Text(count.Function)}{(count.Strong > 1 ? $" ({Times(count.Strong)})" : "")}")
            );
            said.Add(
                strong.Sum(static count => count.Strong) == 1
                    ? $"One note starts on a strong beat, {functions}."
                    : $"The strong beats carry {functions}."
            );
        }
        else if (sum.Functions.Count > 0)
        {
            said.Add("No note starts on a strong beat.");
        }
    }

    private void AddChanges(List<string> said)
    {
        var changes = lick.Changes.Where(static change => change.IsMet).ToList();
        if (changes.Count == 1)
        {
            said.Add($"It meets {Text(changes[0].To)} on its {Met(changes[0])}.");
        }

        if (changes.Count < 2)
        {
            return;
        }

        var hits = changes.Count(static change => change.HitsGuideTone);
        said.Add(
            hits == 0 ? $"None of the {changes.Count} changes is met on a guide tone."
            : hits < changes.Count ? $"{hits} of the {changes.Count} changes {Be(hits)} met on a guide tone."
            : $"{(hits == 2 ? "Both" : $"All {hits}")} changes are met on a guide tone."
        );
        said.AddRange(
            changes
                .Where(static change => change.Resolves)
                .Select(change =>
                    $"Into {Text(change.To)} the {Name(change.Last!.Function!.Value, change.From)} of {Text(change.From)} {(change.Step > 0 ? "rises" : "falls")} a {Steps[Math.Abs(change.Step!.Value)]} to the {Name(change.Function!.Value, change.To)}."
                )
                .Distinct()
        );
    }

    /// <summary>"third, a half step down from the seventh of Gm9".</summary>
    private string Met(ChangeAnalysis change) => Name(change.Function!.Value, change.To) + Before(change);

    /// <summary>Where the line comes from, unless that was told as a lead.</summary>
    private string Before(ChangeAnalysis change) =>
        change is { Last: { Function: { } leaving } last } && !(last.Part.Leads() && last.Target == change.First!.Index)
            ? $", {From(change.Step!.Value)} the {Name(leaving, change.From)} of {Text(change.From)}"
            : "";

    private void AddTechniques(List<string> said)
    {
        var used = Technique
            .Known.Select(technique => (technique, Count: lick.Path.Notes.Count(note => note.Has(technique))))
            .Where(static use => use.Count > 0)
            .Select(static use => Uses(use.technique.Name, use.Count))
            .ToList();
        if (used.Count > 0)
        {
            said.Add($"It is played with {List(used)}.");
        }

        static string Uses(string name, int count) =>
            name.EndsWith('o') ? $"{name} on {Count(count, "note")}"
            : name.StartsWith("slide ", StringComparison.Ordinal)
                ? Count(count, name, "slides" + name["slide".Length..])
            : Count(count, name, name + (name.EndsWith('h') ? "es" : "s"));
    }

    private string Silent(BarAnalysis bar, string name)
    {
        var start = (Fraction)(bar.Bar * lick.Path.Time.Beats);
        var held = lick.Notes.LastOrDefault(note => note.Counts && note.Note.Start < start && note.Note.End > start);
        return held is not null
            ? held.AnticipatedFunction is { } early
                ? $"{name} holds the {Name(early, held.Anticipates!)} of {Text(held.Anticipates!)}."
                : bar.Chords.Count == 0
                    ? $"{name} holds {Text(held.Sounding)}."
                    : $"{name} holds {Text(held.Sounding)}, the {Over(held, bar.Chords[0])} of {Text(bar.Chords[0])}."
            : bar.Notes.Count > 0
                ? $"{name} has dead notes only."
                : $"{name} rests.";
    }

    private string Opening(BarAnalysis bar, string name, AnalysedNote first)
    {
        if (first.Chord is not { } chord)
        {
            return $"{name} starts over no chord, on {Text(first.Sounding)}.";
        }

        var what = first.Part is NotePart.ChordTone or NotePart.ColourTone or NotePart.Anticipation
            ? $"the {Named(first)}"
            : $"{Text(first.Sounding.Name)}, the {Named(first)}";
        current = chord;
        var from = lick.Changes.FirstOrDefault(change => change.First == first && change.Bar == bar.Bar)
            is { IsMet: true } met
            ? Before(met)
            : "";
        if (first.Beat.IsZero)
        {
            return first.Part is NotePart.ChordTone or NotePart.ColourTone
                ? $"{name} lands on {what}{from}."
                : $"{name} starts on {what}{from}.";
        }

        if (IsSlidInto(bar, first))
        {
            return $"{name} slides into {what}.";
        }

        var start = (Fraction)(bar.Bar * lick.Path.Time.Beats);
        var held = lick.Notes.LastOrDefault(note =>
            note.Counts && note.Index < first.Index && note.Note.Start < start && note.Note.End > start
        );
        return held?.Anticipates is { } early
            ? $"{name} holds the {Name(held.AnticipatedFunction!.Value, early)} of {Text(early)} from before the bar line and goes on with {what}, {At(first)}."
            : $"{name} comes in {At(first)} with {what}.";
    }

    private static bool IsSlidInto(BarAnalysis bar, AnalysedNote first) =>
        bar.Notes.Any(note => note.Part == NotePart.Grace && note.Target == first.Index && note.Beat.IsZero);

    /// <summary>What the notes do between the first and the end: one phrase for each figure, those alike told once.</summary>
    private void AddInside(List<string> said, BarAnalysis bar, AnalysedNote first)
    {
        var phrases = new List<string>();
        var seen = new HashSet<(NotePart, int?)>();
        var last = bar.Summary.Line[^1];
        bool IsBentInside(AnalysedNote note) =>
            note.Note.Has(Technique.Bend) && note != first && note != last && note.Chord is not null;
        foreach (var note in bar.Notes)
        {
            if (
                note.Part is NotePart.NoChord or NotePart.Dead
                || (note.Part == NotePart.ChordTone && !IsBentInside(note))
                || (note.Part == NotePart.Grace && note.Target == first.Index && note.Beat.IsZero)
                || (note.Part.Leads() && !seen.Add((note.Part, note.Target)))
                || (note == first && note.Part == NotePart.ColourTone)
            )
            {
                continue;
            }

            phrases.Add(Phrase(note, bar));
        }

        var told = phrases
            .GroupBy(static phrase => phrase)
            .Select(static group => group.Count() == 1 ? group.Key : $"{group.Key} {Times(group.Count())}")
            .ToList();
        if (told.Count > 0)
        {
            said.Add($"It {List(told)}.");
        }
    }

    private string Phrase(AnalysedNote note, BarAnalysis bar)
    {
        var target = lick.TargetOf(note);
        if (
            note.Note.Has(Technique.Bend)
            && note is { Part: NotePart.ChordTone or NotePart.ColourTone, Chord: { } chord }
        )
        {
            return $"bends the {Name(Path.FunctionOver(chord, note.Note.Pitch), chord)} up to the {Named(note)}";
        }

        switch (note.Part)
        {
            case NotePart.Approach:
                var run = bar.Notes.Count(other =>
                    other.Part == NotePart.Approach && other.Target == note.Target && other.Sounding != note.Sounding
                );
                return run > 0
                    ? $"walks {(note.Step > 0 ? "up" : "down")} to {Aim(note, target!)} through {List(RunOf(note, bar))}"
                    : $"approaches {Aim(note, target!)} from a {Steps[Math.Abs(note.Step)]} {(note.Step > 0 ? "below" : "above")}";
            case NotePart.Passing:
                return $"passes through {List(RunOf(note, bar))} to {Aim(note, target!)}";
            case NotePart.Neighbour:
                return $"steps from {Aim(note, target!)} {(note.Step < 0 ? "up" : "down")} to {Foreign(note)} and back";
            case NotePart.Enclosure:
                var (above, below) = (note.Step < 0, note.Step > 0);
                return $"encloses {Aim(note, target!)} from {(above ? "above" : "below")} and {(below ? "above" : "below")}";
            case NotePart.Anticipation:
                return $"takes the {Name(note.AnticipatedFunction!.Value, note.Anticipates!)} of {Text(note.Anticipates!)} {Early(note.Ahead!.Value)} early";
            case NotePart.Grace:
                return $"slides into {Aim(note, target!)}";
            case NotePart.ColourTone:
                return $"has the {Named(note)} as colour";
            default:
                return $"leaves {Text(note.Sounding.Name)}, the {Named(note)}, unresolved";
        }
    }

    private IEnumerable<string> RunOf(AnalysedNote note, BarAnalysis bar) =>
        bar.Notes.Where(other => other.Part == note.Part && other.Target == note.Target).Select(Foreign).Distinct();

    private void AddAllChordTones(List<string> said, IReadOnlyList<AnalysedNote> line)
    {
        if (line.Count > 2 && line.All(static note => note.Part == NotePart.ChordTone))
        {
            var tones = line.Select(note => Text(note.Function!.Value)).Distinct().ToList();
            said.Add(
                tones.Count == 1 ? "It stays on that tone." : $"All {line.Count} notes are chord tones: {List(tones)}."
            );
        }
    }

    private void AddInnerChanges(List<string> said, BarAnalysis bar)
    {
        var start = (Fraction)(bar.Bar * lick.Path.Time.Beats);
        foreach (var change in lick.Changes.Where(change => change.Bar == bar.Bar && change.Beat > start))
        {
            if (change is { IsMet: true, First: { } first })
            {
                said.Add(
                    $"It meets {Text(change.To)} on its {Name(change.Function!.Value, change.To)}{(first.Anticipates is null ? "" : ", early")}{Before(change)}."
                );
                current = change.To;
            }
        }
    }

    private void AddStrong(List<string> said, BarAnalysis bar)
    {
        var strong = bar.Summary.Line.Where(static note => note is { IsStrong: true, Function: not null }).ToList();
        var (from, to) = (bar.Summary.Line[0].Beat, bar.Summary.Line[^1].Beat);
        if (strong.Any(note => note.Beat > from && note.Beat < to))
        {
            var carried = strong.Select(note => $"the {Named(note)}").Distinct().ToList();
            said.Add($"{(strong.Count == 1 ? "Its strong beat carries" : "Its strong beats carry")} {List(carried)}.");
        }
    }

    private void AddEnd(List<string> said, IReadOnlyList<AnalysedNote> line, AnalysedNote first)
    {
        var last = line.Where(note => note.Note.Start == line[^1].Note.Start).MaxBy(static note => note.Sounding)!;
        var how = How(last);
        if (last == first)
        {
            if (how.Length > 0)
            {
                said.Add($"That note is {how}.");
            }

            return;
        }

        if (last.Part is NotePart.ChordTone or NotePart.ColourTone)
        {
            said.Add($"It ends on the {Named(last)}{(how.Length > 0 ? $", {how}" : "")}.");
        }
        else if (last.Part == NotePart.NoChord)
        {
            said.Add($"It ends on {Text(last.Sounding)}{(how.Length > 0 ? $", {how}" : "")}.");
        }
    }

    /// <summary>How a note is reached, where the left hand makes it.</summary>
    private string How(AnalysedNote note)
    {
        var played = note.Note;
        return played.Has(Technique.Bend) ? $"bent up {Bent(played.Bend)}{FromFretted(note)}"
            : played.Has(Technique.PreBend) ? $"bent up {Bent(played.Bend)} before it is struck"
            : played.Has(Technique.Release) ? "where a bend is let go"
            : played.Has(Technique.Slide) ? "slid into"
            : played.Has(Technique.HammerOn) ? "hammered on"
            : played.Has(Technique.PullOff) ? "pulled off"
            : played.Has(Technique.NaturalHarmonic) ? "a natural harmonic"
            : "";
    }

    private string FromFretted(AnalysedNote note) =>
        note.Chord is { } chord ? $" from the {Name(Path.FunctionOver(chord, note.Note.Pitch), chord)}" : "";

    private static string Bent(int cents) =>
        cents switch
        {
            50 => "a quarter tone",
            100 => "a half step",
            150 => "three quarter tones",
            200 => "a whole step",
            _ => $"{(cents / 100m).ToString("0.#", CultureInfo.InvariantCulture)} half steps",
        };

    /// <summary>The target as it is aimed at: over its own chord where that is another.</summary>
    private string Aim(AnalysedNote note, AnalysedNote target) =>
        target.Anticipates is { } early ? $"the {Name(target.AnticipatedFunction!.Value, early)} of {Text(early)}"
        : target.Function is not { } function ? Text(target.Sounding)
        : target.Chord == note.Chord ? $"the {Name(function, target.Chord!)}"
        : $"the {Name(function, target.Chord!)} of {Text(target.Chord!)}";

    private string Foreign(AnalysedNote note) =>
        note is { Function: { } function, Chord: { } chord } ? $"the {Name(function, chord)}" : Text(note.Sounding);

    private string Named(AnalysedNote note) =>
        Name(note.Function!.Value, note.Chord!) + (note.Chord == current ? "" : $" of {Text(note.Chord!)}");

    private string Over(AnalysedNote note, Chord chord) => Name(Path.FunctionOver(chord, note.Sounding), chord);

    /// <summary>Members of the chord by their names, anything else by its number.</summary>
    private string Name(Degree function, Chord chord)
    {
        if (ToneRoles.Over(function, chord.Formula) is ToneRole.Root or ToneRole.ChordTone)
        {
            switch (function.Number)
            {
                case 1 or 8:
                    return "root";
                case 2:
                    return "second";
                case 3:
                    return "third";
                case 4 when function.Alteration == 0:
                    return "fourth";
                case 5 when function.Alteration == 0:
                    return "fifth";
                case 6:
                    return "sixth";
                case 7:
                    return "seventh";
            }
        }

        return Text(function);
    }

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
            ? $"{(Math.Abs(step) == 12 ? "an" : "a")} {Steps[Math.Abs(step)]} {(step > 0 ? "up" : "down")} from"
        : $"more than an octave {(step > 0 ? "up" : "down")} from";

    private static string Early(Fraction beats) =>
        beats == Fraction.One ? "a beat"
        : beats == new Fraction(1, 2) ? "half a beat"
        : beats < Fraction.One ? $"{beats} of a beat"
        : $"{beats} beats";

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

    private static string Be(int count) => count == 1 ? "is" : "are";

    private static string Times(int count) =>
        count == 1 ? "once"
        : count == 2 ? "twice"
        : $"{count} times";

    private static string Count(int count, string one, string? many = null) =>
        count == 1 ? $"1 {one}" : $"{count} {many ?? one + "s"}";

    private static string List(IEnumerable<string> items)
    {
        var all = items.ToList();
        return all.Count <= 1 ? string.Concat(all) : $"{string.Join(", ", all.SkipLast(1))} and {all[^1]}";
    }

    private string Text<T>(T value)
        where T : IFormattable => value.ToString(format, naming);
}
