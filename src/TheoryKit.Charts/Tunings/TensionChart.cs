using System.Globalization;
using Plotly.NET;
using TheoryKit.Charts.Figures;
using TheoryKit.Drawing.Rendering;
using TheoryKit.Fingering.Retuning;
using TheoryKit.Tunings.Strings;
using TheoryKit.Tunings.Words;

namespace TheoryKit.Charts.Tunings;

/// <summary>
/// How hard each string pulls in each tuning, with the limits of what plays well; what is beyond them is said at the string.
/// Up to <see cref="MostBars"/> tunings are bars side by side, more a heat map.
/// </summary>
public sealed class TensionChart : StudyChart
{
    /// <summary>The most tunings whose bars can still be told apart: 4.</summary>
    public const int MostBars = Bars.Most;

    // In pixels, for the words above bars.
    private const int Height = 360;
    private const double PlotHeight = Height - 60;
    private const double LetterWidth = 8;

    private readonly List<TensionReport> reports;

    /// <summary>A chart of the strings of a comparison.</summary>
    /// <param name="comparison">The comparison.</param>
    /// <exception cref="ArgumentException">The comparison has no strings.</exception>
    public TensionChart(TuningComparison comparison)
    {
        ArgumentNullException.ThrowIfNull(comparison);
        if (comparison.Strings is null)
        {
            throw new ArgumentException(
                "This comparison says nothing of the strings fitted. Give TuningComparison.Of a set of strings, "
                    + "such as StringSet.Find(\"Light electric 10-46\").",
                nameof(comparison)
            );
        }

        Comparison = comparison;
        reports = [.. comparison.Columns.Select(static column => column.Tensions!)];
    }

    /// <summary>The comparison.</summary>
    public TuningComparison Comparison { get; }

    /// <inheritdoc/>
    public override string Title => "Tension of each string in each tuning";

    /// <inheritdoc/>
    public override string Description
    {
        get
        {
            var limits = Comparison.TensionLimits;
            var totals = Comparison.Columns.Select(static column =>
                $"{column.ToString("P")} {column.Tensions!.Total.ToString(0)}"
            );
            var amiss = Comparison
                .Columns.SelectMany(column =>
                    column
                        .Tensions!.Strings.Reverse()
                        .Where(static each => each.State != StringState.Comfortable)
                        .Select(each =>
                            $"string {each.Number} in {column.ToString("P")} {Words(each.State)} ({each.Tension.ToString(1)})"
                        )
                )
                .ToList();
            return $"How hard the strings pull, in all: {string.Join(", ", totals)}. "
                + (
                    amiss.Count == 0
                        ? $"Every string is comfortable, between {limits.Lightest.ToString(0)} and {limits.Heaviest.ToString(0)}."
                        : $"Beyond the limits: {string.Join("; ", amiss)}. {Cautions.Strings}"
                );
        }
    }

    internal override ChartTable Tabulate(string? format) =>
        new(
            Comparison.Columns.Select(column => $"{column.ToString(format)} (N)").Prepend("string"),
            Numbers()
                .Select(number =>
                    reports
                        .Select(report => Text(report.Strings[number - 1]))
                        .Prepend($"{number}: {Comparison.Strings![number]}")
                )
                .Append(reports.Select(static report => Newtons(report.Total)).Prepend("together"))
        );

    internal override GenericChart Draw(Palette palette) =>
        (reports.Count <= MostBars ? DrawBars(palette) : DrawMap(palette)).ToPlotly();

