using System.Buffers;
using System.Diagnostics.CodeAnalysis;

namespace TheoryKit.Licks.Tab.Reading;

/// <summary>A line of the text, and what it is by itself.</summary>
/// <param name="Number">Its number, from 1.</param>
/// <param name="Line">The line; null where nothing stands on it, not even a space.</param>
/// <param name="IsString">Whether it is that of a string.</param>
/// <param name="Label">The name or number of the string.</param>
/// <param name="Start">Where what is on the string begins.</param>
internal readonly record struct TypedLine(
    int Number,
    TabLine? Line,
    bool IsString = false,
    string? Label = null,
    int Start = 0
)
{
    private static readonly SearchValues<char> Begins = SearchValues.Create("-= 0123456789([<xX/\\hpt");

    private static readonly SearchValues<char> Signs = SearchValues.Create(
        "hpbrsStTxXvVwHPBRmf~^/\\()<>[]{}.:*oO>'\u00bd\u00bc\u00be"
    );

    [MemberNotNullWhen(false, nameof(Line))]
    public bool IsBlank => string.IsNullOrWhiteSpace(Line?.Text);

    /// <summary>From a text to its lines; there is always at least one.</summary>
    public static List<TypedLine> Of(string text, int firstNumber)
    {
        var lines = new List<TypedLine>();
        foreach (var range in text.AsSpan().Split('\n'))
        {
            var raw = text.AsSpan()[range];
            raw = raw.EndsWith("\r") ? raw[..^1] : raw;
            var number = firstNumber + lines.Count;
            lines.Add(raw.IsEmpty ? new(number, null) : Sort(new(number, raw.ToString())));
        }

        return lines;
    }

    private static TypedLine Sort(TabLine line)
    {
        var isString = IsStringAt(line.Text, out var label, out var start);
        return new(line.Number, line, isString, label, start);
    }

    /// <summary>Whether a line is that of a string: maybe a name, then numbers and signs on a line between bars.</summary>
    private static bool IsStringAt(string text, out string? label, out int start)
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
}
