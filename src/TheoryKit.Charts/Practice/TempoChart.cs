using System.Collections.Immutable;
using System.Globalization;
using Plotly.NET;
using TheoryKit.Charts.Figures;
using TheoryKit.Drawing.Rendering;
using TheoryKit.Licks.Practice;
using TheoryKit.Values;

namespace TheoryKit.Charts.Practice;

/// <summary>
/// Tempo over time: for every lick a line through the fastest clean tempo of each day on which there was one, and every entry as a mark that tells how it went.
/// </summary>
public sealed class TempoChart : StudyChart
{
    /// <summary>The most licks whose lines can still be told apart: 6.</summary>
    public const int MostLicks = 6;

    private const int Height = 340;

    private static readonly string[] Dashes = ["solid", "dash", "dot", "dashdot", "longdash", "longdashdot"];

    private readonly ImmutableArray<LickHistory> licks;

    /// <summary>A chart of licks.</summary>
    /// <param name="history">What was practised.</param>
    /// <param name="names">The licks by their present names, in order; if none is named, those with a tempo that have most days.</param>
    /// <exception cref="ArgumentException">A lick was never practised at a noted tempo, none was, or there are more than <see cref="MostLicks"/>.</exception>
    public TempoChart(PracticeHistory history, params IEnumerable<string> names)
    {
        ArgumentNullException.ThrowIfNull(history);
        var asked = Check.Items(names).Distinct(StringComparer.Ordinal).ToList();
        licks =
            asked.Count > 0
                ?
                [
                    .. asked.Select(name =>
                        history.Find(name) is { } found && HasTempo(found)
                            ? found
                            : throw new ArgumentException(
                                $"This log has no tempo of a lick \"{name}\"{Known(history)}.",
                                nameof(names)
                            )
                    ),
                ]
                :
                [
                    .. history
                        .Licks.Where(HasTempo)
                        .OrderByDescending(static lick => lick.Days.Count)
                        .Take(MostLicks)
                        .OrderBy(static lick => lick.Name, StringComparer.Ordinal),
                ];
        if (licks.Length is 0 or > MostLicks)
        {
            throw new ArgumentException(
                licks.Length == 0
                    ? "This log has no tempo to show: no lick in it was practised at a noted one yet."
                    : $"This chart takes up to {MostLicks} licks, not {licks.Length}.",
                nameof(names)
            );
        }
    }

    /// <summary>The licks shown.</summary>
    public IReadOnlyList<LickHistory> Licks => licks;

    /// <inheritdoc/>
    public override string Title => licks.Length == 1 ? $"Tempo of {licks[0].Name}" : "Tempo over time";

    /// <inheritdoc/>
    public override string Description =>
        "The tempo of each time a lick was practised, with a line through the fastest clean ones of each day. "
        + string.Join(" ", licks.Select(Described));

    internal override ChartTable Tabulate(string? format) =>
        new(
            ["lick", "day", "beats a minute", "how it went"],
            licks.SelectMany(static lick =>
                Timed(lick)
                    .Select(entry =>
                        (IEnumerable<string>)
                            [lick.Name, Day(entry.Date), Number(entry.Tempo!.Value), entry.Outcome.Name]
                    )
            )
        );

