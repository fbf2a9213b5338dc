using TheoryKit.Tunings.Necks;

namespace TheoryKit.Tests.Tunings.Necks;

public class PositionTests
{
    [Fact]
    public void Text_round_trips() => Laws.RoundTrip(Gens.Position);

    [Fact]
    public void Equal_when_string_and_fret_are() => Laws.Equality(Gens.Position);

    [Fact]
    public void Ordered() => Laws.Order(Gens.Position);

    [Fact]
    public void Fuzz_of_the_parser() => Fuzz.Parser<Position>(["6:3", "1:0", "12:36", "05:07"]);

    [Theory]
    [InlineData("", 1, "a string from 1 to 12")]
    [InlineData("0:3", 1, "a string from 1 to 12")]
    [InlineData("13:3", 1, "a string from 1 to 12")]
    [InlineData("6", 2, "a colon")]
    [InlineData("6:", 3, "a fret from 0 to 36")]
    [InlineData("6:37", 3, "a fret from 0 to 36")]
    [InlineData("6:3 x", 4, "the end")]
    public void Bad_text_is_refused_with_its_place(string text, int position, string expected) =>
        Laws.Refuses<Position>(text, position, expected);

    [Theory]
    [InlineData(0, 0)]
    [InlineData(13, 0)]
    [InlineData(1, -1)]
    [InlineData(1, 37)]
    public void Out_of_range_is_refused(int number, int fret) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new Position(number, fret));
}
