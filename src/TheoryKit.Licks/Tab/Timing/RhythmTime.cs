using System.Numerics;
using Fractions;
using TheoryKit.Licks.Tab.Options;
using TheoryKit.Licks.Tab.Reading;
using TheoryKit.Licks.Tab.Remarks;
using TheoryKit.Theory.Progressions;

namespace TheoryKit.Licks.Tab.Timing;

/// <summary>From a rhythm below or above a bar to its times: each value lasts up to the next one; none where it fits nothing.</summary>
internal static class RhythmTime
{
    // Rhythms whose parts have no common measure would grow without end.
    private const int LongestMeasure = 512;

    /// <summary>A value and when it begins.</summary>
    private sealed record Value(int Column, Fraction Time, string Word)
    {
        public bool IsRest => Word[0] is 'r' or 'R';
    }

    /// <param name="bar">The bar.</param>
    /// <param name="words">The values from the left.</param>
    /// <param name="context">The time signature and the numbers.</param>
    /// <param name="pathEnd">Where it says that the path ends, which holds even where it fits nothing.</param>
    public static BarTime? Of(MarkedBar bar, List<Token> words, TimeContext context, out Fraction? pathEnd)
    {
        if (
            Values(bar, words, context, out var end, out pathEnd) is not { } values
            || MomentsOf(bar, values, end, context) is not { } moments
        )
        {
            return null;
        }

        var (time, to) = (context.Time, bar.Bar.To);
        var beats = 0;
        moments = TimeContext.WithRests(
            moments,
            [
                .. values
                    .Where(static value => value.IsRest)
                    .Select(static value => TabMoment.Rest(value.Column, value.Time)),
            ]
        );
        if (end < time.Beats && pathEnd is null)
        {
            // What is left over is silent.
            moments = TimeContext.WithRests(moments, TabMoment.Rest(to, end));
            context.Remark(moments, new TabRemark.BarNotFull());
        }
        else if (end > time.Beats)
        {
            context.Remark(moments, new TabRemark.BarTooFull(end, time));
            beats = (int)BigInteger.Min(context.BarsIn(end), 1 << 20) * time.Beats;
            moments = beats > end ? TimeContext.WithRests(moments, TabMoment.Rest(to, end)) : moments;
        }

        return new(
            moments,
            column =>
                values.CountWhile(value => value.Column < column) is var at && at < values.Count
                    ? values[at].Time
                    : end,
            beats
        );
    }

    /// <summary>The values of a bar and where the last one ends; null if they have no common measure.</summary>
    private static List<Value>? Values(
        MarkedBar bar,
        List<Token> words,
        TimeContext context,
        out Fraction end,
        out Fraction? pathEnd
    )
    {
        var values = new List<Value>(words.Count);
        (end, pathEnd) = (Fraction.Zero, null);
        foreach (var (column, word) in words)
        {
            values.Add(new(column, end, word));
            if (word == "end")
            {
                pathEnd = end;
                continue;
            }

            var beats = TabRhythm.Read(word, context.Time.Unit);
            if (beats > (word.Count('+') + 1) * TimeSignature.MaxBeats)
            {
                // Bars are written out: a few digits must not stand for millions of them.
                throw bar.TimeRow!.Wrong(
                    bar.TimeRow!.Text.IndexOf(word, StringComparison.Ordinal),
                    word.Length,
                    $"a value of at most {TimeSignature.MaxBeats} beats"
                );
            }

            end = (end + beats).Reduce();
            if (end.Denominator.GetBitLength() > LongestMeasure)
            {
                var line = bar.Columns.Count > 0 ? context.Marks[bar.Columns[0].Marks[0]].Line : bar.Line;
                context.Remarks.Add(line, bar.Bar.From, 1, new TabRemark.NoCommonMeasure());
                return null;
            }
        }

        return values;
    }

    private static List<TabMoment>? MomentsOf(MarkedBar bar, List<Value> values, Fraction end, TimeContext context)
    {
        var own = bar.Columns.Select(column => ValueAt(column.Column)).ToList();
        if (own.TrueForAll(static value => value is not null))
        {
            return TimeContext.Moments(bar.Columns, index => own[index]!.Time);
        }

        var sounding = values.FindAll(static value => !value.IsRest && value.Word != "end");
        if (sounding.Count == bar.Columns.Count)
        {
            return TimeContext.Moments(bar.Columns, index => sounding[index].Time);
        }

        if (Shared(bar.Columns, values, end) is not { } times)
        {
            return null;
        }

        var moments = TimeContext.Moments(bar.Columns, index => times[index]);
        context.Remark(moments, new TabRemark.ValuesShared());
        return moments;

        Value? ValueAt(int column)
        {
            // Any of several in one column that a search in halves comes upon.
            var (low, high) = (0, values.Count - 1);
            while (low <= high)
            {
                var middle = (low + high) / 2;
                if (values[middle].Column == column)
                {
                    return values[middle];
                }

                (low, high) = values[middle].Column < column ? (middle + 1, high) : (low, middle - 1);
            }

            return null;
        }
    }

    /// <summary>Values that are not as many as the notes: each note takes the nearest, or shares the one before.</summary>
    private static Fraction[]? Shared(IReadOnlyList<TabColumn> columns, List<Value> values, Fraction end)
    {
        var owners = new int[columns.Count];
        var next = 0;
        for (var index = 0; index < owners.Length; index++)
        {
            var column = columns[index].Column;
            while (
                next + 1 < values.Count
                && Math.Abs(values[next + 1].Column - column) <= Math.Abs(values[next].Column - column)
            )
            {
                next++;
            }

            owners[index] = next;
        }

        var times = new Fraction[owners.Length];
        for (var first = 0; first < owners.Length; )
        {
            var count = 1;
            while (first + count < owners.Length && owners[first + count] == owners[first])
            {
                count++;
            }

            var from = values[owners[first]].Time;
            var to = owners[first] + 1 < values.Count ? values[owners[first] + 1].Time : end;
            if (to <= from)
            {
                return null;
            }

            for (var index = 0; index < count; index++)
            {
                times[first + index] = (from + ((to - from) * new Fraction(index, count))).Reduce();
            }

            first += count;
        }

        return times;
    }
}
