using TheoryKit.Drawing.Markup;
using TheoryKit.Drawing.Necks;
using TheoryKit.Drawing.Rendering;

namespace TheoryKit.Drawing.Grips;

/// <summary>Writes the SVG of a grip box.</summary>
internal static class GripPicture
{
    private const double StringGap = 22;
    private const double FretGap = 29;
    private const double Side = 30; // at both sides, so that the box stands under its title's middle; holds the fret number
    private const double Edge = 8; // board beyond the outer strings
    private const double Left = Side - Edge;
    private const double TitleHeight = 26;
    private const double OpenHeight = 30; // above the nut, for x and o
    private const double Foot = 9;
    private const double NutHeight = 5;
    private const double PaleSize = 0.74; // of marks that stand back; what is written on them is still legible
    private const double Stub = 9; // of strings beyond the frets shown

    /// <summary>The width of a box in px.</summary>
    public static double WidthOf(GripDrawing drawing) => (2 * Side) + (StringGap * (drawing.Grip.Strings.Count - 1));

    public static string Write(GripDrawing drawing, RenderContext context)
    {
        var svg = new SvgWriter(8 * 1024);
        new Writer(drawing, svg).Write(context);
        return svg.Close().ToString();
    }

    private sealed class Writer
    {
        private readonly GripDrawing drawing;
        private readonly SvgWriter svg;
        private readonly int strings;
        private readonly int first;
        private readonly int last;
        private readonly double top;
        private readonly double width;

        public Writer(GripDrawing drawing, SvgWriter svg)
        {
            (this.drawing, this.svg) = (drawing, svg);
            strings = drawing.Grip.Strings.Count;
            (first, last) = drawing.Frets;
            top = (drawing.Title.Length > 0 ? TitleHeight : 0) + OpenHeight;
            width = WidthOf(drawing);
        }

        private bool IsAtStart => first == drawing.Base + 1;

        private double BoardWidth => width - (2 * Left);

        private double Bottom => WireY(last);

        public void Write(RenderContext context)
        {
            var title = drawing.Title.Length > 0 ? drawing.Title : "Grip";
            svg.Picture(context, width, Bottom + Stub + Foot, title, drawing.Description, MarkPicture.Css);
            if (drawing.Title.Length > 0)
            {
                svg.Label(width / 2, 20).Fill(Look.Ink).Attribute("text-anchor", "middle");
                svg.Attribute("font-family", Look.Serif).Attribute("font-size", TitleSize(drawing.Title));
                svg.Attribute("font-weight", "600").Text(drawing.Title).Close();
            }

            WriteBoard();
            WriteStrings();
            WriteBarres();
            WriteNumber();
            WriteMuted();
            var marks = drawing.Marks;
            WriteMarks(marks);
            svg.Labels(marks, drawing.Offered, drawing.Labels, drawing.Naming, PlaceOf, PaleSize);
            WriteOpen(marks);
        }

        // A long symbol is written smaller, down to a size that still reads.
        private double TitleSize(string title) => Math.Clamp(1.75 * (width - 8) / title.Length, 10, 16);

        private double X(int number) => Side + (StringGap * (drawing.IsLeftHanded ? number - 1 : strings - number));

        private double WireY(int fret) => top + (FretGap * (fret - first + 1));

        private double StartY(int number) =>
            drawing.StartOf(number) is var start && start >= first && start <= last ? WireY(start) - 6 : top;

        private (double X, double Y) PlaceOf(Mark mark)
        {
            var number = mark.Position.String;
            return drawing.IsOpen(number)
                ? (X(number), StartY(number) - (StartY(number) > top ? 15 : NutHeight + NeckLayout.MarkRadius + 3))
                : (X(number), WireY(mark.Position.Fret) - (FretGap * 0.45));
        }

        private void WriteBoard()
        {
            var y = IsAtStart ? top : top - Stub;
            svg.Rectangle(Left, y, BoardWidth, Bottom - y + Stub).Fill(Look.Board).Close();
            svg.Open("g").Stroke(Look.Line, 1.5);
            for (var fret = IsAtStart ? first : first - 1; fret <= last; fret++)
            {
                svg.Line(Left, WireY(fret), Left + BoardWidth, WireY(fret)).Close();
            }

            svg.Close();
            if (IsAtStart)
            {
                // A capo is rounded and stands out at both sides, a nut does not.
                var beyond = drawing.Base > 0 ? 4 : 0;
                svg.Rectangle(
                        Left - beyond,
                        top - NutHeight - (beyond / 2.0),
                        BoardWidth + (2 * beyond),
                        NutHeight + beyond,
                        drawing.Base > 0 ? 4.5 : 1.5
                    )
                    .Fill(Look.Ink)
                    .Close();
            }
        }

