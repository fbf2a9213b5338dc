using TheoryKit.Fingering.Grips;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Tests.Fingering.Grips;

public class ChordGripTests
{
    /// <summary>Made by hand, each by the definition of its kind, on guitars tuned so that the open strings are the voices.</summary>
    [Theory]
    [InlineData("Cmaj7", "C4 E4 G4 B4", GripSpacing.Close, 0)]
    [InlineData("Cmaj7", "E4 G4 B4 C5", GripSpacing.Close, 1)]
    [InlineData("Cmaj7", "G3 C4 E4 B4", GripSpacing.Drop2, 2)] // C E G B, the G an octave lower
    [InlineData("Cmaj7", "E3 C4 G4 B4", GripSpacing.Drop3, 1)] // C E G B, the E an octave lower
    [InlineData("Cmaj7", "C3 G3 E4 B4", GripSpacing.Drop2And4, 0)] // C E G B, G and C an octave lower
    [InlineData("Cmaj7", "B3 E4 G4 C5", GripSpacing.Drop2, 3)] // E G B C, the B an octave lower
    [InlineData("Cmaj7", "C3 E4 G4 B4", GripSpacing.Open, 0)]
    [InlineData("Cmaj7", "C3 B3 E4 G4", GripSpacing.Drop3, 0)] // B C E G, the C an octave lower
    [InlineData("C", "C4 E4 G4", GripSpacing.Close, 0)]
    [InlineData("C", "C4 G4 E5", GripSpacing.Open, 0)]
    [InlineData("C", "C4 E4 G4 C5", GripSpacing.Open, 0)] // a tone doubled
    [InlineData("C/D", "D3 C4 E4 G4", GripSpacing.Drop3, null)] // C D E G, the D an octave lower
    public void SpacingAndInversionAreReadFromThePitches(
        string chord,
        string pitches,
        GripSpacing spacing,
        int? inversion
    )
    {
        var grip = Open(chord, pitches);
        Assert.Equal(spacing, grip.Spacing);
        Assert.Equal(inversion, grip.Inversion);
    }

    [Fact]
    public void EveryDroppedCloseChordIsRecognized() =>
        Gen.Select(Gen.Int[0, 11].HashSet[4], Gen.Int[0, 3], Gen.Int[0, 3])
            .Sample(
                (classes, inversion, kind) =>
                {
                    // A close chord of four tones from any of them up, then the voices counted from the top are lowered.
                    var tones = classes.Order().ToArray();
                    var close = Enumerable
                        .Range(inversion, 4)
                        .Select(index => 60 + tones[index % 4] + (index >= 4 ? 12 : 0))
                        .ToArray();
                    int[][] drops =
                    [
                        [],
                        [2],
                        [3],
                        [2, 4],
                    ];
                    foreach (var voice in drops[kind])
                    {
                        close[^voice] -= 12;
                    }

                    var root = Pitch.FromMidi(60 + tones[0]).Name;
                    var formula = new Formula(tones.Select(tone => ByClass[tone - tones[0]]));
                    var chord = new Chord(root, formula);
                    var open = string.Join(' ', close.Order().Select(midi => Pitch.FromMidi(midi)));
                    GripSpacing[] kinds =
                    [
                        GripSpacing.Close,
                        GripSpacing.Drop2,
                        GripSpacing.Drop3,
                        GripSpacing.Drop2And4,
                    ];
                    Assert.Equal(kinds[kind], Open(chord, open).Spacing);
                },
                iter: 500
            );

    [Fact]
    public void MissingAndDoubledTonesAreCounted()
    {
        var grip = Open("C7", "C3 E3 Bb3 E4 C5");
        Assert.Equal(Formula.Parse("5"), grip.Missing);
        Assert.Equal(Formula.Parse("1 3"), grip.Doubled);
        Assert.Equal("1 3 b7 3 1", string.Join(' ', grip.Functions));
        Assert.Equal(Pitch.Parse("C3"), grip.Bass);
        Assert.Equal(Pitch.Parse("C5"), grip.Top);
        Assert.False(grip.Grip.IsMovable);
    }

    [Fact]
    public void ASixthChordOverItsSixthIsAMinorSeventh()
    {
        Assert.Equal(Chord.Parse("Am7"), Open("C6/A", "A2 E3 G3 C4").SoundsAs);
        Assert.Null(Open("C6", "C3 G3 A3 E4").SoundsAs);
        Assert.Null(Open("C7", "C3 E3 Bb3 C4").SoundsAs);
        Assert.Equal("Am7", Open("C6/A", "A2 E3 G3 C4").Readings[0].Chord.ToString());
    }

    [Fact]
    public void BarresAreSeen()
    {
        var grip = Chord.Parse("F").Grips(Neck.Guitar).First(each => BruteForce.Key(each.Grip) == "1 1 2 3 3 1");
        Assert.True(grip.Grip.HasBarre);
        Assert.True(grip.Grip.IsMovable);
        Assert.Equal("1-1 3-3 3-4 2-2 1-1 1-1", grip.Grip.ToString());
        Assert.Equal((1, 3), (grip.Grip.LowestFret, grip.Grip.HighestFret));
        Assert.Equal("F: 1-1 3-3 3-4 2-2 1-1 1-1", grip.ToString());
    }

    [Fact]
    public void AForeignBassIsSpelledAsItWasAsked()
    {
        var answer = GripSearch.Find(
            new()
            {
                Chord = Chord.Parse("C"),
                Neck = Neck.Guitar,
                Bass = NoteName.Parse("Bb"),
                LastFret = 5,
            }
        );
        Assert.NotEmpty(answer);
        Assert.All(answer, each => Assert.Equal(NoteName.Parse("Bb"), each.Bass.Name));
        Assert.All(answer, each => Assert.Equal(Degree.Parse("b7"), each.Functions[0]));
        Assert.All(answer, each => Assert.Null(each.Inversion));
    }

    private static readonly Degree[] ByClass =
    [
        .. "1 b2 2 b3 3 4 b5 5 b6 6 b7 7".Split(' ').Select(text => Degree.Parse(text)),
    ];

    private static ChordGrip Open(string chord, string pitches) => Open(Chord.Parse(chord), pitches);

    private static ChordGrip Open(Chord chord, string pitches)
    {
        var tuning = Tuning.Parse(pitches);
        return new(chord, new(tuning), new(tuning.Strings.Select(_ => GripString.Open())), 0);
    }
}
