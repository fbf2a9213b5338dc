using System.Globalization;
using Plotly.NET;
using TheoryKit.Charts.Figures;
using TheoryKit.Fingering.Retuning;
using TheoryKit.Fingering.Words;

namespace TheoryKit.Charts.Tunings;

using TheoryKit.Values;

/// <summary>
/// Chords by tunings: the effort of the easiest grip, or how many grips, shapes or complete zones there are. A chord without
/// a grip is shown as such and has no effort.
/// </summary>
public sealed class TuningMapChart : StudyChart
{
    private const string NoGrip = "no grip";

    /// <summary>A chart of a comparison.</summary>
    /// <param name="comparison">The comparison.</param>
    /// <param name="measure">What is shown.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such measure.</exception>
    public TuningMapChart(TuningComparison comparison, TuningMeasure measure = TuningMeasure.LeastEffort)
    {
        ArgumentNullException.ThrowIfNull(comparison);
        if (!Enum.IsDefined(measure))
        {
            throw new ArgumentOutOfRangeException(nameof(measure), measure, "There is no such measure.");
        }

        (Comparison, Measure) = (comparison, measure);
    }

    /// <summary>The comparison.</summary>
    public TuningComparison Comparison { get; }

    /// <summary>What is shown.</summary>
    public TuningMeasure Measure { get; }

    /// <inheritdoc/>
    public override string Title =>
        Measure switch
        {
            TuningMeasure.Grips => "Grips of each chord in each tuning",
            TuningMeasure.Shapes => "Different shapes of each chord in each tuning",
            TuningMeasure.CompleteZones => "Complete zones of each chord in each tuning",
            _ => "Effort of the easiest grip of each chord in each tuning",
        };

    /// <inheritdoc/>
    public override string Description
    {
        get
        {
            var cells = Cells().ToList();
            var known = cells.Where(each => Value(each.Cell) is not null).ToList();
            var without = cells.Where(static each => each.Cell.Best is null).ToList();
            var text =
                $"{Names.Some(Comparison.Chords.Count, "chord")} by {Names.Some(Comparison.Columns.Count, "tuning")}: {Words()}.";
            if (known.Count > 0)
            {
                var (least, most) = (known.MinBy(each => Value(each.Cell)), known.MaxBy(each => Value(each.Cell)));
                text +=
                    Value(least.Cell) == Value(most.Cell)
                        ? $" It is {Text(least.Cell)} everywhere."
                        : $" Least: {Where(least)} with {Text(least.Cell)}; most: {Where(most)} with {Text(most.Cell)}.";
            }

            return without.Count == 0 ? text : $"{text} No grip: {string.Join(", ", without.Select(Where))}.";
        }
    }

    /// <summary>What the chart shows of a chord in a tuning; null for the effort where there is no grip.</summary>
    /// <param name="chord">The chord's place, from 0.</param>
    /// <param name="tuning">The tuning's place, from 0.</param>
    public double? Value(int chord, int tuning) =>
        Value(
            Comparison.Columns[Check.Index(tuning, Comparison.Columns.Count)].Cells[
                Check.Index(chord, Comparison.Chords.Count)
            ]
        );

    internal override ChartTable Tabulate(string? format) =>
        new(
            Comparison.Columns.Select(column => column.ToString(format)).Prepend("chord"),
            Comparison.Chords.Select(
                (chord, row) =>
                    Comparison.Columns.Select(column => Text(column.Cells[row])).Prepend(chord.ToString(format))
            )
        );

    internal override GenericChart Draw(Palette palette)
    {
        var most = Math.Max(1e-9, Cells().Max(each => Value(each.Cell) ?? 0));
        return Matrix
            .Draw(
                palette,
                Title,
                ([.. Comparison.Chords.Select(static chord => Names.InPlot(chord.ToString("P")))], "chord"),
                (
                    [.. Comparison.Columns.Select(static column => Names.InPlot(column.ToString("P")))],
                    Measure == TuningMeasure.LeastEffort
                        ? "tuning (the fuller the colour, the more effort)"
                        : "tuning (the fuller the colour, the more)"
                ),
                (row, column) =>
                {
                    var cell = Comparison.Columns[column].Cells[row];
                    return new(Value(cell) / most, Text(cell), Hover(row, column));
                }
            )
            .ToPlotly();
    }

    private double? Value(TuningCell cell) =>
        Measure switch
        {
            TuningMeasure.Grips => cell.Count,
            TuningMeasure.Shapes => cell.DistinctShapes,
            TuningMeasure.CompleteZones => cell.CompleteZones,
            _ => cell.LeastEffort,
        };

    private string Text(TuningCell cell) =>
        Value(cell) is not { } value ? NoGrip
        : Measure == TuningMeasure.LeastEffort ? value.ToString("0.0", CultureInfo.InvariantCulture)
        : value.ToString("0", CultureInfo.InvariantCulture);

    private string Words() =>
        Measure switch
        {
            TuningMeasure.Grips => "how many grips there are",
            TuningMeasure.Shapes => "how many different shapes the hand takes",
            TuningMeasure.CompleteZones => "how many zones miss no tone",
            _ => "the effort of the easiest grip",
        };

    private static string Where((TuningColumn Column, TuningCell Cell) each) =>
        $"{each.Cell.Chord.ToString("P")} in {each.Column.ToString("P")}";

    private string Hover(int row, int column)
    {
        var cell = Comparison.Columns[column].Cells[row];
        return $"<b>{Names.InPlot(Where((Comparison.Columns[column], cell)))}</b><br>"
            + (
                cell.Best is { } best
                    ? $"{best.Grip}: effort {best.Effort.ToString("0.0", CultureInfo.InvariantCulture)}<br>"
                        + $"{Names.Some(cell.Count, "grip")}, {Names.Some(cell.DistinctShapes, "shape")}, "
                        + $"{cell.CompleteZones} of {Names.Some(cell.Zones.Count, "zone")} complete"
                    : $"no grip: {Names.InPlot(cell.Grips.Reason?.InWords("P") ?? "")}"
            );
    }

    private IEnumerable<(TuningColumn Column, TuningCell Cell)> Cells() =>
        Comparison.Columns.SelectMany(static column => column.Cells.Select(cell => (column, cell)));
}
