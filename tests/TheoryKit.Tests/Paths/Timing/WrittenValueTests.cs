using Fractions;
using TheoryKit.Paths.Timing;
using TheoryKit.Theory.Progressions;

namespace TheoryKit.Tests.Paths.Timing;

public class WrittenValueTests
{
    private const int FinestTuplet = 192;

    /// <summary>
    /// Every way to write each length: unit, dots, tuplet; as a musician builds them up. A tuplet is of as many as the length
    /// divides by: thirds are triplets, not nine in the place of eight.
    /// </summary>
    private static readonly ILookup<Fraction, WrittenValue> All = Enumerate()
        .Where(static each => each.Value.Tuplet == OddPart(each.Length))
        .ToLookup(static each => each.Length, static each => each.Value);

    [Fact]
    public void Every_written_value_is_found_by_its_length_in_the_plainest_way() =>
        Assert.All(
            All,
            static ways =>
            {
                var found = WrittenValue.Of(ways.Key);
                Assert.NotNull(found);
                Assert.Equal(ways.Key, found.Value.Length);
                Assert.Contains(found.Value, ways);
                Assert.Equal(ways.MinBy(static way => (way.Tuplet, way.Dots)), found.Value);
            }
        );

    [Fact]
    public void A_length_that_no_value_has_needs_several() =>
        Gen.Select(Gen.Int[1, 800], Gen.Int[1, 400], static (over, under) => new Fraction(over, under).Reduce())
            .Where(static length => OddPart(length) <= FinestTuplet)
            .Sample(static length => Assert.Equal(All.Contains(length), WrittenValue.Of(length) is not null));

    [Fact]
    public void Nothing_and_less_has_no_value()
    {
        Assert.Null(WrittenValue.Of(0));
        Assert.Null(WrittenValue.Of(-1));
        Assert.Null(WrittenValue.Of(2));
    }

    [Fact]
    public void Values_are_said_as_players_say_them()
    {
        Assert.Equal("quarter", $"{WrittenValue.Of(new(1, 4))}");
        Assert.Equal("dotted 8th", $"{WrittenValue.Of(new(3, 16))}");
        Assert.Equal("double dotted half", $"{WrittenValue.Of(new(7, 8))}");
        Assert.Equal("8th, 3 in the place of 2", $"{WrittenValue.Of(new(1, 12))}");
        Assert.Equal("16th, 5 in the place of 4", $"{WrittenValue.Of(new(1, 20))}");
    }

    [Fact]
    public void Parts_add_up_and_none_crosses_a_bar_line() =>
        Gen.Select(PathGens.Length, PathGens.Length, PathGens.Time)
            .Sample(
                static (start, beats, time) =>
                {
                    var parts = WrittenValue.Split(start, beats, time);
                    var at = start;
                    foreach (var (from, length, value) in parts)
                    {
                        Assert.Equal(at.Reduce(), from);
                        Assert.True(length > 0);
                        var bar = Math.Floor((from / time.Beats).ToDouble());
                        Assert.True(from + length <= ((Fraction)bar + 1) * time.Beats);
                        Assert.True(value is null || value.Value.Length == (length * time.BeatLength).Reduce());
                        at += length;
                    }

                    Assert.Equal((start + beats).Reduce(), at.Reduce());
                }
            );

    [Theory]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(6)]
    [InlineData(8)]
    public void On_one_grid_every_part_has_a_value(int grid) =>
        Gen.Select(Gen.Int[0, 200], Gen.Int[1, 100], PathGens.Time)
            .Sample(
                (start, steps, time) =>
                {
                    if (time.Unit * grid > 64)
                    {
                        return;
                    }

                    Assert.All(
                        WrittenValue.Split(new(start, grid), new(steps, grid), time),
                        static part => Assert.NotNull(part.Value)
                    );
                }
            );

    [Theory]
    [InlineData("0", "4", "4/4", "whole")]
    [InlineData("1/2", "1", "4/4", "quarter")]
    [InlineData("7/2", "1", "4/4", "8th, 8th")]
    [InlineData("1/2", "5/2", "4/4", "dotted quarter, quarter")]
    [InlineData("1/3", "1", "4/4", "quarter, 3 in the place of 2, 8th, 3 in the place of 2")]
    [InlineData("2/3", "2/3", "4/4", "quarter, 3 in the place of 2")]
    [InlineData("0", "6", "3/4", "dotted half, dotted half")]
    [InlineData("0", "5", "5/4", "whole, quarter")]
    public void Lengths_are_cut_where_the_beat_is_strong(string start, string beats, string time, string expected) =>
        Assert.Equal(
            expected,
            string.Join(
                ", ",
                WrittenValue
                    .Split(Fraction.FromString(start), Fraction.FromString(beats), TimeSignature.Parse(time))
                    .Select(static part => $"{part.Value}")
            )
        );

    private static IEnumerable<(Fraction Length, WrittenValue Value)> Enumerate()
    {
        for (var tuplet = 1; tuplet <= FinestTuplet; tuplet += 2)
        {
            var inPlaceOf = 1;
            while (inPlaceOf * 2 < tuplet)
            {
                inPlaceOf *= 2;
            }

            for (var unit = 1; unit <= WrittenValue.MaxUnit; unit *= 2)
            {
                var (length, dot) = (new Fraction(1, unit), new Fraction(1, unit));
                for (var dots = 0; dots <= WrittenValue.MaxDots; dots++)
                {
                    yield return ((length * inPlaceOf / tuplet).Reduce(), new(unit, dots, tuplet, inPlaceOf));
                    dot /= 2;
                    length += dot;
                }
            }
        }
    }

    private static int OddPart(Fraction length)
    {
        var odd = (int)length.Denominator;
        while (odd % 2 == 0)
        {
            odd /= 2;
        }

        return odd;
    }
}
