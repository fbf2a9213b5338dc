using Fractions;
using TheoryKit.Paths;
using TheoryKit.Theory;

namespace TheoryKit.Drawing;

/// <summary>Writes the SVG of a tab.</summary>
internal static class TabPicture
{
    private const double LeastScale = 0.72;
    private const double FretType = 12.5;
    private const double MarkSize = 0.84;

    public static string Write(TabDrawing drawing, RenderContext context)
    {
        var layout = new TabLayout(drawing);
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
        foreach (var line in layout.Lines)
        {
            new Writer(drawing, layout, line, svg).Write();
        }

        return svg.Close().ToString();
    }

    /// <summary>A picture for each line, so that none is cut through by the end of a page; the first one says what all show.</summary>
    public static IEnumerable<string> Lines(TabDrawing drawing, RenderContext context)
    {
        var layout = new TabLayout(drawing);
        foreach (var (index, line) in layout.Lines.Index())
        {
            var isFirst = index == 0;
            var top = isFirst ? line.Top : TabLayout.Above;
            var height = Math.Ceiling(top + line.Height + TabLayout.Above);
            var svg = new SvgWriter(16 * 1024);
            if (isFirst)
            {
                svg.Picture(
                    context,
                    layout.Width,
                    height,
                    drawing.Title,
                    drawing.Description,
                    MarkPicture.Css,
                    LeastScale
                );
            }
            else
            {
                svg.PictureGoingOn(layout.Width, height, LeastScale);
            }

            new Writer(drawing, layout, line with { Top = top }, svg).Write();
            yield return svg.Close().ToString();
        }
    }

    private sealed class Writer(TabDrawing drawing, TabLayout layout, TabLine line, SvgWriter svg)
    {
        private readonly TheoryKit.Paths.Path path = drawing.Path;
        private readonly Fraction from = line.Bars[0].Number * drawing.Path.Time.Beats;
        private readonly Fraction to = (line.Bars[^1].Number + 1) * drawing.Path.Time.Beats;
        private readonly List<PathNote> notes = [];

        public void Write()
        {
            notes.AddRange(path.Notes.Where(note => IsHere(note.Start)));
            if (path.Neck.Capo > 0 && from == Fraction.Zero)
            {
                svg.Label(layout.Left, NeckLayout.Rounded(line.Top - 1))
                    .Fill(Look.Quiet)
                    .Attribute("font-size", 10)
                    .Text(TabWords.Capo(path.Neck))
                    .Close();
            }

            WriteStaff();
            WriteChords();
            WriteFrets();
            WriteRests();
            if (drawing.ShowsRhythm)
            {
                new TabRhythmPicture(svg, layout.X, Y(layout.StaffBottom))
                {
                    GoesOn = layout.Parts.FirstOrDefault(part => part.Start >= to) is { IsTied: true },
                }.Write([.. layout.Parts.Where(part => IsHere(part.Start))], path.Time, line.Bars[0].X, line.Width);
            }

            WriteSigns();
            if (drawing.ShowsFunctions)
            {
                WriteLabels();
            }
        }

        private bool IsHere(Fraction start) => start >= from && start < to;

        private double Y(double y) => NeckLayout.Rounded(line.Top + y);

        private double StringY(int number) => Y(layout.StringY(number));

        private void WriteStaff()
        {
            var (left, right) = (layout.Left, line.Width);
            var staff = new List<PenMove>();
            for (var number = 1; number <= path.Neck.StringCount; number++)
            {
                staff.Add(PenMove.To(left, StringY(number)));
                staff.Add(PenMove.Horizontal(right));
            }

            var (top, bottom) = (StringY(1), StringY(path.Neck.StringCount));
            svg.Path([.. staff]).Stroke(Look.Line, 0.8).Close();
            var bars = new List<PenMove>();
            foreach (var x in line.Bars.Select(static bar => bar.X).Append(right))
            {
                bars.Add(PenMove.To(x, top));
                bars.Add(PenMove.Vertical(bottom));
            }

            svg.Path([.. bars]).Stroke(Look.Line, 1.4).Close();
            if (to >= layout.Beats)
            {
                svg.Path(PenMove.To(right - 3.5, top), PenMove.Vertical(bottom)).Stroke(Look.Line, 1.4).Close();
            }

            svg.Group(Look.Quiet).Attribute("font-size", 10).Attribute("text-anchor", "end");
            for (var number = 1; number <= path.Neck.StringCount; number++)
            {
                var name = path.Neck.Tuning[number].Open.Name.ToString("P", drawing.Naming);
                svg.Label(left - 5, StringY(number) + 3.6).Text(name).Close();
            }

            svg.Close();
            if (layout.Lines.Count > 1 || line.Bars.Count > 1)
            {
                svg.Group(Look.Quiet).Attribute("font-size", 9);
                foreach (var bar in line.Bars)
                {
                    svg.Label(bar.X, Y(layout.NumberY)).Text($"{bar.Number + 1}").Close();
                }

                svg.Close();
            }
        }

        private void WriteChords()
        {
            svg.Group(Look.Ink).Attribute("font-size", 13).Attribute("font-weight", "700");
            foreach (var (start, chord) in layout.Chords.Where(each => IsHere(each.Start)))
            {
                svg.Label(layout.X(start) - 6, Y(12)).Text(chord?.ToString("P", drawing.Naming) ?? "N.C.").Close();
            }

            svg.Close();
        }

