using TheoryKit.Licks.Practice;

namespace TheoryKit.Charts.Practice;

/// <summary>The charts of practice: <c>log.Read().TempoChart()</c>.</summary>
public static class PracticeCharts
{
    /// <summary>Tempo over time of these names, of all if none is named.</summary>
    /// <inheritdoc cref="TempoChart(PracticeHistory, IEnumerable{string})"/>
    public static TempoChart TempoChart(this PracticeHistory history, params IEnumerable<string> names) =>
        new(history, names);

    /// <summary>Days practised, week by week.</summary>
    /// <inheritdoc cref="PracticeDaysChart(PracticeHistory, DateOnly, int)"/>
    public static PracticeDaysChart DaysChart(this PracticeHistory history, DateOnly today, int weeks = 12) =>
        new(history, today, weeks);
}
