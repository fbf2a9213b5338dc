using System.Buffers;
using System.Globalization;
using TheoryKit.Licks.Tab.Options;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Progressions;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Licks.Tab.Reading;

/// <summary>A word of a row and where it begins.</summary>
internal readonly record struct Token(int At, string Text);

/// <summary>From the text of a row above or below strings to what it may be by itself.</summary>
internal static class RowText
{
    // What holds for a stretch of notes, with a line as far as it goes or none.
    private static readonly (string Words, bool IsMuted)[] Spans =
    [
        ("PM", true),
        ("P.M.", true),
        ("P.M", true),
        ("palm mute", true),
        ("let ring", false),
        ("l.r.", false),
    ];

    private static readonly SearchValues<char> SpanSigns = SearchValues.Create("-.|~ =");

    public static bool IsBelow(string row) =>
        MarksOf(row) is not null || TimeTokens(row) is not null || IsSpans(row) || IsLabels(row);

    public static bool IsAbove(string row) =>
        IsSpans(row) || IsSigns(row) || IsNumbers(row) || TimeTokens(row) is not null || IsChords(row);

    public static List<Token> Tokens(ReadOnlySpan<char> row, bool keepsBrackets = false)
    {
        var tokens = new List<Token>();
        for (var at = 0; at < row.Length; )
        {
            if (row[at] == ' ')
            {
                at++;
                continue;
            }

            var (end, depth) = (at, 0);
            while (end < row.Length && (row[end] != ' ' || depth > 0))
            {
                depth +=
                    !keepsBrackets ? 0
                    : row[end] == '[' ? 1
                    : row[end] == ']' ? -1
                    : 0;
                end++;
            }

            tokens.Add(new(at, row[at..end].ToString()));
            at = end;
        }

        return tokens;
    }

    public static bool IsSigns(string row) => row.AsSpan().Trim().TrimStart(">.^~ ").IsEmpty;

    public static bool IsNumbers(string row) =>
        Tokens(row) is { Count: > 0 } tokens
        && tokens.TrueForAll(static token =>
            int.TryParse(token.Text.AsSpan().TrimEnd('.'), NumberStyles.None, CultureInfo.InvariantCulture, out _)
        );

    public static bool IsSpans(string row)
    {
        var (at, found) = (0, false);
        while (at < row.Length)
        {
            if (SpanAt(row, at) is var (length, _))
            {
                at += length;
                found = true;
            }
            else if (SpanSigns.Contains(row[at]))
            {
                at++;
            }
            else
            {
                return false;
            }
        }

        return found;
    }

    public static (int Length, bool IsMuted)? SpanAt(string row, int at)
    {
        if (!char.IsLetter(row[at]))
        {
            return null;
        }

        foreach (var (words, isMuted) in Spans)
        {
            if (row.AsSpan(at).StartsWith(words, StringComparison.OrdinalIgnoreCase))
            {
                return (words.Length, isMuted);
            }
        }

        return null;
    }

    private static bool IsLabels(string row) =>
        Tokens(row) is { Count: > 0 } tokens
        && tokens.TrueForAll(static token =>
            Degree.TryParse(token.Text, null, out _)
            || NoteName.TryParse(token.Text, null, out _)
            || token.Text is "T" or "o" or "|"
        );

    public static bool IsChords(string row)
    {
        var found = false;
        foreach (var token in Tokens(row, keepsBrackets: true))
        {
            if (IsChord(token.Text, out _))
            {
                found = true;
            }
            else if (token.Text is not ("|" or "%" or "||") && !token.Text.All(char.IsAsciiDigit))
            {
                return false;
            }
        }

        return found;
    }

    /// <summary>Whether it is a chord, or says that there is none.</summary>
    public static bool IsChord(string text, out Chord? chord)
    {
        chord = null;
        return text is "N.C." or "NC" || (char.IsAsciiLetterUpper(text[0]) && Chord.TryParse(text, null, out chord));
    }

    /// <summary>The words of a row of time, cut where a count is written without spaces; null for another row.</summary>
    public static List<Token>? TimeTokens(string row)
    {
        var found = new List<Token>();
        var (last, rests, hasCount, hasUpper, hasOtherUpper) = (0, 0, false, false, false);
        foreach (var token in Tokens(row))
        {
            if (token.Text is "end" or "|" or "||")
            {
                // It may stand over a beat, as an r may.
                rests += token.Text == "end" ? 1 : 0;
                found.Add(token);
                continue;
            }

            if (TabRhythm.IsRhythm(token.Text))
            {
                hasUpper |= char.IsAsciiLetterUpper(token.Text[0]);
                hasOtherUpper |= char.IsAsciiLetterUpper(token.Text[0]) && token.Text[0] != 'E';
                found.Add(token);
                continue;
            }

            for (var at = 0; at < token.Text.Length; )
            {
                var end = at + 1;
                if (char.IsAsciiDigit(token.Text[at]))
                {
                    while (end < token.Text.Length && end < at + 2 && char.IsAsciiDigit(token.Text[end]))
                    {
                        end++;
                    }

                    var number = int.Parse(token.Text.AsSpan(at, end - at), CultureInfo.InvariantCulture);
                    var from = number > last ? last : 0;
                    if (number is 0 or > TimeSignature.MaxBeats || number - from - 1 > rests)
                    {
                        return null;
                    }

                    (last, rests, hasCount) = (number, 0, true);
                }
                else if (token.Text[at] == 'r')
                {
                    rests++;
                }
                else if (token.Text[at] is not ('&' or '+' or 'e' or 'a' or '.' or '|'))
                {
                    return null;
                }

                found.Add(new(token.At + at, token.Text[at..end]));
                at = end;
            }
        }

        // A lone E above is a chord.
        return found.Count == 0 || (hasUpper && (!hasOtherUpper || hasCount)) ? null : found;
    }

    /// <summary>A row of fingers or names that says so at its end: its words, and of which of the notes struck together they are.</summary>
    public static (bool IsFingers, int Number, List<Token> Tokens)? MarksOf(string row)
    {
        var end = row.AsSpan().TrimEnd();
        var number = 1;
        var space = end.LastIndexOf(' ');
        if (space > 0 && char.IsAsciiDigit(end[^1]))
        {
            if (!int.TryParse(end[(space + 1)..], NumberStyles.None, CultureInfo.InvariantCulture, out number))
            {
                return null;
            }

            end = end[..space].TrimEnd();
        }

        if (end.EndsWith(" fingers"))
        {
            return (true, number, Tokens(end[..^"fingers".Length]));
        }

        if (!end.EndsWith(" notes") || number is < 1 or > Tuning.MaxStrings)
        {
            return null;
        }

        var names = Tokens(end[..^"notes".Length]);
        return names.TrueForAll(static token => NoteName.TryParse(token.Text, null, out _))
            ? (false, number, names)
            : null;
    }
}
