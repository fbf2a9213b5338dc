using System.Collections.Immutable;
using System.Globalization;
using Plotly.NET;
using TheoryKit.Charts.Figures;
using TheoryKit.Drawing.Rendering;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Values;

namespace TheoryKit.Charts.Theory;

/// <summary>
/// Formulas above each other against the twelve semitones over their root, octaves aside: what they share stands in one
/// column, what moves steps aside. The role of a tone shows twice, by colour and by mark.
/// </summary>
public sealed class LadderChart : StudyChart
{
    private const int RowHeight = 40;
    private const int MarkSize = 27;
    private const int DotSize = 11;
    private const int MostDescribed = 8;

    private static readonly string[] Intervals =
    [
        "P1",
        "m2",
        "M2",
        "m3",
        "M3",
        "P4",
        "A4",
        "P5",
        "m6",
        "M6",
        "m7",
        "M7",
    ];

    /// <summary>A chart of these formulas.</summary>
    /// <param name="formulas">One or more, from the top down.</param>
    /// <exception cref="ArgumentException">No formula.</exception>
    public LadderChart(params IEnumerable<NamedFormula> formulas) => Formulas = Names.AtLeast(1, formulas);

    /// <summary>The formulas from the top down.</summary>
    public ImmutableArray<NamedFormula> Formulas { get; }

    /// <inheritdoc/>
    public override string Title => "Formulas against the semitones";

    /// <inheritdoc/>
    public override string Description
    {
        get
        {
            var rows = Formulas
                .Take(MostDescribed)
                .Select(static each => $"{each.PrintedName} has {each.Formula.ToString("P")}")
                .Concat(Formulas.Length > MostDescribed ? [$"{Formulas.Length - MostDescribed} more"] : []);
            var shared = Enumerable
                .Range(0, 12)
                .Where(semitones => Formulas.All(each => each.Formula.PitchClasses.Contains(semitones)))
                .Select(semitones => At(0, semitones, "P"))
                .ToList();
            var common =
                Formulas.Length == 1 ? ""
                : shared.Count == 0 ? " No tone is in all of them."
                : $" In all of them: {string.Join(", ", shared)}.";
            return $"The tones of each formula by semitones above the root: {string.Join("; ", rows)}.{common}";
        }
    }

    internal override ChartTable Tabulate(string? format) =>
        new(
            Enumerable.Range(0, 12).Select(static semitones => $"{semitones}").Prepend("semitones above the root"),
            Formulas.Select(
                (each, row) =>
                    Enumerable.Range(0, 12).Select(semitones => At(row, semitones, format)).Prepend(each.Show(format))
            )
        );

    /// <summary>What a formula has at a number of semitones above the root: its degree, several with a slash, or nothing.</summary>
    /// <param name="formula">The formula's place, from 0.</param>
    /// <param name="semitones">0 to 11.</param>
    /// <param name="format">"G" (or null) plain, "P" with printed signs.</param>
    /// <exception cref="FormatException">Another format than "G" or "P".</exception>
    public string At(int formula, int semitones, string? format = null) =>
        string.Join('/', Degrees(formula, semitones).Select(degree => degree.ToString(format)));

    internal override GenericChart Draw(Palette palette)
    {
        var marks = Formulas
            .SelectMany(
                (each, row) =>
                    each.Formula.PitchClasses.Select(semitones => new Mark(
                        row,
                        semitones,
                        ToneRoles.Of(Degrees(row, semitones).First(), each.Formula)
                    ))
            )
            .ToLookup(static mark => mark.Role);
        var figure = new ChartFigure(Title, (Formulas.Length * RowHeight) + 88, palette);
        foreach (var role in marks.OrderBy(static group => (group.Key == ToneRole.Other, group.Key)))
        {
            var isDot = role.Key == ToneRole.Other;
            var line = palette[Look.Of(role.Key)];
            var fill = role.Key == ToneRole.ColourTone ? palette[Look.Paper] : line;
            figure.Add(
                "scatter",
                ("mode", "markers+text"),
                ("name", ToneRoles.Words(role.Key)),
                ("x", role.Select(static mark => mark.Semitones)),
                ("y", role.Select(static mark => mark.Row)),
                ("text", role.Select(mark => At(mark.Row, mark.Semitones, "P"))),
                ("textposition", isDot ? "top center" : "middle center"),
                ("textfont", new { size = 12, color = palette[Look.On(role.Key)] }),
                (
                    "marker",
                    new
                    {
                        symbol = role.Key == ToneRole.Root ? "square" : "circle",
                        size = isDot ? DotSize : MarkSize,
                        color = fill,
                        opacity = 1,
                        line = new { color = line, width = 2 },
                    }
                ),
                ("customdata", role.Select(Hover)),
                ("hovertemplate", "%{customdata}<extra></extra>"),
                ("cliponaxis", false)
            );
        }

        return figure
            .Axis(
                "xaxis",
                "semitones above the root (octaves aside)",
                ("tickmode", "array"),
                ("tickvals", Enumerable.Range(0, 12)),
                ("ticktext", Intervals.Select(static (interval, semitones) => $"{semitones}<br>{interval}")),
                ("range", new[] { -0.6, 11.6 })
            )
            .Axis(
                "yaxis",
                "formula",
                ("tickmode", "array"),
                ("tickvals", Enumerable.Range(0, Formulas.Length)),
                ("ticktext", Formulas.Select(static each => Names.InPlot(each.PrintedName))),
                ("range", new[] { Formulas.Length - 0.4, -0.6 })
            )
            .WithLegend(isReadOnly: true)
            .ToPlotly();
    }

    private IEnumerable<Degree> Degrees(int formula, int semitones) =>
        Formulas[Check.Index(formula, Formulas.Length)].Formula.Where(degree => degree.PitchClass == semitones);

    private string Hover(Mark mark) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{Names.InPlot(Formulas[mark.Row].PrintedName)}: {At(mark.Row, mark.Semitones, "P")}, {Names.Some(mark.Semitones, "semitone")} above the root"
        );

    private readonly record struct Mark(int Row, int Semitones, ToneRole Role);
}
