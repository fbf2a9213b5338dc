using System.Text;
using Fractions;
using TheoryKit.Paths;

namespace TheoryKit.Drawing;

/// <summary>
/// Writes a path as plain tab: chords above, a line for each string, then how to count it, then what each note does. Within a bar
/// everything stands exactly as far in as it starts; see <see cref="TabDrawing"/>.
/// </summary>
/// <remarks>
/// The count names the beats; between them <c>&amp;</c> is the half, <c>e</c> and <c>a</c> the quarters, <c>.</c> any other moment. <c>r</c> stands
/// where a rest begins. A note lasts until the next number or <c>r</c>.
/// </remarks>
internal static class TabText
{
    public static string Write(TabDrawing drawing)
    {
        var writer = new Writer(drawing);
        return writer.Write();
    }

    /// <summary>A bar as rows of characters.</summary>
    private sealed record BarText(
        int Number,
        string Chords,
        string Signs,
        string[] Strings,
        string Count,
        List<string> Labels
    )
    {
        public int Width => Count.Length;
    }

    private sealed class Writer(TabDrawing drawing)
    {
        private readonly TheoryKit.Paths.Path path = drawing.Path;
        private readonly List<(Fraction Start, Fraction End)> events = [.. WrittenRhythm.Events(drawing.Path)];
        private readonly List<(Fraction Start, Theory.Chord? Chord)> chords = [.. TabLayout.ChordsOf(drawing.Path)];
        private readonly Fraction beats = TabLayout.WholeBeats(drawing.Path);

        public string Write()
        {
            var neck = path.Neck;
            var text = new StringBuilder(2048);
            text.Append(drawing.Named("G")).Append("  (").Append(Printed.Of(neck.Tuning, drawing.Naming, "G"));
            text.Append(neck.Capo > 0 ? $", {TabWords.Capo(neck)}" : "").Append($", {path.Time})\n");
            var names = neck.Tuning.Strings.Select(each => each.Open.Name.ToString("G", drawing.Naming)).ToList();
            var barCount = Math.Max(1, path.BarCount);
            var margin = Math.Max(names.Max(static name => name.Length), $"{barCount}".Length);
            var room = drawing.Columns - margin - 2;
            var bars = Enumerable.Range(0, barCount).Select(bar => Bar(bar, room)).ToList();
            for (var first = 0; first < bars.Count; )
            {
                var count = 1;
                var width = margin + 1 + bars[first].Width + 1;
                while (first + count < bars.Count && width + bars[first + count].Width + 1 <= drawing.Columns)
                {
                    width += bars[first + count].Width + 1;
                    count++;
                }

                text.Append('\n');
                WriteLine(text, bars.GetRange(first, count), names, margin, bars.Count > count);
                first += count;
            }

            return text.ToString().TrimEnd('\n');
        }

        private void WriteLine(StringBuilder text, List<BarText> bars, List<string> names, int margin, bool isNumbered)
        {
            var number = isNumbered ? $"{bars[0].Number + 1}" : "";
            Row(number.PadRight(margin + 1) + string.Join(' ', bars.Select(static bar => bar.Chords)));
            Row(new string(' ', margin + 1) + string.Join(' ', bars.Select(static bar => bar.Signs)));
            for (var index = 0; index < names.Count; index++)
            {
                Row($"{names[index].PadRight(margin)}|{string.Join('|', bars.Select(bar => bar.Strings[index]))}|");
            }

            if (drawing.ShowsRhythm)
            {
                Row(new string(' ', margin + 1) + string.Join(' ', bars.Select(static bar => bar.Count)));
            }

            if (drawing.ShowsFunctions)
            {
                for (var row = 0; row < bars.Max(static bar => bar.Labels.Count); row++)
                {
                    Row(
                        new string(' ', margin + 1)
                            + string.Join(
                                ' ',
                                bars.Select(bar =>
                                    row < bar.Labels.Count ? bar.Labels[row] : new string(' ', bar.Width)
                                )
                            )
                    );
                }
            }

            void Row(string row)
            {
                if (!string.IsNullOrWhiteSpace(row))
                {
                    text.Append(row.TrimEnd()).Append('\n');
                }
            }
        }

