using TheoryKit.Paths.Exercises;
using TheoryKit.Paths.Timing;
using TheoryKit.Theory.Chords;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Tests.Paths.Exercises;

public class TempoLadderTests
{
    [Fact]
    public void TextReadsBack()
    {
        Laws.RoundTrip(PracticeGens.Ladder);
        Laws.Equality(PracticeGens.Ladder);
        Laws.Null<TempoLadder>();
        Fuzz.Parser<TempoLadder>(["60 to 120 by 5", "120 to 60.5 by *1.05, 3 times", "7 to 7 by 0.25"]);
        Laws.Refuses<TempoLadder>("0 to 5 by 1", 1, "the first tempo");
        Laws.Refuses<TempoLadder>("60 to 120", 10, "\" by \"");
        Laws.Refuses<TempoLadder>("60 to 120 by 0", 14, "a step of more than 0");
        Laws.Refuses<TempoLadder>("1 to 1000 by 0.5", 14, "at most 1000 tempi");
        Laws.Refuses<TempoLadder>("60 to 120 by 5, 0 times", 17, "1 to 100");
        Assert.Equal(TempoLadder.ByStep(60, 120, 5.0m), TempoLadder.Parse("60 to 120 by 5"));
    }

    [Theory]
    [InlineData("60 to 80 by 5", "60 65 70 75 80")]
    [InlineData("60 to 72 by 5", "60 65 70 72")]
    [InlineData("80 to 60 by 8", "80 72 64 60")]
    [InlineData("60 to 60 by 5", "60")]
    [InlineData("100 to 150 by *1.1", "100 110 121 133.1 146.41 150")]
    [InlineData("121 to 100 by *1.1", "121 110 100")]
    public void TheTempiGoFromTheFirstToTheLast(string ladder, string tempi) =>
        Assert.Equal(
            tempi,
            string.Join(
                ' ',
                TempoLadder.Parse(ladder).Tempi.Select(tempo => FormattableString.Invariant($"{tempo:0.##}"))
            )
        );

    [Fact]
    public void TempiAreInOrderAndAStepApart() =>
        PracticeGens.Ladder.Sample(ladder =>
        {
            Assert.Equal((ladder.From, ladder.To), (ladder.Tempi[0], ladder.Tempi[^1]));
            var (low, high) = (Math.Min(ladder.From, ladder.To), Math.Max(ladder.From, ladder.To));
            for (var index = 1; index < ladder.Tempi.Count; index++)
            {
                var (before, after) = (ladder.Tempi[index - 1], ladder.Tempi[index]);
                Assert.Equal(ladder.From < ladder.To, before < after);
                Assert.InRange(after, low, high);
                if (!ladder.IsFactor && index < ladder.Tempi.Count - 1)
                {
                    Assert.Equal(ladder.By, Math.Abs(after - before));
                }
            }
        });

    [Fact]
    public void APathIsPlayedAtEveryTempoAsOftenAsSaid()
    {
        // Eight quarter notes: 8 s at 60, 4 s at 120, twice each.
        var zone = TheoryKit.Fingering.Zones.ZoneSearch.Zones(Chord.Parse("G"), Neck.Guitar)[0];
        var path = zone.Drill(Drill.UpAndDown, Rhythm.Even(4), grips: false);
        var bars = path.BarCount;
        Assert.Equal(2 * bars * (4.0 + 2.0), TempoLadder.Parse("60 to 120 by 60, 2 times").SecondsOf(path), 9);
    }
}
