namespace TheoryKit.Licks.Practice;

/// <summary>On how many days there was practice. Numbers only: a day without is no fault.</summary>
/// <param name="Date">Up to which day.</param>
/// <param name="ThisWeek">Days in the week of that day, which begins on Monday (ISO 8601).</param>
/// <param name="ThisMonth">Days in its month.</param>
/// <param name="InAll">Days in all.</param>
/// <param name="LongestRun">The most days one after the other so far.</param>
public sealed record PracticeCount(DateOnly Date, int ThisWeek, int ThisMonth, int InAll, int LongestRun)
{
    /// <summary>Counts days.</summary>
    /// <param name="date">Up to which day; later ones do not count.</param>
    /// <param name="days">The days, in any order, however often.</param>
    public static PracticeCount Of(DateOnly date, IEnumerable<DateOnly> days)
    {
        ArgumentNullException.ThrowIfNull(days);
        var all = days.Where(day => day <= date).Distinct().Order().ToList();
        var monday = date.DayNumber - (((int)date.DayOfWeek + 6) % 7);
        var (longest, run) = (0, 0);
        for (var index = 0; index < all.Count; index++)
        {
            run = index > 0 && all[index].DayNumber == all[index - 1].DayNumber + 1 ? run + 1 : 1;
            longest = Math.Max(longest, run);
        }

        return new(
            date,
            all.Count(day => day.DayNumber >= monday),
            all.Count(day => (day.Year, day.Month) == (date.Year, date.Month)),
            all.Count,
            longest
        );
    }
}
