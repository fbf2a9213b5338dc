using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Tests.Tunings.Necks;

public class TuningStringTests
{
    [Fact]
    public void Text_round_trips() => Laws.RoundTrip(Gens.TuningString);

    [Fact]
    public void Equal_when_pitch_and_start_are() => Laws.Equality(Gens.TuningString);

    [Fact]
    public void Fuzz_of_the_parser() => Fuzz.Parser<TuningString>(["E2", "G4@5", "Bb0@36", "C-1", "C8@0"]);

    [Fact]
    public void Default_is_C0_from_the_nut() => Assert.Equal(new TuningString(Pitch.Parse("C0")), default);

    [Theory]
    [InlineData("G4@", 4, "the fret")]
    [InlineData("G4@99", 4, "the fret")]
    [InlineData("G4 @5", 3, "the end")]
    [InlineData("C#8", 1, "C-1 to C8")]
    [InlineData("B-2", 1, "C-1 to C8")]
    public void Bad_text_is_refused_with_its_place(string text, int position, string expected) =>
        Laws.Refuses<TuningString>(text, position, expected);

    [Fact]
    public void Out_of_range_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new TuningString(Pitch.Parse("E2"), 37));
        Assert.Throws<ArgumentOutOfRangeException>(() => new TuningString(Pitch.Parse("E2"), -1));
        Assert.Throws<ArgumentOutOfRangeException>(() => new TuningString(Pitch.Parse("C#8")));
        Assert.Throws<ArgumentOutOfRangeException>(() => new TuningString(Pitch.Parse("B-2")));
    }
}
