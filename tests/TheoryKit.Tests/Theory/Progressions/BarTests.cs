using Fractions;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Progressions;

namespace TheoryKit.Tests.Theory.Progressions;

public class BarTests
{
    private static readonly Gen<Bar> Bars = Gen.Int[1, 12].SelectMany(beats => AnyOf.Bar(beats, AnyOf.Chord));

    [Fact]
    public void Equal_when_built_again_from_its_lengths() =>
        Bars.Sample(bar =>
        {
            var again = new Bar(bar.Chords.Select(span => (span.Chord, span.Length)));
            Assert.Equal(bar, again);
            Assert.Equal(bar.GetHashCode(), again.GetHashCode());
            Assert.Equal(bar.ToString(), again.ToString());
            Assert.Equal(bar.Beats, again.Beats);
        });

    [Fact]
    public void Its_text_in_its_time_is_the_bar() =>
        Bars.Sample(bar => Assert.Equal(bar, Assert.Single(Changes.Parse($"{bar.Beats}/4: {bar}").Bars)));

    [Theory]
    [InlineData("2 2", "C F")]
    [InlineData("3 1", "C / / F")]
    [InlineData("1 3", "C F / /")]
    [InlineData("4/3 8/3", "C / / / F / / / / / / /")]
    [InlineData("5/2 3/2", "C / / / / F / /")]
    [InlineData("4/3 4/3 4/3", "C F C")]
    public void The_fewest_slashes_say_the_lengths(string lengths, string text)
    {
        var bar = new Bar(
            lengths
                .Split(' ')
                .Select((length, index) => (Chord.Parse(index % 2 == 0 ? "C" : "F"), Fraction.FromString(length)))!
        );
        Assert.Equal(text, bar.ToString());
        Assert.Equal(bar, Assert.Single(Changes.Parse(text).Bars));
    }
}
