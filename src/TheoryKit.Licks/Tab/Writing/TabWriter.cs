using System.Text;
using TheoryKit.Licks.Tab.Options;

namespace TheoryKit.Licks.Tab.Writing;

/// <summary>
/// Writes a path as plain tab in steps, as the remarks on <see cref="PlainTab"/> say: path, what is written of each note, bars, where
/// everything in a bar stands, rows, lines.
/// </summary>
internal static class TabWriter
{
    // Labels first, then fingers, then names, each from string 1 on.
    private static readonly Comparer<string> MarkOrder = Comparer<string>.Create(
        static (left, right) =>
            (left[0], left.Length).CompareTo((right[0], right.Length)) is var order and not 0
                ? order
                : string.CompareOrdinal(left, right)
    );

    public static string Write(Path path, TabWriteOptions options)
    {
        var names = path.Neck.Tuning.Strings.Select(each => each.Open.Name.ToString("G", options.Naming)).ToList();
        var written = WrittenBar.Of(path, WrittenPath.Of(path, options));
        var margin = Math.Max(names.Max(static name => name.Length), $"{written.Count}".Length);
        var room = options.Columns - margin - 2;
        var bars = written.ConvertAll(bar =>
            BarText.Of(bar, BarLayout.Of(bar, options, room), names.Count, options.Naming)
        );
        var text = new StringBuilder(2048);
        for (var first = 0; first < bars.Count; )
        {
            var count = 1;
            var width = margin + 1 + bars[first].Width + 1;
            while (first + count < bars.Count && width + bars[first + count].Width + 1 <= options.Columns)
            {
                width += bars[first + count].Width + 1;
                count++;
            }

            text.Append(first > 0 ? "\n" : "");
            WriteLine(text, bars.GetRange(first, count), names, margin, bars.Count > count, options.ShowsTime);
            first += count;
        }

        return text.ToString().TrimEnd('\n');
    }

    private static void WriteLine(
        StringBuilder text,
        List<BarText> bars,
        List<string> names,
        int margin,
        bool isNumbered,
        bool showsTime
    )
    {
        var blank = new string(' ', margin + 1);
        var number = isNumbered ? $"{bars[0].Number + 1}" : "";
        for (var index = 0; index < bars[0].Above.Count; index++)
        {
            Row(
                (index == 0 ? number : "").PadRight(margin + 1) + string.Join(' ', bars.Select(bar => bar.Above[index]))
            );
        }

        for (var index = 0; index < names.Count; index++)
        {
            Row($"{names[index].PadRight(margin)}|{string.Join('|', bars.Select(bar => bar.Strings[index]))}|");
        }

        if (showsTime)
        {
            Row(blank + string.Join(' ', bars.Select(static bar => bar.Time)));
        }

        foreach (var name in bars.SelectMany(static bar => bar.Marks.Keys).Distinct().Order(MarkOrder))
        {
            var row = bars.Select(bar =>
                bar.Marks.TryGetValue(name, out var found) ? new string(found) : new string(' ', bar.Width)
            );
            Row(blank + string.Join(' ', row) + (name[0] == ' ' ? "" : $"  {name}"));
        }

        void Row(string row)
        {
            if (!string.IsNullOrWhiteSpace(row))
            {
                text.Append(row.TrimEnd()).Append('\n');
            }
        }
    }
}
