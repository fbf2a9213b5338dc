using Fractions;
using TheoryKit.Licks.Tab.Reading;

namespace TheoryKit.Licks.Tab.Timing;

/// <summary>From the spacing of a bar to its times: what stands a third into its bar starts a third into it.</summary>
/// <param name="isForced">Whether the spacing is told to be the time; else it has to give values that players use.</param>
/// <param name="isAlone">Whether the bar is the only one.</param>
/// <param name="lead">Where beat 1 stands in a bar.</param>
/// <param name="context">The time signature and the numbers.</param>
internal sealed class SpacingTime(bool isForced, bool isAlone, int lead, TimeContext context)
{
    /// <summary>The times, and what one character is in beats; null if the spacing gives none.</summary>
    /// <param name="bar">The bar.</param>
    /// <param name="isSqueezed">Whether numbers of two digits count as one character.</param>
    public (BarTime Time, Fraction? Step)? Of(MarkedBar bar, bool isSqueezed)
    {
        var (from, width) = (bar.Bar.From + lead, bar.Bar.To - bar.Bar.From - lead);
        if (bar.Columns.Count == 0)
        {
            return (new([TabMoment.Rest(bar.Bar.From, Fraction.Zero)], static _ => Fraction.Zero), null);
        }

        // A bar of one number, or a line with no bars, tells nothing by its spacing.
        if (!isForced && isAlone && width > 64)
        {
            return null;
        }

        var places = new int[bar.Columns.Count];
        var wider = 0;
        for (var index = 0; index < places.Length; index++)
        {
            places[index] = bar.Columns[index].Column - from - (isSqueezed ? wider : 0);
            wider += bar.Columns[index].Marks.Any(mark => context.Marks[mark].HasTwoDigits) ? 1 : 0;
        }

        if (isSqueezed && wider == 0)
        {
            return null;
        }

        width -= isSqueezed ? wider : 0;
        var beats = context.Time.Beats;
        foreach (var count in isForced ? (int[])[width] : [width, width + 1, width - 1])
        {
            if (count > 0 && places[0] >= 0 && places[^1] < count && (isForced || IsUsual(places, count)))
            {
                return (
                    new(
                        TimeContext.Moments(bar.Columns, index => At(places[index], count)),
                        column => At(Math.Clamp(column - from, 0, count), count)
                    ),
                    isForced ? null : At(1, count)
                );
            }
        }

        return null;

        Fraction At(int place, int count) => new Fraction((long)place * beats, count).Reduce();
    }

    /// <summary>Whether places in a bar of so many characters are at quarters or thirds of beats.</summary>
    private bool IsUsual(int[] places, int count)
    {
        return Are(4) || Are(3);

        bool Are(int parts) => Array.TrueForAll(places, place => (long)place * context.Time.Beats * parts % count == 0);
    }
}
