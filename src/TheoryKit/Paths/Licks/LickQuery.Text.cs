using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text;
using TheoryKit.Theory;
using TheoryKit.Theory.Text;
using TheoryKit.Tunings;

namespace TheoryKit.Paths;

public sealed partial record LickQuery : ISpanParsable<LickQuery>
{
    internal const string What = "a search for licks";

    private const string Closing = "a closing quotation mark";

    private delegate bool ValueReader(
        ref TextCursor cursor,
        double least,
        [MaybeNullWhen(false)] out LickCriterion criterion
    );

    /// <summary>A key, what stands after it, and how that is read.</summary>
    private sealed record Kind(string Key, string Example, ValueReader Read)
    {
        /// <summary>Whether a slash and how alike at least may follow.</summary>
        public bool HasLeast { get; init; }
    }

    private static readonly Kind[] Kinds =
    [
        new("function", "function:3 or function:9,..,1", ReadFunction),
        new("strong", "strong:3", ReadStrong),
        new("technique", "technique:bend", ReadTechnique),
        new("chord", "chord:Gm9 or chord:m9", ReadChord),
        new("contour", "contour:up,down", ReadContour),
        new("tag", "tag:slow", Text(static text => new LickCriterion.Tagged(text))),
        new("tune", "tune:\"Nine Tin Boats\"", Text(static text => new LickCriterion.OfTune(text))),
        new("tempo", "tempo:90-120", Range(LickCriterion.Countable.Tempo)),
        new("bars", "bars:2", Range(LickCriterion.Countable.Bars)),
        new("notes", "notes:8-", Range(LickCriterion.Countable.Notes)),
        new("text", "text:boats", Text(static text => new LickCriterion.Saying(text))),
        new("like", "like:\"Boat call\"/70", ReadLike) { HasLeast = true },
        new("line", "line:\"0:1/2 +3:1/2\"/70", ReadLine) { HasLeast = true },
        new("tuning", "tuning:\"D2 A2 D3 G3 A3 D4\"", ReadTuning),
        new("neck", "neck:\"E1 A1 D2 G2, 864 mm, 20 frets\"", ReadNeck),
    ];

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
    public static LickQuery Parse(string s, IFormatProvider? provider = null)
    {
        ArgumentNullException.ThrowIfNull(s);
        return Parse(s.AsSpan(), provider);
    }

    /// <inheritdoc cref="Parse(string, IFormatProvider?)"/>
    public static LickQuery Parse(ReadOnlySpan<char> s, IFormatProvider? provider = null) =>
        Parsing.Parse<LickQuery>(s, What, Read);

    /// <summary>Reads a query; false if the text is none.</summary>
    public static bool TryParse(
        [NotNullWhen(true)] string? s,
        IFormatProvider? provider,
        [MaybeNullWhen(false)] out LickQuery result
    )
    {
        result = null;
        return s is not null && TryParse(s.AsSpan(), provider, out result);
    }

    /// <summary>Reads a query; false if the text is none.</summary>
    public static bool TryParse(
        ReadOnlySpan<char> s,
        IFormatProvider? provider,
        [MaybeNullWhen(false)] out LickQuery result
    ) => Parsing.TryParse(s, Read, out result);

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

        var inner = new TextCursor(value, cursor.Naming);
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

    private static bool ReadFunction(
        ref TextCursor cursor,
        double least,
        [MaybeNullWhen(false)] out LickCriterion criterion
    )
    {
        criterion = null;
        var degrees = new List<Degree?>();
        do
        {
            cursor.SkipSpaces();
            if (degrees is [.., not null] && cursor.Take(".."))
            {
                degrees.Add(null);
                continue;
            }

            if (!Degree.Read(ref cursor, out var degree))
            {
                return false;
            }

            degrees.Add(degree);
        } while (SkipComma(ref cursor));

        if (!LickCriterion.Function.IsOrder(degrees))
        {
            return cursor.Fail("a comma and another function");
        }

        criterion = new LickCriterion.Function(degrees);
        return true;
    }

    private static bool SkipComma(ref TextCursor cursor)
    {
        cursor.SkipSpaces();
        return cursor.Take(',');
    }

    private static bool ReadStrong(
        ref TextCursor cursor,
        double least,
        [MaybeNullWhen(false)] out LickCriterion criterion
    )
    {
        criterion = Degree.Read(ref cursor, out var degree) ? new LickCriterion.OnStrongBeat(degree) : null;
        return criterion is not null;
    }

    private static bool ReadTechnique(
        ref TextCursor cursor,
        double least,
        [MaybeNullWhen(false)] out LickCriterion criterion
    )
    {
        var name = cursor.Rest.ToString().Trim();
        var technique =
            Technique.Find(name)
            ?? Technique.Known.FirstOrDefault(each =>
                each.Name.Replace(' ', '-').Equals(name, StringComparison.OrdinalIgnoreCase)
            );
        criterion = technique is null ? null : new LickCriterion.PlayedWith(technique);
        if (criterion is null)
        {
            return cursor.Fail($"a technique: {string.Join(", ", Technique.Known.Select(static each => each.Name))}");
        }

        cursor.Position = cursor.Text.Length;
        return true;
    }