        private void WriteStrings()
        {
            svg.Open("g").Stroke(Look.Line, 1);
            for (var number = 1; number <= strings; number++)
            {
                var begins = StartY(number);
                svg.Line(X(number), begins > top || IsAtStart ? begins : top - Stub, X(number), Bottom + Stub);
                svg.Attribute("stroke-width", Thickness(number));
                // A short string that begins beyond the box only passes by.
                svg.Attribute("stroke-dasharray", drawing.StartOf(number) > last ? "2 4" : null).Close();
            }

            svg.Close();
            for (var number = 1; number <= strings; number++)
            {
                if (StartY(number) > top)
                {
                    svg.Circle(X(number), StartY(number), 3.5).Fill(Look.Ink).Close();
                }
            }
        }

        // As on a neck: lower strings are thicker.
        private double Thickness(int number) =>
            drawing.Neck is { } neck
                ? Math.Clamp(0.9 + ((64 - neck.Tuning[number].Open.MidiNumber) * 0.06), 0.75, 3.2)
                : 0.75 + (0.3 * number);

        private void WriteBarres()
        {
            foreach (var (_, fret, thick, thin) in drawing.Barres)
            {
                var (from, to) = (Math.Min(X(thick), X(thin)), Math.Max(X(thick), X(thin)));
                var y = WireY(fret) - (FretGap * 0.45);
                svg.Rectangle(from - 6, y - 6, to - from + 12, 12, 6).Fill(Look.Line).Close();
            }
        }

        private void WriteNumber()
        {
            if (IsAtStart && drawing.Base == 0)
            {
                return;
            }

            var anchor = drawing.IsLeftHanded ? "start" : "end";
            var x = drawing.IsLeftHanded ? width - Left + 6 : Left - 6;
            svg.Label(x, WireY(first) - (FretGap * 0.45) + 4.3).Fill(Look.Ink).Attribute("text-anchor", anchor);
            svg.Attribute("font-size", 11.5).Attribute("font-weight", "600").Text($"{first}").Close();
        }

        private void WriteMuted()
        {
            var moves = new List<PenMove>();
            for (var number = 1; number <= strings; number++)
            {
                if (!drawing.Grip[number].Sounds)
                {
                    var (x, y) = (X(number), StartY(number) - (StartY(number) > top ? 14 : NutHeight + 11));
                    moves.AddRange([PenMove.To(x - 4, y - 4), PenMove.Line(x + 4, y + 4)]);
                    moves.AddRange([PenMove.To(x + 4, y - 4), PenMove.Line(x - 4, y + 4)]);
                }
            }

            if (moves.Count > 0)
            {
                svg.Path([.. moves]).Stroke(Look.Other, 1.8).Close();
            }
        }

        private void WriteMarks(IReadOnlyList<Mark> marks)
        {
            foreach (var ofRole in marks.GroupBy(static mark => mark.Role).OrderBy(static group => group.Key))
            {
                svg.Open("g", $"tk-mark-{MarkPicture.Kind(ofRole.Key)}").OpenRole(ofRole.Key);
                foreach (var mark in ofRole)
                {
                    var (x, y) = PlaceOf(mark);
                    svg.OpenMark(mark.Role, x, y, mark.IsPale ? PaleSize : 1).Close();
                }

                svg.Close().Close();
            }
        }

        /// <summary>The o of open strings, where fingers are shown.</summary>
        private void WriteOpen(IReadOnlyList<Mark> marks)
        {
            var open = marks.Where(mark => mark.Finger is null).ToList();
            if (open.Count == 0)
            {
                return;
            }

            svg.Open("g", MarkPicture.LabelClass(Labels.Fingers)).Attribute("font-weight", "600");
            svg.Attribute("text-anchor", "middle").Attribute("font-size", 12);
            svg.Attribute("display", drawing.Labels == Labels.Fingers ? null : "none");
            foreach (var mark in open)
            {
                var (x, y) = PlaceOf(mark);
                svg.Label(x, y + NeckLayout.Rounded(mark.IsPale ? 3.6 * PaleSize : 3.6)).Fill(Look.On(mark.Role));
                if (mark.IsPale)
                {
                    svg.Attribute("font-size", NeckLayout.Rounded(12 * PaleSize));
                }

                svg.Text("o").Close();
            }

            svg.Close();
        }
    }
}
