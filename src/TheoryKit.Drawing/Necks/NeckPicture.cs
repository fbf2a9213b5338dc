using TheoryKit.Drawing.Markup;
using TheoryKit.Drawing.Rendering;
using TheoryKit.Theory.Chords;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Drawing.Necks;

/// <summary>Writes the SVG of a neck.</summary>
internal static class NeckPicture
{
    /// <summary>The least part of its natural width at which the labels are still legible.</summary>
    public const double LeastScale = 0.8;

    private const double TrailHalf = 2.2; // half the width of the line where it sets out
    private const double TrailEnd = 0.4; // and where it arrives
    private const double TrailBend = 7;
    private const double OpenRunOut = 7; // board beyond a fret that is not the last

    public static string Write(NeckDrawing drawing, RenderContext context)
    {
        var layout = new NeckLayout(drawing);
        var svg = new SvgWriter(16 * 1024);
        svg.Picture(
            context,
            layout.Width,
            layout.Height,
            drawing.Title,
            drawing.Description,
            MarkPicture.Css,
            LeastScale
        );
        new Writer(drawing, layout, svg).Write();
        return svg.Close().ToString();
    }

    private sealed class Writer(NeckDrawing drawing, NeckLayout layout, SvgWriter svg)
    {
        private readonly Neck neck = drawing.Neck;

        public void Write()
        {
            WriteBoard();
            WriteInlays();
            WriteFrets();
            WriteStrings();
            WriteCapo();
            WriteNames();
            WriteNumbers();
            WriteBands();
            var marks = drawing.Shown.ToList();
            WriteTrail();
            WriteGestures();
            WriteMarks(marks);
            WriteLabels(marks);
            WriteKey(marks);
        }

        private double X(double x) => layout.Mirrored(x);

        private double TopAt(double x) => layout.Y(1, x) - NeckLayout.EdgeMargin;

        private double BottomAt(double x) => layout.Y(neck.StringCount, x) + NeckLayout.EdgeMargin;

        /// <summary>The lowest string that is there at an x: one that begins at a fret is not there before it.</summary>
        private int LowestAt(double x)
        {
            var number = neck.StringCount;
            while (number > 1 && neck.Tuning[number].Start > 0 && x < layout.StringStart(number))
            {
                number--;
            }

            return number;
        }

        private double EdgeAt(double x) => layout.Y(LowestAt(x), x) + NeckLayout.EdgeMargin;

        private void WriteBoard()
        {
            var from = layout.FirstLine == 0 ? layout.StartX : layout.StartX - OpenRunOut;
            var to = layout.EndX + (layout.LastLine == neck.Frets ? 5 : OpenRunOut);
            var outline = new List<PenMove>
            {
                PenMove.To(X(from), TopAt(from)),
                PenMove.Line(X(to), TopAt(to)),
                PenMove.Line(X(to), BottomAt(to)),
            };
            var number = neck.StringCount;
            while (number > LowestAt(from))
            {
                // The board widens where a short string begins.
                var peg = layout.StringStart(number);
                var (after, before) = (peg - 2, peg - 20);
                var edge = layout.Y(number - 1, before) + NeckLayout.EdgeMargin;
                outline.Add(PenMove.Line(X(after), BottomAt(after)));
                outline.Add(PenMove.Curve(X(peg - 11), BottomAt(after), X(before), edge));
                number--;
            }

            outline.Add(PenMove.Line(X(from), EdgeAt(from)));
            outline.Add(PenMove.Back);
            svg.Path([.. outline]).Fill(Look.Board).Close();
        }

        private void WriteInlays()
        {
            svg.Group(Look.Inlay);
            for (var fret = layout.FirstLine + 1; fret <= layout.LastLine; fret++)
            {
                var x = layout.BetweenFrets(fret);
                var centre = (neck.StringCount + 1) / 2.0;
                if (fret % 12 == 0)
                {
                    svg.Circle(X(x), layout.Y((centre + 1) / 2, x), 4).Close();
                    svg.Circle(X(x), layout.Y((centre + neck.StringCount) / 2, x), 4).Close();
                }
                else if (IsInlaid(fret))
                {
                    svg.Circle(X(x), layout.Y(centre, x), 4).Close();
                }
            }

            svg.Close();
        }

