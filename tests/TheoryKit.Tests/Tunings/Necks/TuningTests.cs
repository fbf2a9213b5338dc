using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Tests.Tunings.Necks;

public class TuningTests
{
    [Fact]
    public void Text_round_trips() => Laws.RoundTrip(Gens.Tuning);

    [Fact]
    public void Equal_when_every_string_is() => Laws.Equality(Gens.Tuning);

    [Fact]
    public void Fuzz_of_the_parser() =>
        Fuzz.Parser<Tuning>(["E2 A2 D3 G3 B3 E4", "G4@5 D3 G3 B3 D4", " C3  G3 D4 ", "D2\tA♭2 D3 G3 A3 D4"]);

    [Fact]
    public void Null_is_refused() => Laws.Null<Tuning>();

    [Theory]
    [InlineData("", 1, "a pitch")]
    [InlineData("E2 A2", 6, "3 strings or more")]
    [InlineData("E2 A2 D3 G3 B3 E", 17, "an octave")]
    [InlineData("E2 A2 D3 H3", 10, "a letter from A to G")]
    [InlineData("E2 A2D3 G3", 6, "white space")]
    [InlineData("G4@37 D3 G3 B3 D4", 4, "0 to 36")]
    [InlineData("G4@ D3 G3 B3 D4", 4, "the fret")]
    [InlineData("E2 E2 E2 E2 E2 E2 E2 E2 E2 E2 E2 E2 E2", 37, "no more than 12 strings")]
    [InlineData("E2 A2 D3 G3, B3 E4", 12, "the end")]
    [InlineData("E2 A2 D11", 7, "C-1 to C8")]
    public void Bad_text_is_refused_with_its_place(string text, int position, string expected) =>
        Laws.Refuses<Tuning>(text, position, expected);

    [Fact]
    public void Strings_are_counted_from_the_last_one_said()
    {
        var tuning = Tuning.Standard;
        Assert.Equal(6, tuning.StringCount);
        Assert.Equal(Pitch.Parse("E4"), tuning[1].Open);
        Assert.Equal(Pitch.Parse("E2"), tuning[6].Open);
        Assert.Equal(tuning[1], tuning.Strings[0]);
        Assert.Throws<ArgumentOutOfRangeException>(() => tuning[0]);
        Assert.Throws<ArgumentOutOfRangeException>(() => tuning[7]);
    }

    [Fact]
    public void Three_to_twelve_strings()
    {
        var pitch = Pitch.Parse("E2");
        Assert.Throws<ArgumentException>(() => new Tuning(Enumerable.Repeat(pitch, 2)));
        Assert.Throws<ArgumentException>(() => new Tuning(Enumerable.Repeat(pitch, 13)));
        Assert.Equal(12, new Tuning(Enumerable.Repeat(pitch, 12)).StringCount);
    }

    [Fact]
    public void One_string_tuned_otherwise()
    {
        Assert.Equal(Tuning.Find("Drop D"), Tuning.Standard.With(6, Pitch.Parse("D2")));
        Assert.Equal(5, Tuning.Find("Banjo")!.With(5, Pitch.Parse("A4"))[5].Start);
        Assert.Throws<ArgumentOutOfRangeException>(() => Tuning.Standard.With(7, Pitch.Parse("B1")));
    }

    [Fact]
    public void Pitches_are_read_in_the_language_asked_for()
    {
        const string german = "E2 A2 D3 G3 H3 E4";
        Assert.Equal(Tuning.Standard, Tuning.Parse(german, NoteNaming.German));
        Assert.Equal(Neck.Guitar.Tuning, Neck.Parse(german, NoteNaming.German).Tuning);
        Assert.False(Tuning.TryParse(german, null, out _));
    }

    [Fact]
    public void Transposing_back_comes_back()
    {
        Gens.Tuning.Select(Gens.UsualInterval.Where(each => Math.Abs(each.Semitones) <= 12))
            .Where(
                (tuning, interval) =>
                    tuning.Strings.All(each => each.Open.MidiNumber + interval.Semitones is >= 0 and <= 108)
            )
            .Sample((tuning, interval) => tuning.Transpose(interval).Transpose(-interval) == tuning);
    }
}
