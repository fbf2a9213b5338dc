using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text;
using TheoryKit.Values;

namespace TheoryKit.Licks.Search;

public sealed partial record LickQuery : ISpanParsable<LickQuery>
{
    private const string Closing = "a closing quotation mark";

    /// <summary>The query as <see cref="Parse(string, IFormatProvider?)"/> reads it.</summary>
    public override string ToString() => string.Join(' ', criteria);

    /// <summary>Reads a query.</summary>
    /// <remarks>
    /// Terms with spaces between; a lick is found if all of them are true of it. Each is a key, a colon and what is asked, in quotation
    /// marks where that has spaces or quotation marks (inside, <c>\"</c> and <c>\\</c> stand for those two signs). A hyphen in front of a term turns it round: <c>-technique:bend</c>.
    /// A word alone is looked for in all that a lick says of itself.
    /// <list type="table">
    /// <item><term><c>function:3</c></term><description>some note is the third; <c>function:b9,1</c> one right after the other; <c>function:5,..,1</c> with any notes between</description></item>
    /// <item><term><c>strong:3</c></term><description>a third on a strong beat</description></item>
    /// <item><term><c>technique:bend</c></term><description>by name or sign; hyphens may stand for the spaces in it</description></item>
    /// <item><term><c>chord:m9</c>, <c>chord:Gm9</c></term><description>over a chord of that quality, over that chord</description></item>
    /// <item><term><c>contour:up,down</c></term><description>the shape in the large; <c>level</c> for one pitch</description></item>
    /// <item><term><c>tag:slow</c>, <c>tune:boats</c>, <c>text:boats</c></term><description>a tag, the tune or a part of its name, any text</description></item>
    /// <item><term><c>tempo:90-120</c>, <c>bars:2</c>, <c>notes:8-</c></term><description>numbers within a range</description></item>
    /// <item><term><c>like:"Boat call"/70</c></term><description>alike to that lick of the folder, at least 70 %; 50 where nothing is said</description></item>
    /// <item><term><c>line:"0:1/2 +3:1"/70</c></term><description>alike to a line as <see cref="LickLine"/> writes it</description></item>
    /// <item><term><c>tuning:DADGAD</c>, <c>neck:…</c></term><description>a tuning by its name or notes, a neck</description></item>
    /// </list>
    /// An empty text finds every lick.
    /// </remarks>
    /// <exception cref="FormatException">The text is not a query; the message says where and what would have worked.</exception>
    public static partial LickQuery Parse(string s, IFormatProvider? provider = null);

    /// <summary>A criterion as it stands in a query.</summary>
    internal static string Write(LickCriterion criterion)
    {
        var (sign, inner) = criterion is LickCriterion.Not not ? ("-", not.Inner) : ("", criterion);
        double? least = inner switch
        {
            LickCriterion.Like like => like.Least,
            LickCriterion.AlikeTo alike => alike.Least,
            _ => null,
        };
        var value = inner.Value;
        var isQuoted = least is not null || value.Any(static c => c == '"' || char.IsWhiteSpace(c));
        var text = new StringBuilder().Append(sign).Append(inner.Key).Append(':');
        if (isQuoted)
        {
            text.Append('"')
                .Append(
                    value
                        .Replace("\\", "\\\\", StringComparison.Ordinal)
                        .Replace("\"", "\\\"", StringComparison.Ordinal)
                )
                .Append('"');
        }
        else
        {
            text.Append(value);
        }

        return least is { } part && !part.Equals(LickCriterion.UsualLeast)
            ? text.Append(CultureInfo.InvariantCulture, $"/{Math.Round(part * 100)}").ToString()
            : text.ToString();
    }

    private static bool Read(ref TextCursor cursor, [MaybeNullWhen(false)] out LickQuery query)
    {
        query = null;
        var criteria = new List<LickCriterion>();
        while (!cursor.AtEnd)
        {
            if (!ReadTerm(ref cursor, out var criterion))
            {
                return false;
            }

            criteria.Add(criterion);
            if (!cursor.SkipSpaces() && !cursor.AtEnd)
            {
                return cursor.Fail("a space before the next term");
            }
        }

        query = new(criteria);
        return true;
    }

