using Fractions;
using TheoryKit.Paths;

namespace TheoryKit.Licks.Analysis;

/// <summary>What of an analysis a teacher would say. Each remark says one thing; what there is nothing to say about is left out.</summary>
internal static class LineRemarks
{
    // How the hand that frets makes a note: the first of these that it has.
    private static readonly Technique[] Making =
    [
        Technique.Bend,
        Technique.PreBend,
        Technique.Release,
        Technique.Slide,
        Technique.HammerOn,
        Technique.PullOff,
        Technique.NaturalHarmonic,
    ];

    /// <summary>Of the line as a whole.</summary>
    public static IReadOnlyList<LineRemark> Of(LickAnalysis lick)
    {
        var sum = lick.Summary;
        if (sum.Count == 0)
        {
            return [new LineRemark.Nothing()];
        }

        List<LineRemark> said =
        [
            new LineRemark.Extent(sum, lick.Path.BarCount, lick.Path.Time),
            new LineRemark.Parts(sum),
        ];
        if (sum.Functions.Count > 0)
        {
            said.Add(new LineRemark.StrongBeats(sum));
        }

        said.AddRange(OfChanges([.. lick.Changes.Where(static change => change.IsMet)]));
        var used = Technique
            .Known.Select(technique => new TechniqueCount(
                technique,
                lick.Path.Notes.Count(note => note.Has(technique))
            ))
            .Where(static use => use.Count > 0)
            .ToList();
        if (used.Count > 0)
        {
            said.Add(new LineRemark.Techniques(used));
        }

        return said;
    }

    /// <summary>Of one bar.</summary>
    public static IReadOnlyList<LineRemark> Of(LickAnalysis lick, BarAnalysis bar)
    {
        var line = bar.Summary.Line;
        if (line.Length == 0)
        {
            return [Silent(lick, bar)];
        }

        var first = line.Where(note => note.Note.Start == line[0].Note.Start).MaxBy(static note => note.Sounding)!;
        List<LineRemark> said = [Opening(lick, bar, first)];
        if (Figures(lick, bar, first) is { Count: > 0 } figures)
        {
            said.Add(new LineRemark.Figures(figures));
        }
        else if (line.Length > 2 && line.All(static note => note.Part == NotePart.ChordTone))
        {
            said.Add(new LineRemark.ChordTonesOnly(line));
        }

        var start = (Fraction)(bar.Bar * lick.Path.Time.Beats);
        said.AddRange(
            lick.Changes.Where(change => change.Bar == bar.Bar && change.Beat > start && change.IsMet)
                .Select(static change => new LineRemark.InnerChange(change))
        );
        var strong = line.Where(static note => note is { IsStrong: true, Function: not null }).ToList();
        if (strong.Exists(note => note.Beat > line[0].Beat && note.Beat < line[^1].Beat))
        {
            said.Add(new LineRemark.StrongNotes(strong));
        }

        var last = line.Where(note => note.Note.Start == line[^1].Note.Start).MaxBy(static note => note.Sounding)!;
        var how = Array.Find(Making, last.Note.Has);
        if (last != first && last.Part is NotePart.ChordTone or NotePart.ColourTone or NotePart.NoChord)
        {
            said.Add(new LineRemark.Ends(last, how));
        }
        else if (last == first && how is not null)
        {
            said.Add(new LineRemark.Made(last, how));
        }

        return said;
    }

    private static IEnumerable<LineRemark> OfChanges(List<ChangeAnalysis> met)
    {
        if (met is [{ First.Part: NotePart.ChordTone or NotePart.ColourTone or NotePart.Anticipation }])
        {
            yield return new LineRemark.OneChange(met[0]);
        }

        if (met.Count < 2)
        {
            yield break;
        }

        yield return new LineRemark.GuideTones(met.Count(static change => change.HitsGuideTone), met.Count);
        var resolutions = met.Where(static change => change.Resolves)
            .Select(static change => new LineRemark.Resolution(
                change.From,
                change.Last!.Function!.Value,
                change.To,
                change.Function!.Value,
                change.Step!.Value
            ))
            .Distinct();
        foreach (var resolution in resolutions)
        {
            yield return resolution;
        }
    }

    private static LineRemark Silent(LickAnalysis lick, BarAnalysis bar)
    {
        var start = (Fraction)(bar.Bar * lick.Path.Time.Beats);
        var held = lick.Notes.LastOrDefault(note => note.Counts && note.Note.Start < start && note.Note.End > start);
        return held is not null ? new LineRemark.Holds(bar.Bar + 1, held, bar.Chords.Count == 0 ? null : bar.Chords[0])
            : bar.Notes.Count > 0 ? new LineRemark.DeadOnly(bar.Bar + 1)
            : new LineRemark.Rests(bar.Bar + 1);
    }

