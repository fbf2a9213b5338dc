using Fractions;
using TheoryKit.Paths.Timing;

namespace TheoryKit.Tests.Paths.Timing;

public class SwingTests
{
    private static readonly Gen<Fraction> Beat = Gen.Select(
        Gen.Int[-500, 500],
        Gen.Int[1, 60],
        static (over, under) => new Fraction(over, under).Reduce()
    );

    [Fact]
    public void Text_round_trips() => Laws.RoundTrip(PathGens.Swing);

    [Fact]
    public void Equal_when_written_alike() => Laws.Equality(PathGens.Swing);

    [Fact]
    public void Null_is_refused() => Laws.Null<Swing>();

    [Theory]
    [InlineData("1/3")]
    [InlineData("1/1")]
    [InlineData("2")]
    [InlineData("51/101")]
    [InlineData("1/0")]
    [InlineData("swung")]
    public void What_is_no_swing_is_refused(string text) => Laws.Refuses<Swing>(text, 1, "from 1/2 up to 1");

    [Fact]
    public void Any_text_gives_a_swing_or_says_where_it_fails() =>
        Fuzz.Parser<Swing>(["straight", "2/3", "1/2", "99/100", "3/5"]);

    [Fact]
    public void The_default_is_straight()
    {
        Assert.Equal(Swing.Straight, default);
        Assert.Equal(new Swing(new(1, 2)), default);
        Assert.Equal("straight", $"{default(Swing)}");
        Assert.Equal("2/3", $"{Swing.Triplet}");
        Assert.Throws<ArgumentOutOfRangeException>(() => new Swing(new(1, 3)));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Swing(1));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Swing(new(51, 101)));
    }

    [Fact]
    public void Beats_stay_and_halves_come_when_the_swing_says() =>
        Gen.Select(PathGens.Swing, Gen.Int[-9, 99])
            .Sample(
                static (swing, beat) =>
                {
                    Assert.Equal(beat, swing.Play(beat));
                    Assert.Equal((beat + swing.Part).Reduce(), swing.Play(beat + new Fraction(1, 2)));
                }
            );

    [Fact]
    public void Straight_plays_as_written() =>
        Beat.Sample(static beat => Assert.Equal(beat, Swing.Straight.Play(beat)));

    [Fact]
    public void Later_is_played_later_and_beats_fill_evenly() =>
        Gen.Select(PathGens.Swing, Beat, Beat)
            .Sample(
                static (swing, one, other) =>
                {
                    Assert.Equal(one.CompareTo(other), swing.Play(one).CompareTo(swing.Play(other)));
                    // Halfway within a half is halfway when played.
                    var half = new Fraction(1, 2);
                    var from = ((Fraction)Math.Floor((one * 2).ToDouble()) * half).Reduce();
                    var (start, end) = (swing.Play(from), swing.Play(from + half));
                    Assert.Equal((start + ((end - start) * (one - from) * 2)).Reduce(), swing.Play(one));
                }
            );
}
