using TheoryKit.Charts.Theory;

namespace TheoryKit.Charts.Tests.Theory;

public class SharedTonesChartTests
{
    [Fact]
    public void Two_chords_share_what_both_sound() =>
        Gen.Select(Samples.Chords, Samples.Chords)
            .Sample(
                static (one, other) =>
                {
                    var chart = new SharedTonesChart(one, other);
                    var expected = Sounds(one).Intersect(Sounds(other)).Order().ToList();
                    Assert.Equal(expected.Count, chart.Count(0, 1));
                    Assert.Equal(
                        expected,
                        chart.Shared(0, 1).Select(static tone => Samples.PitchClass(tone.InFirst.Name)).Order()
                    );
                    Assert.Equal(
                        expected,
                        chart.Shared(1, 0).Select(static tone => Samples.PitchClass(tone.InFirst.Name)).Order()
                    );
                    Assert.Equal(Sounds(one).Count, chart.Count(0, 0));
                }
            );

    [Fact]
    public void Tones_are_spelled_as_in_the_first_chord()
    {
        var sharp = Samples.NineTinBoats[0].Transpose(TheoryKit.Theory.Notes.Interval.Parse("A1"));
        var flat = Samples.NineTinBoats[0].Transpose(TheoryKit.Theory.Notes.Interval.Parse("m2"));
        var chart = new SharedTonesChart(sharp, flat);
        Assert.Equal("G# B D# F# A#", string.Join(' ', chart.Shared(0, 1).Select(static tone => tone.InFirst.Name)));
        Assert.Equal("Ab Cb Eb Gb Bb", string.Join(' ', chart.Shared(1, 0).Select(static tone => tone.InFirst.Name)));
    }

    [Fact]
    public void The_picture_is_symmetrical_with_the_diagonal_left_faint()
    {
        var cells = Figures.Of(new SharedTonesChart(Samples.NineTinBoats))["data"]![0]!["z"]!;
        for (var row = 0; row < 4; row++)
        {
            Assert.Equal(0, (double)cells[row]![row]!);
            for (var column = 0; column < 4; column++)
            {
                Assert.Equal((double)cells[row]![column]!, (double)cells[column]![row]!);
            }
        }
    }

    [Fact]
    public void Few_chords_name_the_tones_in_the_cells()
    {
        var texts = Figures.Texts(new SharedTonesChart(Samples.NineTinBoats));
        Assert.Contains("4<br>G B♭ D<br>A", texts);
    }

    [Fact]
    public void It_takes_two_chords() =>
        Assert.Throws<ArgumentException>(static () => new SharedTonesChart(Samples.NineTinBoats[0]));

    private static HashSet<int> Sounds(TheoryKit.Theory.Chords.Chord chord) =>
        [
            Samples.PitchClass(chord.Bass),
            .. Samples.Sounds(chord.Formula).Select(semitones => (semitones + Samples.PitchClass(chord.Root)) % 12),
        ];
}