        private BarText Bar(int bar, int room)
        {
            var (from, to) = ((Fraction)(bar * path.Time.Beats), (Fraction)((bar + 1) * path.Time.Beats));
            bool IsHere(Fraction start) => start >= from && start < to;
            var notes = path.Notes.Where(note => IsHere(note.Start)).ToList();
            var rests = Rests().Where(IsHere).ToList();
            var here = chords.Where(chord => IsHere(chord.Start)).ToList();

            // Every moment at which something is written, and how far it reaches to the left and to the right.
            var moments = new SortedDictionary<Fraction, (int Before, int After)>();
            void Need(Fraction start, int before, int after)
            {
                var (left, right) = moments.GetValueOrDefault(start.Reduce());
                moments[start.Reduce()] = (Math.Max(left, before), Math.Max(right, after));
            }

            for (var beat = from; beat < to; beat += Fraction.One)
            {
                Need(beat, 0, drawing.ShowsRhythm ? $"{beat - from + 1}".Length : 0);
            }

            foreach (var note in notes)
            {
                var (before, sign) = Cell(note);
                var label = Label(note) ?? "";
                Need(note.Start, before.Length, Math.Max(sign.Length, label.Length));
            }

            foreach (var rest in rests)
            {
                Need(rest, 0, 1);
            }

            var steps = Steps(moments.Keys.Concat(here.Select(static chord => chord.Start)), from);
            var step = Math.Max(Width(moments, from, to, steps), ChordsWidth());
            var width = 1 + (steps * step);
            Func<Fraction, int> At = start =>
                1 + ((int)((start - from) / path.Time.Beats * steps).ToBigInteger() * step);
            if (width > room)
            {
                var columns = Squeezed(moments, here, from, room, out width);
                At = start => columns[start.Reduce()];
            }

            var strings = Enumerable.Range(0, path.Neck.StringCount).Select(_ => Blank('-')).ToArray();
            var (chordRow, signRow, count) = (Blank(' '), Blank(' '), Blank(' '));
            foreach (var note in notes)
            {
                var (before, sign) = Cell(note);
                Put(strings[note.Position.String - 1], At(note.Start) - before.Length, before + sign);
                Put(signRow, At(note.Start), Above(note));
            }

            foreach (var (start, chord) in here)
            {
                Put(chordRow, At(start), Name(chord));
            }

            for (var beat = from; beat < to; beat += Fraction.One)
            {
                Put(count, At(beat), $"{beat - from + 1}");
            }

            foreach (
                var start in notes.Select(static note => note.Start).Where(static start => !start.Denominator.IsOne)
            )
            {
                Put(count, At(start), Count(start));
            }

            foreach (var rest in rests)
            {
                Put(count, At(rest), "r".PadRight(rest.Denominator.IsOne ? $"{rest - from + 1}".Length : 1));
            }

            var labels = new List<char[]>();
            foreach (var group in notes.GroupBy(static note => note.Start))
            {
                foreach (var (row, note) in group.OrderBy(static note => note.Position.String).Index())
                {
                    if (labels.Count == row)
                    {
                        labels.Add(Blank(' '));
                    }

                    Put(labels[row], At(note.Start), Label(note) ?? "");
                }
            }

            return new(
                bar,
                new(chordRow),
                new(signRow),
                [.. strings.Select(static row => new string(row))],
                new(count),
                [.. labels.Select(static row => new string(row))]
            );

            char[] Blank(char fill)
            {
                var row = new char[width];
                Array.Fill(row, fill);
                return row;
            }

            int ChordsWidth()
            {
                var least = 1;
                for (var index = 0; index < here.Count; index++)
                {
                    var next = index + 1 < here.Count ? here[index + 1].Start : to;
                    var length = Name(here[index].Chord).Length + 1;
                    least = Math.Max(least, Needed(length, next - here[index].Start, steps));
                }

                return least;
            }
        }

        /// <summary>The least number of equal parts of a bar that all moments are multiples of.</summary>
        private int Steps(IEnumerable<Fraction> moments, Fraction from)
        {
            var steps = System.Numerics.BigInteger.One;
            foreach (var moment in moments)
            {
                var part = ((moment - from) / path.Time.Beats).Reduce().Denominator;
                steps = steps / System.Numerics.BigInteger.GreatestCommonDivisor(steps, part) * part;
            }

            return (int)steps;
        }

