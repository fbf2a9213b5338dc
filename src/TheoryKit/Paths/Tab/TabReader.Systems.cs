using System.Globalization;
using Fractions;
using TheoryKit.Theory;

namespace TheoryKit.Paths;

internal sealed partial class TabReader
{
    private TabScanner[] scanners = [];
    private readonly List<TabMark> marks = [];
    private int highest;

    private void ReadSystems()
    {
        var holds = systems.Exists(static system =>
            system.Strings.Exists(static line => line.Text.Contains('-', StringComparison.Ordinal))
        );
        highest = options.Neck is null ? Math.Max(neck.Frets, 24) : neck.Frets;
        scanners =
        [
            .. Enumerable
                .Range(1, neck.StringCount)
                .Select(number => new TabScanner(number, highest, hasTimeRow, holds, remarks)),
        ];
        foreach (var system in systems)
        {
            ReadSystem(system);
        }

        SetTimes();
    }

    /// <summary>The bars of a line of a string: what is between bar lines, as first column and the column after the last.</summary>
    private static List<(int From, int To)> BarsOf(string text, int start, out string trailing)
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

    private void ReadSystem(TabSystem system)
    {
        var lines = system.Strings.ToList();
        var segments = new List<List<(int From, int To)>>();
        var (times, timesLine) = (0, lines[0]);
        for (var index = 0; index < lines.Count; index++)
        {
            segments.Add(BarsOf(lines[index].Text, system.Starts[index], out var trailing));
            if (TimesOf(trailing) is { } count)
            {
                (times, timesLine) = (count, lines[index]);
            }
            else if (trailing.Length > 0)
            {
                words.Add((lines[index].Number, LickText.Cleaned(trailing)));
            }
        }

        Func<int, int> moved = static column => column;
        if (!segments.TrueForAll(each => each.SequenceEqual(segments[0])))
        {
            moved = Align(system, lines, segments);
        }

        var first = bars.Count;
        foreach (var (from, to) in segments[0])
        {
            bars.Add(new(bars.Count, from, to));
        }

        var here = bars.GetRange(first, bars.Count - first);
        for (var index = 0; index < lines.Count; index++)
        {
            var number = above + (isUpsideDown ? lines.Count - 1 - index : index);
            foreach (var bar in here)
            {
                FindRepeats(lines[index].Text, bar);
                scanners[number].Read(lines[index], bar, mark => Add(bar, mark));
            }
        }

        foreach (var bar in here)
        {
            Gather(bar);
        }

        if (times > MostTimes)
        {
            var at = Math.Max(
                0,
                timesLine.Text.LastIndexOf(times.ToString(CultureInfo.InvariantCulture), StringComparison.Ordinal)
            );
            throw Wrong(timesLine, at, timesLine.Text.Length - at, $"a repeat of up to {MostTimes} times");
        }

        if (times > 1 && here.Count > 0)
        {
            if (here[^1].Times == 1 && !here.Exists(static bar => bar.BeginsRepeat))
            {
                here[0].BeginsRepeat = true;
            }

            here[^1].Times = times;
        }

        foreach (var bar in here.Where(static bar => bar.Times > 1))
        {
            remarks.Add(
                lines[0],
                Math.Max(0, bar.To - 1),
                1,
                $"What is repeated here is written out, {bar.Times} times in all."
            );
        }

        foreach (var row in system.Above.Concat(system.Below))
        {
            ReadRow(row, here, moved, system);
        }
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

    private static void FindRepeats(string text, TabTypedBar bar)
    {
        bar.BeginsRepeat |= bar.From < text.Length && bar.From < bar.To && text[bar.From] is ':' or '*' or 'o' or 'O';
        if (
            bar.To - 1 > bar.From
            && bar.To <= text.Length
            && bar.To < text.Length
            && text[bar.To] == '|'
            && text[bar.To - 1] is ':' or '*' or 'o' or 'O'
        )
        {
            bar.Times = 2;
        }
    }

    /// <summary>
    /// Lines whose bar lines do not stand below each other: as many bars are put below each other bar by bar, else a bar line counts where
    /// most lines have one. Gives where the columns of the rows above and below have gone.
    /// </summary>
    private Func<int, int> Align(TabSystem system, List<TabLine> lines, List<List<(int From, int To)>> segments)
    {
        var count = segments[0].Count;
        if (!segments.TrueForAll(each => each.Count == count))
        {
            Count(lines, system, segments);
            return static column => column;
        }

        if (
            segments.Exists(each =>
                !each.Select(static bar => bar.To - bar.From)
                    .SequenceEqual(segments[0].Select(static bar => bar.To - bar.From))
            )
        )
        {
            var odd = segments.FindIndex(each => !each.SequenceEqual(segments[0]));
            remarks.Add(
                lines[odd],
                segments[odd].Count > 0 ? segments[odd][0].From : 0,
                1,
                "The bar lines do not stand below each other; the bars are put below each other, each from its beginning."
            );
        }

        var leader = segments
            .GroupBy(static each => each.Count > 0 ? each[^1] : default)
            .MaxBy(static each => each.Count())!
            .First();
        var common = new List<(int From, int To)>();
        var at = 1;
        for (var bar = 0; bar < count; bar++)
        {
            var width = segments.Max(each => each[bar].To - each[bar].From);
            common.Add((at, at + width));
            at += width + 1;
        }

        for (var index = 0; index < lines.Count; index++)
        {
            var (line, own) = (lines[index], segments[index]);
            var text = new char[at];
            var columns = new int[at];
            Array.Fill(text, '-');
            Array.Fill(columns, line.Text.Length);
            for (var bar = 0; bar < count; bar++)
            {
                var (from, to) = own[bar];
                text[common[bar].From - 1] = text[common[bar].To] = '|';
                columns[common[bar].From - 1] = Math.Max(0, from - 1);
                for (var column = from; column < to; column++)
                {
                    text[common[bar].From + column - from] = line.Text[column];
                    columns[common[bar].From + column - from] = column;
                }
            }

            lines[index] = line.Moved(new(text), columns);
        }

        segments[0] = common;
        return column =>
        {
            var (low, high) = (-1, leader.Count - 1);
            while (low < high)
            {
                var middle = (low + high + 1) / 2;
                (low, high) = leader[middle].From <= column + 1 ? (middle, high) : (low, middle - 1);
            }

            var bar = low;
            return bar < 0
                ? column - (leader.Count > 0 ? leader[0].From : 0) + 1
                : common[bar].From + column - leader[bar].From;
        };
    }

    private void Count(List<TabLine> lines, TabSystem system, List<List<(int From, int To)>> segments)
    {
        var width = lines.Max(static line => line.Text.Length);
        var votes = new int[width];
        for (var index = 0; index < lines.Count; index++)
        {
            for (var column = system.Starts[index]; column < lines[index].Text.Length; column++)
            {
                votes[column] += lines[index].Text[column] == '|' ? 1 : 0;
            }
        }

        var text = new char[width];
        for (var column = 0; column < width; column++)
        {
            text[column] = votes[column] * 2 > lines.Count ? '|' : '-';
        }

        var start = system.Starts.Min();
        for (var index = 0; index < lines.Count; index++)
        {
            var (line, changed) = (lines[index], -1);
            var own = line.Text.PadRight(width, '-').ToCharArray();
            for (var column = system.Starts[index]; column < width; column++)
            {
                if ((own[column] == '|') != (text[column] == '|'))
                {
                    changed = changed < 0 ? column : changed;
                    own[column] = own[column] == '|' ? '-' : own[column];
                }
            }

            if (changed >= 0)
            {
                remarks.Add(
                    line,
                    changed,
                    1,
                    "The bar lines do not stand below each other; there is one where most of the strings have it."
                );
                lines[index] = line.Moved(new(own), [.. Enumerable.Range(0, width)]);
            }
        }

        segments[0] = BarsOf(new(text), start, out _);
    }

    private void Add(TabTypedBar bar, TabMark mark)
    {
        marks.Add(mark);
        if (bar.Moments.Count == 0 || bar.Moments[^1].Column != mark.Column)
        {
            bar.Moments.Add(new(mark.Column));
        }

        bar.Moments[^1].Marks.Add(mark);
    }

    /// <summary>Puts what stands in one column together, and with it what belongs there though it stands one beside.</summary>
    private void Gather(TabTypedBar bar)
    {
        var columns = new List<TabMoment>();
        foreach (var moment in bar.Moments.OrderBy(static moment => moment.Column))
        {
            if (columns.Count > 0 && columns[^1].Column == moment.Column)
            {
                columns[^1].Marks.AddRange(moment.Marks);
            }
            else
            {
                columns.Add(moment);
            }
        }

        bar.Moments.Clear();
        foreach (var moment in columns)
        {
            var last = bar.Moments.Count > 0 ? bar.Moments[^1] : null;
            if (
                last is null
                || moment.Column != last.Column + 1
                || !last.Marks.TrueForAll(static mark => mark.IsBracketed || mark.HasTwoDigits)
                || moment.Marks.Exists(mark => last.Marks.Exists(other => other.String == mark.String))
            )
            {
                bar.Moments.Add(moment);
                continue;
            }

            foreach (var mark in moment.Marks)
            {
                remarks.Add(
                    mark.Line,
                    mark.At,
                    mark.Length,
                    "It stands one character beside the number on another string; read as struck together with it."
                );
            }

            last.Marks.AddRange(moment.Marks);
        }
    }

    // ---- Rows above and below ----

    private bool labelsTold;

    private void ReadRow(TabLine row, List<TabTypedBar> here, Func<int, int> moved, TabSystem system)
    {
        var (text, isBelow) = (row.Text, system.Below.Contains(row));
        if (MarksOf(text) is var (isFingers, number, end))
        {
            ReadMarks(row, text[..end], isFingers, number, here, moved);
        }
        else if (IsSpans(text))
        {
            ReadSpans(text, here, moved);
        }
        else if (!isBelow && IsSigns(text))
        {
            ReadSigns(row, here, moved);
        }
        else if (!isBelow && IsBarNumbers(text, system))
        {
            // Numbers of bars.
        }
        else if (TimeTokens(text) is { } tokens && options.Timing == TabTiming.AsWritten)
        {
            foreach (var token in tokens)
            {
                if (
                    token.Text is not ("|" or "||")
                    && BarAt(here, moved(token.At)) is { } bar
                    && (bar.TimeRow ??= row) == row
                )
                {
                    bar.TimeMarks.Add((moved(token.At), token.Text.Length, token.Text));
                }
            }
        }
        else if (!isBelow && IsChords(text))
        {
            ReadChords(row, here, moved);
        }
        else if (!labelsTold && TimeTokens(text) is null)
        {
            labelsTold = true;
            remarks.Add(
                row,
                0,
                text.Length,
                "A row of functions or names is passed over; they follow from the notes and chords."
            );
        }
    }

    private static TabTypedBar? BarAt(List<TabTypedBar> here, int column)
    {
        var (low, high) = (0, here.Count - 1);
        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = column < here[middle].To ? (low, middle) : (middle + 1, high);
        }

        return here.Count == 0 ? null : here[low];
    }

