using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Tests.Tunings.Necks;

public class NeckTests
{
    [Fact]
    public void Text_round_trips() => Laws.RoundTrip(Gens.Neck);

    [Fact]
    public void Equal_when_written_alike() => Laws.Equality(Gens.Neck);

    [Fact]
    public void Fuzz_of_the_parser() =>
        Fuzz.Parser<Neck>([
            "E2 A2 D3 G3 B3 E4",
            "E2 A2 D3 G3 B3 E4, 628 mm, 24 frets, capo 2",
            "G4@5 D3 G3 B3 D4, 669.5 mm",
            "G4 C4 E4 A4 , 15 frets,capo 3, 381mm",
        ]);

    [Fact]
    public void Null_is_refused() => Laws.Null<Neck>();

    [Theory]
    [InlineData("E2 A2 D3 G3 B3 E4, 24 mm", 20, "100 to 2000 mm")]
    [InlineData("E2 A2 D3 G3 B3 E4, 40 frets", 20, "1 to 36")]
    [InlineData("E2 A2 D3 G3 B3 E4, 22.5 frets", 20, "1 to 36")]
    [InlineData("E2 A2 D3 G3 B3 E4, capo 23", 25, "a capo at fret 22 or below")]
    [InlineData("E2 A2 D3 G3 B3 E4, capo", 24, "the fret of the capo")]
    [InlineData("E2 A2 D3 G3 B3 E4, 648", 23, "mm or frets")]
    [InlineData("E2 A2 D3 G3 B3 E4, 648 mm, 628 mm", 32, "each at most once")]
    [InlineData("E2 A2 D3 G3 B3 E4,", 19, "\"648 mm\"")]
    [InlineData("E2 A2 D3 G3 B3 H4", 16, "a letter")]
    [InlineData("G4@5 D3 G3 B3 D4, 4 frets", 1, "beyond fret 4")]
    public void Bad_text_is_refused_with_its_place(string text, int position, string expected) =>
        Laws.Refuses<Neck>(text, position, expected);

