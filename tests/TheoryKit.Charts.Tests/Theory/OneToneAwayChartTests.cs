using System.Numerics;
using TheoryKit.Charts.Theory;

namespace TheoryKit.Charts.Tests.Theory;

public class OneToneAwayChartTests
{
    /// <summary>The shortest way is searched for step by step: a step moves, adds or takes away one tone.</summary>
    [Fact]
    public void The_distance_is_the_fewest_steps() =>
        Gen.Select(Samples.Formulas, Samples.Formulas)
            .Sample(
                static (one, other) =>
                {
                    var chart = new OneToneAwayChart(one, other);
                    Assert.Equal(Steps(Mask(one), Mask(other)), chart.Distance(0, 1));
                    Assert.Equal(chart.Distance(0, 1), chart.Distance(1, 0));
                },
                iter: 40
            );

    [Theory]
    [InlineData("1 3 5 7", "1 3 5 b7", "7→b7", "b7→7")]
    [InlineData("1 3 5", "1 3 5 b7", "+b7", "-b7")]
    [InlineData("1 3 5 b7", "1 4 5 b7", "3→4", "4→3")]
    [InlineData("1 b3 5 7", "1 #9 5 7", "", "")]
    [InlineData("1 3 5", "1 b3 b5 bb7", "3 5→b3 b5 bb7", "b3 b5 bb7→3 5")]
    public void The_change_names_what_goes_and_what_comes(string one, string other, string there, string back)
    {
        var chart = new OneToneAwayChart(Samples.Named("a", one), Samples.Named("b", other));
        Assert.Equal(there, chart.Change(0, 1));
        Assert.Equal(back, chart.Change(1, 0));
    }

    private static int Mask(TheoryKit.Theory.Chords.Formula formula) =>
        Samples.Sounds(formula).Aggregate(0, static (mask, each) => mask | (1 << each));

    private static int Steps(int from, int to)
    {
        var seen = new HashSet<int> { from };
        var edge = new List<int> { from };
        for (var steps = 0; ; steps++)
        {
            if (seen.Contains(to))
            {
                return steps;
            }

            edge =
            [
                .. edge.SelectMany(static set =>
                        from first in Enumerable.Range(0, 12)
                        from second in Enumerable.Range(first, 12 - first)
                        let next = set ^ (1 << first) ^ (first == second ? 0 : 1 << second)
                        where first == second || BitOperations.PopCount((uint)next) == BitOperations.PopCount((uint)set)
                        select next
                    )
                    .Where(seen.Add),
            ];
        }
    }
}
