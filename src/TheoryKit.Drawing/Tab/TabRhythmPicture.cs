using System.Numerics;
using Fractions;
using TheoryKit.Drawing.Markup;
using TheoryKit.Drawing.Necks;
using TheoryKit.Drawing.Rendering;
using TheoryKit.Paths.Timing;
using TheoryKit.Theory.Progressions;

namespace TheoryKit.Drawing.Tab;

/// <summary>
/// Draws a rhythm below a staff: stems, beams, flags, dots, tuplets and ties. A half note has a short stem, a whole note none.
/// </summary>
internal sealed class TabRhythmPicture(SvgWriter svg, Func<Fraction, double> x, double bottom)
{
    private const double BeamThickness = 3.2;
    private const double BeamStep = 5.2;
    private const double Stub = 7;

    /// <summary>Whether the last part is tied to one on the next line.</summary>
    public bool GoesOn { get; init; }

    private double Top => NeckLayout.Rounded(bottom + TabLayout.StemTop);

    private double End => NeckLayout.Rounded(bottom + TabLayout.StemEnd);

    public void Write(IReadOnlyList<RhythmPart> parts, TimeSignature time, double left, double right)
    {
        var beams = WrittenRhythm.Beams(parts, time).ToList();
        WriteStems(parts);
        foreach (var (first, count) in beams)
        {
            if (count == 1)
            {
                WriteFlags(parts[first]);
            }
            else
            {
                WriteBeams([.. parts.Skip(first).Take(count)]);
            }
        }

        WriteTuplets(parts, time, beams);
        WriteTies(parts, left, right);
    }

    /// <summary>A rest in the middle of a staff.</summary>
    public static void WriteRest(SvgWriter svg, WrittenValue? value, double x, double y)
    {
        var unit = value?.Unit ?? 4;
        var dotX = x + 8;
        svg.Rectangle(x - 6, y - 12, 12, 24).Fill(Look.Paper).Close();
        switch (unit)
        {
            case 1:
                svg.Rectangle(x - 5.5, y - 7, 11, 4.5).Fill(Look.Ink).Close();
                svg.Line(x - 8, y - 7, x + 8, y - 7).Stroke(Look.Ink, 1).Close();
                dotX = x + 11;
                break;
            case 2:
                svg.Rectangle(x - 5.5, y - 4.5, 11, 4.5).Fill(Look.Ink).Close();
                svg.Line(x - 8, y, x + 8, y).Stroke(Look.Ink, 1).Close();
                dotX = x + 11;
                break;
            case 4:
                svg.Path(
                        PenMove.To(x - 2.5, y - 10),
                        PenMove.Line(x + 3, y - 3.5),
                        PenMove.Curve(x - 2.5, y, x + 3, y + 4.5),
                        PenMove.Curve(x - 4.5, y + 2.5, x + 0.5, y + 10)
                    )
                    .Stroke(Look.Ink, 2)
                    .Close();
                break;
            default:
                var hooks = BitOperations.Log2((uint)unit) - 2;
                var top = y - 2 - (hooks * 3);
                svg.Line(x + 4, top, x - 1, y + 9).Stroke(Look.Ink, 1.4).Close();
                for (var hook = 0; hook < hooks; hook++)
                {
                    var (hookX, hookY) = (x + 4 - (hook * 2), top + (hook * 5.5));
                    svg.Circle(hookX - 7, hookY + 1, 2.1).Fill(Look.Ink).Close();
                    svg.Path(
                            PenMove.To(hookX - 7, hookY + 2.4),
                            PenMove.Curve(hookX - 3, hookY + 4, hookX - 0.4, hookY + 0.5)
                        )
                        .Stroke(Look.Ink, 1.3)
                        .Close();
                }

                break;
        }

        WriteDots(svg, value, dotX, y - 3);
    }

    private static void WriteDots(SvgWriter svg, WrittenValue? value, double x, double y)
    {
        for (var dot = 0; dot < (value?.Dots ?? 0); dot++)
        {
            svg.Circle(x + (dot * 4.5), y, 1.5).Fill(Look.Ink).Close();
        }
    }

