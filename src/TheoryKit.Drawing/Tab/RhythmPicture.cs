using Fractions;
using TheoryKit.Drawing.Markup;
using TheoryKit.Drawing.Necks;
using TheoryKit.Drawing.Rendering;
using TheoryKit.Drawing.Sheets;
using TheoryKit.Paths.Timing;
using TheoryKit.Theory.Progressions;
using TheoryKit.Values;

namespace TheoryKit.Drawing.Tab;

/// <summary>Draws a rhythm by itself on one line, bars of 4/4 unless told otherwise.</summary>
internal static class RhythmPicture
{
    private const double LineY = 24;
    private const double Side = 14;
    private const double LeastScale = 0.72;

    public static Block Of(Rhythm rhythm) => new Block.Picture((context, _) => Svg(rhythm, context), _ => Text(rhythm));

    private static string Svg(Rhythm rhythm, RenderContext context)
    {
        var time = TimeSignature.Common;
        var strokes = rhythm.Strokes().Take(rhythm.StrokeCount).ToList();
        var parts = Parts(rhythm, strokes);
        var xs = new Dictionary<Fraction, double>();
        var bars = new List<double>();
        var x = Side + 8;
        foreach (var part in parts)
        {
            if (part.Start > Fraction.Zero && (part.Start / time.Beats).Reduce().Denominator.IsOne)
            {
                bars.Add(x);
                x += 14;
            }

            xs[part.Start] = NeckLayout.Rounded(x);
            x += Math.Max(22, 40 * Math.Pow(part.Beats.ToDouble(), 0.55));
        }

        var width = Math.Ceiling(x + Side);
        var svg = new SvgWriter().Picture(
            context,
            width,
            LineY + TabLayout.StemEnd + 20,
            "Rhythm",
            Words(rhythm, strokes),
            leastScale: LeastScale
        );
        svg.Line(Side, LineY, width - Side, LineY).Stroke(Look.Line, 0.8).Close();
        foreach (var bar in bars)
        {
            svg.Line(bar, LineY - 9, bar, LineY + 9).Stroke(Look.Line, 1.4).Close();
        }

        foreach (var part in parts)
        {
            if (part.IsRest)
            {
                TabRhythmPicture.WriteRest(svg, part.Value, xs[part.Start], LineY);
            }
            else if (!part.IsTied)
            {
                svg.Circle(xs[part.Start], LineY, 3.4).Fill(Look.Ink).Close();
            }
        }

        foreach (var stroke in strokes.Where(static stroke => stroke.IsAccented))
        {
            var at = xs[stroke.Start];
            svg.Path(PenMove.To(at - 5, 9), PenMove.Line(at + 5, 12.5), PenMove.Line(at - 5, 16))
                .Stroke(Look.Ink, 1.4)
                .Close();
        }

        new TabRhythmPicture(svg, start => xs[start], LineY).Write(parts, time, Side, width - Side);
        return $"<div class=\"tk-wide\" tabindex=\"0\" role=\"group\" aria-label=\"The rhythm, written\">{svg.Close()}</div>";
    }

    private static IReadOnlyList<RhythmPart> Parts(Rhythm rhythm, List<Stroke> strokes) =>
        WrittenRhythm.Of(
            strokes.Select(static stroke => (stroke.Start, (stroke.Start + stroke.Length).Reduce())),
            rhythm.Beats,
            TimeSignature.Common
        );

    private static string Words(Rhythm rhythm, List<Stroke> strokes) =>
        $"{English.Count(strokes.Count, "stroke")} in {TabWords.Beats(rhythm.Beats)}: "
        + string.Join(
            "; ",
            strokes.Select(static stroke =>
                $"{TabWords.Beat(stroke.Start)} for {stroke.Length}{(stroke.IsAccented ? ", accented" : "")}"
            )
        )
        + ".";

    private static string Text(Rhythm rhythm) =>
        string.Join(
            ", ",
            Parts(rhythm, [.. rhythm.Strokes().Take(rhythm.StrokeCount)])
                .Select(static part =>
                    $"{(part.IsTied ? "tied " : "")}{part.Value?.ToString() ?? TabWords.Beats(part.Beats)}{(part.IsRest ? " rest" : "")}"
                )
        );
}
