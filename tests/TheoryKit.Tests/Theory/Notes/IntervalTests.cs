using TheoryKit.Theory.Notes;

namespace TheoryKit.Tests.Theory.Notes;

public class IntervalTests
{
    [Fact]
    public void Text_round_trips() => Laws.RoundTrip(Gens.Interval);

    [Fact]
    public void Equal_when_written_alike() => Laws.Equality(Gens.Interval);

    [Fact]
    public void Ordered() => Laws.Order(Gens.Interval);

    [Fact]
    public void Fuzz_of_the_parser() =>
        Fuzz.Parser<Interval>(["P1", "m3", "M7", "A4", "d5", "-m2", "AA4", "ddd7", "M13", "P141", "-d1"]);

    [Fact]
    public void Null_is_refused() => Laws.Null<Interval>();

    [Theory]
    // The names of the intervals, as every primer has them, in semitones.
    [InlineData("P1", 0)]
    [InlineData("m2", 1)]
    [InlineData("M2", 2)]
    [InlineData("A2", 3)]
    [InlineData("m3", 3)]
    [InlineData("M3", 4)]
    [InlineData("d4", 4)]
    [InlineData("P4", 5)]
    [InlineData("A4", 6)]
    [InlineData("d5", 6)]
    [InlineData("P5", 7)]
    [InlineData("A5", 8)]
    [InlineData("m6", 8)]
    [InlineData("M6", 9)]
    [InlineData("d7", 9)]
    [InlineData("m7", 10)]
    [InlineData("M7", 11)]
    [InlineData("d8", 11)]
    [InlineData("P8", 12)]
    [InlineData("m9", 13)]
    [InlineData("A11", 18)]
    [InlineData("M13", 21)]
    [InlineData("P15", 24)]
    [InlineData("-M3", -4)]
    [InlineData("-d2", 0)]
    public void Names_and_semitones(string name, int semitones)
    {
        var interval = Interval.Parse(name);
        Assert.Equal(semitones, interval.Semitones);
        Assert.Equal(name, interval.ToString());
    }

    [Theory]
    [InlineData("", 1, "a quality")]
    [InlineData("M5", 1, "it is perfect")]
    [InlineData("m11", 1, "it is perfect")]
    [InlineData("P3", 1, "never perfect")]
    [InlineData("-P6", 2, "never perfect")]
    [InlineData("MM3", 1, "M or m once")]
    [InlineData("m", 2, "a number")]
    [InlineData("P0", 2, "a number")]
    [InlineData("P142", 2, "a number")]
    [InlineData("m3x", 3, "the end")]
    public void Bad_text_is_refused_with_its_place(string text, int position, string expected) =>
        Laws.Refuses<Interval>(text, position, expected);

    [Fact]
    public void Adding_is_a_group()
    {
        Gens.UsualInterval.Select(Gens.UsualInterval, Gens.UsualInterval)
            .Sample(
                (a, b, c) =>
                    a + b == b + a
                    && a + b + c == a + (b + c)
                    && a + Interval.Unison == a
                    && a - a == Interval.Unison
                    && -(-a) == a
                    && a + b - b == a
            );
    }

    [Fact]
    public void An_interval_and_its_inversion_make_an_octave()
    {
        Gens.UsualInterval.Where(each => each.Steps is >= 0 and <= 7 && !each.Descends)
            .Sample(each =>
                each + each.Inversion == Interval.Octave
                // A unison is its own negative.
                && (each == Interval.Unison || (-each).Inversion == -each.Inversion)
            );
        Assert.Equal("M6", Interval.Parse("m3").Inversion.ToString());
        Assert.Equal("d5", Interval.Parse("A4").Inversion.ToString());
        Assert.Equal("P4", Interval.Parse("P5").Inversion.ToString());
        Assert.Equal("P8", Interval.Parse("P1").Inversion.ToString());
    }

    [Fact]
    public void Inversion_turns_qualities_over()
    {
        Gens.UsualInterval.Where(each => each.Steps is >= 1 and <= 6 && !each.Descends)
            .Sample(each =>
            {
                var turned = each.Quality.Select(c => "PMmAd"["PmMdA".IndexOf(c, StringComparison.Ordinal)]);
                return each.Inversion.Quality == string.Concat(turned) && each.Number + each.Inversion.Number == 9;
            });
    }

    [Fact]
    public void Simple_takes_whole_octaves_off_a_compound()
    {
        Gens.Interval.Sample(each =>
        {
            var simple = each.Simple;
            var octaves = (each.Steps - simple.Steps) / 7;
            return !simple.IsCompound
                && (each.IsCompound || simple == each)
                && each.Semitones - simple.Semitones == 12 * octaves
                && each.Steps - simple.Steps == 7 * octaves
                && simple.Quality == each.Quality
                && simple.Simple == simple;
        });
        Assert.Equal("M3", Interval.Parse("M10").Simple.ToString());
        Assert.Equal("P8", Interval.Parse("P15").Simple.ToString());
        Assert.Equal("-m2", Interval.Parse("-m9").Simple.ToString());
    }

    [Theory]
    [InlineData(0, 24)]
    [InlineData(141, 240)]
    [InlineData(0, int.MinValue)]
    [InlineData(0, int.MaxValue)]
    [InlineData(int.MinValue, 0)]
    [InlineData(-1, int.MinValue)]
    public void Beyond_the_range_is_refused(int steps, int semitones) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new Interval(steps, semitones));
}
