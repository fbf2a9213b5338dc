using System.Globalization;
using System.Text;
using Fractions;
using TheoryKit.Theory;
using TheoryKit.Tunings;

namespace TheoryKit.Paths;

/// <summary>Reads tab, as the remarks on <see cref="PlainTab"/> say.</summary>
internal sealed partial class TabReader(string text, TabReadOptions options)
{
    /// <summary>A repeat is written out at most so many times.</summary>
    public const int MostTimes = 16;

    private readonly TabRemarks remarks = new();
    private readonly List<(int Line, string Text)> words = [];
    private readonly List<TabSystem> systems = [];
    private readonly List<TabTypedBar> bars = [];
    private TabLine? firstLine;
    private Neck neck = null!;
    private TimeSignature time;
    private bool isTimeGiven;
    private bool hasTimeRow;

    /// <summary>How a sound is spelled that no row of names spells.</summary>
    public static Pitch Spell(Chord? chord, int midiNumber)
    {
        try
        {
            return chord?.Spell(midiNumber) ?? Pitch.FromMidi(midiNumber);
        }
        catch (OverflowException)
        {
            return Pitch.FromMidi(midiNumber);
        }
    }

    public TabReading Read()
    {
        FindSystems();
        FindNeck();
        FindTime();
        ReadSystems();
        var path = Build();
        words.Sort(static (left, right) => left.Line.CompareTo(right.Line));
        return new()
        {
            Path = path,
            Remarks = [.. remarks.InOrder],
            Words = LickText.Lines(string.Join('\n', words.Select(static each => each.Text)), nameof(TabReading.Words)),
        };
    }

    private static PlacedFormatException Wrong(TabLine line, int at, int length, string expected) =>
        PlacedFormatException.WithCaret(
            PlainTab.What,
            line.Number,
            line.Raw,
            line.Column(at),
            Math.Max(1, line.Column(at + length) - line.Column(at)),
            expected
        );

    // ---- Lines ----

    /// <summary>What a line is by itself.</summary>
    private sealed record Sorted(TabLine Line, bool IsString, string? Label, int Start)
    {
        public bool IsBlank => string.IsNullOrWhiteSpace(Line.Text);
    }

    private void FindSystems()
    {
        var lines = new List<Sorted>();
        var number = options.FirstLine;
        foreach (var range in text.AsSpan().Split('\n'))
        {
            var raw = text.AsSpan()[range];
            raw = raw.EndsWith("\r") ? raw[..^1] : raw;
            lines.Add(Sort(new(number++, raw.ToString())));
        }

        firstLine = lines[0].Line;
        Gather(lines);
    }

    private static Sorted Sort(TabLine line)
    {
        var isString = IsString(line.Text, out var label, out var start);
        return new(line, isString, label, start);
    }

    /// <summary>Whether a line is that of a string: maybe a name, then numbers and signs on a line between bars.</summary>
    private static bool IsString(string text, out string? label, out int start)
    {
        (label, start) = (null, 0);
        while (start < text.Length && text[start] == ' ')
        {
            start++;
        }

        if (start == text.Length || text[start] == '#')
        {
            return false;
        }

        label = LabelAt(text, ref start);
        var hasBar = start < text.Length && text[start] is '|' or ':';
        var last = text.LastIndexOf('|');
        var end = last > start ? last + 1 : text.Length;
        var (dashes, digits, letters, foreign, bars) = (0, 0, 0, 0, 0);
        foreach (var c in text.AsSpan(start, end - start))
        {
            switch (c)
            {
                case '-' or '=':
                    dashes++;
                    break;
                case '|':
                    bars++;
                    break;
                case >= '0' and <= '9':
                    digits++;
                    break;
                case not ' ':
                    letters += char.IsLetter(c) || c is '/' or '.' ? 1 : 0;
                    foreign += Signs.Contains(c) ? 0 : 1;
                    break;
            }
        }

        // Between bars numbers and signs may stand as close as they like; without, only a line makes it one.
        return hasBar
            ? dashes >= 1
                ? foreign <= 1 + (dashes / 2)
                : bars >= 2 && foreign == 0 && (letters == 0 || letters <= digits)
            : dashes >= 3 && letters + foreign <= dashes && dashes * 3 >= end - start && Begins.Contains(text[start]);
    }

