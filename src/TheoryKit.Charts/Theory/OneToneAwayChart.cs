using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using Plotly.NET;
using TheoryKit.Charts.Figures;
using TheoryKit.Theory.Notes;
using TheoryKit.Values;

namespace TheoryKit.Charts.Theory;

/// <summary>
/// Which formulas turn into each other, over the same root, by one tone changed, added or left out: the change where
/// that is so, elsewhere how many tones it takes. By sound: a changed spelling is no change.
/// </summary>
public sealed class OneToneAwayChart : StudyChart
{
    /// <summary>The most formulas whose changes fit into the cells: 12.</summary>
    public const int MostNamed = 12;

    /// <summary>A chart of these formulas.</summary>
    /// <param name="formulas">Two or more.</param>
    /// <exception cref="ArgumentException">Fewer than two formulas.</exception>
    public OneToneAwayChart(params IEnumerable<NamedFormula> formulas) => Formulas = Names.AtLeast(2, formulas);

    /// <summary>The formulas in the order given.</summary>
    public ImmutableArray<NamedFormula> Formulas { get; }

    /// <inheritdoc/>
    public override string Title => "One tone away";

    /// <inheritdoc/>
    public override string Description
    {
        get
        {
            var neighbours = Formulas
                .Select((each, row) => (each.PrintedName, Count: Neighbours(row).Count()))
                .ToList();
            var most = neighbours.Max(static each => each.Count);
            var start =
                $"How many tones change, come or go from the formula of a row to that of a column; where it is one, which. "
                + $"{Names.Some(neighbours.Sum(static each => each.Count) / 2, "pair")} of {Formulas.Length} formulas "
                + "are one tone away";
            return most == 0
                ? start + "."
                : $"{start}; most neighbours: "
                    + string.Join(
                        ", ",
                        neighbours.Where(each => each.Count == most).Select(static each => each.PrintedName)
                    )
                    + $" with {most}.";
        }
    }

    internal override ChartTable Tabulate(string? format) =>
        new(
            ["name", "formula", "one tone away (change)"],
            Formulas.Select(
                (each, row) =>
                    new[]
                    {
                        each.Show(format),
                        each.Formula.ToString(format),
                        string.Join(
                            ", ",
                            Neighbours(row)
                                .Select(column => $"{Formulas[column].Show(format)} ({Change(row, column, format)})")
                        ),
                    }
            )
        );

    /// <summary>How many tones change, come or go between two of the formulas; 0 where both sound alike.</summary>
    /// <param name="from">A formula's place, from 0.</param>
    /// <param name="to">Another's.</param>
    public int Distance(int from, int to) => Math.Max(Only(Place(from), Place(to)).Count, Only(to, from).Count);

    /// <summary>What changes between two of the formulas: <c>b3→3</c>, <c>+9</c>, <c>-5</c>; empty where both sound alike.</summary>
    /// <param name="from">A formula's place, from 0.</param>
    /// <param name="to">Another's.</param>
    /// <param name="format">"G" (or null) plain, "P" with printed signs.</param>
    /// <exception cref="FormatException">Another format than "G" or "P".</exception>
    public string Change(int from, int to, string? format = null)
    {
        var (gone, come) = (Join(Only(Place(from), Place(to))), Join(Only(to, from)));
        return (gone, come) switch
        {
            ("", "") => "",
            ("", _) => $"+{come}",
            (_, "") => $"-{gone}",
            _ => $"{gone}→{come}",
        };

        string Join(List<Degree> degrees) => string.Join(' ', degrees.Select(degree => degree.ToString(format)));
    }

    private int Place(int place, [CallerArgumentExpression(nameof(place))] string name = "") =>
        Check.Index(place, Formulas.Length, name);

    internal override GenericChart Draw(Palette palette)
    {
        var names = Formulas.Select(static each => Names.InPlot(each.PrintedName)).ToList();
        return Matrix
            .Draw(palette, Title, (names, "from"), (names, "to (tones that change: count, or the one)"), Cell)
            .ToPlotly();
    }

    private Matrix.Cell Cell(int row, int column)
    {
        var distance = Distance(row, column);
        var (one, other) = (Names.InPlot(Formulas[row].PrintedName), Names.InPlot(Formulas[column].PrintedName));
        return distance switch
        {
            0 when row == column => new(0, "–", one),
            0 => new(1, "=", $"{one} and {other} sound alike"),
            1 => new(
                1,
                Formulas.Length <= MostNamed ? Change(row, column, "P") : "1",
                $"{one} to {other}: {Change(row, column, "P")}"
            ),
            2 => new(0.3, "2", $"{one} to {other}: {Change(row, column, "P")}"),
            _ => new(0, $"{distance}", $"{one} to {other}: {Change(row, column, "P")}"),
        };
    }

    private IEnumerable<int> Neighbours(int row) =>
        Enumerable.Range(0, Formulas.Length).Where(column => column != row && Distance(row, column) == 1);

    /// <summary>The degrees of one formula that the other does not sound, each pitch class once.</summary>
    private List<Degree> Only(int one, int other)
    {
        var sounds = Formulas[other].Formula.PitchClasses;
        return
        [
            .. Formulas[one]
                .Formula.Where(degree => !sounds.Contains(degree.PitchClass))
                .DistinctBy(static degree => degree.PitchClass),
        ];
    }
}