    [Fact]
    public void What_is_no_neck_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new Neck(Tuning.Standard, double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Neck(Tuning.Standard, 99));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Neck(Tuning.Standard, frets: 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Neck(Tuning.Standard, frets: 12, capo: 13));
        Assert.Throws<ArgumentException>(() => new Neck(Tuning.Find("Banjo")!, frets: 4));
    }

    [Fact]
    public void Each_fret_shortens_the_rest_of_the_string_by_one_ratio()
    {
        Gen.Double[Neck.MinScaleLength, Neck.MaxScaleLength]
            .Sample(length =>
            {
                var neck = new Neck(Tuning.Standard, length);
                var rest = length;
                var ratio = Math.Pow(2, 1.0 / 12);
                for (var fret = 0; fret <= Position.MaxFret; fret++)
                {
                    Assert.Equal(length - rest, neck.FretDistance(fret), 1e-9 * length);
                    rest /= ratio;
                }

                Assert.Equal(length / 2, neck.FretDistance(12), 1e-12 * length);
                Assert.Equal(length * 3 / 4, neck.FretDistance(24), 1e-12 * length);
            });
    }

    [Fact]
    public void Frets_lie_where_the_luthiers_rule_of_17_817_puts_them()
    {
        // Lutherie handbooks: from each fret to the next is the rest of the string divided by 17.817.
        var neck = new Neck(Tuning.Standard, 650, 24);
        var at = 0.0;
        for (var fret = 1; fret <= 24; fret++)
        {
            at += (650 - at) / 17.817;
            Assert.Equal(at, neck.FretDistance(fret), 0.01);
        }
    }

    [Theory]
    // The fret table of a scale of 25.5 inches (647.7 mm), in inches, as lutherie suppliers print it.
    [InlineData(1, 1.431)]
    [InlineData(2, 2.782)]
    [InlineData(3, 4.057)]
    [InlineData(5, 6.397)]
    [InlineData(7, 8.481)]
    [InlineData(9, 10.338)]
    [InlineData(12, 12.750)]
    [InlineData(15, 14.779)]
    [InlineData(17, 15.948)]
    [InlineData(19, 16.990)]
    [InlineData(22, 18.344)]
    public void Printed_fret_table(int fret, double inches) =>
        Assert.Equal(inches, new Neck(Tuning.Standard, 647.7).FretDistance(fret) / 25.4, 0.001);

    [Fact]
    public void Open_strings_sound_at_the_capo_or_where_they_begin()
    {
        var banjo = new Neck(Tuning.Find("Banjo")!);
        Assert.Equal([0, 0, 0, 0, 5], Enumerable.Range(1, 5).Select(banjo.OpenFret));
        Assert.Equal([2, 2, 2, 2, 5], Enumerable.Range(1, 5).Select(banjo.WithCapo(2).OpenFret));
        Assert.Equal([7, 7, 7, 7, 7], Enumerable.Range(1, 5).Select(banjo.WithCapo(7).OpenFret));
        Assert.Equal(67, banjo.MidiNumberAt(new(5, 5)));
        Assert.Equal(69, banjo.MidiNumberAt(new(5, 7)));
        Assert.Throws<ArgumentOutOfRangeException>(() => banjo.MidiNumberAt(new(5, 4)));
        Assert.False(banjo.Has(default));
        Assert.False(banjo.Has(new(6, 0)));
        Assert.False(banjo.Has(new(1, 23)));
    }

    /// <summary>What sounds at each place, built fret by fret without the library's arithmetic.</summary>
    private static IEnumerable<(Position Position, int Sound)> Everything(Neck neck)
    {
        for (var number = 1; number <= neck.StringCount; number++)
        {
            var sound = neck.Tuning.Strings[number - 1].Open.MidiNumber;
            for (var fret = neck.Tuning.Strings[number - 1].Start; fret <= neck.Frets; fret++, sound++)
            {
                if (fret >= neck.Capo)
                {
                    yield return (new(number, fret), sound);
                }
            }
        }
    }

    [Fact]
    public void Positions_of_a_pitch_are_all_there_are()
    {
        Gens.Neck.Select(Gen.Int[0, 127])
            .Sample(
                (neck, number) =>
                    neck.PositionsOf(Pitch.FromMidi(number))
                        .SequenceEqual(
                            Everything(neck).Where(each => each.Sound == number).Select(each => each.Position)
                        )
            );
    }

    [Fact]
    public void Every_position_has_its_sound()
    {
        Gens.Neck.Sample(neck =>
        {
            var all = Everything(neck).ToDictionary(each => each.Position, each => each.Sound);
            for (var number = 1; number <= Position.MaxString; number++)
            {
                for (var fret = 0; fret <= Position.MaxFret; fret++)
                {
                    var position = new Position(number, fret);
                    Assert.Equal(all.ContainsKey(position), neck.Has(position));
                    if (all.TryGetValue(position, out var sound))
                    {
                        Assert.Equal(sound, neck.MidiNumberAt(position));
                    }
                }
            }
        });
    }

    [Fact]
    public void Places_of_a_chord_are_all_there_are_spelled_by_function()
    {
        Gens.Neck.Select(Gens.UsualNoteName, Gens.UsualFormula)
            .Sample(
                (neck, root, formula) =>
                {
                    var places = neck.PlacesOf(root, formula);
                    var sounds = formula.Select(degree => (root.PitchClass + degree.PitchClass) % 12).ToHashSet();
                    Assert.Equal(
                        Everything(neck).Where(each => sounds.Contains(each.Sound % 12)),
                        places.Select(place => (place.Position, place.Pitch.MidiNumber))
                    );
                    Assert.All(places, place => Assert.Equal(root.Add(place.Function), place.Pitch.Name));
                    Assert.All(places, place => Assert.True(formula.Contains(place.Function)));
                    Assert.Equal(places, neck.PlacesOf(new Chord(root, formula)));
                }
            );
    }

    [Fact]
    public void Places_are_found_on_the_lowest_and_highest_strings_there_are()
    {
        foreach (var text in new[] { "C-1 C-1 C-1, 36 frets", "C8 C8 C8, 36 frets" })
        {
            var neck = Neck.Parse(text);
            foreach (var alteration in new[] { -7, 0, 7 })
            {
                for (var letter = Letter.C; letter <= Letter.B; letter++)
                {
                    Assert.NotEmpty(neck.PlacesOf(new NoteName(letter, alteration), Formula.Parse("1 bbb3 ###5")));
                }
            }
        }
    }

    [Fact]
    public void The_open_strings_of_a_guitar_and_its_twelfth_fret()
    {
        var e = Neck.Guitar.PositionsOf(Pitch.Parse("E4"));
        Assert.Equal(["1:0", "2:5", "3:9", "4:14", "5:19"], e.Select(position => position.ToString()));
        Assert.Equal(64 + 12, Neck.Guitar.MidiNumberAt(new(1, 12)));
    }
}
