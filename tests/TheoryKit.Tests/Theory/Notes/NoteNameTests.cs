using TheoryKit.Theory.Notes;

namespace TheoryKit.Tests.Theory.Notes;

public class NoteNameTests
{
    [Fact]
    public void Text_round_trips() => Laws.RoundTrip(Gens.NoteName);

    [Fact]
    public void Equal_when_spelled_alike() => Laws.Equality(Gens.NoteName);

    [Fact]
    public void Fuzz_of_the_parser() =>
        Fuzz.Parser<NoteName>(["C", "Bb", "f#", "Gx", "A♭", "D𝄪", "E𝄫", "C♮", "Abbb"]);

    [Fact]
    public void Default_is_C() => Assert.Equal(new NoteName(Letter.C), default);

    [Fact]
    public void Null_is_refused() => Laws.Null<NoteName>();

    [Theory]
    [InlineData("", 1, "a letter from A to G")]
    [InlineData("H", 1, "a letter from A to G")]
    [InlineData("C#b", 3, "the end of the text")]
    [InlineData("Bb x", 3, "the end of the text")]
    [InlineData("C############", 13, "at most 11")]
    public void Bad_text_is_refused_with_its_place(string text, int position, string expected) =>
        Laws.Refuses<NoteName>(text, position, expected);

    [Theory]
    [InlineData("C", 0)]
    [InlineData("B#", 0)]
    [InlineData("Dbb", 0)]
    [InlineData("Cb", 11)]
    [InlineData("F#", 6)]
    [InlineData("Gb", 6)]
    [InlineData("E#", 5)]
    [InlineData("Fb", 4)]
    [InlineData("A", 9)]
    public void Pitch_classes(string name, int pitchClass) => Assert.Equal(pitchClass, NoteName.Parse(name).PitchClass);

    [Fact]
    public void There_are_21_common_names()
    {
        Assert.Equal(21, NoteName.Common.Distinct().Count());
        Assert.All(NoteName.Common, name => Assert.InRange(name.Alteration, -1, 1));
    }

    [Fact]
    public void Up_and_down_the_same_interval_comes_back()
    {
        Gens.UsualNoteName.Select(Gens.UsualInterval)
            .Sample((note, interval) => note + interval - interval == note && note - interval + interval == note);
    }

    [Fact]
    public void The_interval_from_one_name_to_another_leads_there()
    {
        Gens.NoteName.Select(Gens.NoteName)
            .Sample((from, to) => from + from.To(to) == to && from.To(to).Steps is >= 0 and < 7);
    }

    [Fact]
    public void There_is_an_interval_between_any_two_names()
    {
        var all = (
            from letter in Enum.GetValues<Letter>()
            from alteration in Enumerable.Range(-NoteName.MaxAlteration, (2 * NoteName.MaxAlteration) + 1)
            select new NoteName(letter, alteration)
        ).ToList();
        Assert.All(all, from => Assert.All(all, to => Assert.Equal(to, from + from.To(to))));
    }

    [Fact]
    public void Adding_moves_letter_and_pitch_class()
    {
        Gens.UsualNoteName.Select(Gens.UsualInterval)
            .Sample(
                (note, interval) =>
                    (int)(note + interval).Letter == (((int)note.Letter + interval.Steps) % 7 + 7) % 7
                    && (note + interval).PitchClass == ((note.PitchClass + interval.Semitones) % 12 + 12) % 12
            );
    }

    [Fact]
    public void Intervals_add_up()
    {
        Gens.UsualNoteName.Select(Gens.UsualInterval, Gens.UsualInterval)
            .Sample((note, first, second) => note + first + second == note + (first + second));
    }

    [Fact]
    public void Past_eleven_accidentals_is_an_overflow()
    {
        var sharpest = new NoteName(Letter.C, NoteName.MaxAlteration);
        Assert.Throws<OverflowException>(() => sharpest + Interval.Parse("A1"));
        Assert.Throws<ArgumentOutOfRangeException>(() => new NoteName(Letter.C, 12));
        Assert.Throws<ArgumentOutOfRangeException>(() => new NoteName((Letter)7));
    }

    [Fact]
    public void The_line_of_fifths_goes_by_fifths()
    {
        Gens.UsualNoteName.Sample(note =>
            (note + Interval.Parse("P5")).Fifths == note.Fifths + 1
            && note.PitchClass == ((7 * note.Fifths) % 12 + 12) % 12
        );
        Assert.Equal(0, NoteName.Parse("C").Fifths);
    }

    [Fact]
    public void Simplest_sounds_the_same_with_the_fewest_accidentals()
    {
        Gens.NoteName.Sample(note =>
        {
            var simplest = note.Simplest();
            var fewest = Enumerable
                .Range(0, 7)
                .SelectMany(letter => Enumerable.Range(-2, 5).Select(each => new NoteName((Letter)letter, each)))
                .Where(each => each.IsEnharmonicTo(note))
                .Min(each => Math.Abs(each.Alteration));
            return simplest.IsEnharmonicTo(note)
                && Math.Abs(simplest.Alteration) == fewest
                && simplest.Simplest() == simplest;
        });
    }

    [Theory]
    [InlineData("Fx", "G")]
    [InlineData("B#", "C")]
    [InlineData("Cx#", "D#")]
    [InlineData("Abb", "G")]
    [InlineData("Fbbb", "D")]
    [InlineData("Gbbb", "E")]
    [InlineData("Bbbb", "Ab")]
    [InlineData("F#", "F#")]
    [InlineData("Gb", "Gb")]
    public void Simplest_keeps_the_side(string name, string simplest) =>
        Assert.Equal(simplest, NoteName.Parse(name).Simplest().ToString());

    [Fact]
    public void Lists_take_spaces_and_commas()
    {
        Assert.Equal(["C", "Eb", "G", "Bb"], NoteName.ParseList(" C, Eb G ,Bb ").Select(note => note.ToString()));
        Assert.Contains("position 3", Assert.ThrowsAny<FormatException>(() => NoteName.ParseList("C H")).Message);
        Assert.ThrowsAny<FormatException>(() => NoteName.ParseList(" "));
    }
}
