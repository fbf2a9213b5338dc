using TheoryKit.Tunings.Necks;

namespace TheoryKit.Licks.Tab.Reading;

/// <summary>The line of a string.</summary>
/// <param name="Line">The line.</param>
/// <param name="Label">Its name or number as typed; null for none.</param>
/// <param name="Start">Where what is on the string begins, after its name.</param>
internal sealed record TabString(TabLine Line, string? Label, int Start);

/// <summary>Lines of strings that belong together, from the top, with the rows right above and below.</summary>
internal sealed record TabSystem(
    IReadOnlyList<TabString> Strings,
    IReadOnlyList<TabLine> Above,
    IReadOnlyList<TabLine> Below
)
{
    /// <summary>From lines to systems, at least one, and the lines that belong to none; of empty ones those between words.</summary>
    /// <param name="lines">The lines of the text.</param>
    /// <param name="stringCount">How many strings there are; told by the lines if null.</param>
    public static (IReadOnlyList<TabSystem> Systems, IReadOnlyList<TypedLine> Other) Of(
        List<TypedLine> lines,
        int? stringCount
    )
    {
        var groups = Groups(lines);
        if (groups.Count >= Tuning.MinStrings && groups.TrueForAll(static group => group.To - group.From == 1))
        {
            // Each line of a string with others between: only empty ones may be.
            lines = lines.FindAll(static each => !each.IsBlank);
            groups = Runs(lines);
        }

        var count = stringCount ?? CountIn(lines, groups);
        var starts = new List<int>();
        foreach (var (from, to) in groups)
        {
            if (to - from < Tuning.MinStrings && to - from != count)
            {
                // Rules and the like.
                continue;
            }

            if ((to - from) % count != 0)
            {
                var line = lines[from].Line!;
                throw line.Wrong(
                    0,
                    line.Text.Length,
                    stringCount is null && starts.Count > 0
                        ? $"{count} lines for {count} strings as above, not {to - from}"
                        : $"{count} lines, one for each string of the neck, not {to - from}"
                );
            }

            for (var first = from; first < to; first += count)
            {
                starts.Add(first);
            }
        }

        if (starts.Count == 0)
        {
            var line = lines.Find(static each => !each.IsBlank).Line ?? lines[0].Line ?? new(lines[0].Number, "");
            throw line.Wrong(
                0,
                Math.Max(1, line.Text.Length),
                "a line for each string, such as e|--5--7--|, one below the other"
            );
        }

        return Apart(lines, starts, count);
    }

    private static List<(int From, int To)> Groups(List<TypedLine> lines)
    {
        var groups = Runs(lines).ConvertAll(run => Trimmed(lines, run.From, run.To));
        groups.RemoveAll(static group => group.To <= group.From);
        return groups;
    }

    /// <summary>Lines of strings with no other between.</summary>
    private static List<(int From, int To)> Runs(List<TypedLine> lines)
    {
        var found = new List<(int From, int To)>();
        for (var index = 0; index < lines.Count; )
        {
            var to = index;
            while (to < lines.Count && lines[to].IsString)
            {
                to++;
            }

            if (to > index)
            {
                found.Add((index, to));
            }

            index = Math.Max(to, index + 1);
        }

        return found;
    }

    /// <summary>A group of lines without those at its ends that have neither name nor bar while others do (brackets over tuplets, rules).</summary>
    private static (int From, int To) Trimmed(List<TypedLine> lines, int from, int to)
    {
        var marked = 0;
        for (var index = from; index < to; index++)
        {
            marked += HasEdge(lines[index]) ? 1 : 0;
        }

        if (marked * 2 < to - from)
        {
            return (from, to);
        }

        while (from < to && !HasEdge(lines[from]))
        {
            from++;
        }

        while (to > from && !HasEdge(lines[to - 1]))
        {
            to--;
        }

        return (from, to);

        static bool HasEdge(TypedLine line) =>
            line.Label is not null || line.Line!.Text.Contains('|', StringComparison.Ordinal);
    }

    private static int CountIn(List<TypedLine> lines, List<(int From, int To)> groups)
    {
        var size = groups
            .Select(group => Period(lines, group.From, group.To))
            .Where(static size => size >= Tuning.MinStrings)
            .GroupBy(static size => size)
            .OrderByDescending(static each => each.Count())
            .ThenByDescending(static each => each.Key)
            .Select(static each => each.Key)
            .FirstOrDefault(Tuning.MaxStrings + 1);
        if (size > Tuning.MaxStrings && groups.Find(group => group.To - group.From == size) is (var from, > 0))
        {
            var first = lines[from].Line!;
            throw first.Wrong(
                0,
                first.Text.Length,
                $"{Tuning.MinStrings} to {Tuning.MaxStrings} lines of strings, not {size}"
            );
        }

        return size;
    }

    /// <summary>How many lines there are, or after how many their names come again.</summary>
    private static int Period(List<TypedLine> lines, int from, int to)
    {
        var count = to - from;
        for (var period = Tuning.MinStrings; period <= Tuning.MaxStrings && period * 2 <= count; period++)
        {
            if (count % period != 0)
            {
                continue;
            }

            var isSame = true;
            for (var index = from + period; index < to && isSame; index++)
            {
                isSame = lines[index].Label is { } label && label == lines[index - period].Label;
            }

            if (isSame)
            {
                return period;
            }
        }

        return count > Tuning.MaxStrings && count % 6 == 0 ? 6 : count;
    }

    /// <summary>Gives the lines between two systems to the one above, to the one below, or to none.</summary>
    private static (IReadOnlyList<TabSystem>, IReadOnlyList<TypedLine>) Apart(
        List<TypedLine> lines,
        List<int> starts,
        int count
    )
    {
        var systems = new List<TabSystem>(starts.Count);
        var other = new List<TypedLine>();
        var above = Take(0, starts[0], hasSystemAbove: false, hasSystemBelow: true).Above;
        for (var index = 0; index < starts.Count; index++)
        {
            var isLast = index + 1 == starts.Count;
            var end = starts[index] + count;
            var (below, next) = Take(end, isLast ? lines.Count : starts[index + 1], true, !isLast);
            var strings = lines.GetRange(starts[index], count);
            systems.Add(
                new([.. strings.Select(static each => new TabString(each.Line!, each.Label, each.Start))], above, below)
            );
            above = next;
        }

        return (systems, other);

        (List<TabLine> Below, List<TabLine> Above) Take(int from, int to, bool hasSystemAbove, bool hasSystemBelow)
        {
            var (below, above) = (new List<TabLine>(), new List<TabLine>());
            for (
                ;
                hasSystemAbove && from < to && !lines[from].IsBlank && RowText.IsBelow(lines[from].Line!.Text);
                from++
            )
            {
                below.Add(lines[from].Line!);
            }

            var end = to;
            while (
                hasSystemBelow && end > from && !lines[end - 1].IsBlank && RowText.IsAbove(lines[end - 1].Line!.Text)
            )
            {
                above.Add(lines[--end].Line!);
            }

            above.Reverse();
            for (var index = from; index < end; index++)
            {
                var isBetweenWords = index > from && lines[index - 1].IsBlank && other.Count > 0;
                if (!lines[index].IsBlank)
                {
                    if (isBetweenWords)
                    {
                        other.Add(lines[index - 1]);
                    }

                    other.Add(lines[index]);
                }
            }

            return (below, above);
        }
    }
}
