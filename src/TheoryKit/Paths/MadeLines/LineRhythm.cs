using Fractions;
using TheoryKit.Paths.Timing;
using TheoryKit.Theory.Chords;
using TheoryKit.Values;

namespace TheoryKit.Paths.MadeLines;

/// <summary>A place in a line where a note is to come.</summary>
/// <param name="Start">When, in beats from the beginning of the line.</param>
/// <param name="Length">For how long, in beats.</param>
/// <param name="IsAccented">Whether it is louder.</param>
/// <param name="Chord">The chord that it starts with.</param>
/// <param name="Span">The number of the chord's span; spans of one chord in a row count as one.</param>
/// <param name="IsTarget">Whether the chord begins here.</param>
internal sealed record LineSlot(Fraction Start, Fraction Length, bool IsAccented, Chord Chord, int Span, bool IsTarget);

/// <summary>
/// The rhythm of a made line. A bar is filled with figures so that every chord begins with a note and the bar has as many notes as
/// asked, one of all the ways to do so, each as likely as another.
/// </summary>
internal sealed class LineRhythm
{
    private readonly LineRequest request;
    private readonly SplitMix64 random;
    private readonly int beats; // in a bar
    private readonly List<(Fraction Beats, List<Stroke> Strokes)> figures;
    private readonly List<(Chord? Chord, Fraction Start, Fraction End)> spans = [];

    public LineRhythm(LineRequest request, SplitMix64 random)
    {
        (this.request, this.random) = (request, random);
        beats = request.Changes.Time.Beats;
        figures =
        [
            .. request.Figures.Select(static figure =>
                (figure.Beats, figure.Strokes().Take(figure.StrokeCount).ToList())
            ),
        ];
        for (var time = 0; time < request.Times; time++)
        {
            foreach (var span in request.Changes.Chords)
            {
                var after = span.After(time * request.Changes.Beats);
                if (spans.Count > 0 && spans[^1].Chord == span.Chord)
                {
                    spans[^1] = spans[^1] with { End = after.End.Reduce() };
                }
                else
                {
                    spans.Add((span.Chord, after.Start.Reduce(), after.End.Reduce()));
                }
            }
        }
    }

    public List<LineSlot> Draw()
    {
        var slots = new List<LineSlot>();
        var span = 0;
        for (var bar = 0; bar < request.Changes.Bars.Count * request.Times; bar++)
        {
            foreach (var stroke in DrawBar(bar))
            {
                while (stroke.Start >= spans[span].End)
                {
                    span++;
                }

                if (spans[span].Chord is { } chord)
                {
                    // A note of the last moment before N.C. ends with its chord.
                    var end = stroke.Start + stroke.Length;
                    end = end > spans[span].End ? spans[span].End : end;
                    slots.Add(
                        new(
                            stroke.Start,
                            (end - stroke.Start).Reduce(),
                            stroke.IsAccented,
                            chord,
                            span,
                            stroke.Start == spans[span].Start
                        )
                    );
                }
            }
        }

        return slots;
    }

    private List<Stroke> DrawBar(int bar)
    {
        var from = new Fraction(bar * beats);
        var starts = spans
            .Where(span => span.Chord is not null && span.Start >= from && span.Start < from + beats)
            .Select(span => (span.Start - from).Reduce())
            .ToList();
        var isWhole = !spans.Exists(span => span.Chord is null && span.Start < from + beats && span.End > from);
        var ways = Ways(starts);
        var whole = ways[Fraction.Zero];
        var counts = new double[whole.Length];
        for (var count = 0; count < counts.Length; count++)
        {
            var isAsked = count >= request.FewestPerBar && count <= request.MostPerBar;
            counts[count] = isAsked || !isWhole ? whole[count] : 0;
        }

        if (counts.All(static count => count == 0))
        {
            var possible = Enumerable.Range(0, whole.Length).Where(count => whole[count] > 0).ToList();
            throw new ArgumentException(
                $"The figures can't fill bar {(bar % request.Changes.Bars.Count) + 1} with {request.FewestPerBar} to {request.MostPerBar} notes and one where each chord begins; "
                    + (
                        possible.Count == 0
                            ? "they can't fill it at all."
                            : $"they can with {string.Join(", ", possible)}."
                    ),
                nameof(request)
            );
        }

        var left = random.Pick(counts);
        var strokes = new List<Stroke>();
        for (var at = Fraction.Zero; at < beats; )
        {
            var weights = figures
                .Select(figure =>
                    Fits(figure, at, starts) ? WaysAt((at + figure.Beats).Reduce(), left - figure.Strokes.Count) : 0
                )
                .ToArray();
            var (length, chosen) = figures[random.Pick(weights)];
            var start = from + at;
            strokes.AddRange(chosen.Select(stroke => stroke with { Start = (start + stroke.Start).Reduce() }));
            left -= chosen.Count;
            at = (at + length).Reduce();
        }

        return strokes;

        double WaysAt(Fraction at, int notes) => notes < 0 ? 0 : ways[at][notes];
    }

    /// <summary>For every moment that the figures come to, in how many ways they fill the rest of the bar with so many notes.</summary>
    private Dictionary<Fraction, double[]> Ways(List<Fraction> starts)
    {
        var moments = new SortedSet<Fraction> { Fraction.Zero };
        for (Fraction? next = Fraction.Zero; next is { } at; next = After(at))
        {
            moments.UnionWith(
                figures.Where(figure => Fits(figure, at, starts)).Select(figure => (at + figure.Beats).Reduce())
            );
        }

        var ways = new Dictionary<Fraction, double[]>();
        foreach (var at in moments.Reverse())
        {
            var sums = ways[at] = new double[LineRequest.MaxPerBar + 1];
            if (at == beats)
            {
                sums[0] = 1;
                continue;
            }

            foreach (var figure in figures)
            {
                if (Fits(figure, at, starts))
                {
                    var after = ways[(at + figure.Beats).Reduce()];
                    for (var notes = figure.Strokes.Count; notes < sums.Length; notes++)
                    {
                        sums[notes] += after[notes - figure.Strokes.Count];
                    }
                }
            }
        }

        return ways;

        Fraction? After(Fraction at)
        {
            var later = moments.GetViewBetween(at, beats);
            return later.Count > 1 ? later.ElementAt(1) : null;
        }
    }

    private bool Fits((Fraction Beats, List<Stroke> Strokes) figure, Fraction at, List<Fraction> starts) =>
        at + figure.Beats <= beats
        && starts.TrueForAll(start =>
            start < at || start >= at + figure.Beats || figure.Strokes.Exists(stroke => at + stroke.Start == start)
        );
}
