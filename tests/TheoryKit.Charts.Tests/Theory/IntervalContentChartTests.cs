using TheoryKit.Charts.Theory;
using TheoryKit.Theory.Chords;

namespace TheoryKit.Charts.Tests.Theory;

public class IntervalContentChartTests
{
    /// <summary>Published interval vectors: Allen Forte, The Structure of Atonal Music (1973), appendix 1.</summary>
    [Theory]
    [InlineData("1 3 5", "001110")]
    [InlineData("1 b3 b5", "002001")]
    [InlineData("1 3 #5", "000300")]
    [InlineData("1 b3 b5 bb7", "004002")]
    [InlineData("1 3 5 7", "101220")]
    [InlineData("1 3 5 b7", "012111")]
    [InlineData("1 2 3 5 6", "032140")]
    [InlineData("1 2 3 #4 #5 b7", "060603")]
    [InlineData("1 2 3 4 5 6 7", "254361")]
    public void Counts_are_those_of_the_published_table(string formula, string vector)
    {
        var chart = new IntervalContentChart(Formula.Parse(formula));
        Assert.Equal(vector, string.Concat(Enumerable.Range(1, 6).Select(each => chart.Count(0, each))));
    }

    [Fact]
    public void Every_pair_of_tones_is_counted_once() =>
        Samples.Formulas.Sample(static formula =>
        {
            var chart = new IntervalContentChart(formula);
            var sounds = Samples.Sounds(formula);
            for (var intervalClass = 1; intervalClass <= 6; intervalClass++)
            {
                var pairs =
                    from low in sounds
                    from high in sounds
                    where low < high && (high - low == intervalClass || high - low == 12 - intervalClass)
                    select (low, high);
                Assert.Equal(pairs.Count(), chart.Count(0, intervalClass));
            }
        });

    [Theory]
    [InlineData(1, "bar")]
    [InlineData(4, "bar")]
    [InlineData(5, "heatmap")]
    public void Few_formulas_are_bars_and_more_a_heat_map(int count, string kind)
    {
        var figure = Figures.Of(new IntervalContentChart(Samples.Many.Take(count)));
        Assert.Equal(kind, (string?)figure["data"]![0]!["type"]);
    }

    [Fact]
    public void Bars_carry_the_counts_and_a_pattern_of_their_own()
    {
        var chart = new IntervalContentChart(Samples.Sevenths);
        var traces = Figures.Of(chart)["data"]!.ToList();
        Assert.Equal(
            4,
            traces.Select(static trace => (string?)trace["marker"]!["pattern"]!["shape"]).Distinct().Count()
        );
        Assert.All(
            traces.Index(),
            trace =>
                Assert.Equal(
                    Enumerable.Range(1, 6).Select(each => chart.Count(trace.Index, each)),
                    trace.Item["y"]!.Select(static value => (int)value)
                )
        );
    }

    [Fact]
    public void It_takes_a_formula() => Assert.Throws<ArgumentException>(static () => new IntervalContentChart());
}
