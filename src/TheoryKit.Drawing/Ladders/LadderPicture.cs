using System.Text;
using TheoryKit.Drawing.Markup;
using TheoryKit.Drawing.Rendering;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Values;

namespace TheoryKit.Drawing.Ladders;

/// <summary>Writes a ladder as SVG.</summary>
internal static class LadderPicture
{
    private const double RungGap = 24;
    private const double Radius = 9.5;
    private const double TypeSize = 10.5;
    private const double Margin = 12;
    private const double TitleHeight = 24;
    private const double NamesWidth = 30;
    private const double LeastColumn = 62;
    private const double NameOffset = 15;

    public static string Write(LadderDrawing ladder, RenderContext context, IFormatProvider? naming) =>
        new Writer(ladder, naming).Write(context);

    private sealed class Writer
    {
        private readonly LadderDrawing ladder;
        private readonly IFormatProvider? naming;
        private readonly SvgWriter svg = new();
        private readonly double[] centres;
        private readonly double top;
        private readonly double width;
        private readonly double height;

        public Writer(LadderDrawing ladder, IFormatProvider? naming)
        {
            this.ladder = ladder;
            this.naming = naming;
            centres = new double[ladder.Columns.Count];
            var x = Margin + NamesWidth;
            for (var i = 0; i < centres.Length; i++)
            {
                var columnWidth = Math.Max(LeastColumn, (ladder.Columns[i].Heading.Printed(naming).Length * 8.2) + 20);
                centres[i] = x + (columnWidth / 2);
                x += columnWidth;
            }

            top = Margin + (ladder.Columns.Any(static column => !column.Heading.IsEmpty) ? TitleHeight : 0);
            width = x + Margin + (ladder.Columns.Any(static column => column.Root is not null) ? 8 : 0);
            height = Y(ladder.LowestRung) + (RungGap / 2) + Margin;
        }

        public string Write(RenderContext context)
        {
            svg.Picture(
                context,
                width,
                height,
                LadderWords.Title(ladder, naming),
                LadderWords.Description(ladder, naming)
            );
            WriteRungs();
            WriteShared();
            for (var i = 0; i < centres.Length; i++)
            {
                WriteColumn(ladder.Columns[i], centres[i]);
            }

            return svg.Close().ToString();
        }

        private double Y(int rung) => top + (RungGap * (ladder.HighestRung - rung + 0.5));

        private bool HasTone(LadderColumn column, int rung) =>
            column.Formula.Any(degree => ladder.RungOf(column, degree) == rung);

        private void WriteRungs()
        {
            svg.Open("g").Stroke(Look.Inlay, 1);
            for (var rung = ladder.LowestRung; rung <= ladder.HighestRung; rung++)
            {
                svg.Line(Margin + NamesWidth, Y(rung), width - Margin, Y(rung)).Close();
            }

            svg.Close();
            foreach (var isUsed in new[] { false, true })
            {
                svg.Group(isUsed ? Look.Ink : Look.Quiet).Attribute("font-size", 11).Attribute("text-anchor", "end");
                svg.Attribute("font-weight", isUsed ? "600" : null);
                for (var rung = ladder.LowestRung; rung <= ladder.HighestRung; rung++)
                {
                    if (ladder.Columns.Any(column => HasTone(column, rung)) == isUsed)
                    {
                        svg.Label(Margin + NamesWidth - 9, Y(rung) + 4);
                        svg.Text(ladder.NameOf(rung).Printed(naming)).Close();
                    }
                }

                svg.Close();
            }
        }

        /// <summary>Joins what lies on one rung in several columns: a strong line where all have it.</summary>
        private void WriteShared()
        {
            for (var rung = ladder.LowestRung; rung <= ladder.HighestRung; rung++)
            {
                var having = Enumerable.Range(0, centres.Length).Where(i => HasTone(ladder.Columns[i], rung)).ToList();
                if (having.Count < 2)
                {
                    continue;
                }

                var all = having.Count == centres.Length;
                svg.Line(centres[having[0]], Y(rung), centres[having[^1]], Y(rung));
                svg.Stroke(all ? Look.Ink : Look.Line, all ? 3 : 1.5).Close();
            }
        }

        private void WriteColumn(LadderColumn column, double x)
        {
            if (!column.Heading.IsEmpty)
            {
                svg.Label(x, Margin + 13).Fill(Look.Ink).Attribute("text-anchor", "middle");
                svg.Attribute("font-family", Look.Serif).Attribute("font-size", 13.5).Attribute("font-weight", "600");
                svg.Text(column.Heading.Printed(naming)).Close();
            }

            var tones = column
                .Formula.Select(degree => (Degree: degree, Rung: ladder.RungOf(column, degree)))
                .OrderBy(static tone => tone.Rung)
                .ToList();
            svg.Line(x, Y(tones[0].Rung), x, Y(tones[^1].Rung)).Stroke(Look.Line, 1.5).Close();
            if (ladder.Alignment == LadderAlignment.Function)
            {
                WriteSteps(tones, x);
            }

            foreach (var onRung in tones.GroupBy(static tone => tone.Rung))
            {
                var beside = onRung.Select(static tone => tone.Degree).ToList();
                for (var i = 0; i < beside.Count; i++)
                {
                    // Two spellings of one sound (b3 and #9 by sound) stand side by side.
                    var shift = (i - ((beside.Count - 1) / 2.0)) * 2 * Radius;
                    WriteTone(column, beside[i], x + shift, Y(onRung.Key), writesName: i == beside.Count - 1);
                }
            }
        }