        private void WriteFrets()
        {
            var wires = new List<PenMove>();
            for (var fret = Math.Max(1, layout.FirstLine); fret <= layout.LastLine; fret++)
            {
                var x = layout.Raw(fret);
                wires.Add(PenMove.To(X(x), TopAt(x)));
                wires.Add(PenMove.Vertical(EdgeAt(x)));
            }

            svg.Path([.. wires]).Stroke(Look.Line, 1.5).Close();
            if (layout.FirstLine == 0)
            {
                var nut = layout.StartX - NeckLayout.NutWidth;
                svg.Rectangle(
                        Math.Min(X(nut), X(layout.StartX)),
                        TopAt(nut) - 1,
                        NeckLayout.NutWidth,
                        EdgeAt(layout.StartX) - TopAt(nut) + 2,
                        1.5
                    )
                    .Fill(Look.Ink)
                    .Close();
            }
        }

        private void WriteStrings()
        {
            svg.Open("g").Stroke(Look.Line, 1);
            for (var number = 1; number <= neck.StringCount; number++)
            {
                var (from, to) = (layout.StringStart(number), layout.StringEnd);
                svg.Line(X(from), layout.Y(number, from), X(to), layout.Y(number, to))
                    .Attribute("stroke-width", Thickness(neck.Tuning[number]))
                    .Close();
            }

            svg.Close();
            for (var number = 1; number <= neck.StringCount; number++)
            {
                var start = neck.Tuning[number].Start;
                if (start > layout.FirstLine && start <= layout.LastLine)
                {
                    var x = layout.PegX(start);
                    svg.Circle(X(x), layout.Y(number, x), 3.5).Fill(Look.Ink).Close();
                }
            }
        }

        /// <summary>A hint of the gauge: lower strings are thicker.</summary>
        private static double Thickness(TuningString each) =>
            Math.Clamp(0.9 + ((64 - each.Open.MidiNumber) * 0.06), 0.75, 3.2);

        private void WriteCapo()
        {
            var capo = neck.Capo;
            if (capo == 0 || capo < layout.FirstLine)
            {
                return;
            }

            var to = capo > layout.LastLine ? layout.StringEnd : layout.CapoX;
            var from = layout.FirstLine == 0 ? layout.StartX : layout.StartX - OpenRunOut;
            svg.Path(
                    PenMove.To(X(from), TopAt(to) - 1),
                    PenMove.Horizontal(X(to)),
                    PenMove.Vertical(EdgeAt(to) + 1),
                    PenMove.Horizontal(X(from)),
                    PenMove.Back
                )
                .Fill(Look.Paper)
                .Attribute("fill-opacity", 0.62)
                .Close();
            if (capo <= layout.LastLine && capo > layout.FirstLine)
            {
                svg.Rectangle(X(to) - 4.5, TopAt(to) - 4, 9, EdgeAt(to) - TopAt(to) + 8, 4.5).Fill(Look.Ink).Close();
                svg.Label(X(to), TopAt(to) - 9)
                    .Fill(Look.Quiet)
                    .Attribute("font-size", 10)
                    .Attribute("text-anchor", "middle")
                    .Text($"capo {capo}")
                    .Close();
            }
        }

        private void WriteNames()
        {
            var anchor = drawing.IsLeftHanded ? "start" : "end";
            svg.Group(Look.Quiet).Attribute("font-size", NeckLayout.TypeSize).Attribute("text-anchor", anchor);
            for (var number = 1; number <= neck.StringCount; number++)
            {
                var each = neck.Tuning[number];
                var isShort = each.Start > layout.FirstLine && each.Start <= layout.LastLine;
                var x = isShort
                    ? layout.MarkX(new Position(number, each.Start)) - NeckLayout.MarkRadius - 5
                    : layout.NameEnd;
                svg.Label(X(x), layout.Y(number, x) + 4).Text(each.Open.Name.ToString("P", drawing.Naming)).Close();
            }

            svg.Close();
        }

        private void WriteNumbers()
        {
            svg.Group(Look.Quiet).Attribute("font-size", 9.5).Attribute("text-anchor", "middle");
            WriteNumbers(inlaid: false);
            svg.Open("g").Attribute("font-weight", "700");
            WriteNumbers(inlaid: true);
            svg.Close().Close();
        }

        private void WriteNumbers(bool inlaid)
        {
            var y = NeckLayout.Rounded(layout.Bottom + 15);
            for (var fret = layout.FirstLine + 1; fret <= layout.LastLine; fret++)
            {
                if (IsInlaid(fret) == inlaid)
                {
                    svg.Label(X(layout.BetweenFrets(fret)), y).Text($"{fret}").Close();
                }
            }
        }

