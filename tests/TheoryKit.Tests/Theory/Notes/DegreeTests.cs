using TheoryKit.Theory.Notes;

namespace TheoryKit.Tests.Theory.Notes;

public class DegreeTests
{
    [Fact]
    public void Text_round_trips() => Laws.RoundTrip(Gens.Degree);

    [Fact]
    public void Equal_when_written_alike() => Laws.Equality(Gens.Degree);

    [Fact]
    public void Ordered() => Laws.Order(Gens.Degree);

    [Fact]
    public void Fuzz_of_the_parser() => Fuzz.Parser<Degree>(["1", "b3", "#11", "bb7", "x4", "♭13", "15", "𝄫7", "♮6"]);

    [Fact]
    public void Null_is_refused() => Laws.Null<Degree>();

    [Fact]
    public void Default_is_the_root() => Assert.Equal(new Degree(1), default);

    [Theory]
    [InlineData("1", 0)]
    [InlineData("b2", 1)]
    [InlineData("2", 2)]
    [InlineData("b3", 3)]
    [InlineData("3", 4)]
    [InlineData("4", 5)]
    [InlineData("#4", 6)]
    [InlineData("b5", 6)]
    [InlineData("5", 7)]
    [InlineData("#5", 8)]
    [InlineData("6", 9)]
    [InlineData("bb7", 9)]
    [InlineData("b7", 10)]
    [InlineData("7", 11)]
    [InlineData("8", 12)]
    [InlineData("b9", 13)]
    [InlineData("#9", 15)]
    [InlineData("11", 17)]
    [InlineData("#11", 18)]
    [InlineData("b13", 20)]
    [InlineData("15", 24)]
    public void Semitones_above_the_root(string degree, int semitones) =>
        Assert.Equal(semitones, Degree.Parse(degree).Semitones);

    [Theory]
    [InlineData("", 1, "a number from 1 to 15")]
    [InlineData("b", 2, "a number from 1 to 15")]
    [InlineData("0", 1, "a number from 1 to 15")]
    [InlineData("b16", 2, "a number from 1 to 15")]
    [InlineData("bbbb7", 4, "at most 3")]
    [InlineData("3b", 2, "the end")]
    public void Bad_text_is_refused_with_its_place(string text, int position, string expected) =>
        Laws.Refuses<Degree>(text, position, expected);

    [Fact]
    public void Every_degree_has_its_place_in_the_order()
    {
        var all = Enumerable.Range(0, Degree.Count).Select(Degree.FromIndex).ToList();
        Assert.Equal(105, all.Distinct().Count());
        Assert.Equal(all, all.Order());
        Assert.All(all, degree => Assert.Equal(degree, Degree.FromIndex(degree.Index)));
    }

    [Fact]
    public void Over_a_root_the_letter_follows_the_number_and_the_sound_the_semitones()
    {
        Gens.UsualNoteName.Select(Gens.Degree)
            .Sample(
                (root, degree) =>
                {
                    var tone = root.Add(degree);
                    return (int)tone.Letter == ((int)root.Letter + degree.Number - 1) % 7
                        && tone.PitchClass == (root.PitchClass + degree.PitchClass) % 12
                        && tone == root + degree.Interval;
                }
            );
    }

    [Fact]
    public void Simple_is_the_same_sound_within_the_octave()
    {
        Gens.Degree.Sample(degree =>
            degree.Simple.Number is >= 1 and <= 7
            && degree.Simple.PitchClass == degree.PitchClass
            && degree.Simple.Alteration == degree.Alteration
            && degree.Simple.Simple == degree.Simple
        );
    }
}