        private void WriteSteps(List<(Degree Degree, int Rung)> tones, double x)
        {
            svg.Group(Look.Quiet).Attribute("font-size", 9).Attribute("text-anchor", "end");
            foreach (var (lower, upper) in tones.Zip(tones.Skip(1)))
            {
                if (upper.Rung > lower.Rung)
                {
                    svg.Label(x - 6, ((Y(lower.Rung) + Y(upper.Rung)) / 2) + 3.2);
                    svg.Text((upper.Degree.Interval - lower.Degree.Interval).ToString()).Close();
                }
            }

            svg.Close();
        }

        private void WriteTone(LadderColumn column, Degree degree, double x, double y, bool writesName)
        {
            var role = ToneRoles.Of(degree, column.Formula);
            var text = degree.ToString("P");
            switch (role)
            {
                case ToneRole.Root:
                    svg.Rectangle(x - 9, y - 9, 18, 18, 4.5).Fill(Look.Root).Close();
                    break;
                case ToneRole.ChordTone:
                    svg.Circle(x, y, Radius).Fill(Look.Chord).Close();
                    break;
                case ToneRole.ColourTone:
                    svg.Circle(x, y, Radius - 1.1).Attribute("fill", Look.Paper.Light);
                    svg.Attribute("stroke", Look.Colour.Light).Attribute("stroke-width", 2.2);
                    svg.Attribute("class", $"{Look.Paper.FillClass} {Look.Colour.StrokeClass}").Close();
                    break;
                default:
                    svg.Circle(x, y, 4.5).Fill(Look.Other).Close();
                    break;
            }

            var size = text.Length <= 2 ? TypeSize : 9;
            if (role != ToneRole.Other)
            {
                svg.Label(x, y + (size * 0.36)).Fill(Look.On(role)).Attribute("text-anchor", "middle");
                svg.Attribute("font-size", size).Attribute("font-weight", "600").Text(text).Close();
            }
            else if (!ladder.IsNamedAs(degree))
            {
                // A dot has no room for its degree; it stands beside it unless the rung says it already.
                Halo(svg.Label(x - 8, y + 3.6).Fill(Look.Ink)).Attribute("text-anchor", "end");
                svg.Attribute("font-size", size).Attribute("font-weight", "600").Text(text).Close();
            }

            if (writesName && column.Root is { } root && ladder.Alignment == LadderAlignment.Function)
            {
                var name = (root + degree.Interval).ToString("P", naming);
                svg.Rectangle(x + NameOffset - 2.5, y - 7, (name.Length * 7.2) + 5, 14).Fill(Look.Paper).Close();
                svg.Label(x + NameOffset, y + 4).Fill(Look.Ink).Attribute("font-size", 11.5).Text(name).Close();
            }
        }

        /// <summary>Keeps lines away from the letters.</summary>
        private static SvgWriter Halo(SvgWriter text) =>
            text.Attribute("style", $"paint-order:stroke;stroke:{Look.Paper.Css};stroke-width:4px");
    }
}

/// <summary>What a ladder says, in words.</summary>
internal static class LadderWords
{
    public static string Title(LadderDrawing ladder, IFormatProvider? naming) =>
        ladder.Columns.Count == 1
            ? $"{ladder.Columns[0].Name.Printed(naming)} on the chromatic ladder"
            : $"{ladder.Columns.Count} formulas on the chromatic ladder";

    public static string Description(LadderDrawing ladder, IFormatProvider? naming)
    {
        var words = new StringBuilder(512);
        words.Append(
            $"A ladder of {ladder.HighestRung - ladder.LowestRung + 1} rungs, a semitone each, the lowest at the bottom."
        );
        foreach (var column in ladder.Columns)
        {
            words.Append($" {column.Name.Printed(naming)}: ");
            Degree? last = null;
            foreach (var degree in column.Formula)
            {
                words.Append(
                    last is not { } below ? ""
                    : ladder.Alignment == LadderAlignment.Function ? $", then {degree.Interval - below.Interval} up to "
                    : ", "
                );
                words.Append(degree.ToString("P"));
                words.Append(column.Root is { } root ? $" ({(root + degree.Interval).ToString("P", naming)})" : "");
                last = degree;
            }

            words.Append('.');
        }

        if (ladder.Columns.Count > 1)
        {
            var shared = Enumerable
                .Range(ladder.LowestRung, ladder.HighestRung - ladder.LowestRung + 1)
                .Where(rung => ladder.Columns.All(column => column.Formula.Any(d => ladder.RungOf(column, d) == rung)))
                .Select(rung => ladder.NameOf(rung).Printed(naming))
                .ToList();
            words.Append(shared.Count == 0 ? " No rung is shared by all." : $" Shared by all: {English.List(shared)}.");
        }

        return words.ToString();
    }
}
