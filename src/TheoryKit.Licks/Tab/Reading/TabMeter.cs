using System.Globalization;
using TheoryKit.Licks.Tab.Options;
using TheoryKit.Licks.Tab.Remarks;
using TheoryKit.Theory.Progressions;

namespace TheoryKit.Licks.Tab.Reading;

/// <summary>The time signature, and whether a count or a rhythm tells the time.</summary>
internal sealed record TabMeter(TimeSignature Time, bool IsTold)
{
    /// <summary>From the rows of all systems to the time signature.</summary>
    public static TabMeter Of(
        IEnumerable<IReadOnlyList<TabRow>> rows,
        TabTitle? title,
        TabReadOptions options,
        TabRemarks remarks
    )
    {
        var (most, hasRests, isTold) = (0, false, false);
        TabLine? highest = null;
        foreach (var row in rows.SelectMany(static each => each))
        {
            isTold |= row.Count is not null && options.Timing == TabTiming.AsWritten;
            foreach (var token in row.Count ?? [])
            {
                hasRests |= token.Text is "r" or "end";
                if (
                    char.IsAsciiDigit(token.Text[0])
                    && int.Parse(token.Text, CultureInfo.InvariantCulture) is var number
                    && number > most
                )
                {
                    (most, highest) = (number, row.Line);
                }
            }
        }

        if ((options.Time ?? options.Changes?.Time ?? title?.Time) is { } given)
        {
            return new(given, isTold);
        }

        // An r may stand in the place of the last beat.
        if (!isTold || most is <= 1 or 4 || (most < 4 && hasRests))
        {
            return new(TimeSignature.Common, isTold);
        }

        var time = new TimeSignature(most, most is 6 or 7 or >= 9 ? 8 : 4);
        remarks.Add(highest!, 0, highest!.Text.Length, new TabRemark.CountedTime(most, time));
        return new(time, isTold);
    }
}