    internal override GenericChart Draw(Palette palette)
    {
        var figure = new ChartFigure(Names.InPlot(Title), Height, palette);
        for (var place = 0; place < licks.Length; place++)
        {
            var lick = licks[place];
            var clean = CleanDays(lick).ToList();
            figure.Add(
                "scatter",
                ("mode", "lines"),
                ("name", Names.InPlot(lick.Name)),
                ("x", clean.Select(static day => Day(day.Date))),
                ("y", clean.Select(static day => day.Tempo)),
                (
                    "line",
                    new
                    {
                        color = palette[Look.Chord],
                        width = 2,
                        dash = Dashes[place],
                    }
                ),
                ("hoverinfo", "skip"),
                ("showlegend", licks.Length > 1)
            );
        }

        foreach (var outcome in Outcome.Known)
        {
            var marks = licks
                .SelectMany(lick =>
                    Timed(lick).Where(entry => entry.Outcome == outcome).Select(entry => (lick.Name, Entry: entry))
                )
                .ToList();
            if (marks.Count == 0)
            {
                continue;
            }

            var colour = palette[outcome.IsClean ? Look.Chord : Look.Root];
            figure.Add(
                "scatter",
                ("mode", "markers"),
                ("name", outcome.Name),
                ("x", marks.Select(static mark => Day(mark.Entry.Date))),
                ("y", marks.Select(static mark => mark.Entry.Tempo!.Value)),
                (
                    "marker",
                    new
                    {
                        symbol = Symbol(outcome),
                        size = 10,
                        color = outcome == Outcome.Clean ? palette[Look.Paper] : colour,
                        opacity = 1,
                        line = new { color = colour, width = 2 },
                    }
                ),
                ("customdata", marks.Select(static mark => Hover(mark.Name, mark.Entry))),
                ("hovertemplate", "%{customdata}<extra></extra>"),
                ("cliponaxis", false)
            );
        }

        var names = Outcome.Known.Select(static outcome => outcome.Name);
        return figure
            .Axis("xaxis", "day", ("type", "date"), ("showgrid", false))
            .Axis("yaxis", "beats a minute", ("rangemode", "normal"))
            .WithLegend(
                isReadOnly: true,
                [.. names, .. licks.Length > 1 ? licks.Select(static lick => lick.Name) : Array.Empty<string>()]
            )
            .ToPlotly();
    }

    private static string Symbol(Outcome outcome) =>
        outcome == Outcome.AtEase ? "circle"
        : outcome == Outcome.Clean ? "circle"
        : outcome == Outcome.Stumbled ? "triangle-down"
        : "x-thin";

    private static string Described(LickHistory lick)
    {
        var timed = Timed(lick).ToList();
        var clean = CleanDays(lick).ToList();
        var times = timed.Count == 1 ? "once" : $"{timed.Count} times";
        return $"{lick.Name}: {times}, "
            + (
                clean.Count == 0 ? "not clean yet"
                : clean.Count == 1 ? $"clean at {Number(clean[0].Tempo)}"
                : $"clean at {Number(clean[0].Tempo)} on {Day(clean[0].Date)}, at {Number(clean[^1].Tempo)} on {Day(clean[^1].Date)}"
            )
            + ".";
    }

    private static IEnumerable<(DateOnly Date, double Tempo)> CleanDays(LickHistory lick) =>
        Timed(lick)
            .Where(static entry => entry.Outcome.IsClean)
            .GroupBy(static entry => entry.Date)
            .Select(static day => (day.Key, day.Max(static entry => entry.Tempo!.Value)));

    private static IEnumerable<Practised> Timed(LickHistory lick) =>
        lick.Entries.Where(static entry => entry.Tempo is not null);

    private static bool HasTempo(LickHistory lick) => lick.Entries.Any(static entry => entry.Tempo is not null);

    private static string Known(PracticeHistory history) =>
        history.Licks.Where(HasTempo).Select(static lick => $"\"{lick.Name}\"").Take(MostLicks).ToList()
            is { Count: > 0 } some
            ? $"; it has some of {string.Join(", ", some)}"
            : "";

    private static string Hover(string name, Practised entry) =>
        $"<b>{Names.InPlot(name)}</b>, {Day(entry.Date)}<br>{Number(entry.Tempo!.Value)}: {entry.Outcome}"
        + (entry.Note.Length > 0 ? $"<br>{Names.InPlot(entry.Note)}" : "");

    private static string Day(DateOnly date) => date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static string Number(double number) => number.ToString("0.##", CultureInfo.InvariantCulture);
}
