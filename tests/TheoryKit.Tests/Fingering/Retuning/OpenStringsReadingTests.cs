using TheoryKit.Fingering.Retuning;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Scales;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Tests.Fingering.Retuning;

public class OpenStringsReadingTests
{
    public static TheoryData<string> OpenTunings =>
        [
            .. Tuning
                .Known.SelectMany(static known => known.Aliases.Prepend(known.Name))
                .Where(static name => name.StartsWith("Open ", StringComparison.Ordinal)),
        ];

    [Theory]
    [MemberData(nameof(OpenTunings))]
    public void Open_tunings_are_the_chord_that_their_name_says(string name)
    {
        var chord = name["Open ".Length..].Replace(" minor", "m");
        var reading = Tuning.Find(name)!.Reading();
        Assert.Equal(Chord.Parse(chord), reading.Chord.Over(reading.Chord.Root));
        Assert.Equal(reading.Chord.Root, reading.Key.Tonic);
        Assert.Equal(name.EndsWith("minor", StringComparison.Ordinal), reading.Key.IsMinor);
    }

    [Theory]
    [InlineData("Open D", "D", "6 4 1")]
    [InlineData("Open G", "G/D", "5 3")]
    [InlineData("Open A", "A/E", "5 3")]
    [InlineData("Open C", "C", "6 4 2")]
    [InlineData("DADGAD", "Dsus4", "6 4 1")]
    [InlineData("DADEAD", "Dsus2", "6 4 1")]
    [InlineData("Lap steel C6", "C6", "6 2")]
    [InlineData("Lap steel E7", "E7/B", "4 1")]
    [InlineData("Banjo open G", "G/D", "5 3")]
    [InlineData("Ukulele", "C6", "3")]
    public void Chord_bass_and_the_strings_of_the_root(string name, string chord, string roots)
    {
        var reading = Tuning.Find(name)!.Reading();
        Assert.Equal(chord, reading.Chord.ToString());
        Assert.Equal(roots, string.Join(' ', reading.RootStrings));
        Assert.NotEmpty(reading.Readings[0].Terms);
    }

    [Fact]
    public void Every_string_gives_its_degree_over_any_key() =>
        Gen.Select(FingeringGens.Neck(3, 8, 12, 15), Gens.UsualNoteName, Gen.Bool)
            .Sample(
                (neck, tonic, isMinor) =>
                {
                    var key = new Key(tonic, isMinor);
                    var reading = neck.Reading(key);
                    Assert.Equal(key, reading.Key);
                    Assert.Equal(Enumerable.Range(1, neck.StringCount), reading.Strings.Select(static s => s.Number));
                    int[] scale = isMinor ? [0, 2, 3, 5, 7, 8, 10] : [0, 2, 4, 5, 7, 9, 11];
                    foreach (var each in reading.Strings)
                    {
                        var sound = neck.MidiNumberAt(new(each.Number, neck.OpenFret(each.Number)));
                        Assert.Equal(sound, each.Pitch.MidiNumber);
                        Assert.Equal(sound % 12, (tonic.PitchClass + each.Degree.PitchClass) % 12);
                        Assert.Equal(scale.Contains((sound - tonic.PitchClass + 12) % 12), each.IsInKey);
                        if (each.Function is { } function)
                        {
                            Assert.Equal(sound % 12, (reading.Chord.Root.PitchClass + function.PitchClass) % 12);
                        }
                    }

                    Assert.Equal(reading, neck.Reading(key));
                    Assert.Equal(reading.Strings, neck.Reading().Over(key).Strings);
                },
                iter: 300
            );

    [Fact]
    public void Any_tuning_at_all_is_read() =>
        Gens.Tuning.Sample(
            tuning =>
            {
                var reading = tuning.Reading();
                Assert.Equal(tuning.StringCount, reading.Strings.Count);
                Assert.NotEmpty(reading.Readings);
                Assert.True(reading.Key.IsPrinted);
            },
            iter: 500
        );

    [Fact]
    public void Behind_a_capo_the_chord_is_higher()
    {
        var reading = new Neck(Tuning.Find("Open D")!, capo: 2).Reading();
        Assert.Equal("E", reading.Chord.ToString());
        Assert.Equal("E2 B2 E3 G#3 B3 E4", string.Join(' ', reading.Strings.Reverse().Select(static s => s.Pitch)));
    }

    [Fact]
    public void The_usual_qualities_have_shapes_in_open_D()
    {
        var reading = Tuning.Find("Open D")!.Reading();
        Assert.Equal(
            ["1 3 5", "1 b3 5", "1 3 5 b7", "1 3 5 7", "1 b3 5 b7"],
            OpenStringsReading.UsualQualities.Select(static quality => quality.Formula.ToString())
        );
        Assert.All(OpenStringsReading.UsualQualities, quality => Assert.NotEmpty(reading.Shapes(quality)));
        Assert.Equal(
            reading.Shapes(OpenStringsReading.UsualQualities[0], 7),
            MovableShape.Find(Formula.Parse("1 3 5"), reading.Neck, fret: 7)
        );
    }
}
