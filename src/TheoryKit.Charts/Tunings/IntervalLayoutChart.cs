using Plotly.NET;
using TheoryKit.Charts.Figures;
using TheoryKit.Fingering.Retuning;
using TheoryKit.Theory.Notes;

namespace TheoryKit.Charts.Tunings;

using TheoryKit.Tunings.Necks;
using TheoryKit.Values;

/// <summary>
/// How the strings of each tuning stand to each other: the semitones from each string to the next, from the highest-numbered
/// one down to string 1. Where two tunings agree, shapes on those strings agree as well.
/// </summary>
public sealed class IntervalLayoutChart : StudyChart
{
    /// <summary>A chart of the tunings of a comparison.</summary>
    /// <param name="comparison">The comparison.</param>
    public IntervalLayoutChart(TuningComparison comparison)
    {
        ArgumentNullException.ThrowIfNull(comparison);
        Comparison = comparison;
    }

    /// <summary>The comparison.</summary>
    public TuningComparison Comparison { get; }

    /// <inheritdoc/>
    public override string Title => "Semitones from string to string";

    /// <inheritdoc/>
    public override string Description
    {
        get
        {
            var rows = Comparison.Columns.Select(static column =>
                $"{column.ToString("P")} has {string.Join(' ', column.OpenIntervals.Select(static each => Number(each.Semitones)))}"
            );
            var alike = Enumerable
                .Range(1, Steps)
                .Reverse()
                .Where(number =>
                    Comparison.Columns.Select(column => At(column, number)?.Semitones).Distinct().Count() == 1
                )
                .Select(Between)
                .ToList();
            var common =
                Comparison.Columns.Count == 1 ? ""
                : alike.Count == 0 ? " No two strings stand alike in all of them."
                : $" Alike in all: {string.Join(", ", alike)}.";
            return $"From the highest-numbered string to string 1: {string.Join("; ", rows)}.{common}";
        }
    }

    /// <summary>The interval from a string to the one below it in number, by the tuning's place; null where there is no such string.</summary>
    /// <param name="tuning">The tuning's place, from 0.</param>
    /// <param name="number">The number of the string that the interval leads to, from 1.</param>
    public Interval? Step(int tuning, int number) =>
        At(
            Comparison.Columns[Check.Index(tuning, Comparison.Columns.Count)],
            Check.Range(number, 1, Tuning.MaxStrings)
        );

    internal override ChartTable Tabulate(string? format) =>
        new(
            Numbers().Select(Between).Prepend("tuning"),
            Comparison.Columns.Select(column =>
                Numbers()
                    .Select(number => At(column, number) is { } step ? $"{step.Semitones} ({step})" : "")
                    .Prepend(column.ToString(format))
            )
        );

    internal override GenericChart Draw(Palette palette)
    {
        var numbers = Numbers().ToList();
        var most = Math.Max(1, Comparison.Columns.SelectMany(static column => column.OpenIntervals).Max(Size));
        return Matrix
            .Draw(
                palette,
                Title,
                ([.. Comparison.Columns.Select(static column => Names.InPlot(column.ToString("P")))], "tuning"),
                ([.. numbers.Select(Between)], "from string to string (semitones)"),
                (row, column) =>
                    At(Comparison.Columns[row], numbers[column]) is { } step
                        ? new((double)Size(step) / most, Cell(step), Hover(row, numbers[column]))
                        : new(null, "", "no such string")
            )
            .ToPlotly();
    }

    private int Steps => Comparison.Columns.Max(static column => column.OpenIntervals.Count);

    private IEnumerable<int> Numbers() => Enumerable.Range(1, Steps).Reverse();

    private static Interval? At(TuningColumn column, int number) =>
        number <= column.OpenIntervals.Count ? column.OpenIntervals[^number] : null;

    private static int Size(Interval step) => Math.Abs(step.Semitones);

    private static string Between(int number) => $"{number + 1} to {number}";

    private static string Cell(Interval step) => $"{Number(step.Semitones)}  {step.ToString().Replace('-', '\u2212')}";

    private static string Number(int number) => number < 0 ? $"\u2212{-number}" : $"{number}";

    private string Hover(int row, int number)
    {
        var column = Comparison.Columns[row];
        var (from, to) = (column.Neck.Tuning[number + 1].Open, column.Neck.Tuning[number].Open);
        var step = to - from;
        return $"<b>{Names.InPlot(column.ToString("P"))}</b><br>string {number + 1}, {from.ToString("P")}, to string {number}, {to.ToString("P")}: "
            + $"{Names.Some(Size(step), "semitone")} {(step.Semitones < 0 ? "down" : "up")}";
    }
}
