using TheoryKit.Charts.Paths;
using TheoryKit.Charts.Theory;
using TheoryKit.Charts.Tunings;
using TheoryKit.Paths.Joins;
using TheoryKit.Theory.Progressions;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Charts.Tests.Paths;

public class JoinMapChartTests
{
    private static readonly JoinTable Table = Samples.NineTinBoatsJoined;

    [Fact]
    public void Each_zone_is_a_row_and_each_number_of_notes_a_column_with_the_chords_of_the_cycle_in_the_cell()
    {
        var figure = Figures.Of(Table.MapChart());
        var cells = figure["data"]![0]!["z"]!;
        Assert.Equal(Table.Windows.Length, cells.Count());
        Assert.All(cells, row => Assert.Equal(Table.Notes.Length, row.Count()));
        Assert.Equal(
            Table.Cells.Select(static cell => $"{cell.Cycle}").Order(StringComparer.Ordinal),
            Figures.Texts(Table.MapChart()).Order(StringComparer.Ordinal)
        );
    }

    [Fact]
    public void Longer_cycles_are_stronger_once_through_is_faint_and_the_longest_is_full()
    {
        var cells = Figures.Of(Table.MapChart())["data"]![0]!["z"]!;
        var strengths = Table
            .Cells.Select(
                (cell, index) =>
                    (cell.Cycle, Strength: (double)cells[index / Table.Notes.Length]![index % Table.Notes.Length]!)
            )
            .OrderBy(static each => each.Cycle)
            .ToList();
        Assert.Equal(
            strengths.Select(static each => each.Strength).Order(),
            strengths.Select(static each => each.Strength)
        );
        Assert.Equal(1, strengths[^1].Strength, 12);
        Assert.All(strengths.Where(static each => each.Cycle == 4), static each => Assert.Equal(0, each.Strength));
    }

    [Fact]
    public void Where_nothing_sounds_the_cell_is_empty_and_says_so()
    {
        var neck = new Neck(Tuning.Parse("C3 C4 C5"));
        var chart = JoinSearch.Table(Changes.Parse("C5 | F5"), neck, [new(3, 4)], 2, 3).MapChart();
        Assert.EndsWith("None of the chords has a tone there.", chart.Description, StringComparison.Ordinal);
        Assert.Equal("3-4 - -", string.Join(' ', chart.Table.Rows[0]));
        Assert.All(Figures.Texts(chart), static text => Assert.Equal("", text));
    }
}
