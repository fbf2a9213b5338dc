using System.Globalization;
using Fractions;
using TheoryKit.Drawing.Markup;
using TheoryKit.Drawing.Necks;
using TheoryKit.Drawing.Rendering;
using TheoryKit.Drawing.Zones;
using TheoryKit.Paths;
using TheoryKit.Paths.Routes;
using TheoryKit.Theory.Chords;

namespace TheoryKit.Drawing.Routes;

/// <summary>Writes the SVG of a map of a route.</summary>
internal static class RouteMapPicture
{
    private const double Left = 30;
    private const double Right = 12;
    private const double Row = 17; // of one fret
    private const double ChordHeight = 24;
    private const double LineGap = 16;
    private const double Top = 8;
    private const double MarkSize = 0.72;
    private const double LeastStep = 17; // between neighbouring notes
    private const double MostBeat = 64;
    private const double LeastScale = 0.72;

    public static string Write(RouteMap map, RenderContext context, IFormatProvider? naming) =>
        new Writer(map, naming).Write(context);

    private sealed class Writer
    {
        private readonly Route route;
        private readonly IFormatProvider? naming;
        private readonly int barBeats;
        private readonly double beat; // px
        private readonly int barsPerLine;
        private readonly int bars;
        private readonly int first;
        private readonly int last;
        private readonly SvgWriter svg = new(16 * 1024);

        public Writer(RouteMap map, IFormatProvider? naming)
        {
            (route, this.naming) = (map.Route, naming);
            (first, last) = RouteMapText.Frets(route);
            var path = route.Path;
            barBeats = path.Time.Beats;
            bars = Math.Max(1, path.BarCount);
            var least = path
                .Notes.Zip(path.Notes.Skip(1), static (one, next) => (next.Start - one.Start).ToDouble())
                .DefaultIfEmpty(1)
                .Min();
            var room = map.Width - Left - Right;
            var narrow = Math.Min(MostBeat, Math.Max(LeastStep / least, 12));
            barsPerLine = Math.Clamp((int)(room / (narrow * barBeats)), 1, bars);
            var lines = (bars + barsPerLine - 1) / barsPerLine;
            barsPerLine = (bars + lines - 1) / lines;
            beat = Math.Max(narrow, Math.Min(MostBeat, room / (barsPerLine * barBeats)));
        }

        private double Height => ((last - first + 1) * Row) + ChordHeight;

        public string Write(RenderContext context)
        {
            var lines = (bars + barsPerLine - 1) / barsPerLine;
            var width = Math.Ceiling(Left + (barsPerLine * barBeats * beat) + Right);
            svg.Picture(
                context,
                width,
                Math.Ceiling(Top + (lines * Height) + ((lines - 1) * LineGap) + 10),
                "The route along the neck over time",
                Description(),
                MarkPicture.Css,
                LeastScale
            );
            for (var line = 0; line < lines; line++)
            {
                WriteLine(line);
            }

            return svg.Close().ToString();
        }