    private static readonly System.Buffers.SearchValues<char> Begins = System.Buffers.SearchValues.Create(
        "-= 0123456789([<xX/\\hpt"
    );

    private static readonly System.Buffers.SearchValues<char> Signs = System.Buffers.SearchValues.Create(
        "hpbrsStTxXvVwHPBRmf~^/\\()<>[]{}.:*oO>'\u00bd\u00bc\u00be"
    );

    /// <summary>The name or number of a string before its line.</summary>
    private static string? LabelAt(string text, ref int at)
    {
        var end = at;
        if (text[at] is (>= 'A' and <= 'H') or (>= 'a' and <= 'h'))
        {
            end++;
            while (end < text.Length && end < at + 3 && text[end] is '#' or 'b')
            {
                end++;
            }

            // More of them, or a double sharp, only right before the bar: x and b are signs of notes too.
            var more = end;
            while (char.IsAsciiLetterUpper(text[at]) && more < text.Length && text[more] is '#' or 'b' or 'x')
            {
                more++;
            }

            end = text.AsSpan(more).TrimStart(' ').StartsWith("|") ? more : end;

            while (end < text.Length && end < at + 5 && char.IsAsciiDigit(text[end]))
            {
                end++;
            }
        }
        else
        {
            while (end < text.Length && end < at + 2 && char.IsAsciiDigit(text[end]))
            {
                end++;
            }
        }

        if (end == at)
        {
            return null;
        }

        var after = end;
        while (after < text.Length && text[after] == ' ')
        {
            after++;
        }

        var isDigit = char.IsAsciiDigit(text[at]);
        if (after == text.Length || !(text[after] is '|' || (!isDigit && text[after] is ':' or '-' or '=')))
        {
            return null;
        }

        var label = text[at..end];
        at = after;
        return label;
    }

    /// <summary>Puts lines of strings together, and gives the others to those above or below, or to the words.</summary>
    private void Gather(List<Sorted> lines)
    {
        var groups = new List<(int From, int To)>();
        for (var index = 0; index < lines.Count; )
        {
            if (!lines[index].IsString)
            {
                index++;
                continue;
            }

            var to = index + 1;
            while (to < lines.Count && lines[to].IsString)
            {
                to++;
            }

            groups.Add(Trimmed(lines, index, to));
            index = to;
        }

        groups.RemoveAll(static group => group.To <= group.From);
        if (groups.Count >= Tuning.MinStrings && groups.TrueForAll(static group => group.To - group.From == 1))
        {
            groups = Apart(lines);
        }

        var count = StringCount(lines, groups);
        var last = 0;
        foreach (var (from, to) in groups)
        {
            if (to - from < Tuning.MinStrings && to - from != count)
            {
                // Rules and the like.
                continue;
            }

            if ((to - from) % count != 0)
            {
                throw Wrong(
                    lines[from].Line,
                    0,
                    lines[from].Line.Text.Length,
                    options.Neck is null && systems.Count > 0
                        ? $"{count} lines for {count} strings as above, not {to - from}"
                        : $"{count} lines, one for each string of the neck, not {to - from}"
                );
            }

            for (var first = from; first < to; first += count)
            {
                var system = new TabSystem
                {
                    Strings = [.. lines.GetRange(first, count).Select(static each => each.Line)],
                    Labels = [.. lines.GetRange(first, count).Select(static each => each.Label)],
                    Starts = [.. lines.GetRange(first, count).Select(static each => each.Start)],
                };
                Between(lines, last, first, system);
                systems.Add(system);
                last = first + count;
            }
        }

        if (systems.Count == 0)
        {
            var line = lines.Find(static each => !each.IsBlank)?.Line ?? firstLine!;
            throw Wrong(
                line,
                0,
                Math.Max(1, line.Text.Length),
                "a line for each string, such as e|--5--7--|, one below the other"
            );
        }

        Between(lines, last, lines.Count, null);
    }

