using TheoryKit.Charts.Theory;

namespace TheoryKit.Charts.Tests.Theory;

public class FormulaMapChartTests
{
    [Fact]
    public void A_formula_stands_in_the_field_of_its_two_counts() =>
        Gen.Select(Samples.Formulas, Gen.Int[1, 6], Gen.Int[1, 6])
            .Where(static (_, across, up) => across != up)
            .Sample(
                static (formula, across, up) =>
                {
                    var chart = new FormulaMapChart([formula], across, up);
                    Assert.Equal((Count(across), Count(up)), chart.Field(0));

                    int Count(int intervalClass)
                    {
                        var sounds = Samples.Sounds(formula);
                        var steps = sounds.Count(low => sounds.Contains((low + intervalClass) % 12));
                        return intervalClass == 6 ? steps / 2 : steps;
                    }
                }
            );

    [Fact]
    public void Every_formula_has_a_mark_and_none_lies_on_another() =>
        Samples
            .Formulas.Array[1, 40]
            .Sample(
                static formulas =>
                {
                    var traces = Figures.Of(new FormulaMapChart(formulas.Named()))["data"]!;
                    var places = traces
                        .SelectMany(static trace =>
                            trace["x"]!.Zip(trace["y"]!, static (x, y) => ((double)x, (double)y))
                        )
                        .ToList();
                    Assert.Equal(formulas.Length, places.Count);
                    Assert.Equal(places.Count, places.Distinct().Count());
                },
                iter: 25
            );

    [Fact]
    public void Higher_counts_lie_higher_and_further_right()
    {
        var chart = new FormulaMapChart(Samples.Many);
        var marks = Figures.Of(chart)["data"]!
            .SelectMany(static trace =>
                trace["text"]!.Select(
                    (text, index) =>
                        (
                            Name: ((string?)text)!.Trim('\u00a0'),
                            X: (double)trace["x"]![index]!,
                            Y: (double)trace["y"]![index]!
                        )
                )
            )
            .Select(mark =>
                (
                    mark.X,
                    mark.Y,
                    Field: chart.Field(Array.FindIndex(Samples.Many, each => each.PrintedName == mark.Name))
                )
            )
            .ToList();
        foreach (var one in marks)
        {
            foreach (var other in marks)
            {
                Assert.Equal(one.Field.Across.CompareTo(other.Field.Across), one.X.CompareTo(other.X));
                if (one.Field.Up != other.Field.Up)
                {
                    Assert.Equal(one.Field.Up.CompareTo(other.Field.Up), one.Y.CompareTo(other.Y));
                }
            }
        }
    }

    [Fact]
    public void It_takes_two_different_intervals()
    {
        Assert.Throws<ArgumentException>(static () => new FormulaMapChart(Samples.Many, 3, 3));
        Assert.Throws<ArgumentOutOfRangeException>(static () => new FormulaMapChart(Samples.Many, 0, 3));
        Assert.Throws<ArgumentOutOfRangeException>(static () => new FormulaMapChart(Samples.Many, 3, 7));
        Assert.Throws<ArgumentException>(static () => new FormulaMapChart([]));
    }
}
