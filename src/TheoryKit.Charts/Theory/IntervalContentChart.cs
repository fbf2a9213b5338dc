using System.Collections.Immutable;
using Plotly.NET;
using TheoryKit.Charts.Figures;
using TheoryKit.Theory.Notes;
using TheoryKit.Values;

namespace TheoryKit.Charts.Theory;

/// <summary>
/// Which intervals formulas hold between any two of their tones, by interval class: an interval and its inversion count
/// as one, octaves aside. Up to <see cref="MostBars"/> formulas are bars side by side, more a heat map.
/// </summary>
public sealed class IntervalContentChart : StudyChart
{
    /// <summary>The most formulas whose bars can still be told apart: 4.</summary>
    public const int MostBars = Bars.Most;

    private readonly ImmutableArray<IntervalVector> vectors;

    /// <summary>A chart of these formulas.</summary>
    /// <param name="formulas">One or more.</param>
    /// <exception cref="ArgumentException">No formula.</exception>
    public IntervalContentChart(params IEnumerable<NamedFormula> formulas)
    {
        Formulas = Names.AtLeast(1, formulas);
        vectors = [.. Formulas.Select(static each => each.Formula.PitchClasses.IntervalVector)];
    }

    /// <summary>The formulas in the order given.</summary>
    public ImmutableArray<NamedFormula> Formulas { get; }

    /// <inheritdoc/>
    public override string Title => "Intervals inside";

    /// <inheritdoc/>
    public override string Description
    {
        get
        {
            var start = "How many pairs of tones lie each interval (or its inversion) apart";
            return Formulas.Length <= MostBars
                ? $"{start}: {string.Join("; ", Formulas.Select((each, index) => $"{each.PrintedName} {Words(index)}"))}."
                : $"{start} in {Formulas.Length} formulas: {string.Join("; ", IntervalClasses.All.Select(Most))}.";
        }
    }

    internal override ChartTable Tabulate(string? format) =>
        new(
            ["formula", .. IntervalClasses.All.Select(static each => $"{IntervalClasses.Short(each)} ({each})")],
            Formulas.Select(
                (each, index) => vectors[index].Select(static count => $"{count}").Prepend(each.Show(format))
            )
        );

    /// <summary>How many pairs of tones of a formula lie an interval class apart.</summary>
    /// <param name="formula">The formula's place, from 0.</param>
    /// <param name="intervalClass">1 (semitone) to 6 (tritone).</param>
    public int Count(int formula, int intervalClass) => vectors[Check.Index(formula, vectors.Length)].Of(intervalClass);

    internal override GenericChart Draw(Palette palette) =>
        (Formulas.Length <= MostBars ? DrawBars(palette) : DrawMap(palette)).ToPlotly();

    private ChartFigure DrawBars(Palette palette)
    {
        var figure = new ChartFigure(Title, 320, palette);
        for (var index = 0; index < Formulas.Length; index++)
        {
            var name = Names.InPlot(Formulas[index].PrintedName);
            figure.Add(
                "bar",
                ("name", name),
                ("x", Ticks()),
                ("y", vectors[index]),
                ("text", vectors[index].Select(static count => $"{count}")),
                ("textposition", "outside"),
                ("cliponaxis", false),
                ("marker", Bars.Marker(palette, index)),
                ("customdata", IntervalClasses.All.Select(each => $"{name}: {Words(index, each)}")),
                ("hovertemplate", "%{customdata}<extra></extra>")
            );
        }

        var highest = vectors.Max(static vector => vector.Max());
        return figure
            .Axis("xaxis", AxisTitle, ("showgrid", false), ("ticks", ""))
            .Axis(
                "yaxis",
                "pairs of tones (count)",
                ("range", new[] { 0, highest + 0.6 }),
                ("dtick", highest > 8 ? 2 : 1)
            )
            .With("barmode", "group")
            .With("bargap", 0.25)
            .With("bargroupgap", 0.08)
            .WithLegend(isReadOnly: false);
    }

    private ChartFigure DrawMap(Palette palette)
    {
        var highest = Math.Max(1, vectors.Max(static vector => vector.Max()));
        return Matrix.Draw(
            palette,
            Title,
            ([.. Formulas.Select(static each => Names.InPlot(each.PrintedName))], "formula"),
            (Ticks(), AxisTitle),
            (row, column) =>
                new(
                    (double)vectors[row][column] / highest,
                    $"{vectors[row][column]}",
                    $"{Names.InPlot(Formulas[row].PrintedName)}: {Words(row, column + 1)}"
                )
        );
    }

    private const string AxisTitle = "interval or its inversion (semitones)";

    private static string[] Ticks() =>
        [.. IntervalClasses.All.Select(static each => $"{IntervalClasses.Short(each)}<br>{each}")];

    private string Words(int formula) =>
        string.Join(
            ", ",
            IntervalClasses.All.Where(each => Count(formula, each) > 0).Select(each => Words(formula, each))
        )
            is { Length: > 0 } words
            ? words
            : "no two tones";

    /// <summary>Which formulas hold an interval class most often, in words.</summary>
    private string Most(int intervalClass)
    {
        const int Named = 3;
        var most = vectors.Max(vector => vector.Of(intervalClass));
        var holders = Formulas.Where((_, index) => Count(index, intervalClass) == most).ToList();
        var names = string.Join(", ", holders.Take(Named).Select(static each => each.PrintedName));
        return most == 0 ? $"no {IntervalClasses.Name(intervalClass)}s"
            : holders.Count > Named
                ? $"at most {Names.Some(most, IntervalClasses.Name(intervalClass))}, in {holders.Count} of them"
            : $"most {IntervalClasses.Name(intervalClass)}s: {names} with {most}";
    }

    private string Words(int formula, int intervalClass)
    {
        var count = Count(formula, intervalClass);
        return $"{count} {IntervalClasses.Name(intervalClass)}{(count == 1 ? "" : "s")}";
    }
}