        /// <summary>A bar below the neck for each band; thin lines take its ends up to the strings.</summary>
        private void WriteBands()
        {
            foreach (var (band, lane) in drawing.Lanes)
            {
                var (from, to) = layout.BandX(band.Window);
                var (left, right) = (Math.Min(X(from), X(to)) + 1.5, Math.Max(X(from), X(to)) - 1.5);
                var y = layout.LaneY(lane);
                svg.Rectangle(left, y, right - left, NeckLayout.LaneHeight, 4)
                    .Attribute("fill", Look.Board.Light)
                    .Attribute("stroke", Look.Line.Light)
                    .Attribute("class", $"{Look.Board.FillClass} {Look.Line.StrokeClass}")
                    .Attribute("stroke-width", 1.2)
                    .Close();
                svg.Label((left + right) / 2, y + 14).Attribute("text-anchor", "middle").Attribute("font-size", 11);
                svg.Open("tspan").Fill(Look.Ink).Attribute("font-weight", "700").Text(band.Name).Close();
                // The frets only where there is room for them.
                if ((band.Name.Length + band.Frets.Length) * 6.6 + 14 < right - left)
                {
                    svg.Open("tspan").Fill(Look.Quiet).Attribute("dx", 6).Text(band.Frets).Close();
                }

                svg.Close();
            }
        }

        /// <summary>
        /// From each position to the next a line that is thick where it sets out and thin where it arrives, bent to its right, so
        /// that the way back lies beside the way there. The first position has a ring around it.
        /// </summary>
        private void WriteTrail()
        {
            var shown = drawing
                .Trail.Where(position => position.Fret >= drawing.FirstFret && position.Fret <= drawing.LastFret)
                .Select(position =>
                    (X: X(layout.MarkX(position)), Y: layout.Y(position.String, layout.MarkX(position)))
                )
                .ToList();
            if (shown.Count == 0)
            {
                return;
            }

            var moves = new List<PenMove>();
            foreach (var ((x1, y1), (x2, y2)) in shown.Zip(shown.Skip(1)).Distinct())
            {
                var length = Math.Sqrt(((x2 - x1) * (x2 - x1)) + ((y2 - y1) * (y2 - y1)));
                if (length < 1)
                {
                    continue;
                }

                // Across the way, to its right.
                var (acrossX, acrossY) = ((y1 - y2) / length, (x2 - x1) / length);
                var bend = Math.Min(TrailBend, length / 4);
                var (pullX, pullY) = ((x1 + x2) / 2 + (acrossX * bend * 2), (y1 + y2) / 2 + (acrossY * bend * 2));
                moves.Add(PenMove.To(R(x1 + (acrossX * TrailHalf)), R(y1 + (acrossY * TrailHalf))));
                moves.Add(
                    PenMove.Curve(R(pullX), R(pullY), R(x2 + (acrossX * TrailEnd)), R(y2 + (acrossY * TrailEnd)))
                );
                moves.Add(PenMove.Line(R(x2 - (acrossX * TrailEnd)), R(y2 - (acrossY * TrailEnd))));
                moves.Add(
                    PenMove.Curve(R(pullX), R(pullY), R(x1 - (acrossX * TrailHalf)), R(y1 - (acrossY * TrailHalf)))
                );
                moves.Add(PenMove.Back);
            }

            if (moves.Count > 0)
            {
                svg.Path([.. moves]).Fill(Look.Ink).Attribute("fill-opacity", 0.5).Close();
            }

            svg.Circle(shown[0].X, shown[0].Y, NeckLayout.MarkRadius + 3.5).Stroke(Look.Ink, 1.6).Close();

            static double R(double length) => NeckLayout.Rounded(length);
        }

        /// <summary>Bends as arrows over the string to where the pitch lies that they reach, slides as lines along it, harmonics as diamonds.</summary>
        private void WriteGestures()
        {
            const double Radius = NeckLayout.MarkRadius;
            foreach (
                var (kind, position, to) in drawing
                    .Gestures.Select(static each => (each.Kind, each.Position, each.To))
                    .Distinct()
            )
            {
                if (position.Fret < drawing.FirstFret || position.Fret > drawing.LastFret)
                {
                    continue;
                }

                var raw = layout.MarkX(position);
                var y = layout.Y(position.String, raw);
                switch (kind)
                {
                    case NeckGestureKind.Bend:
                        WriteBend(raw, BentX(position, to), y);
                        break;
                    case NeckGestureKind.Slide:
                        var end = layout.MarkX(
                            new(position.String, Math.Clamp(to, drawing.FirstFret, drawing.LastFret))
                        );
                        svg.Line(X(raw), y, X(end), layout.Y(position.String, end)).Stroke(Look.Ink, 3).Close();
                        break;
                    case NeckGestureKind.SlideBelow or NeckGestureKind.SlideAbove:
                        var side = kind == NeckGestureKind.SlideBelow ? -1 : 1;
                        WriteSlide(raw + (side * (Radius + 15)), raw + (side * (Radius + 4)), y, leadsAway: to == 1);
                        break;
                    default:
                        svg.Path(
                                PenMove.To(X(raw) - 15, y),
                                PenMove.Line(X(raw), y - 15),
                                PenMove.Line(X(raw) + 15, y),
                                PenMove.Line(X(raw), y + 15),
                                PenMove.Back
                            )
                            .Stroke(Look.Ink, 1.5)
                            .Close();
                        break;
                }
            }
        }

