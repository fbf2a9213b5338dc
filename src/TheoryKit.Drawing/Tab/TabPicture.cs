using Fractions;
using TheoryKit.Drawing.Markup;
using TheoryKit.Drawing.Necks;
using TheoryKit.Drawing.Rendering;
using TheoryKit.Paths;
using TheoryKit.Theory.Chords;

namespace TheoryKit.Drawing.Tab;

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
            WriteLine(layout, line, svg);
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

            WriteLine(layout, line with { Top = top }, svg);
            yield return svg.Close().ToString();
        }
    }

    /// <summary>Draws a line.</summary>
    /// <param name="layout">Where everything lies.</param>
    /// <param name="line">The line.</param>
    /// <param name="svg">Where it is drawn.</param>
    /// <param name="isMarked">Which notes have a line below their function; none if null.</param>
    public static void WriteLine(
        TabLayout layout,
        TabLine line,
        SvgWriter svg,
        Func<PathNote, bool>? isMarked = null
    ) => new Writer(layout, line, svg, isMarked).Write();

    private sealed class Writer(TabLayout layout, TabLine line, SvgWriter svg, Func<PathNote, bool>? isMarked)
    {
        private readonly TabDrawing drawing = layout.Tab.Drawing;
        private readonly TheoryKit.Paths.Path path = layout.Tab.Path;
        private readonly Fraction from = line.From(layout.Tab.Path);
        private readonly Fraction to = line.To(layout.Tab.Path);
        private readonly List<PathNote> notes = [];

        public void Write()
        {
            notes.AddRange(layout.Notes(line.Bars));
            if (path.Neck.Capo > 0 && from == Fraction.Zero)
            {
                svg.Label(layout.Left, NeckLayout.Rounded(line.Top - 3))
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
                new TabRhythmPicture(svg, layout.X, Y(line.Rows.Staff + layout.StaffHeight))
                {
                    GoesOn = layout.Tab.Parts.FirstOrDefault(part => part.Start >= to) is { IsTied: true },
                }.Write([.. layout.Tab.Parts.Where(part => IsHere(part.Start))], path.Time, line.Bars[0].X, line.Width);
            }

            WriteSigns();
            if (drawing.ShowsFunctions)
            {
                WriteLabels();
            }
        }

        private bool IsHere(Fraction start) => start >= from && start < to;

        private double Y(double y) => NeckLayout.Rounded(line.Top + y);

        private double StringY(int number) => Y(line.Rows.Staff + ((number - 1) * TabLayout.StringGap));

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
            if (to >= layout.Tab.Beats && !drawing.IsBeginning)
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
                    svg.Label(bar.X, Y(line.Rows.Number)).Text($"{bar.Number + 1}").Close();
                }

                svg.Close();
            }
        }

        private void WriteChords()
        {
            svg.Group(Look.Ink).Attribute("font-size", 13).Attribute("font-weight", "700");
            foreach (var (start, chord) in layout.Tab.Chords.Where(each => IsHere(each.Start)))
            {
                svg.Label(layout.X(start) - 6, Y(12)).Text(layout.Tab.Named(chord)).Close();
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
                    .Text(TabNote.Sign(path.Neck, note, "P"))
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

            var middle = Y(line.Rows.Staff + (layout.StaffHeight / 2));
            foreach (var rest in layout.Tab.Parts.Where(part => part.IsRest && IsHere(part.Start)))
            {
                var bar = line.Bars.First(bar => rest.Start < (bar.Number + 1) * path.Time.Beats);
                var fillsBar = rest.Beats == path.Time.Beats;
                var x = fillsBar ? bar.X + (bar.Width / 2) : layout.X(rest.Start);
                TabRhythmPicture.WriteRest(svg, fillsBar ? new(1) : rest.Value, NeckLayout.Rounded(x), middle);
            }
        }

        private void WriteSigns()
        {
            foreach (var together in notes.GroupBy(static note => note.Start))
            {
                // Signs of their own stand over each other, what several notes have once.
                var above = together
                    .SelectMany(static note => note.Techniques)
                    .Where(TabSigns.StandsAbove)
                    .Distinct()
                    .OrderBy(Height)
                    .ToList();
                var written = new HashSet<Technique>();
                foreach (var note in together)
                {
                    var placed = Placed(note);
                    foreach (var technique in note.Techniques)
                    {
                        var isAbove = above.Contains(technique);
                        if (isAbove && technique != Technique.Trill && !written.Add(technique))
                        {
                            continue;
                        }

                        var row = isAbove ? placed.Row - (above.IndexOf(technique) * TabRows.SignStep) : placed.Row;
                        TabSigns.Write(svg, technique, placed with { Row = row });
                    }
                }

                var bends = together.Where(TabSigns.IsBentUp).Select(Placed);
                foreach (var there in bends.GroupBy(static each => each.Tip.X))
                {
                    TabSigns.WriteAmounts(svg, there);
                }
            }

            WriteSlurs();
            WritePalmMutes();

            // A joined note that the next line begins with is led to from this one.
            foreach (var before in notes.Where(before => before.End >= to))
            {
                if (
                    layout.Tab.After(before) is { } next
                    && next.Techniques.Any(static technique => technique.IsJoined)
                    && !(IsSlurred(next) && IsSlurred(before))
                )
                {
                    TabSigns.WriteLeading(svg, next, Placed(before), line.Width);
                }
            }
        }

        /// <summary>Nearest to the staff is how it is struck, farthest what wavers.</summary>
        private static int Height(Technique technique) =>
            technique == Technique.Staccato ? 0
            : technique == Technique.Accent ? 1
            : technique == Technique.Trill ? 3
            : technique == Technique.Vibrato ? 4
            : 2;

        private static bool IsSlurred(PathNote note) => note.Has(Technique.HammerOn) || note.Has(Technique.PullOff);

        /// <summary>One slur for a run of hammer-ons and pull-offs, as far as it is on this line.</summary>
        private void WriteSlurs()
        {
            foreach (var first in notes.Where(IsSlurred))
            {
                var before = layout.Tab.Before(first);
                if (before is not null && IsHere(before.Start) && IsSlurred(before))
                {
                    continue; // within a run
                }

                var last = first;
                while (layout.Tab.After(last) is { } next && IsSlurred(next) && IsHere(next.Start))
                {
                    last = next;
                }

                var goesOn = layout.Tab.After(last) is { } after && IsSlurred(after);
                TabSigns.Slur(
                    svg,
                    NeckLayout.Rounded((Placed(first).Before ?? (layout.X(first.Start) - HalfWidth(first) - 14)) - 1.5),
                    NeckLayout.Rounded(goesOn ? line.Width - 2 : layout.X(last.Start) - HalfWidth(last) + 2),
                    StringY(first.Position.String)
                );
            }
        }

        /// <summary>Over each run of notes that are palm-muted, one after the other.</summary>
        private void WritePalmMutes()
        {
            PathNote? first = null;
            PathNote? last = null;
            foreach (var note in notes)
            {
                if (note.Has(Technique.PalmMute))
                {
                    first ??= note;
                    last = note;
                }
                else if (last is not null && note.Start > last.Start)
                {
                    Write();
                }
            }

            Write();

            void Write()
            {
                if (first is not null)
                {
                    var (from, end) = (layout.X(first.Start) - 4, layout.X(last!.Start) + HalfWidth(last) + 2);
                    TabSigns.PalmMute(svg, NeckLayout.Rounded(from), NeckLayout.Rounded(end), Y(line.Rows.PalmMute));
                }

                (first, last) = (null, null);
            }
        }

        private PlacedNote Placed(PathNote note)
        {
            var (x, half) = (layout.X(note.Start), HalfWidth(note));
            var before = layout.Tab.Before(note);
            var isBeforeHere = before is not null && IsHere(before.Start);
            var next = notes.Find(other => other.Start > note.Start);
            return new(note, x, StringY(note.Position.String), half)
            {
                Row = Y(line.Rows.Signs),
                Before =
                    before is null ? null
                    : isBeforeHere ? layout.X(before.Start) + HalfWidth(before)
                    : layout.Left + 4,
                Rises = before is not null && note.Position.Fret > before.Position.Fret,
                Next =
                    next is null ? line.Width
                    // The letter of a slur stands halfway.
                    : IsSlurred(next) ? (x + layout.X(next.Start)) / 2
                    : layout.X(next.Start),
                Beside = Beside(note),
                Tip = (NeckLayout.Rounded(TipX(note)), Level(note.Bend)),
                Held =
                    before is null || before.Bend == 0 ? default
                    : isBeforeHere ? (NeckLayout.Rounded(TipX(before)), Level(before.Bend))
                    : (layout.Left + 4, Level(before.Bend)),
            };
        }

        /// <summary>Where the arrow of a note's own bend ends, across: at one place for all that start together.</summary>
        private double TipX(PathNote note)
        {
            var x = layout.X(note.Start);
            return note.Has(Technique.Bend)
                ? Together(note)
                    .Where(static each => each.Has(Technique.Bend))
                    .Max(each => TabSigns.TipX(each, x, HalfWidth(each)))
                : Beside(note) ?? x;
        }

        /// <summary>Where a sign goes up beside the numbers that start together; null where it goes up from its own.</summary>
        private double? Beside(PathNote note) =>
            TabSigns.GoesBeside(note, Together(note))
                ? NeckLayout.Rounded(layout.X(note.Start) - Together(note).Max(HalfWidth) - TabSigns.ToBeside)
                : null;

        private IEnumerable<PathNote> Together(PathNote note) => notes.Where(other => other.Start == note.Start);

        private double Level(int bend) => Y(line.Rows.Staff - TabSigns.BendRise(bend));

        private double HalfWidth(PathNote note) => TabNote.HalfWidth(path.Neck, note);

        private void WriteLabels()
        {
            var placed = notes
                .Where(static note => !note.IsDead)
                .GroupBy(static note => note.Start)
                .SelectMany(group =>
                    group
                        .OrderBy(static note => note.Position.String)
                        .Select(
                            (note, row) =>
                                (
                                    Note: note,
                                    X: layout.X(note.Start),
                                    Y: Y(line.Rows.Staff + layout.Labels + (row * TabLayout.LabelHeight)),
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

            foreach (var (_, x, y, _) in placed.Where(each => isMarked?.Invoke(each.Note) ?? false))
            {
                svg.Line(x - 7, y + 11.5, x + 7, y + 11.5).Stroke(Look.Ink, 1.6).Close();
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
                                // Inside the ring.
                                2 when group.Key == ToneRole.ColourTone => 8.4,
                                3 when group.Key == ToneRole.ColourTone => 6.8,
                                > 3 when group.Key == ToneRole.ColourTone => 5.6,
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