    private void WriteStems(IReadOnlyList<RhythmPart> parts)
    {
        var stems = new List<PenMove>();
        foreach (var part in parts.Where(static part => !part.IsRest))
        {
            var at = x(part.Start);
            if (part.Value is not { } value)
            {
                // A length that no value writes is said in beats.
                svg.Label(at, End - 6)
                    .Fill(Look.Ink)
                    .Attribute("font-size", 9)
                    .Attribute("text-anchor", "middle")
                    .Text($"{part.Beats}")
                    .Close();
                continue;
            }

            if (value.Unit > 1)
            {
                stems.Add(PenMove.To(at, Top));
                stems.Add(PenMove.Vertical(value.Unit == 2 ? Top + 11 : End));
            }

            WriteDots(svg, value, at + 5, Top + 6);
        }

        if (stems.Count > 0)
        {
            svg.Path([.. stems]).Stroke(Look.Ink, 1.2).Close();
        }
    }

    private void WriteFlags(RhythmPart part)
    {
        var at = x(part.Start);
        for (var flag = 0; flag < Count(part); flag++)
        {
            var y = End - (flag * BeamStep);
            svg.Path(PenMove.To(at, y), PenMove.Curve(at + 7, y - 2.5, at + 6.5, y - 10)).Stroke(Look.Ink, 1.5).Close();
        }
    }

    private void WriteBeams(List<RhythmPart> parts)
    {
        for (var level = 1; level <= parts.Max(Count); level++)
        {
            for (var first = 0; first < parts.Count; )
            {
                if (Count(parts[first]) < level)
                {
                    first++;
                    continue;
                }

                var last = first;
                while (last + 1 < parts.Count && Count(parts[last + 1]) >= level)
                {
                    last++;
                }

                var (from, to) = (x(parts[first].Start), x(parts[last].Start));
                if (first == last)
                {
                    (from, to) = first > 0 ? (from - Stub, from) : (from, from + Stub);
                }

                svg.Rectangle(
                        NeckLayout.Rounded(from - 0.6),
                        End - BeamThickness - ((level - 1) * BeamStep),
                        to - from + 1.2,
                        BeamThickness
                    )
                    .Fill(Look.Ink)
                    .Close();
                first = last + 1;
            }
        }
    }

    private void WriteTuplets(IReadOnlyList<RhythmPart> parts, TimeSignature time, List<(int First, int Count)> beams)
    {
        foreach (var (first, count) in WrittenRhythm.Tuplets(parts, time))
        {
            var (from, to) = (x(parts[first].Start), x(parts[first + count - 1].Start));
            var (middle, y) = (NeckLayout.Rounded((from + to) / 2), End + 11);
            var tuplet = parts[first].Value!.Value;
            var number = tuplet.Tuplet % 2 == 1 ? $"{tuplet.Tuplet}" : $"{tuplet.Tuplet}:{tuplet.InPlaceOf}";
            svg.Label(middle, y)
                .Fill(Look.Ink)
                .Attribute("font-size", 10)
                .Attribute("font-style", "italic")
                .Attribute("text-anchor", "middle")
                .Text(number)
                .Close();
            if (count > 1 && beams.Contains((first, count)))
            {
                continue; // the beam holds them together
            }

            var gap = 4 + (number.Length * 3);
            var bracket = new List<PenMove>
            {
                PenMove.To(from - 4, y - 8),
                PenMove.Vertical(y - 3.5),
                PenMove.Horizontal(Math.Max(from - 4, middle - gap)),
                PenMove.To(Math.Min(to + 4, middle + gap), y - 3.5),
                PenMove.Horizontal(to + 4),
                PenMove.Vertical(y - 8),
            };
            svg.Path([.. bracket]).Stroke(Look.Ink, 1).Close();
        }
    }

    private void WriteTies(IReadOnlyList<RhythmPart> parts, double left, double right)
    {
        for (var index = 0; index < parts.Count; index++)
        {
            if (parts[index].IsTied)
            {
                var from = index > 0 ? x(parts[index - 1].Start) : left + 3;
                Tie(from, x(parts[index].Start));
            }
        }

        if (parts.Count > 0 && GoesOn)
        {
            Tie(x(parts[^1].Start), right - 2);
        }

        void Tie(double from, double to) =>
            svg.Path(PenMove.To(from + 2, Top - 2), PenMove.Curve((from + to) / 2, Top + 5, to - 2, Top - 2))
                .Stroke(Look.Ink, 1.2)
                .Close();
    }

    /// <summary>How many beams or flags.</summary>
    private static int Count(RhythmPart part) =>
        part.Value is { Unit: >= 8 } value ? BitOperations.Log2((uint)value.Unit) - 2 : 0;
}