    /// <summary>A group of lines without those at its ends that have neither name nor bar while others do (brackets over tuplets, rules).</summary>
    private static (int From, int To) Trimmed(List<Sorted> lines, int from, int to)
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

        static bool HasEdge(Sorted line) =>
            line.Label is not null || line.Line.Text.Contains('|', StringComparison.Ordinal);
    }

    /// <summary>Lines of strings with other lines between each two of them, as one group where only empty lines are between.</summary>
    private static List<(int From, int To)> Apart(List<Sorted> lines)
    {
        var kept = lines.Where(static each => !each.IsBlank).ToList();
        lines.Clear();
        lines.AddRange(kept);
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

    private int StringCount(List<Sorted> lines, List<(int From, int To)> groups)
    {
        if (options.Neck is { } given)
        {
            return given.StringCount;
        }

        var sizes = groups
            .Select(group => Period(lines, group.From, group.To))
            .Where(static size => size >= Tuning.MinStrings)
            .GroupBy(static size => size)
            .OrderByDescending(static each => each.Count())
            .ThenByDescending(static each => each.Key)
            .Select(static each => each.Key)
            .ToList();
        if (sizes.Count > 0 && sizes[0] > Tuning.MaxStrings)
        {
            var first = lines[groups.First(group => group.To - group.From == sizes[0]).From].Line;
            throw Wrong(
                first,
                0,
                first.Text.Length,
                $"{Tuning.MinStrings} to {Tuning.MaxStrings} lines of strings, not {sizes[0]}"
            );
        }

        return sizes.Count > 0 ? sizes[0] : Tuning.MaxStrings + 1;
    }

    /// <summary>How many lines there are, or after how many their names come again.</summary>
    private static int Period(List<Sorted> lines, int from, int to)
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

    /// <summary>Gives the lines between two systems to the one above, to the one below, or to the words.</summary>
    private void Between(List<Sorted> lines, int from, int to, TabSystem? next)
    {
        if (systems.Count > 0)
        {
            while (from < to && !lines[from].IsBlank && IsBelow(lines[from].Line.Text))
            {
                systems[^1].Below.Add(lines[from++].Line);
            }
        }

        var end = to;
        if (next is not null)
        {
            while (end > from && !lines[end - 1].IsBlank && IsAbove(lines[end - 1].Line.Text))
            {
                end--;
            }

            for (var index = end; index < to; index++)
            {
                next.Above.Add(lines[index].Line);
            }
        }

        var blank = false;
        for (var index = from; index < end; index++)
        {
            if (lines[index].IsBlank)
            {
                blank = words.Count > 0;
                continue;
            }

            if (blank)
            {
                words.Add((lines[index - 1].Line.Number, ""));
                blank = false;
            }

            AddWords(lines[index].Line);
        }
    }

    private void AddWords(TabLine line)
    {
        var words = line.Raw.TrimEnd();
        var lead = words.TakeWhile(static c => c == ' ').Count();
        if (lead < words.Length && words[lead] == '#')
        {
            words = words[(lead + 1)..];
            words = words.StartsWith(' ') ? words[1..] : words;
        }
        else if (TitleAt(words) is { } title)
        {
            (titleTuning, titleTime, titleCapo) = (title.Tuning, title.Time, title.Capo);
            words = words[..title.At].TrimEnd();
        }

        if (!LickText.IsLine(words))
        {
            words = LickText.Cleaned(words);
            if (!LickText.IsLine(line.Raw.Replace('\t', ' ')))
            {
                remarks.Add(line, 0, line.Text.Length, "Control characters and halves of characters are replaced.");
            }
        }

        this.words.Add((line.Number, words));
    }
}