        private void WriteLine(int line)
        {
            var from = (Fraction)(line * barsPerLine * barBeats);
            var count = Math.Min(barsPerLine, bars - (line * barsPerLine));
            var to = from + (count * barBeats);
            var top = Top + (line * (Height + LineGap)) + ChordHeight;
            double X(Fraction at) => NeckLayout.Rounded(Left + ((at - from).ToDouble() * beat));
            double Y(int fret) => NeckLayout.Rounded(top + ((last - fret + 0.5) * Row));

            var grid = new List<PenMove>();
            for (var fret = first; fret <= last + 1; fret++)
            {
                grid.Add(PenMove.To(Left, NeckLayout.Rounded(Y(fret) + (Row / 2))));
                grid.Add(PenMove.Horizontal(X(to)));
            }

            svg.Path([.. grid]).Stroke(Look.Inlay, 0.8).Close();
            svg.Group(Look.Quiet).Attribute("font-size", 10).Attribute("text-anchor", "end");
            for (var fret = first; fret <= last; fret++)
            {
                svg.Label(Left - 6, Y(fret) + 3.5).Text(fret.ToString(CultureInfo.InvariantCulture)).Close();
            }

            svg.Close();
            var barLines = new List<PenMove>();
            for (var bar = 0; bar <= count; bar++)
            {
                barLines.Add(PenMove.To(X(from + (bar * barBeats)), top));
                barLines.Add(PenMove.Vertical(NeckLayout.Rounded(top + ((last - first + 1) * Row))));
            }

            var stops = route.Stops.Where(stop => stop.Span.Start >= from && stop.Span.Start < to).ToList();
            foreach (var stop in stops)
            {
                var (low, high) = (Y(stop.Window.First) + (Row / 2), Y(stop.Window.Last) - (Row / 2));
                svg.Rectangle(
                        X(stop.Span.Start) + 2,
                        high,
                        NeckLayout.Rounded(X(stop.Span.End) - X(stop.Span.Start) - 4),
                        NeckLayout.Rounded(low - high),
                        5
                    )
                    .Fill(Look.Inlay)
                    .Attribute("fill-opacity", 0.6)
                    .Close();
            }

            svg.Path([.. barLines]).Stroke(Look.Line, 1).Close();
            svg.Group(Look.Ink).Attribute("font-size", 12).Attribute("font-weight", "600");
            foreach (var stop in stops)
            {
                svg.Label(X(stop.Span.Start) + 3, top - 7).Text(stop.Chord.ToString("P", naming)).Close();
            }

            svg.Close();
            WriteNotes([.. Notes().Where(each => each.Note.Start >= from && each.Note.Start < to)], X, Y);
        }

        /// <summary>Every note with its chord, which for one that anticipates is the one to come.</summary>
        private IEnumerable<(PathNote Note, RouteStop Stop)> Notes() =>
            route.Path.Notes.Zip(route.Stops.SelectMany(static stop => Enumerable.Repeat(stop, stop.Notes)));

        private void WriteNotes(
            List<(PathNote Note, RouteStop Stop)> notes,
            Func<Fraction, double> x,
            Func<int, double> y
        )
        {
            var (half, half2) = (NeckLayout.MarkRadius * MarkSize, 2.0);
            double At(PathNote note) => NeckLayout.Rounded(x(note.Start) + half + half2);
            var way = notes.Select(
                (each, index) =>
                    index == 0
                        ? PenMove.To(At(each.Note), y(each.Note.Position.Fret))
                        : PenMove.Line(At(each.Note), y(each.Note.Position.Fret))
            );
            svg.Path([.. way]).Stroke(Look.Quiet, 1.2).Close();
            foreach (var role in Enum.GetValues<ToneRole>())
            {
                var marked = notes.Where(each => Role(each.Note, each.Stop) == role).ToList();
                if (marked.Count == 0)
                {
                    continue;
                }

                svg.OpenRole(role);
                foreach (var (note, _) in marked)
                {
                    svg.OpenMark(role, At(note), y(note.Position.Fret), MarkSize).Close();
                }

                svg.Close();
                svg.Group(Look.On(role)).Attribute("text-anchor", "middle").Attribute("font-weight", "600");
                foreach (var (note, stop) in marked)
                {
                    var text = stop.Chord.DegreeOf(note.Pitch.Name).ToString("P");
                    var size = text.Length < 3 ? 8.6 : 6.6;
                    svg.Label(
                            At(note),
                            NeckLayout.Rounded(y(note.Position.Fret) + (role == ToneRole.Other ? -4 : size * 0.36))
                        )
                        .Attribute("font-size", size)
                        .Text(text)
                        .Close();
                }

                svg.Close();
            }
        }

        private static ToneRole Role(PathNote note, RouteStop stop) =>
            ToneRoles.Over(stop.Chord.DegreeOf(note.Pitch.Name), stop.Chord.Formula);

        private string Description() =>
            string.Join(
                " ",
                route.Stops.Select(
                    (stop, index) =>
                        $"{stop.Chord.ToString("P", naming)} at {ZoneWords.Frets(stop.Window)}, entered on {stop.Entry.Place.Function.ToString("P")}: "
                        + string.Join(
                            ", ",
                            route
                                .Path.Notes.Skip(route.Stops.Take(index).Sum(static each => each.Notes))
                                .Take(stop.Notes)
                                .Select(note => note.Pitch.ToString("P", naming))
                        )
                        + "."
                )
            );
    }
}