    private static bool ReadChord(
        ref TextCursor cursor,
        double least,
        [MaybeNullWhen(false)] out LickCriterion criterion
    )
    {
        var start = cursor.Position;
        if (char.IsAsciiLetterUpper(cursor.Current) && NoteName.TryParse(cursor.Rest[..1], null, out _))
        {
            criterion = Chord.Read(ref cursor, out var chord) ? new LickCriterion.OverChord(chord) : null;
            return criterion is not null;
        }

        criterion = null;
        var over = new TextCursor($"C{cursor.Rest}");
        if (!Chord.Read(ref over, out var quality) || quality.Bass != quality.Root || quality.Root != default(NoteName))
        {
            return cursor.Fail(start, "a chord or what stands after its root");
        }

        cursor.Position = start + over.Position - 1;
        criterion = new LickCriterion.OverQuality(quality.Formula);
        return true;
    }

    private static bool ReadContour(
        ref TextCursor cursor,
        double least,
        [MaybeNullWhen(false)] out LickCriterion criterion
    )
    {
        criterion = null;
        if (cursor.Take("level"))
        {
            criterion = new LickCriterion.Shaped();
            return true;
        }

        var shape = new List<Direction>();
        do
        {
            cursor.SkipSpaces();
            var start = cursor.Position;
            Direction? direction =
                cursor.Take("up") ? Direction.Up
                : cursor.Take("down") ? Direction.Down
                : null;
            if (direction is not { } known || (shape.Count > 0 && shape[^1] == known))
            {
                return cursor.Fail(start, shape.Count == 0 ? "up, down or level" : "up and down in turns");
            }

            shape.Add(known);
        } while (SkipComma(ref cursor));

        criterion = new LickCriterion.Shaped(shape);
        return true;
    }

    private static ValueReader Text(Func<string, LickCriterion> make) =>
        (ref TextCursor cursor, double _, [MaybeNullWhen(false)] out LickCriterion criterion) =>
        {
            var text = cursor.Rest.Trim().ToString();
            criterion = LickText.IsLine(text) ? make(text) : null;
            if (criterion is null)
            {
                return cursor.Fail("text without control characters or halves of characters");
            }

            cursor.Position = cursor.Text.Length;
            return true;
        };

    private static bool ReadLike(
        ref TextCursor cursor,
        double least,
        [MaybeNullWhen(false)] out LickCriterion criterion
    ) => Text(name => new LickCriterion.Like(name, least))(ref cursor, least, out criterion);

    private static bool ReadLine(
        ref TextCursor cursor,
        double least,
        [MaybeNullWhen(false)] out LickCriterion criterion
    )
    {
        criterion = LickLine.Read(ref cursor, out var line) ? new LickCriterion.AlikeTo(line, least) : null;
        return criterion is not null;
    }

    private static ValueReader Range(LickCriterion.Countable measure) =>
        (ref TextCursor cursor, double _, [MaybeNullWhen(false)] out LickCriterion criterion) =>
        {
            criterion = null;
            var start = cursor.Position;
            if (!ReadNumber(ref cursor, out var low))
            {
                return false;
            }

            var high = low;
            if (cursor.Take('-') && !ReadNumber(ref cursor, out high))
            {
                return false;
            }

            if (!LickCriterion.Between.IsRange(low, high))
            {
                return cursor.Fail(
                    start,
                    $"a number, or a range from less to more, up to {LickCriterion.Between.Highest}"
                );
            }

            criterion = new LickCriterion.Between(measure, low, high);
            return true;
        };

    private static bool ReadNumber(ref TextCursor cursor, out double? number)
    {
        number = null;
        var start = cursor.Position;
        while (char.IsAsciiDigit(cursor.Current))
        {
            cursor.Position++;
        }

        if (cursor.Position == start)
        {
            return true; // an open end
        }

        if (cursor.Take('.'))
        {
            if (!cursor.TakeNumber(2, out _))
            {
                return cursor.Fail("hundredths after the point, at most two digits");
            }
        }

        number = double.Parse(
            cursor.Text[start..cursor.Position],
            NumberStyles.AllowDecimalPoint,
            CultureInfo.InvariantCulture
        );
        return true;
    }

    private static bool ReadTuning(
        ref TextCursor cursor,
        double least,
        [MaybeNullWhen(false)] out LickCriterion criterion
    )
    {
        criterion = null;
        if (Tuning.Find(cursor.Rest.Trim().ToString()) is { } known)
        {
            criterion = new LickCriterion.InTuning(known);
            cursor.Position = cursor.Text.Length;
            return true;
        }

        criterion = Tuning.Read(ref cursor, out var tuning) ? new LickCriterion.InTuning(tuning) : null;
        return criterion is not null;
    }

    private static bool ReadNeck(
        ref TextCursor cursor,
        double least,
        [MaybeNullWhen(false)] out LickCriterion criterion
    )
    {
        criterion = Neck.Read(ref cursor, out var neck) ? new LickCriterion.OnNeck(neck) : null;
        return criterion is not null;
    }
}
