using Fractions;
using TheoryKit.Theory.Progressions;

namespace TheoryKit.Tests.Theory.Progressions;

public class TimeSignatureTests
{
    private static readonly Gen<TimeSignature> Times = Gen.Select(
        Gen.Int[1, TimeSignature.MaxBeats],
        Gen.Int[0, 6],
        (beats, log) => new TimeSignature(beats, 1 << log)
    );

    [Fact]
    public void Text_round_trips() => Laws.RoundTrip(Times);

    [Fact]
    public void Equal_when_written_alike() => Laws.Equality(Times);

    [Fact]
    public void Null_is_refused() => Laws.Null<TimeSignature>();

    [Fact]
    public void Every_signature_reads_back_and_its_bar_is_its_fraction()
    {
        for (var beats = 1; beats <= TimeSignature.MaxBeats; beats++)
        {
            for (var unit = 1; unit <= TimeSignature.MaxUnit; unit *= 2)
            {
                var time = new TimeSignature(beats, unit);
                Assert.Equal((beats, unit), (time.Beats, time.Unit));
                Assert.Equal(time, TimeSignature.Parse(time.ToString()));
                Assert.Equal(new Fraction(beats) / unit, time.BarLength);
                Assert.Equal(time.BarLength, time.BeatLength * beats);
                Assert.Equal(time.BarLength * 4, time.QuartersPerBar);
            }
        }
    }

    [Fact]
    public void The_default_is_four_four() => Assert.Equal(new TimeSignature(4, 4), default);

    [Theory]
    [InlineData("6/8", 2)]
    [InlineData("12/8", 4)]
    [InlineData("9/16", 3)]
    [InlineData("3/8", 3)]
    [InlineData("4/4", 4)]
    [InlineData("6/4", 2)]
    [InlineData("5/4", 5)]
    public void Compound_times_are_felt_in_threes(string text, int pulses) =>
        Assert.Equal(pulses, TimeSignature.Parse(text).Pulses);

    [Theory]
    [InlineData("4/4", "0 2")]
    [InlineData("2/4", "0")]
    [InlineData("3/4", "0")]
    [InlineData("1/4", "0")]
    [InlineData("5/4", "0 3")]
    [InlineData("7/8", "0 3 5")]
    [InlineData("3/8", "0")]
    [InlineData("6/8", "0 3")]
    [InlineData("9/8", "0 3 6")]
    [InlineData("12/8", "0 3 6 9")]
    [InlineData("8/8", "0 2 4 6")]
    public void A_bar_has_weight_on_its_strong_beats(string text, string strong)
    {
        var time = TimeSignature.Parse(text);
        Assert.Equal(strong.Split(' ').Select(int.Parse), time.StrongBeats);
        for (var half = -1; half <= 2 * time.Beats; half++)
        {
            Assert.Equal(
                half % 2 == 0 && time.StrongBeats.Contains(half / 2),
                time.IsStrong(new Fractions.Fraction(half, 2))
            );
        }
    }

    [Theory]
    [InlineData(0, 4)]
    [InlineData(65, 4)]
    [InlineData(4, 3)]
    [InlineData(4, 0)]
    [InlineData(4, 128)]
    public void Other_numbers_are_refused(int beats, int unit)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new TimeSignature(beats, unit));
        Assert.False(TimeSignature.TryParse($"{beats}/{unit}", null, out _));
    }

    [Fact]
    public void Any_text_gives_a_signature_or_says_where_it_fails() =>
        Fuzz.Parser<TimeSignature>(["4/4", "3/4", "6/8", "12/8", "64/64", "2/2"]);
}