    private static bool ReadTerm(ref TextCursor cursor, [MaybeNullWhen(false)] out LickCriterion criterion)
    {
        criterion = null;
        var isTurned = cursor.Take('-');
        var start = cursor.Position;
        var kind = Kinds[^1];
        if (cursor.Current == '"')
        {
            kind = Kinds.First(static each => each.Key == "text");
        }
        else
        {
            var end = start;
            while (
                end < cursor.Text.Length && !char.IsWhiteSpace(cursor.Text[end]) && cursor.Text[end] is not (':' or '"')
            )
            {
                end++;
            }

            if (end < cursor.Text.Length && cursor.Text[end] == ':')
            {
                var key = cursor.Text[start..end].ToString();
                var found = Array.Find(Kinds, each => each.Key.Equals(key, StringComparison.OrdinalIgnoreCase));
                if (found is null)
                {
                    return cursor.Fail(
                        start,
                        $"one of the keys {string.Join(", ", Kinds.Select(static each => each.Key))} before the colon"
                    );
                }

                kind = found;
                cursor.Position = end + 1;
            }
            else
            {
                kind = Kinds.First(static each => each.Key == "text");
                if (isTurned && cursor.Current == '-')
                {
                    return cursor.Fail("a term after the hyphen (as in -technique:bend)");
                }
            }
        }

        if (!ReadValue(ref cursor, kind, out criterion))
        {
            return false;
        }

        criterion = isTurned ? new LickCriterion.Not(criterion) : criterion;
        return true;
    }

    private static bool ReadValue(ref TextCursor cursor, Kind kind, [MaybeNullWhen(false)] out LickCriterion criterion)
    {
        criterion = null;
        var start = cursor.Position;
        var least = LickCriterion.UsualLeast;
        string value;
        if (cursor.Take('"'))
        {
            start = cursor.Position;
            if (
                !ReadQuoted(ref cursor, out value)
                || (kind.HasLeast && cursor.Take('/') && !ReadLeast(ref cursor, out least))
            )
            {
                return false;
            }
        }
        else
        {
            while (!cursor.AtEnd && !char.IsWhiteSpace(cursor.Current) && cursor.Current != '"')
            {
                cursor.Position++;
            }

            value = cursor.Text[start..cursor.Position].ToString();
            var slash = kind.Key == "like" ? value.LastIndexOf('/') : -1;
            if (slash > 0 && slash < value.Length - 1 && value.AsSpan(slash + 1).IndexOfAnyExceptInRange('0', '9') < 0)
            {
                var end = cursor.Position;
                cursor.Position = start + slash + 1;
                if (!ReadLeast(ref cursor, out least))
                {
                    return false;
                }

                (cursor.Position, value) = (end, value[..slash]);
            }
        }

        var inner = new TextCursor(value, cursor.Provider);
        inner.SkipSpaces();
        if (inner.AtEnd)
        {
            return cursor.Fail(start, $"what to look for (as in {kind.Example})");
        }

        if (kind.Read(ref inner, least, out criterion))
        {
            inner.SkipSpaces();
            if (inner.AtEnd)
            {
                return true;
            }

            criterion = null;
            inner.Fail("nothing more here");
        }

        return cursor.Fail(
            Math.Min(start + inner.ErrorPosition, cursor.Text.Length),
            $"{inner.Expected} (as in {kind.Example})"
        );
    }

    private static bool ReadQuoted(ref TextCursor cursor, out string value)
    {
        var text = new StringBuilder();
        value = "";
        while (!cursor.Take('"'))
        {
            var isEscaped = cursor.Take('\\');
            if (cursor.AtEnd)
            {
                return cursor.Fail(Closing);
            }

            if (isEscaped && cursor.Current is not ('"' or '\\'))
            {
                return cursor.Fail("a quotation mark or another backslash after a backslash");
            }

            text.Append(cursor.Current);
            cursor.Position++;
        }

        value = text.ToString();
        return true;
    }

    private static bool ReadLeast(ref TextCursor cursor, out double least)
    {
        var start = cursor.Position;
        if (cursor.TakeNumber(3, out var percent) && percent <= 100)
        {
            least = percent / 100.0;
            return true;
        }

        least = 0;
        return cursor.Fail(start, "how alike at least, in percent, up to 100");
    }
}
