using System.Text;
using Fractions;
using TheoryKit.Drawing.Tab;
using TheoryKit.Licks.Tab;
using TheoryKit.Paths;

namespace TheoryKit.Drawing.Licks;

/// <summary>
/// Writes licks compared in plain text: their tabs one below the other, every moment in the same column, with the count above all and
/// what each note does below each.
/// </summary>
internal static class ComparisonText
{
    public static string Write(LickComparison comparison)
    {
        var tabs = comparison.Tabs.Select(static tab => new TabParts(tab)).ToList();
        var bars = Enumerable
            .Range(0, Math.Max(1, tabs.Max(static tab => tab.Path.BarCount)))
            .Select(bar => new BarText(tabs, comparison.Licks[0].Path.Time.Beats, bar))
            .ToList();
        var margin = tabs.SelectMany(static tab => tab.Path.Neck.Tuning.Strings.Select(each => Name(tab, each).Length))
            .Append($"{bars.Count}".Length)
            .Max();
        var text = new StringBuilder(4096);
        for (var first = 0; first < bars.Count; )
        {
            var (count, width) = (1, margin + 1 + bars[first].Width + 1);
            while (first + count < bars.Count && width + bars[first + count].Width + 1 <= comparison.Columns)
            {
                width += bars[first + count].Width + 1;
                count++;
            }

            var here = bars.GetRange(first, count);
            Row(text, margin, bars.Count > count ? $"{first + 1}" : "", here.Select(static bar => bar.Count), ' ');
            foreach (var (index, tab) in tabs.Index().Where(each => each.Item.Path.BarCount > first || first == 0))
            {
                var own = here.Take(Math.Max(1, tab.Path.BarCount - first)).ToList();
                text.Append($"{index + 1}  {UserText.Short(comparison.Licks[index].Name, comparison.Columns - 4)}\n");
                Row(text, margin, "", own.Select(bar => bar.Chords(tab)), ' ');
                for (var number = 1; number <= tab.Path.Neck.StringCount; number++)
                {
                    var name = Name(tab, tab.Path.Neck.Tuning[number]);
                    Row(text, margin, name, own.Select(bar => bar.String(tab, number)), '|');
                }

                foreach (var row in Labels(tab, own))
                {
                    Row(text, margin, "", row, ' ');
                }
            }

            text.Append('\n');
            first += count;
        }

        return text.ToString().TrimEnd('\n');
    }

    private static string Name(TabParts tab, TheoryKit.Tunings.Necks.TuningString each) =>
        each.Open.Name.ToString("G", tab.Drawing.Naming);

    private static void Row(StringBuilder text, int margin, string name, IEnumerable<string> bars, char between)
    {
        var row = $"{name.PadRight(margin)}{between}{string.Join(between, bars)}{between}".TrimEnd();
        if (row.Length > 0)
        {
            text.Append(row).Append('\n');
        }
    }

    /// <summary>A row for each of the notes that start together, the highest string first.</summary>
    private static IEnumerable<IEnumerable<string>> Labels(TabParts tab, List<BarText> bars)
    {
        var rows = bars.Max(bar => bar.Labels(tab).Count);
        for (var row = 0; row < rows; row++)
        {
            yield return bars.Select(bar => bar.Labels(tab).ElementAtOrDefault(row) ?? new string(' ', bar.Width));
        }
    }

    private static (string Lead, string Sign) Typed(TabParts tab, PathNote note) =>
        PlainTab.Typed(tab.Path.Neck, note, tab.Before(note));

    /// <summary>A bar whose moments have a column each, the same in all licks.</summary>
    private sealed class BarText
    {
        private readonly SortedDictionary<Fraction, int> columns = [];
        private readonly Fraction from;
        private readonly Fraction to;

