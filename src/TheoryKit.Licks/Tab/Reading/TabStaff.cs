using System.Globalization;

namespace TheoryKit.Licks.Tab.Reading;

/// <summary>A bar as typed.</summary>
/// <param name="Number">Which bar of the text it is, from 0.</param>
/// <param name="From">Its first column.</param>
/// <param name="To">The column after its last.</param>
/// <param name="BeginsRepeat">Whether what is repeated begins with it.</param>
/// <param name="Times">How many times what ends with it is played.</param>
internal sealed record TabBar(int Number, int From, int To, bool BeginsRepeat, int Times);

/// <summary>The strings of a system, their bars below each other.</summary>
/// <param name="Lines">The lines from the top.</param>
/// <param name="Bars">The bars.</param>
/// <param name="Moved">Where the columns of the rows above and below have gone.</param>
/// <param name="HasDashes">Whether a line is typed with -, so that = is more than the line.</param>
internal sealed record TabStaff(
    IReadOnlyList<TabLine> Lines,
    IReadOnlyList<TabBar> Bars,
    Func<int, int> Moved,
    bool HasDashes
)
{
    /// <summary>A repeat is written out at most so many times.</summary>
    private const int MostTimes = 16;

    /// <summary>From systems to their bars, and the words after their last bar lines.</summary>
    public static List<TabStaff> Of(
        IReadOnlyList<TabSystem> systems,
        TabRemarks remarks,
        out List<(int Line, string Text)> words
    )
    {
        var staves = new List<TabStaff>(systems.Count);
        words = [];
        var count = 0;
        foreach (var system in systems)
        {
            staves.Add(Of(system, count, words, remarks));
            count += staves[^1].Bars.Count;
        }

        return staves;
    }

    private static TabStaff Of(TabSystem system, int number, List<(int Line, string Text)> words, TabRemarks remarks)
    {
        var own = new List<List<(int From, int To)>>();
        var (times, timesLine) = (0, system.Strings[0].Line);
        foreach (var (line, _, start) in system.Strings)
        {
            own.Add(BarsOf(line.Text, start, out var trailing));
            if (TimesOf(trailing) is { } count)
            {
                (times, timesLine) = (count, line);
            }
            else if (trailing.Length > 0)
            {
                words.Add((line.Number, LickText.Cleaned(trailing)));
            }
        }

        if (times > MostTimes)
        {
            var at = Math.Max(
                0,
                timesLine.Text.LastIndexOf(times.ToString(CultureInfo.InvariantCulture), StringComparison.Ordinal)
            );
            throw timesLine.Wrong(at, timesLine.Text.Length - at, $"a repeat of up to {MostTimes} times");
        }

        var aligned = BarAlignment.Of(system, own, remarks);
        var bars = aligned.Bars.Select((bar, index) => BarOf(aligned.Lines, number + index, bar.From, bar.To)).ToList();
        if (times > 1 && bars.Count > 0)
        {
            var isAlone = bars[^1].Times == 1 && !bars.Exists(static bar => bar.BeginsRepeat);
            bars[0] = isAlone ? bars[0] with { BeginsRepeat = true } : bars[0];
            bars[^1] = bars[^1] with { Times = times };
        }

        var hasDashes = system.Strings.Any(static each => each.Line.Text.Contains('-', StringComparison.Ordinal));
        return new(aligned.Lines, bars, aligned.Moved, hasDashes);
    }

    /// <summary>The bars of a line of a string: what is between bar lines, as first column and the column after the last.</summary>
    internal static List<(int From, int To)> BarsOf(string text, int start, out string trailing)
    {
        var found = new List<(int From, int To)>();
        var at = start;
        trailing = "";
        if (at < text.Length && text[at] == ':' && at + 1 < text.Length && text[at + 1] != '|')
        {
            at++;
        }

        while (at < text.Length)
        {
            while (at < text.Length && text[at] == '|')
            {
                at++;
            }

            var end = text.IndexOf('|', at);
            if (end >= 0)
            {
                found.Add((at, end));
                at = end;
                continue;
            }

            var rest = text.AsSpan(at);
            if (rest.IndexOfAny('-', '=') >= 0 || (found.Count == 0 && !rest.IsWhiteSpace()))
            {
                found.Add((at, at + rest.TrimEnd().Length));
            }
            else
            {
                trailing = rest.Trim().ToString();
            }

            break;
        }

        return found;
    }

    private static int? TimesOf(string trailing)
    {
        var text = trailing.AsSpan().Trim().Trim("()[] ");
        text =
            text.StartsWith("x") || text.StartsWith("X") ? text[1..]
            : text.EndsWith("x") || text.EndsWith("X") ? text[..^1]
            : "";
        text = text.Trim();
        return
            text.Length is 0 or > 9
            || !int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var times)
            ? null
            : times;
    }

    private static TabBar BarOf(IReadOnlyList<TabLine> lines, int number, int from, int to)
    {
        var (begins, ends) = (false, false);
        foreach (var line in lines)
        {
            var text = line.Text;
            begins |= from < text.Length && from < to && IsDot(text[from]);
            ends |= to - 1 > from && to < text.Length && text[to] == '|' && IsDot(text[to - 1]);
        }

        return new(number, from, to, begins, ends ? 2 : 1);

        static bool IsDot(char c) => c is ':' or '*' or 'o' or 'O';
    }
}
