using System.Collections.Immutable;
using Plotly.NET;
using TheoryKit.Charts.Figures;
using TheoryKit.Drawing.Rendering;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Values;

namespace TheoryKit.Charts.Theory;

/// <summary>
/// Many formulas at once, each by name in the group of how often it holds two intervals between its tones: by default
/// semitones across and tritones up, so that the mildest stand at the bottom left and the sharpest at the top right. The
/// mark beside a name has as many corners as the formula has tones. Counts that no formula has are left out.
/// </summary>
public sealed class FormulaMapChart : StudyChart
{
    private const int LinePixels = 19;
    private const int WidthInCharacters = 84;
    private const int MarkInCharacters = 4;
    private const int EnoughLines = 6;
    private const int ManyTones = 9;

    private readonly ImmutableArray<IntervalVector> vectors;

    /// <summary>A chart of these formulas.</summary>
    /// <param name="formulas">One or more.</param>
    /// <param name="across">The interval class counted across, 1 (semitone) to 6 (tritone).</param>
    /// <param name="up">The interval class counted upward, another one.</param>
    /// <exception cref="ArgumentException">No formula, or the same interval class both ways.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An interval class is not 1 to 6.</exception>
    public FormulaMapChart(IEnumerable<NamedFormula> formulas, int across = 1, int up = 6)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(across, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(across, 6);
        ArgumentOutOfRangeException.ThrowIfLessThan(up, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(up, 6);
        if (across == up)
        {
            throw new ArgumentException("Two different intervals make a map; these are the same.", nameof(up));
        }

        Formulas = Names.AtLeast(1, formulas);
        Across = across;
        Up = up;
        vectors = [.. Formulas.Select(static each => each.Formula.PitchClasses.IntervalVector)];
    }

    /// <summary>The formulas in the order given.</summary>
    public ImmutableArray<NamedFormula> Formulas { get; }

    /// <summary>The interval class counted across, 1 (semitone) to 6 (tritone).</summary>
    public int Across { get; }

    /// <summary>The interval class counted upward.</summary>
    public int Up { get; }

    /// <inheritdoc/>
    public override string Title =>
        $"{Names.Some(Formulas.Length, "formula")} by their {IntervalClasses.Name(Across)}s and {IntervalClasses.Name(Up)}s";

    /// <inheritdoc/>
    public override string Description
    {
        get
        {
            var fields = Enumerable.Range(0, Formulas.Length).ToLookup(Field);
            var mildest = fields.MinBy(static group => (group.Key.Across + group.Key.Up, group.Key.Across))!;
            var sharpest = fields.MaxBy(static group => (group.Key.Across + group.Key.Up, group.Key.Across))!;
            return $"How many pairs of tones lie a {IntervalClasses.Name(Across)} apart (across) and a "
                + $"{IntervalClasses.Name(Up)} apart (up), inversions counted alike. Fewest: {Words(mildest)}. "
                + $"Most: {Words(sharpest)}.";
        }
    }

    internal override ChartTable Tabulate(string? format) =>
        new(
            ["name", "formula", "tones", $"{IntervalClasses.Name(Across)}s", $"{IntervalClasses.Name(Up)}s"],
            Formulas
                .Select((each, index) => (each, Field: Field(index)))
                .OrderBy(static row => row.Field.Up)
                .ThenBy(static row => row.Field.Across)
                .ThenBy(static row => row.each.Formula.PitchClasses.Count)
                .Select(row =>
                    new[]
                    {
                        row.each.Show(format),
                        row.each.Formula.ToString(format),
                        $"{row.each.Formula.PitchClasses.Count}",
                        $"{row.Field.Across}",
                        $"{row.Field.Up}",
                    }
                )
        );

    /// <summary>How often a formula holds the two intervals.</summary>
    /// <param name="formula">The formula's place, from 0.</param>
    public (int Across, int Up) Field(int formula) =>
        (vectors[Check.Index(formula, vectors.Length)].Of(Across), vectors[formula].Of(Up));

    internal override GenericChart Draw(Palette palette)
    {
        var fields = Enumerable
            .Range(0, Formulas.Length)
            .OrderBy(index => Formulas[index].Formula.PitchClasses.Count)
            .ToLookup(Field);

        var counts = Columns(fields);
        var columns = Lay(counts.Select(static each => (each.Count, (double)each.Lists * each.Width)));
        var bands = Lay(
            fields
                .GroupBy(static field => field.Key.Up)
                .OrderBy(static band => band.Key)
                .Select(band => (band.Key, 1.0 + band.Max(field => Lines(field, counts))))
        );
        var marks = fields
            .SelectMany(group =>
            {
                var column = counts.Single(each => each.Count == group.Key.Across);
                var lines = Lines(group, counts);
                var (left, top) = (columns[group.Key.Across].Start + 1.5, bands[group.Key.Up].End - 1);
                return group.Select(
                    (index, place) => new Mark(index, left + (place / lines * column.Width), top - (place % lines))
                );
            })
            .ToLookup(mark => Math.Min(Formulas[mark.Index].Formula.PitchClasses.Count, ManyTones));
        var (width, height) = (columns.Values.Max(static each => each.End), bands.Values.Max(static each => each.End));
        var figure = new ChartFigure(Title, ((int)height * LinePixels) + 96, palette);
        foreach (var size in marks.OrderBy(static group => group.Key))
        {
            figure.Add(
                "scatter",
                ("mode", "markers+text"),
                ("name", Names.Some(size.Key, "tone") + (size.Key == ManyTones ? " or more" : "")),
                ("x", size.Select(static mark => mark.X)),
                ("y", size.Select(static mark => mark.Y)),
                ("text", size.Select(mark => $"\u00a0{Names.InPlot(Formulas[mark.Index].PrintedName)}")),
                ("textposition", "middle right"),
                ("textfont", new { size = FontSize(width) }),
                ("marker", Corners(size.Key, palette[Look.Chord])),
                ("customdata", size.Select(mark => Hover(mark.Index))),
                ("hovertemplate", "%{customdata}<extra></extra>"),
                ("cliponaxis", false)
            );
        }

        var border = palette[Look.Line];
        var borders = columns
            .Values.Select(column => Line(border, column.Start, column.Start, 0, height))
            .Concat(bands.Values.Select(band => Line(border, 0, width, band.Start, band.Start)));
        return figure
            .Axis("xaxis", $"{IntervalClasses.Name(Across)}s inside (count)", Ticks(columns, width))
            .Axis("yaxis", $"{IntervalClasses.Name(Up)}s inside (count)", Ticks(bands, height))
            .With("shapes", borders)
            .WithLegend(isReadOnly: true)
            .ToPlotly();
    }

    /// <summary>
    /// The columns for the counts there are: each as wide as its longest name, so that names never run into each other. As
    /// long as there is room across, the column with the longest list gets another list beside it.
    /// </summary>
    private ImmutableArray<Column> Columns(ILookup<(int Across, int Up), int> fields)
    {
        var columns = fields
            .GroupBy(static field => field.Key.Across)
            .OrderBy(static column => column.Key)
            .Select(column => new Column(
                column.Key,
                column.SelectMany(static field => field).Max(index => Formulas[index].PrintedName.Length)
                    + MarkInCharacters,
                column.Max(static field => field.Count()),
                1
            ))
            .ToImmutableArray();
        while (true)
        {
            var widest = columns.MaxBy(static column => column.Lines)!;
            if (
                widest.Lines <= EnoughLines
                || columns.Sum(static column => column.Lists * column.Width) + widest.Width > WidthInCharacters
            )
            {
                return columns;
            }

            columns = columns.Replace(widest, widest with { Lists = widest.Lists + 1 });
        }
    }

    private static int Lines(IGrouping<(int Across, int Up), int> field, ImmutableArray<Column> columns) =>
        Ratio(field.Count(), columns.Single(column => column.Count == field.Key.Across).Lists);

    private static int Ratio(int whole, int parts) => (whole + parts - 1) / parts;

    private static SortedDictionary<int, Stretch> Lay(IEnumerable<(int Count, double Size)> sizes)
    {
        var laid = new SortedDictionary<int, Stretch>();
        var start = 0.0;
        foreach (var (count, size) in sizes)
        {
            laid[count] = new(start, start + size);
            start += size;
        }

        return laid;
    }

    private static double FontSize(double characters) => Math.Clamp(12 * WidthInCharacters / characters, 8, 12);

    private static (string, object)[] Ticks(SortedDictionary<int, Stretch> stretches, double end) =>
        [
            ("tickmode", "array"),
            ("tickvals", stretches.Values.Select(static each => (each.Start + each.End) / 2)),
            ("ticktext", stretches.Keys.Select(static count => $"{count}")),
            ("range", new[] { 0, end }),
            ("showgrid", false),
            ("ticks", ""),
        ];

    private static object Line(string color, double x0, double x1, double y0, double y1) =>
        new
        {
            type = "line",
            layer = "below",
            x0,
            x1,
            y0,
            y1,
            line = new { color, width = 1 },
        };

    private static object Corners(int tones, string color) =>
        new
        {
            symbol = tones switch
            {
                <= 2 => "line-ew-open",
                3 => "triangle-up",
                4 => "square",
                5 => "pentagon",
                6 => "hexagon",
                7 => "star",
                8 => "octagon-open",
                _ => "circle",
            },
            color,
            size = 10,
            line = new { color, width = 1 },
        };

    private string Hover(int index)
    {
        var formula = Formulas[index].Formula;
        return $"<b>{Names.InPlot(Formulas[index].PrintedName)}</b>: {formula.ToString("P")}<br>{Pairs(formula, Across)}<br>{Pairs(formula, Up)}";
    }

    private static string Pairs(Formula formula, int intervalClass)
    {
        var pairs = new List<string>();
        for (var low = 0; low < formula.Count; low++)
        {
            for (var high = low + 1; high < formula.Count; high++)
            {
                if (IntervalClasses.Class(formula[high].Semitones - formula[low].Semitones) == intervalClass)
                {
                    pairs.Add($"{formula[low].ToString("P")} and {formula[high].ToString("P")}");
                }
            }
        }

        var count = Names.Some(pairs.Count, IntervalClasses.Name(intervalClass));
        return pairs.Count == 0 ? count : $"{count}: {string.Join(", ", pairs)}";
    }

    private string Words(IGrouping<(int Across, int Up), int> group)
    {
        const int Named = 6;
        var names = string.Join(", ", group.Take(Named).Select(index => Formulas[index].PrintedName));
        var rest = group.Count() > Named ? $" and {Names.Some(group.Count() - Named, "other")}" : "";
        return $"{names}{rest} with {Names.Some(group.Key.Across, IntervalClasses.Name(Across))} and "
            + Names.Some(group.Key.Up, IntervalClasses.Name(Up));
    }

    private readonly record struct Mark(int Index, double X, double Y);

    private readonly record struct Stretch(double Start, double End);

    /// <summary>A column: the count it is for, the characters across one list, the longest field, and how many lists lie side by side.</summary>
    private sealed record Column(int Count, int Width, int Longest, int Lists)
    {
        public int Lines => Ratio(Longest, Lists);
    }
}
