using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using TheoryKit.Tunings.Necks;
using TheoryKit.Values;

namespace TheoryKit.Fingering.Hands;

public sealed partial record Hand : ISpanParsable<Hand>
{
    // A name never begins with another that stands after it.
    private static readonly ImmutableArray<Reading> Lengths =
    [
        new("1-2", static h => h.IndexToMiddle, static (h, mm) => h with { IndexToMiddle = mm }),
        new("2-3", static h => h.MiddleToRing, static (h, mm) => h with { MiddleToRing = mm }),
        new("3-4", static h => h.RingToLittle, static (h, mm) => h with { RingToLittle = mm }),
        new("1-3", static h => h.IndexToRing, static (h, mm) => h with { IndexToRing = mm }),
        new("2-4", static h => h.MiddleToLittle, static (h, mm) => h with { MiddleToLittle = mm }),
        new("1-4", static h => h.IndexToLittle, static (h, mm) => h with { IndexToLittle = mm }),
        new("rest", static h => h.Rest, static (h, mm) => h with { Rest = mm }),
        new("thumb", static h => h.ThumbReach, static (h, mm) => h with { ThumbReach = mm }),
    ];

    // In a method, because the order in which static fields of the parts of a type are set is not ours to say.
    private static ImmutableArray<(string Name, Hand Hand)> Presets() =>
        [("average", Average), ("small", Small), ("large", Large)];

    /// <summary>The hand as <see cref="Parse(string, IFormatProvider?)"/> reads it.</summary>
    public override string ToString()
    {
        var (name, differing) = Presets()
            .Select(preset => (preset.Name, Differing: Differing(preset.Hand)))
            .MinBy(static each => each.Differing.Count);
        var text = string.Join(", ", differing.Prepend(name));
        return Weights == EffortWeights.Default ? text : $"{text}; {Weights}";
    }

    private List<string> Differing(Hand from)
    {
        var differing = new List<string>();
        foreach (var length in Lengths)
        {
            if (!length.Get(this).Equals(length.Get(from)))
            {
                differing.Add(string.Create(CultureInfo.InvariantCulture, $"{length.Name} {length.Get(this):R} mm"));
            }
        }

        if (ThumbOver)
        {
            differing.Add("thumb over");
        }

        if (BarreStrings != from.BarreStrings)
        {
            differing.Add($"barre {BarreStrings}");
        }

        if (OtherBarreStrings != from.OtherBarreStrings)
        {
            differing.Add($"other barre {OtherBarreStrings}");
        }

        return differing;
    }

    private static bool Read(ref TextCursor cursor, [MaybeNullWhen(false)] out Hand hand)
    {
        hand = null;
        cursor.SkipSpaces();
        foreach (var (name, preset) in Presets())
        {
            if (cursor.Take(name))
            {
                hand = preset;
                break;
            }
        }

        if (hand is null)
        {
            return cursor.Fail("a hand to begin with: small, average or large");
        }

        var read = new HashSet<string>();
        cursor.SkipSpaces();
        while (cursor.Take(','))
        {
            cursor.SkipSpaces();
            var start = cursor.Position;
            if (!ReadItem(ref cursor, ref hand, out var item))
            {
                return false;
            }

            if (!read.Add(item))
            {
                return cursor.Fail(start, $"something else: {item} is there already");
            }

            cursor.SkipSpaces();
        }

        if (cursor.Take(';'))
        {
            if (!EffortWeights.Read(ref cursor, out var weights))
            {
                return false;
            }

            hand = hand with { Weights = weights };
        }

        return true;
    }

    private static bool ReadItem(ref TextCursor cursor, ref Hand hand, out string item)
    {
        item = "thumb over";
        if (cursor.Take(item))
        {
            hand = hand with { ThumbOver = true };
            return true;
        }

        foreach (var length in Lengths)
        {
            item = length.Name;
            if (cursor.Take(item))
            {
                if (!Measure.Read(ref cursor, double.Epsilon, MaxReach, out var mm))
                {
                    return false;
                }

                hand = length.With(hand, mm);
                cursor.SkipSpaces();
                return cursor.Take("mm") || cursor.Fail("mm after the number");
            }
        }

        item = "other barre";
        var isOther = cursor.Take(item);
        if (!isOther)
        {
            item = "barre";
            if (!cursor.Take(item))
            {
                return cursor.Fail(
                    $"a reach (as in 1-4 140 mm), rest or thumb with a length, \"thumb over\", \"barre 5\" or \"other barre 2\""
                );
            }
        }

        cursor.SkipSpaces();
        var start = cursor.Position;
        if (!cursor.TakeNumber(2, out var strings) || strings > Position.MaxString)
        {
            return cursor.Fail(start, $"a count of strings from 0 to {Position.MaxString}");
        }

        hand = isOther ? hand with { OtherBarreStrings = strings } : hand with { BarreStrings = strings };
        return true;
    }

    private sealed record Reading(string Name, Func<Hand, double> Get, Func<Hand, double, Hand> With);
}
