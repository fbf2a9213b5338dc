using Fractions;
using TheoryKit.Licks.Tab.Reading;
using TheoryKit.Licks.Tab.Remarks;

namespace TheoryKit.Licks.Tab.Timing;

/// <summary>
/// From a bar's numbers to times one after the other, each as long as the others; shorter ones where there are more than a bar of
/// several holds.
/// </summary>
internal static class EvenTime
{
    /// <param name="bar">The bar.</param>
    /// <param name="even">How long a note is, in beats, where there is room.</param>
    /// <param name="isAlone">Whether the bar is the only one, which goes on as long as it takes.</param>
    /// <param name="context">The time signature and the numbers.</param>
    /// <param name="length">How long they are.</param>
    public static BarTime Of(MarkedBar bar, Fraction even, bool isAlone, TimeContext context, out Fraction length)
    {
        var (count, time) = (bar.Columns.Count, context.Time);
        length = even;
        if (!isAlone && count * even > time.Beats)
        {
            foreach (var parts in (int[])[3, 4, 6, 8])
            {
                var shorter = new Fraction(1, parts);
                if (shorter < even && count * shorter <= time.Beats)
                {
                    context.Remarks.Add(
                        context.Marks[bar.Columns[0].Marks[0]],
                        new TabRemark.ShorterNotes(count, even, time, shorter)
                    );
                    length = shorter;
                    break;
                }
            }
        }

        var each = length;
        var end = (count * each).Reduce();
        var moments = TimeContext.Moments(bar.Columns, index => (index * each).Reduce());
        var beats = (int)context.BarsIn(end) * time.Beats;
        return new(
            end == beats ? moments : TimeContext.WithRests(moments, TabMoment.Rest(bar.Bar.To, end)),
            column =>
                moments.CountWhile(moment => moment.Column < column) is var at && at < moments.Count
                    ? moments[at].Time
                    : end,
            beats
        );
    }
}