        private void WriteFrets()
        {
            svg.Group(Look.Ink).Attribute("font-size", FretType).Attribute("font-weight", "600");
            svg.Attribute("text-anchor", "middle");
            svg.Attribute("style", $"paint-order:stroke;stroke:{Look.Paper.Css};stroke-width:5px");
            foreach (var note in notes)
            {
                svg.Label(layout.X(note.Start), StringY(note.Position.String) + 4.4)
                    .Text(TabNote.Sign(path.Neck, note))
                    .Close();
            }

            svg.Close();
        }

        private void WriteRests()
        {
            if (!drawing.ShowsRhythm)
            {
                return;
            }

            var middle = Y((layout.StaffTop + layout.StaffBottom) / 2);
            foreach (var rest in layout.Parts.Where(part => part.IsRest && IsHere(part.Start)))
            {
                var bar = line.Bars.First(bar => rest.Start < (bar.Number + 1) * path.Time.Beats);
                var fillsBar = rest.Beats == path.Time.Beats;
                var x = fillsBar ? bar.X + (bar.Width / 2) : layout.X(rest.Start);
                TabRhythmPicture.WriteRest(svg, fillsBar ? new(1) : rest.Value, NeckLayout.Rounded(x), middle);
            }
        }

        private void WriteSigns()
        {
            foreach (var note in notes)
            {
                foreach (var technique in note.Techniques)
                {
                    TabSigns.Write(svg, technique, Placed(note));
                }
            }

            // A joined note that the next line begins with is led to from this one.
            foreach (
                var note in path.Notes.Where(note => note.Start >= to && note.Techniques.Any(static t => t.IsJoined))
            )
            {
                if (TabNote.Before(path, note) is { } before && IsHere(before.Start))
                {
                    TabSigns.WriteLeading(
                        svg,
                        note.Techniques.First(static technique => technique.IsJoined),
                        Placed(before),
                        note.Position.Fret > before.Position.Fret,
                        line.Width
                    );
                }
            }
        }

        private PlacedNote Placed(PathNote note)
        {
            var before = TabNote.Before(path, note);
            var next = path.Notes.FirstOrDefault(other => other.Start > note.Start && IsHere(other.Start));
            return new(
                layout.X(note.Start),
                StringY(note.Position.String),
                HalfWidth(note),
                note.Techniques.Any(static technique => TabSigns.IsAbove(technique)),
                before is null ? null
                    : IsHere(before.Start) ? layout.X(before.Start) + HalfWidth(before)
                    : layout.Left + 4,
                before is not null && note.Position.Fret > before.Position.Fret,
                next is null ? line.Width
                    // The letter of a slur stands halfway.
                    : next.Techniques.Any(static technique => technique.IsJoined)
                        ? (layout.X(note.Start) + layout.X(next.Start)) / 2
                    : layout.X(next.Start),
                Y(layout.StaffTop) - 13
            );
        }

        private double HalfWidth(PathNote note) => TabNote.Sign(path.Neck, note).Length * 3.7;

        private void WriteLabels()
        {
            var placed = notes
                .GroupBy(static note => note.Start)
                .SelectMany(group =>
                    group
                        .OrderBy(static note => note.Position.String)
                        .Select(
                            (note, row) =>
                                (
                                    Note: note,
                                    X: layout.X(note.Start),
                                    Y: Y(layout.LabelTop + (row * TabLayout.LabelHeight)),
                                    Role: TabNote.Role(path, note)
                                )
                        )
                )
                .ToList();
            foreach (var group in placed.GroupBy(static each => each.Role).OrderBy(static group => group.Key))
            {
                if (group.Key is not { } role)
                {
                    continue;
                }

                svg.OpenRole(role);
                foreach (var (_, x, y, _) in group)
                {
                    if (role == ToneRole.Other)
                    {
                        svg.Circle(x, y + 8.4, 1.9).Close();
                    }
                    else
                    {
                        svg.OpenMark(role, x, y, MarkSize).Close();
                    }
                }

                svg.Close();
            }

            foreach (var labels in drawing.Offered.Where(static labels => labels != Labels.None))
            {
                svg.Open("g", MarkPicture.LabelClass(labels)).Attribute("text-anchor", "middle");
                svg.Attribute("font-weight", "600").Attribute("display", labels == drawing.Shown ? null : "none");
                foreach (var group in placed.GroupBy(static each => each.Role).OrderBy(static group => group.Key))
                {
                    svg.Group(group.Key is { } role ? Look.On(role) : Look.Ink);
                    foreach (var (note, x, y, _) in group)
                    {
                        if (TabNote.Label(path, note, labels, "P", drawing.Naming) is { } text)
                        {
                            var size = text.Length switch
                            {
                                2 when group.Key == ToneRole.ColourTone => 8.4, // inside the ring
                                <= 2 => 9.6,
                                3 => 8,
                                _ => 6.6,
                            };
                            svg.Label(x, NeckLayout.Rounded(y + (size * 0.36))).Attribute("font-size", size);
                            svg.Text(text).Close();
                        }
                    }

                    svg.Close();
                }

                svg.Close();
            }
        }
    }
}
