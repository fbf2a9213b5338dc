using System.Globalization;
using Plotly.NET;
using TheoryKit.Charts.Figures;
using TheoryKit.Licks.Practice;

namespace TheoryKit.Charts.Practice;

/// <summary>On how many days of each week there was practice, up to a day. Weeks begin on Monday (ISO 8601).</summary>
public sealed class PracticeDaysChart : StudyChart
{
    /// <summary>The most weeks: 104.</summary>
    public const int MostWeeks = 104;

    private const int Height = 220;
    private const int DaysOfWeek = 7;

    private readonly List<(DateOnly Monday, int Days, int Licks)> rows;

    /// <summary>A chart of weeks.</summary>
    /// <param name="history">What was practised.</param>
    /// <param name="today">The day up to which is counted.</param>
    /// <param name="weeks">How many weeks, that of the day with them; 1 to <see cref="MostWeeks"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">More or fewer weeks, or weeks before the year 1.</exception>
    public PracticeDaysChart(PracticeHistory history, DateOnly today, int weeks = 12)
    {
        ArgumentNullException.ThrowIfNull(history);
        ArgumentOutOfRangeException.ThrowIfLessThan(weeks, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(weeks, MostWeeks);
        ArgumentOutOfRangeException.ThrowIfLessThan(today.DayNumber, weeks * DaysOfWeek, nameof(today));
        Today = today;
        var last = today.AddDays(-(((int)today.DayOfWeek + 6) % DaysOfWeek));
        rows =
        [
            .. Enumerable
                .Range(0, weeks)
                .Select(week => last.AddDays(DaysOfWeek * (week + 1 - weeks)))
                .Select(monday =>
                {
                    var entries = history
                        .Entries.Where(entry =>
                            entry.Date >= monday
                            && entry.Date.DayNumber < monday.DayNumber + DaysOfWeek
                            && entry.Date <= today
                        )
                        .ToList();
                    return (
                        monday,
                        entries.DistinctBy(static entry => entry.Date).Count(),
                        entries.DistinctBy(static entry => entry.Lick).Count()
                    );
                }),
        ];
        Count = history.Count(today);
    }

    /// <summary>The day up to which is counted.</summary>
    public DateOnly Today { get; }

    /// <summary>The days in numbers.</summary>
    public PracticeCount Count { get; }

    /// <inheritdoc/>
    public override string Title => "Days practised, week by week";

    /// <inheritdoc/>
    public override string Description =>
        $"{Names.Some(rows.Sum(static row => row.Days), "day")} of practice in {Names.Some(rows.Count, "week")} up to {Day(Today)}; "
        + $"{Count.ThisWeek} this week, {Count.ThisMonth} this month. The longest run is {Names.Some(Count.LongestRun, "day")}.";

    internal override ChartTable Tabulate(string? format) =>
        new(
            ["week from Monday", "days", "licks"],
            rows.Select(static row => (IEnumerable<string>)[Day(row.Monday), $"{row.Days}", $"{row.Licks}"])
        );

    internal override GenericChart Draw(Palette palette) =>
        new ChartFigure(Title, Height, palette)
            .Add(
                "bar",
                ("name", "days"),
                ("x", rows.Select(static row => Day(row.Monday))),
                ("y", rows.Select(static row => row.Days)),
                ("marker", Bars.Marker(palette, 0)),
                (
                    "customdata",
                    rows.Select(static row =>
                        $"week from {Day(row.Monday)}: {Names.Some(row.Days, "day")}, {Names.Some(row.Licks, "lick")}"
                    )
                ),
                ("hovertemplate", "%{customdata}<extra></extra>")
            )
            .Axis(
                "xaxis",
                "week from Monday",
                ("type", "category"),
                ("showgrid", false),
                ("tickmode", "array"),
                ("tickvals", rows.Select(static row => Day(row.Monday))),
                ("ticktext", rows.Select(static row => row.Monday.ToString("d MMM", CultureInfo.InvariantCulture)))
            )
            .Axis("yaxis", "days", ("range", new[] { 0, DaysOfWeek + 0.2 }), ("dtick", 1))
            .With("bargap", 0.3)
            .ToPlotly();

    private static string Day(DateOnly date) => date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