    private static TabMoment? MomentAt(TabTypedBar? bar, int column)
    {
        if (bar is null)
        {
            return null;
        }

        var (low, high) = (0, bar.Moments.Count);
        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = bar.Moments[middle].Column < column - 1 ? (middle + 1, high) : (low, middle);
        }

        TabMoment? near = null;
        for (; low < bar.Moments.Count && bar.Moments[low].Column <= column + 1; low++)
        {
            if (bar.Moments[low].Column == column)
            {
                return bar.Moments[low];
            }

            near ??= bar.Moments[low];
        }

        return near;
    }

    private void ReadMarks(
        TabLine row,
        string text,
        bool isFingers,
        int number,
        List<TabTypedBar> here,
        Func<int, int> moved
    )
    {
        foreach (var token in Tokens(text))
        {
            var column = moved(token.At);
            var mark = MomentAt(BarAt(here, column), column)
                ?.Marks.OrderBy(static each => each.String)
                .ElementAtOrDefault(number - 1);
            if (mark is null)
            {
                remarks.Add(row, token.At, token.Text.Length, "No note stands above it; passed over.");
            }
            else if (!isFingers)
            {
                mark.Name = NoteName.Parse(token.Text);
            }
            else if (token.Text is "T" or "t" or "0")
            {
                mark.Finger = Fingering.Finger.Thumb;
            }
            else if (token.Text is "1" or "2" or "3" or "4")
            {
                mark.Finger = (Fingering.Finger)(token.Text[0] - '0');
            }
            else if (token.Text is not ("o" or "-"))
            {
                remarks.Add(row, token.At, token.Text.Length, "A finger is T (thumb) or 1 to 4; passed over.");
            }
        }
    }

    private static void ReadSpans(string text, List<TabTypedBar> here, Func<int, int> moved)
    {
        for (var at = 0; at < text.Length; )
        {
            if (SpanAt(text, at) is not var (length, isMuted))
            {
                at++;
                continue;
            }

            // The words, then a line up to a bar or a gap.
            var end = at + length;
            while (
                end < text.Length
                && (
                    text[end] is '-' or '.' or '~' or '='
                    || (text[end] == ' ' && end + 1 < text.Length && text[end + 1] is '-' or '.' or '|')
                )
            )
            {
                end++;
            }

            end += end < text.Length && text[end] == '|' ? 1 : 0;
            var (from, to) = (moved(at), moved(end - 1));
            var first = BarAt(here, from) is { } begin ? begin.Number - here[0].Number : 0;
            for (var index = first; index < here.Count && here[index].From <= to; index++)
            {
                foreach (var moment in here[index].Moments)
                {
                    if (moment.Column < from || moment.Column > to)
                    {
                        continue;
                    }

                    foreach (var mark in moment.Marks)
                    {
                        if (isMuted)
                        {
                            mark.Add(Technique.PalmMute);
                        }
                        else
                        {
                            mark.Rings = true;
                        }
                    }
                }
            }

            at = end;
        }
    }

    private void ReadSigns(TabLine row, List<TabTypedBar> here, Func<int, int> moved)
    {
        foreach (var token in Tokens(row.Text))
        {
            if (token.Text[0] == '~')
            {
                var (from, to) = (moved(token.At), moved(token.At + token.Text.Length - 1));
                var bar = BarAt(here, from);
                var waved = MomentAt(bar, from) ?? MomentAt(bar, from - 2) ?? MomentAt(bar, to);
                waved?.Marks.ForEach(static mark => mark.Add(Technique.Vibrato));
                continue;
            }

            var column = moved(token.At);
            if (MomentAt(BarAt(here, column), column) is not { } moment)
            {
                remarks.Add(row, token.At, token.Text.Length, "No note stands below it; passed over.");
                continue;
            }

            foreach (var mark in moment.Marks)
            {
                foreach (var c in token.Text)
                {
                    mark.Add(c == '.' ? Technique.Staccato : Technique.Accent);
                }
            }
        }
    }

    private void ReadChords(TabLine row, List<TabTypedBar> here, Func<int, int> moved)
    {
        foreach (var token in Tokens(row.Text, keepsBrackets: true))
        {
            if (ChordOf(token.Text, out var chord) && BarAt(here, moved(token.At)) is { } bar)
            {
                bar.Chords.Add((moved(token.At), chord, row, token.At, token.Text.Length));
            }
        }
    }
}