        /// <summary>Where the pitch lies that a bend by so many cents reaches; a quarter tone between two frets.</summary>
        private double BentX(Position position, int cents)
        {
            var below = position.Fret + (cents / 100);
            var x = below > neck.Frets ? layout.StringEnd : layout.MarkX(new(position.String, below));
            if (cents % 100 != 0 && below < neck.Frets)
            {
                x = (x + layout.MarkX(new(position.String, below + 1))) / 2;
            }

            return Math.Min(x, layout.StringEnd);
        }

        private void WriteBend(double from, double to, double y)
        {
            var start = from + 4;
            var end = Math.Max(to - 4, start + 8);
            svg.Path(
                    PenMove.To(X(start), y - 9),
                    PenMove.Curve(NeckLayout.Rounded((X(start) + X(end)) / 2), y - 21, X(end), y - 9)
                )
                .Stroke(Look.Ink, 1.6)
                .Close();
            var back = X(end) > X(start) ? -1 : 1;
            svg.Path(
                    PenMove.To(X(end) - (back * 2), y - 6),
                    PenMove.Line(X(end) + (back * 5.5), y - 9),
                    PenMove.Line(X(end) + (back * 0.5), y - 14),
                    PenMove.Back
                )
                .Fill(Look.Ink)
                .Close();
        }

        private void WriteSlide(double far, double near, double y, bool leadsAway)
        {
            var (from, to) = leadsAway ? (X(near), X(far)) : (X(far), X(near));
            var back = to > from ? -5 : 5;
            svg.Line(from, y, to + back, y).Stroke(Look.Ink, 2.4).Close();
            svg.Path(PenMove.To(to, y), PenMove.Line(to + back, y - 4), PenMove.Vertical(y + 4), PenMove.Back)
                .Fill(Look.Ink)
                .Close();
        }

        private void WriteMarks(List<Mark> marks)
        {
            foreach (var role in Enum.GetValues<ToneRole>())
            {
                var ofRole = marks.Where(mark => mark.Role == role).ToList();
                if (ofRole.Count == 0)
                {
                    continue;
                }

                svg.Open("g", $"tk-mark-{MarkPicture.Kind(role)}").OpenRole(role);
                foreach (var mark in ofRole)
                {
                    var raw = layout.MarkX(mark.Position);
                    WriteMark(mark, X(raw), layout.Y(mark.Position.String, raw));
                }

                svg.Close().Close();
            }
        }

        private void WriteMark(Mark mark, double x, double y)
        {
            svg.OpenMark(mark.Role, x, y, mark.IsPale ? 0.5 : 1);
            if (drawing.Hint(mark) is { } hint)
            {
                svg.Element("title", null, hint);
            }

            svg.Close();
        }

        private void WriteKey(List<Mark> marks)
        {
            if (!drawing.HasKey)
            {
                return;
            }

            var x = NeckLayout.Side + 6;
            var y = layout.Height - 14;
            svg.Group(Look.Quiet).Attribute("font-size", 10);
            foreach (var role in new[] { ToneRole.Root, ToneRole.ChordTone, ToneRole.ColourTone, ToneRole.Other })
            {
                if (marks.Exists(mark => mark.Role == role))
                {
                    svg.OpenRole(role).OpenMark(role, x, y, role == ToneRole.Other ? 0.9 : 0.55).Close().Close();
                    svg.Label(x + 10, y + 3.6).Text(ToneRoles.Words(role)).Close();
                    x += 32 + (ToneRoles.Words(role).Length * 5.6);
                }
            }

            svg.Close();
        }

        private void WriteLabels(List<Mark> marks)
        {
            svg.Labels(
                marks,
                drawing.Offered,
                drawing.Labels,
                drawing.Naming,
                mark =>
                {
                    var raw = layout.MarkX(mark.Position);
                    return (X(raw), layout.Y(mark.Position.String, raw));
                }
            );
        }

        // Where makers put them: 3 5 7 9 12 and the same an octave up.
        private static bool IsInlaid(int fret) => (fret % 12) is 0 or 3 or 5 or 7 or 9;
    }
}
