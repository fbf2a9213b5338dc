using TheoryKit.Licks.Tab.Remarks;

namespace TheoryKit.Licks.Tab.Reading;

/// <summary>Lines of strings with their bars below each other.</summary>
internal sealed record BarAlignment(
    IReadOnlyList<TabLine> Lines,
    IReadOnlyList<(int From, int To)> Bars,
    Func<int, int> Moved
)
{
    /// <summary>
    /// From lines, each with its own bars, to bars of all: as many are put below each other bar by bar, else a bar line counts where
    /// most lines have one.
    /// </summary>
    public static BarAlignment Of(TabSystem system, List<List<(int From, int To)>> own, TabRemarks remarks)
    {
        var lines = system.Strings.Select(static each => each.Line).ToList();
        return own.TrueForAll(each => each.SequenceEqual(own[0])) ? new(lines, own[0], static column => column)
            : own.TrueForAll(each => each.Count == own[0].Count) ? BarByBar(lines, own, remarks)
            : ByMost(system, lines, remarks);
    }

    private static BarAlignment BarByBar(List<TabLine> lines, List<List<(int From, int To)>> own, TabRemarks remarks)
    {
        if (own.Exists(each => !Widths(each).SequenceEqual(Widths(own[0]))))
        {
            var odd = own.FindIndex(each => !each.SequenceEqual(own[0]));
            remarks.Add(lines[odd], own[odd].Count > 0 ? own[odd][0].From : 0, 1, new TabRemark.BarsMoved());
        }

        // Rows stand above the line that ends as most do.
        var leader = own.GroupBy(static each => each.Count > 0 ? each[^1] : default)
            .MaxBy(static each => each.Count())!
            .First();
        var common = new List<(int From, int To)>();
        var at = 1;
        for (var bar = 0; bar < own[0].Count; bar++)
        {
            var width = own.Max(each => each[bar].To - each[bar].From);
            common.Add((at, at + width));
            at += width + 1;
        }

        return new([.. lines.Select((line, index) => Spread(line, own[index], common, at))], common, Moved);

        static IEnumerable<int> Widths(List<(int From, int To)> bars) => bars.Select(static bar => bar.To - bar.From);

        int Moved(int column)
        {
            var bar = leader.CountWhile(each => each.From <= column + 1) - 1;
            return bar < 0
                ? column - (leader.Count > 0 ? leader[0].From : 0) + 1
                : common[bar].From + column - leader[bar].From;
        }
    }

    private static TabLine Spread(
        TabLine line,
        List<(int From, int To)> own,
        List<(int From, int To)> common,
        int width
    )
    {
        var text = new char[width];
        var columns = new int[width];
        Array.Fill(text, '-');
        Array.Fill(columns, line.Text.Length);
        for (var bar = 0; bar < own.Count; bar++)
        {
            var ((from, to), (left, right)) = (own[bar], common[bar]);
            text[left - 1] = text[right] = '|';
            columns[left - 1] = Math.Max(0, from - 1);
            for (var column = from; column < to; column++)
            {
                text[left + column - from] = line.Text[column];
                columns[left + column - from] = column;
            }
        }

        return line.Moved(new(text), columns);
    }

    private static BarAlignment ByMost(TabSystem system, List<TabLine> lines, TabRemarks remarks)
    {
        var width = lines.Max(static line => line.Text.Length);
        var votes = new int[width];
        foreach (var (line, _, start) in system.Strings)
        {
            for (var column = start; column < line.Text.Length; column++)
            {
                votes[column] += line.Text[column] == '|' ? 1 : 0;
            }
        }

        var text = new char[width];
        for (var column = 0; column < width; column++)
        {
            text[column] = votes[column] * 2 > lines.Count ? '|' : '-';
        }

        for (var index = 0; index < lines.Count; index++)
        {
            var (line, changed) = (lines[index], -1);
            var own = line.Text.PadRight(width, '-').ToCharArray();
            for (var column = system.Strings[index].Start; column < width; column++)
            {
                if ((own[column] == '|') != (text[column] == '|'))
                {
                    changed = changed < 0 ? column : changed;
                    own[column] = own[column] == '|' ? '-' : own[column];
                }
            }

            if (changed >= 0)
            {
                remarks.Add(line, changed, 1, new TabRemark.BarLinesMoved());
                lines[index] = line.Moved(new(own), [.. Enumerable.Range(0, width)]);
            }
        }

        var bars = TabStaff.BarsOf(new(text), system.Strings.Min(static each => each.Start), out _);
        return new(lines, bars, static column => column);
    }
}