    private ChartFigure DrawBars(Palette palette)
    {
        var figure = new ChartFigure(Title, Height, palette);
        var names = Comparison.Columns.Select(static column => column.ToString("P")).ToList();
        for (var place = 0; place < reports.Count; place++)
        {
            var (report, name) = (reports[place], Names.InPlot(names[place]));
            var strings = Numbers().Select(number => report.Strings[number - 1]).ToList();
            figure.Add(
                "bar",
                ("name", name),
                ("x", strings.Select(static each => $"string {each.Number}")),
                ("y", strings.Select(static each => each.Tension.Newtons)),
                (
                    "text",
                    strings.Select(static each =>
                        each.State == StringState.Comfortable ? "" : $"<b>{Words(each.State)}</b>"
                    )
                ),
                ("textposition", "outside"),
                ("textangle", -90),
                ("constraintext", "none"),
                ("textfont", new { color = palette[Look.Root] }),
                ("cliponaxis", false),
                ("marker", Bars.Marker(palette, place)),
                ("customdata", strings.Select(each => Hover(name, each))),
                ("hovertemplate", "%{customdata}<extra></extra>")
            );
        }

        var highest = reports.Max(static report => report.Strings.Max(static each => each.Tension.Newtons));
        var limits = new[]
        {
            (At: Comparison.TensionLimits.Lightest.Newtons, Text: "slack below "),
            (At: Comparison.TensionLimits.Heaviest.Newtons, Text: "heavy above "),
        }
            // A limit far above every bar would only press the bars down.
            .Where(limit => limit.At > 0 && limit.At <= highest * 1.15)
            .ToList();
        var lines = string.Join(", ", limits.Select(static limit => limit.Text + new Tension(limit.At).ToString(0)));
        return figure
            .Axis(
                "xaxis",
                lines.Length == 0 ? "string" : $"string (dashed: {lines})",
                ("showgrid", false),
                ("ticks", "")
            )
            .Axis("yaxis", "tension (N)", ("range", new[] { 0, Top() }))
            .With("barmode", "group")
            .With("bargap", 0.22)
            .With("bargroupgap", 0.06)
            .With("shapes", limits.Select(limit => Line(palette, limit.At)))
            .WithLegend(isReadOnly: true, names);
    }

    /// <summary>The top of the axis, so that every bar has room for the word above it.</summary>
    private double Top() =>
        reports.Max(static report =>
            report.Strings.Max(static each =>
            {
                var word = each.State == StringState.Comfortable ? 0 : Words(each.State).Length;
                return each.Tension.Newtons * PlotHeight / (PlotHeight - 12 - (LetterWidth * word));
            })
        );

    private ChartFigure DrawMap(Palette palette)
    {
        var numbers = Numbers().ToList();
        var most = reports.Max(static report => report.Strings.Max(static each => each.Tension.Newtons));
        return Matrix.Draw(
            palette,
            Title,
            ([.. Comparison.Columns.Select(static column => Names.InPlot(column.ToString("P")))], "tuning"),
            ([.. numbers.Select(static number => $"string {number}")], "tension of the string (N)"),
            (row, column) =>
            {
                var each = reports[row].Strings[numbers[column] - 1];
                return new(
                    each.Tension.Newtons / most,
                    Text(each).Replace(" ", "<br>", StringComparison.Ordinal),
                    Hover(Names.InPlot(Comparison.Columns[row].ToString("P")), each)
                );
            },
            lines: 2
        );
    }

    private IEnumerable<int> Numbers() => Enumerable.Range(1, Comparison.Strings!.Count).Reverse();

    private static string Hover(string name, StringTension each) =>
        $"<b>{name}, string {each.Number}</b>: {each.Pitch.ToString("P")} on {Names.InPlot(each.String.ToString())}<br>"
        + each.Tension.ToString(1)
        + (
            each.Change is { } change && Math.Round(change.Newtons, 1) is var more and not 0
                ? $", {Newtons(new(Math.Abs(more)))} N {(more < 0 ? "less" : "more")} than before"
                : ""
        )
        + (
            each.State == StringState.Comfortable
                ? ""
                : $"<br>{Words(each.State)}: {Names.InPlot(each.Advice?.InWords() ?? "")}"
        );

    private static string Text(StringTension each) =>
        Newtons(each.Tension) + (each.State == StringState.Comfortable ? "" : $" {Words(each.State)}");

    private static string Newtons(Tension tension) => tension.Newtons.ToString("0.0", CultureInfo.InvariantCulture);

    private static string Words(StringState state) =>
        state switch
        {
            StringState.Slack => "slack",
            StringState.Heavy => "heavy",
            StringState.NearBreaking => "near breaking",
            StringState.Breaking => "breaks",
            _ => "comfortable",
        };

    private static object Line(Palette palette, double at) =>
        new
        {
            type = "line",
            xref = "paper",
            x0 = 0,
            x1 = 1,
            y0 = at,
            y1 = at,
            line = Dashes(palette),
        };

    private static object Dashes(Palette palette) =>
        new
        {
            color = palette[Look.Root],
            width = 1.5,
            dash = "dash",
        };
}
