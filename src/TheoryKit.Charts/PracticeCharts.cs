using TheoryKit.Paths;

namespace TheoryKit.Charts;

/// <summary>The charts of practice: <c>log.Read().TempoChart()</c>.</summary>
public static class PracticeCharts
{
    /// <summary>Tempo over time of these licks, of all if none is named.</summary>
    /// <inheritdoc cref="TempoChart(PracticeHistory, IEnumerable{string})"/>
    public static TempoChart TempoChart(this PracticeHistory history, params IEnumerable<string> licks) =>
        new(history, licks);

    /// <summary>Days practised, week by week.</summary>
    /// <inheritdoc cref="PracticeDaysChart(PracticeHistory, DateOnly, int)"/>
    public static PracticeDaysChart DaysChart(this PracticeHistory history, DateOnly today, int weeks = 12) =>
        new(history, today, weeks);
}