    private static LineRemark.Opening Opening(LickAnalysis lick, BarAnalysis bar, AnalysedNote first)
    {
        var met = lick.Changes.FirstOrDefault(change => change.First == first && change.Bar == bar.Bar);
        var opening = new LineRemark.Opening(bar.Bar + 1, BarOpening.ComesIn, first)
        {
            Met = met is { IsMet: true } ? met : null,
        };
        if (first.Chord is null)
        {
            return opening with { How = BarOpening.NoChord };
        }

        if (first.Beat.IsZero)
        {
            var isBent = bar.Summary.Count > 1 && first.Note.Techniques.Any(static technique => technique.IsBent);
            return first.Part is NotePart.ChordTone or NotePart.ColourTone
                ? opening with
                {
                    How = BarOpening.Lands,
                    Bend = isBent ? Array.Find(Making, first.Note.Has) : null,
                }
                : opening with
                {
                    How = BarOpening.Starts,
                };
        }

        if (bar.Notes.Any(note => IsSlidFrom(note, first)))
        {
            return opening with { How = BarOpening.SlidesInto };
        }

        var start = (Fraction)(bar.Bar * lick.Path.Time.Beats);
        var held = lick.Notes.LastOrDefault(note =>
            note.Counts && note.Index < first.Index && note.Note.Start < start && note.Note.End > start
        );
        return held?.Anticipates is null ? opening : opening with { How = BarOpening.GoesOn, Held = held };
    }

    /// <summary>Whether a note slides from the first beat into the first note that counts.</summary>
    private static bool IsSlidFrom(AnalysedNote note, AnalysedNote first) =>
        note.Part == NotePart.Grace && note.Target == first.Index && note.Beat.IsZero;

    /// <summary>What the notes do between the first and the end.</summary>
    private static List<LineFigure> Figures(LickAnalysis lick, BarAnalysis bar, AnalysedNote first)
    {
        var figures = new List<LineFigure>();
        var (colours, colour) = (new List<AnalysedNote>(), -1);
        var seen = new HashSet<(NotePart, int?)>();
        var last = bar.Summary.Line[^1];
        bool IsBentInside(AnalysedNote note) =>
            note.Note.Has(Technique.Bend) && note != first && note != last && note.Chord is not null;
        foreach (var note in bar.Notes)
        {
            if (
                note.Part is NotePart.NoChord or NotePart.Dead
                || (note.Part == NotePart.ChordTone && !IsBentInside(note))
                || IsSlidFrom(note, first)
                || (note.Part.Leads() && !seen.Add((note.Part, note.Target)))
                || (note == first && note.Part == NotePart.ColourTone)
            )
            {
                continue;
            }

            if (note.Part == NotePart.ColourTone && !note.Note.Has(Technique.Bend))
            {
                // Colours are told together, where the first of them sounds.
                colour = colour < 0 ? figures.Count : colour;
                colours.Add(note);
                continue;
            }

            figures.Add(Figure(lick, note, bar));
        }

        if (colour >= 0)
        {
            figures.Insert(colour, new LineFigure.Colours(colours));
        }

        return figures;
    }

    private static LineFigure Figure(LickAnalysis lick, AnalysedNote note, BarAnalysis bar)
    {
        if (
            note.Note.Has(Technique.Bend)
            && note is { Part: NotePart.ChordTone or NotePart.ColourTone, Chord: not null }
        )
        {
            return new LineFigure.Bends(note);
        }

        var target = lick.TargetOf(note);
        var run = bar.Notes.Where(other => other.Part == note.Part && other.Target == note.Target);
        return note.Part switch
        {
            NotePart.Approach => run.Any(other => other.Sounding != note.Sounding)
                ? new LineFigure.Walks(run, target!)
                : new LineFigure.Approaches(note, target!),
            NotePart.Passing => new LineFigure.Passes(run, target!),
            NotePart.Neighbour => new LineFigure.Neighbours(note, target!),
            NotePart.Enclosure => new LineFigure.Encloses(note, target!),
            NotePart.Anticipation => new LineFigure.Anticipates(note),
            NotePart.Grace => new LineFigure.SlidesInto(note, target!),
            _ => new LineFigure.Leaves(note),
        };
    }
}
