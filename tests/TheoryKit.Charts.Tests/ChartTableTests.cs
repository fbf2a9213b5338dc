using TheoryKit.Charts.Figures;

namespace TheoryKit.Charts.Tests;

public class ChartTableTests
{
    [Fact]
    public void Columns_line_up_with_numbers_to_the_right()
    {
        var table = new ChartTable(
            ["name", "count", "words"],
            [
                ["a", "5", "x"],
                ["long name", "12", ""],
            ]
        );
        Assert.Equal("name       count  words\na              5  x\nlong name     12\n", table.ToString());
    }

    [Fact]
    public void Every_row_has_a_text_for_each_column() =>
        Assert.Throws<ArgumentException>(static () =>
            new ChartTable(
                ["a", "b"],
                [
                    ["1"],
                ]
            )
        );

    [Fact]
    public void A_table_has_a_column() => Assert.Throws<ArgumentException>(static () => new ChartTable([], []));

    [Fact]
    public void Tables_with_the_same_texts_are_equal()
    {
        Assert.Equal(
            new ChartTable(
                ["a"],
                [
                    ["1"],
                ]
            ),
            new ChartTable(
                ["a"],
                [
                    ["1"],
                ]
            )
        );
        Assert.NotEqual(
            new ChartTable(
                ["a"],
                [
                    ["1"],
                ]
            ),
            new ChartTable(
                ["a"],
                [
                    ["2"],
                ]
            )
        );
    }
}
