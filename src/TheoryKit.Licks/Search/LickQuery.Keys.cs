using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using TheoryKit.Licks.Tab.Reading;
using TheoryKit.Paths;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Necks;
using TheoryKit.Values;

namespace TheoryKit.Licks.Search;

// The keys of a query, and how what stands after each is read.
public sealed partial record LickQuery
{
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
