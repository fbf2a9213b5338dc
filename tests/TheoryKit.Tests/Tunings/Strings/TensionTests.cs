using TheoryKit.Tunings.Strings;

namespace TheoryKit.Tests.Tunings.Strings;

public class TensionTests
{
    [Fact]
    public void Text_round_trips() => Laws.RoundTrip(StringGens.Tension);

    [Fact]
    public void Equal_when_written_alike() => Laws.Equality(StringGens.Tension);

    [Fact]
    public void Ordered_by_newtons() => Laws.Order(StringGens.Tension);

    [Fact]
    public void Null_is_refused() => Laws.Null<Tension>();

    [Fact]
    public void Fuzz_of_the_parser() =>
        Fuzz.Parser<Tension>(["72.6 N", "-3 N", "7.4 kgf", "16.3lbf", "0 N", "1E-07 N"]);

    [Theory]
    [InlineData("72.6", 5, "N, kgf or lbf")]
    [InlineData("N", 1, "a number")]
    [InlineData("1000000000 N", 1, "a number from 0 to 100000000")]
    [InlineData("100000000 kgf", 1, "no more than 100000000 N")]
    public void Bad_text_is_refused_with_its_place(string text, int position, string expected) =>
        Laws.Refuses<Tension>(text, position, expected);

    [Fact]
    public void Units_are_those_of_the_definitions()
    {
        // 1 kgf = 9.80665 N; 1 lbf = 4.4482216152605 N exactly (NIST SP 811).
        Assert.Equal(9.80665, Tension.Parse("1 kgf").Newtons);
        Assert.Equal(4.4482216152605, Tension.Parse("1 lbf").Newtons, 1e-13);
        StringGens.Tension.Sample(tension =>
        {
            Assert.Equal(tension.Newtons, Tension.FromKilogramsForce(tension.KilogramsForce).Newtons, 1e-9);
            Assert.Equal(tension.Newtons, Tension.FromPoundsForce(tension.PoundsForce).Newtons, 1e-9);
        });
    }

    [Fact]
    public void Shown_with_so_many_decimals()
    {
        Assert.Equal("72.6 N", new Tension(72.59).ToString(1));
        Assert.Equal("0.0 N", new Tension(-0.04).ToString(1));
        Assert.Equal("-7 N", new Tension(-7.2).ToString(0));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Tension(1).ToString(10));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Tension(double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Tension(double.PositiveInfinity));
    }
}
