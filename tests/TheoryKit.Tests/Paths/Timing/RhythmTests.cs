using Fractions;
using TheoryKit.Paths.Timing;

namespace TheoryKit.Tests.Paths.Timing;

public class RhythmTests
{
    [Fact]
    public void Text_round_trips() => Laws.RoundTrip(PathGens.Rhythm);

    [Fact]
    public void Equal_when_written_alike() => Laws.Equality(PathGens.Rhythm);

    [Fact]
    public void Null_is_refused() => Laws.Null<Rhythm>();

    [Theory]
    [InlineData("", 1, "a length in beats")]
    [InlineData("1 x", 3, "a length in beats")]
    [InlineData("r1 r2", 6, "a length that is no rest")]
    [InlineData("1/0", 1, "a length in beats")]
    [InlineData("1 1/193", 3, "no finer than 1/192")]
    [InlineData("65", 1, "at most 64")]
    [InlineData("r1>", 3, "")]
    public void What_is_no_rhythm_is_refused_at_its_place(string text, int position, string expected) =>
        Laws.Refuses<Rhythm>(text, position, expected);

    [Fact]
    public void Any_text_gives_a_rhythm_or_says_where_it_fails() =>
        Fuzz.Parser<Rhythm>(["1", "1/2 1/2", "3/2> 1/2 r1 1/3 1/3 1/3", "r1/192 64>"]);

    [Fact]
    public void Strokes_come_one_after_the_other_and_repeat() =>
        PathGens.Rhythm.Sample(static rhythm =>
        {
            // Read off the text.
            var steps = rhythm.ToString().Split(' ');
            var beats = steps.Aggregate(Fraction.Zero, static (sum, step) => sum + Length(step)).Reduce();
            Assert.Equal(beats, rhythm.Beats);
            var (at, expected) = (Fraction.Zero, new List<Stroke>());
            foreach (var step in steps.Concat(steps))
            {
                if (step[0] != 'r')
                {
                    expected.Add(new(at.Reduce(), Length(step), step.EndsWith('>')));
                }

                at += Length(step);
            }

            Assert.Equal(expected.Count, 2 * rhythm.StrokeCount);
            Assert.Equal(expected, rhythm.Strokes().Take(expected.Count));
        });

    [Fact]
    public void Even_notes_share_each_beat_and_accents_come_round() =>
        Gen.Select(Gen.Int[1, 16], Gen.Int[0, 7])
            .Sample(
                static (perBeat, accents) =>
                {
                    var strokes = Rhythm.Even(perBeat, accents).Strokes().Take(5 * perBeat).ToList();
                    Assert.Equal(5, strokes.Aggregate(Fraction.Zero, static (sum, stroke) => sum + stroke.Length));
                    Assert.Equal(
                        Enumerable.Range(0, strokes.Count).Select(index => accents > 0 && index % accents == 0),
                        strokes.Select(static stroke => stroke.IsAccented)
                    );
                }
            );

    [Fact]
    public void Even_notes_may_be_longer_than_a_beat_but_not_than_a_step()
    {
        Assert.Equal("2", $"{Rhythm.Even(new(1, 2))}");
        Assert.Equal("1/3> 1/3 1/3", $"{Rhythm.Even(3, 3)}");
        Assert.Throws<ArgumentOutOfRangeException>(() => Rhythm.Even(0));
        Assert.Throws<ArgumentOutOfRangeException>(() => Rhythm.Even(193));
        Assert.Throws<ArgumentOutOfRangeException>(() => Rhythm.Even(new(1, 65)));
        Assert.Throws<ArgumentOutOfRangeException>(() => Rhythm.Even(1, -1));
    }

    private static Fraction Length(string step)
    {
        var numbers = step.Trim('r', '>').Split('/').Select(int.Parse).ToList();
        return new Fraction(numbers[0], numbers.ElementAtOrDefault(1) is 0 ? 1 : numbers[1]).Reduce();
    }
}
