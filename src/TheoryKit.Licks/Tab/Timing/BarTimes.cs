using System.Collections.Immutable;
using System.Numerics;
using Fractions;
using TheoryKit.Licks.Tab.Options;
using TheoryKit.Licks.Tab.Reading;
using TheoryKit.Licks.Tab.Remarks;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Progressions;

namespace TheoryKit.Licks.Tab.Timing;

/// <summary>A chord of a row, and when it begins in its bar.</summary>
internal readonly record struct TimedChord(Fraction Time, TypedChord Typed)
{
    public Chord? Chord => Typed.Chord;
}

/// <summary>A bar and when everything in it is.</summary>
/// <param name="Bar">The bar.</param>
/// <param name="Time">Its moments, length and end.</param>
/// <param name="HasTime">Whether a count or a rhythm tells the time.</param>
/// <param name="Chords">The chords above it.</param>
internal sealed record TimedBar(TabBar Bar, BarTime Time, bool HasTime, IReadOnlyList<TimedChord> Chords);

/// <summary>From bars to when everything in them is: by a count or a rhythm, else by the spacing, else as equal notes.</summary>
internal sealed class BarTimes
{
    private readonly TabReadOptions options;
    private readonly TimeContext context;
    private readonly SpacingTime spacing;
    private readonly bool isAlone;
    private bool spacingTold;
    private bool evenTold;

    private BarTimes(List<MarkedBar> bars, TabReadOptions options, TimeContext context)
    {
        (this.options, this.context) = (options, context);
        isAlone = bars.Count == 1;
        spacing = new(options.Timing == TabTiming.Spacing, isAlone, LeadOf(bars), context);
    }

    public static List<TimedBar> Of(
        List<MarkedBar> bars,
        ImmutableArray<TabMark> marks,
        TabMeter meter,
        TabReadOptions options,
        TabRemarks remarks
    ) => bars.ConvertAll(new BarTimes(bars, options, new(meter.Time, marks, remarks)).Read);

    /// <summary>The nearest twelfth of a beat.</summary>
    public static Fraction Snapped(Fraction beat)
    {
        var twelfths = (beat * 12) + TimeContext.Half;
        return new Fraction(BigInteger.Divide(twelfths.Numerator, twelfths.Denominator), 12).Reduce();
    }

    /// <summary>Where beat 1 stands in bars: where the earliest number of any of them does.</summary>
    private static int LeadOf(List<MarkedBar> bars)
    {
        var least = bars.Where(static bar => bar.Columns.Count > 0)
            .Select(static bar => bar.Columns[0].Column - bar.Bar.From)
            .DefaultIfEmpty(int.MaxValue)
            .Min();
        return least <= 3 ? least : 1;
    }

    private TimedBar Read(MarkedBar bar)
    {
        Fraction? end = null;
        var told = options.Timing == TabTiming.AsWritten && bar.TimeRow is not null ? Told(bar, out end) : null;
        var time = WithBeats(
            told
                ?? (options.Timing == TabTiming.Even ? null : Spaced(bar, isSqueezed: false))
                ?? (options.Timing == TabTiming.AsWritten ? Spaced(bar, isSqueezed: true) : null)
                ?? Even(bar),
            end
        );
        return new(bar.Bar, time, told is not null, Chords(bar, time, told is not null));
    }

    private BarTime? Told(MarkedBar bar, out Fraction? end)
    {
        var words = bar.Count.ToList();
        words.Sort(static (left, right) => left.At.CompareTo(right.At));
        var isCount = words.Exists(static word =>
            char.IsAsciiDigit(word.Text[0]) || word.Text is "r" or "&" or "+" or "a" or "."
        );
        return isCount ? CountTime.Of(bar, words, context, out end) : RhythmTime.Of(bar, words, context, out end);
    }

    private BarTime? Spaced(MarkedBar bar, bool isSqueezed)
    {
        if (spacing.Of(bar, isSqueezed) is not var (time, step))
        {
            return null;
        }

        if (step is { } told && !spacingTold)
        {
            spacingTold = true;
            context.Remark(time.Moments, new TabRemark.SpacingAsTime(told));
        }

        return time;
    }

    private BarTime Even(MarkedBar bar)
    {
        var even = options.Even > Fraction.Zero ? options.Even : TimeContext.Half;
        var time = EvenTime.Of(bar, even, isAlone, context, out var length);
        if (!evenTold && bar.Columns.Count > 0)
        {
            evenTold = true;
            context.Remark(time.Moments, new TabRemark.EqualNotes(length));
        }

        return time;
    }

    /// <summary>Whole bars that hold all that is in it, and an end only after that.</summary>
    private BarTime WithBeats(BarTime bar, Fraction? end)
    {
        var last = bar.Moments.Count > 0 ? bar.Moments[^1].Time : Fraction.Zero;
        var isEarly = end < Fraction.Zero || (end <= last && bar.Moments.Any(static each => !each.IsRest));
        end = isEarly ? null : end;
        var (past, beats) = (end ?? Fraction.Zero, context.Time.Beats);
        if (last >= beats || past > beats)
        {
            var most = past > last ? past : last + new Fraction(1, 1000);
            beats = checked((int)BigInteger.Min(context.BarsIn(most), int.MaxValue / beats) * beats);
        }

        return bar with
        {
            Beats = Math.Max(bar.Beats, beats),
            End = end,
        };
    }

    private static List<TimedChord> Chords(MarkedBar bar, BarTime time, bool isTold)
    {
        var timed = new List<TimedChord>(bar.Chords.Count);
        var chords = bar.Chords.ToList();
        chords.Sort(static (left, right) => left.Column.CompareTo(right.Column));
        foreach (var chord in chords)
        {
            var column = chord.Column;
            var near = time.Moments.Near(column);
            var isFirst =
                timed.Count == 0
                && (
                    column <= bar.Bar.From + 1
                    || (time.Moments.Count > 0 && column < time.Moments[0].Column && time.Moments[0].Time.IsZero)
                );

            // Without a count, a symbol typed a column late still stands over its note.
            var at =
                isFirst ? Fraction.Zero
                : near is not null && (near.Column == column || (near.Column < column && !isTold)) ? near.Time
                : time.At(column);
            if (at < Fraction.Zero)
            {
                at = Fraction.Zero;
            }
            else if (at.Denominator > (isTold ? Bar.MaxParts : 4))
            {
                // Chords are typed about where they change.
                at = near?.Time ?? Snapped(at);
            }

            timed.Add(new(at, chord));
        }

        return timed;
    }
}
