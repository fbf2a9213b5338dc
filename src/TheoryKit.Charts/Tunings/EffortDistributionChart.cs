using System.Globalization;
using Plotly.NET;
using TheoryKit.Charts.Figures;
using TheoryKit.Drawing.Rendering;
using TheoryKit.Fingering.Retuning;

namespace TheoryKit.Charts.Tunings;

using TheoryKit.Values;

/// <summary>
/// How the effort of all grips of all chords is spread in each tuning: a box from the lower to the upper quarter with the
/// median inside, whiskers to the least and the most, and a mark for the easiest grip of each chord.
/// </summary>
public sealed class EffortDistributionChart : StudyChart
{
    private const int RowHeight = 64;
    private const double MarkOffset = 0.33;

    private readonly List<EffortSpread?> spreads;

    /// <summary>A chart of a comparison.</summary>
    /// <param name="comparison">The comparison.</param>
    public EffortDistributionChart(TuningComparison comparison)
    {
        ArgumentNullException.ThrowIfNull(comparison);
        Comparison = comparison;
        spreads =
        [
            .. comparison.Columns.Select(static column =>
                EffortSpread.Of(column.Cells.SelectMany(static cell => cell.Grips.Select(static grip => grip.Effort)))
            ),
        ];
    }

    /// <summary>The comparison.</summary>
    public TuningComparison Comparison { get; }

    /// <inheritdoc/>
    public override string Title => "Effort of all grips in each tuning";

    /// <inheritdoc/>
    public override string Description
    {
        get
        {
            var rows = Comparison.Columns.Zip(
                spreads,
                static (column, spread) =>
                    column.ToString("P")
                    + spread switch
                    {
                        null => " has no grip",
                        { Count: 1 } => $" has 1 grip, {Text(spread.Least)}",
                        _ => $" has {spread.Count} grips from {Text(spread.Least)} to {Text(spread.Most)}, "
                            + $"half of them between {Text(spread.LowerQuarter)} and {Text(spread.UpperQuarter)}",
                    }
            );
            return $"All grips of {string.Join(", ", Comparison.Chords.Select(static chord => chord.ToString("P")))} by effort: {string.Join("; ", rows)}.";
        }
    }

    /// <summary>How the effort is spread in a tuning; null where there is no grip.</summary>
    /// <param name="tuning">The tuning's place, from 0.</param>
    public EffortSpread? Spread(int tuning) => spreads[Check.Index(tuning, Comparison.Columns.Count)];

    internal override ChartTable Tabulate(string? format) =>
        new(
            ["tuning", "grips", "least", "lower quarter", "median", "upper quarter", "most"],
            Comparison.Columns.Zip(
                spreads,
                (column, spread) =>
                    (IEnumerable<string>)(
                        spread is null
                            ? [column.ToString(format), "0", "", "", "", "", ""]
                            :
                            [
                                column.ToString(format),
                                spread.Count.ToString(CultureInfo.InvariantCulture),
                                .. new[]
                                {
                                    spread.Least,
                                    spread.LowerQuarter,
                                    spread.Median,
                                    spread.UpperQuarter,
                                    spread.Most,
                                }.Select(Text),
                            ]
                    )
            )
        );

    internal override GenericChart Draw(Palette palette)
    {
        var rows = Enumerable.Range(0, spreads.Count).Where(row => spreads[row] is not null).ToList();
        var best = Comparison
            .Columns.SelectMany(
                static (column, row) =>
                    column.Cells.Where(static cell => cell.Best is not null).Select(cell => (Row: row, Cell: cell))
            )
            .ToList();
        var most = Math.Max(1, spreads.Max(static spread => spread?.Most ?? 0));
        return new ChartFigure(Title, (spreads.Count * RowHeight) + 80, palette)
            .Add(
                "box",
                ("name", "all grips"),
                ("orientation", "h"),
                ("y", rows),
                ("lowerfence", rows.Select(row => spreads[row]!.Least)),
                ("q1", rows.Select(row => spreads[row]!.LowerQuarter)),
                ("median", rows.Select(row => spreads[row]!.Median)),
                ("q3", rows.Select(row => spreads[row]!.UpperQuarter)),
                ("upperfence", rows.Select(row => spreads[row]!.Most)),
                ("fillcolor", palette[Look.Chord, 0.25]),
                ("line", new { color = palette[Look.Chord], width = 2 }),
                ("width", 0.4),
                ("hoverinfo", "x")
            )
            .Add(
                "scatter",
                ("mode", "markers"),
                ("name", "the easiest grip of a chord"),
                ("x", best.Select(static each => each.Cell.LeastEffort!.Value)),
                ("y", best.Select(static each => each.Row + MarkOffset)),
                (
                    "marker",
                    new
                    {
                        symbol = "diamond",
                        size = 10,
                        color = palette[Look.Root],
                        opacity = 1,
                        line = new { color = palette[Look.Paper], width = 1 },
                    }
                ),
                (
                    "customdata",
                    best.Select(each =>
                        $"<b>{Names.InPlot(each.Cell.Chord.ToString("P"))} in {Names.InPlot(Comparison.Columns[each.Row].ToString("P"))}</b><br>{each.Cell.Best!.Grip}: effort {Text(each.Cell.LeastEffort!.Value)}"
                    )
                ),
                ("hovertemplate", "%{customdata}<extra></extra>")
            )
            .Axis("xaxis", "effort", ("range", new[] { -0.02 * most, 1.04 * most }))
            .Axis(
                "yaxis",
                "tuning",
                ("tickmode", "array"),
                ("tickvals", Enumerable.Range(0, spreads.Count)),
                (
                    "ticktext",
                    Comparison.Columns.Select(
                        (column, row) =>
                            Names.InPlot(column.ToString("P")) + (spreads[row] is null ? "<br>no grip" : "")
                    )
                ),
                ("range", new[] { spreads.Count - 0.42, -0.5 }),
                ("showgrid", false),
                ("ticks", "")
            )
            .WithLegend(isReadOnly: true)
            .ToPlotly();
    }

    private static string Text(double effort) => effort.ToString("0.0", CultureInfo.InvariantCulture);
}
