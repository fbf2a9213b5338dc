using TheoryKit.Licks.Practice;

namespace TheoryKit.Licks.Tests.Practice;

public class SpacedDayTests
{
    private static readonly Gen<SpacedDay> Any =
        from date in Gen.Int[0, 3_000_000].Select(DateOnly.FromDayNumber)
        from outcome in LogGens.Outcome
        from gap in Gen.Int[1, SpacedDay.MaxGap]
        select new SpacedDay(date, outcome, gap);

    [Fact]
    public void TheGapGrowsWithSuccessWhenItIsDueAndShrinksWithFailure() =>
        Gen.Select(Any, LogGens.Outcome, Gen.Int[1, 400])
            .Sample(
                static (day, outcome, passed) =>
                {
                    var then = day.Then(day.Date.AddDays(passed), outcome);
                    Assert.InRange(then.Gap, 1, SpacedDay.MaxGap);
                    if (!outcome.IsClean)
                    {
                        Assert.True(then.Gap < day.Gap || day.Gap == 1);
                    }
                    else
                    {
                        Assert.True(then.Gap >= day.Gap);
                        Assert.True(passed < day.Gap || then.Gap > day.Gap || then.Gap == SpacedDay.MaxGap);
                    }
                }
            );

    [Fact]
    public void WhatWentBetterComesBackNoSooner() =>
        Gen.Select(Any, Gen.Int[1, 400])
            .Sample(
                static (day, passed) =>
                {
                    var gaps = Outcome.Known.Select(outcome => day.Then(day.Date.AddDays(passed), outcome).Gap);
                    Assert.Equal(gaps.Order(), gaps);
                    var first = Outcome.Known.Select(outcome => SpacedDay.First(day.Date, outcome).Gap);
                    Assert.Equal(first.Order(), first);
                }
            );

    // Worked out by hand from the rule in the type's remarks.
    [Theory]
    [InlineData("0 clean", 2)]
    [InlineData("0 clean, 2 clean", 4)]
    [InlineData("0 clean, 2 clean, 6 clean", 8)]
    [InlineData("0 clean, 2 clean, 6 clean, 14 fell apart", 2)]
    [InlineData("0 clean, 2 clean, 6 clean, 14 stumbled", 4)]
    [InlineData("0 at ease, 4 at ease", 12)]
    [InlineData("0 at ease, 5 clean", 10)] // a day late, and it was still there
    [InlineData("0 at ease, 100 clean", 16)] // only twice the gap counts
    [InlineData("0 at ease, 1 clean", 4)] // early
    [InlineData("0 fell apart, 1 fell apart", 1)]
    [InlineData("0 at ease, 4 at ease, 16 at ease, 52 at ease, 160 at ease", 120)]
    [InlineData("0 fell apart, 0 at ease", 1)] // the first of the day
    public void GapsAreThoseOfTheRule(string days, int gap)
    {
        var entries = days.Split(", ")
            .Select(static day => day.Split(' ', 2))
            .Select(static day => new Practised
            {
                Date = LogGens.First.AddDays(int.Parse(day[0])),
                Lick = "x",
                Outcome = Outcome.Parse(day[1]),
            });
        Assert.Equal(gap, PracticeHistory.Of(entries).Find("x")!.Last.Gap);
    }

    [Fact]
    public void TheLastDayOfTheCalendarHasNoDayAfterIt() =>
        Assert.Equal(DateOnly.MaxValue, SpacedDay.First(DateOnly.MaxValue, Outcome.Clean).Next);

    [Fact]
    public void AnEarlierDayDoesNotFollow() =>
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            SpacedDay.First(LogGens.First, Outcome.Clean).Then(LogGens.First, Outcome.Clean)
        );
}