        public BarText(List<TabParts> tabs, int beats, int bar)
        {
            (from, to) = ((Fraction)(bar * beats), (Fraction)((bar + 1) * beats));
            var needs = new SortedDictionary<Fraction, (int Before, int After, int Chord)>();
            void Need(Fraction start, int before, int after, int chord)
            {
                var (left, right, name) = needs.GetValueOrDefault(start.Reduce());
                needs[start.Reduce()] = (Math.Max(left, before), Math.Max(right, after), Math.Max(name, chord));
            }

            for (var beat = from; beat < to; beat += Fraction.One)
            {
                Need(beat, 0, 1, 0);
            }

            foreach (var tab in tabs)
            {
                foreach (var note in Notes(tab))
                {
                    var (lead, sign) = Typed(tab, note);
                    Need(note.Start, lead.Length, Math.Max(sign.Length, Label(tab, note).Length), 0);
                }

                foreach (var (start, chord) in tab.Chords.Where(each => IsHere(each.Start)))
                {
                    Need(start, 0, 0, Named(tab, chord).Length);
                }
            }

            var (at, chordEnd) = (1, 0);
            foreach (var (start, (before, after, chord)) in needs)
            {
                at += before;
                if (chord > 0)
                {
                    at = Math.Max(at, chordEnd);
                    chordEnd = at + chord + 1;
                }

                columns[start] = at;
                at += after + 1;
            }

            Width = Math.Max(at, chordEnd);
            Count = Filled(' ', columns.Keys.Select(start => (start, Counted(start - from))));
        }

        public int Width { get; }

        /// <summary>How the bar is counted.</summary>
        public string Count { get; }

        public string Chords(TabParts tab) =>
            Filled(
                ' ',
                tab.Chords.Where(each => IsHere(each.Start)).Select(each => (each.Start, Named(tab, each.Chord)))
            );

        public string String(TabParts tab, int number) =>
            Filled(
                '-',
                Notes(tab)
                    .Where(note => note.Position.String == number)
                    .Select(note =>
                    {
                        var (lead, sign) = Typed(tab, note);
                        return (note.Start, lead + sign, lead.Length);
                    })
            );

        public List<string> Labels(TabParts tab)
        {
            var rows = new List<string>();
            var groups = Notes(tab)
                .Where(static note => !note.IsDead)
                .GroupBy(static note => note.Start)
                .Select(static group => group.OrderBy(static note => note.Position.String).ToList())
                .ToList();
            for (var row = 0; row < groups.Select(static group => group.Count).DefaultIfEmpty().Max(); row++)
            {
                rows.Add(
                    Filled(
                        ' ',
                        groups
                            .Where(group => row < group.Count)
                            .Select(group => (group[row].Start, Label(tab, group[row])))
                    )
                );
            }

            return rows;
        }

        private IEnumerable<PathNote> Notes(TabParts tab) => tab.Path.Notes.Where(note => IsHere(note.Start));

        private bool IsHere(Fraction start) => start >= from && start < to;

        private string Filled(char fill, IEnumerable<(Fraction Start, string Text)> texts) =>
            Filled(fill, texts.Select(static each => (each.Start, each.Text, 0)));

        private string Filled(char fill, IEnumerable<(Fraction Start, string Text, int Before)> texts)
        {
            var row = new char[Width];
            Array.Fill(row, fill);
            foreach (var (start, text, before) in texts)
            {
                text.CopyTo(0, row, columns[start.Reduce()] - before, text.Length);
            }

            return new(row);
        }

        private static string Named(TabParts tab, TheoryKit.Theory.Chords.Chord? chord) =>
            chord?.ToString("G", tab.Drawing.Naming) ?? "N.C.";

        private static string Label(TabParts tab, PathNote note) =>
            TabNote.Label(tab.Path, note, tab.Drawing.Shown, "G", tab.Drawing.Naming) ?? "";

        private static string Counted(Fraction beat)
        {
            var whole = WrittenRhythm.Whole(beat);
            var part = (beat - (Fraction)whole).Reduce();
            return part == Fraction.Zero ? $"{whole + 1}"
                : part == new Fraction(1, 2) ? "&"
                : part == new Fraction(1, 4) ? "e"
                : part == new Fraction(3, 4) ? "a"
                : ".";
        }
    }
}
