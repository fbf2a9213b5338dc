using TheoryKit.Fingering.Retuning;

namespace TheoryKit.Charts.Tunings;

/// <summary>The charts of compared tunings: <c>comparison.MapChart()</c>.</summary>
public static class TuningCharts
{
    /// <summary>Chords by tunings: the effort of the easiest grip unless told otherwise.</summary>
    /// <inheritdoc cref="TuningMapChart(TuningComparison, TuningMeasure)"/>
    public static TuningMapChart MapChart(
        this TuningComparison comparison,
        TuningMeasure measure = TuningMeasure.LeastEffort
    ) => new(comparison, measure);

    /// <summary>How the effort of all grips is spread in each tuning.</summary>
    public static EffortDistributionChart EffortChart(this TuningComparison comparison) => new(comparison);

    /// <summary>The tension of each string in each tuning.</summary>
    /// <exception cref="ArgumentException">The comparison has no strings.</exception>
    public static TensionChart TensionChart(this TuningComparison comparison) => new(comparison);

    /// <summary>The semitones from string to string in each tuning.</summary>
    public static IntervalLayoutChart IntervalChart(this TuningComparison comparison) => new(comparison);
}