        /// <summary>How many characters a step takes, so that nothing touches.</summary>
        private int Width(
            SortedDictionary<Fraction, (int Before, int After)> moments,
            Fraction from,
            Fraction to,
            int steps
        )
        {
            var (least, at, reach) = (1, from, 0);
            foreach (var (start, (before, after)) in moments)
            {
                if (start > from)
                {
                    least = Math.Max(least, Needed(reach + before + 1, start - at, steps));
                }

                (at, reach) = (start, after);
            }

            return Math.Max(least, Needed(reach + 1, to - at, steps));
        }

        /// <summary>
        /// Where everything stands in a bar too fine for its exact places: as near to them as it can without touching, in as many
        /// characters as there is room for, or as it takes.
        /// </summary>
        private Dictionary<Fraction, int> Squeezed(
            SortedDictionary<Fraction, (int Before, int After)> moments,
            List<(Fraction Start, Theory.Chord? Chord)> here,
            Fraction from,
            int room,
            out int width
        )
        {
            var names = here.ToDictionary(static each => each.Start.Reduce(), each => Name(each.Chord).Length);
            var starts = moments.Keys.Union(names.Keys).Order().ToList();

            // How far each is at least from the left end, all packed as closely as can be.
            var least = new int[starts.Count];
            var (at, chordEnd) = (1, 0);
            for (var index = 0; index < starts.Count; index++)
            {
                var (before, after) = moments.GetValueOrDefault(starts[index]);
                least[index] = index == 0 ? 1 : at + before;
                if (names.TryGetValue(starts[index], out var length))
                {
                    least[index] = Math.Max(least[index], chordEnd);
                    chordEnd = least[index] + length + 1;
                }

                at = least[index] + Math.Max(1, after + 1);
            }

            width = Math.Max(room, Math.Max(at, chordEnd));

            // Each stands where it belongs, but for those before it and for the room that those after it take.
            var places = new Dictionary<Fraction, int>();
            var slack = width - Math.Max(at, chordEnd);
            var moved = 0;
            for (var index = 0; index < starts.Count; index++)
            {
                var exact = 1 + (int)Math.Round(((starts[index] - from) / path.Time.Beats).ToDouble() * (width - 1));
                moved = Math.Clamp(exact - least[index], moved, slack);
                places[starts[index]] = least[index] + moved;
            }

            return places;
        }

        private string Name(Theory.Chord? chord) => chord?.ToString("G", drawing.Naming) ?? "N.C.";

        private int Needed(int characters, Fraction beats, int steps)
        {
            var between = (int)(beats / path.Time.Beats * steps).ToBigInteger();
            return (characters + between - 1) / between;
        }

        private IEnumerable<Fraction> Rests()
        {
            var at = Fraction.Zero;
            foreach (var (start, end) in events.Append((beats, beats)))
            {
                // A rest over a bar line is said again in each bar.
                for (; at < start; at = (Fraction)((WrittenRhythm.Whole(at / path.Time.Beats) + 1) * path.Time.Beats))
                {
                    yield return at.Reduce();
                }

                at = end;
            }
        }

        /// <summary>What stands on the string: before the moment of the note, and at it.</summary>
        private (string Before, string Sign) Cell(PathNote note)
        {
            var before = string.Concat(
                note.Techniques.Where(static technique => technique.IsJoined)
                    .Select(technique =>
                        technique != Technique.Slide ? technique.Sign
                        : TabNote.Before(path, note) is { } last && last.Position.Fret > note.Position.Fret ? "\\"
                        : "/"
                    )
            );
            return (
                before,
                TabNote.Sign(path.Neck, note) + (note.Has(Technique.Vibrato) ? Technique.Vibrato.Sign : "")
            );
        }

        /// <summary>What stands above the staff: accents, dots, and every technique that the string line does not say.</summary>
        private static string Above(PathNote note) =>
            string.Concat(note.Techniques.Where(TabSigns.IsAbove).Select(static technique => technique.Sign));

        private string? Label(PathNote note) => TabNote.Label(path, note, drawing.Shown, "G", drawing.Naming);

        private static string Count(Fraction start)
        {
            var part = (start - (Fraction)WrittenRhythm.Whole(start)).Reduce();
            return part == new Fraction(1, 2) ? "&"
                : part == new Fraction(1, 4) ? "e"
                : part == new Fraction(3, 4) ? "a"
                : ".";
        }

        private static void Put(char[] row, int at, string text)
        {
            for (var index = 0; index < text.Length && at + index < row.Length; index++)
            {
                row[at + index] = text[index];
            }
        }
    }
}
