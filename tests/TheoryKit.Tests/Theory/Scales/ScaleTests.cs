using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Scales;

namespace TheoryKit.Tests.Theory.Scales;

public class ScaleTests
{
    [Fact]
    public void Text_round_trips() => Laws.RoundTrip(AnyOf.Scale);

    [Fact]
    public void Equal_when_written_alike() => Laws.Equality(AnyOf.Scale);

    [Fact]
    public void Null_is_refused() => Laws.Null<Scale>();

    [Fact]
    public void Every_scale_reads_back() =>
        AnyOf.Scale.Sample(
            scale =>
                Scale.Parse(scale.ToString()) == scale
                && Scale.Parse(scale.ToString("P")) == scale
                && NoteNaming.Known.All(naming => Scale.Parse(scale.ToString(null, naming), naming) == scale),
            iter: 2_000
        );

    [Fact]
    public void Every_named_scale_on_every_common_tonic_reads_back()
    {
        foreach (var type in ScaleType.Known)
        {
            foreach (var tonic in NoteName.Common)
            {
                var scale = type.On(tonic);
                Assert.Equal($"{tonic} {type.Name}", scale.ToString());
                Assert.Equal(scale, Scale.Parse(scale.ToString()));
                Assert.Same(type, scale.Type);
            }
        }
    }

    [Fact]
    public void A_mode_has_the_same_notes_spelled_alike_from_another_of_them() =>
        Gen.Select(AnyOf.Note, AnyOf.Any(ScaleType.Known), Gen.Int[0, 11])
            .Sample(
                (tonic, type, turn) =>
                {
                    var scale = type.On(tonic);
                    turn %= scale.Count;
                    var mode = scale.Mode(turn + 1);
                    Assert.Equal(scale.Tones.Skip(turn).Concat(scale.Tones.Take(turn)), mode.Tones);
                    Assert.Equal(scale, mode.Mode(((scale.Count - turn) % scale.Count) + 1));
                    Assert.Equal(scale.PitchClasses, mode.PitchClasses);
                }
            );

    // Spelled by walking letters and semitone counts of the piano instead of by degrees.
    [Fact]
    public void Seven_tone_scales_use_every_letter_once_in_order()
    {
        foreach (var type in ScaleType.Known.Where(type => type.Formula.Count == 7))
        {
            foreach (var tonic in NoteName.Common)
            {
                var tones = type.On(tonic).Tones;
                for (var index = 0; index < 7; index++)
                {
                    Assert.Equal((Letter)(((int)tonic.Letter + index) % 7), tones[index].Letter);
                }
            }
        }
    }

    [Theory]
    [InlineData("Eb dorian", "Eb F Gb Ab Bb C Db")]
    [InlineData("F# major", "F# G# A# B C# D# E#")]
    [InlineData("C [1 2 3 #4]", "C D E F#")]
    [InlineData("A harmonic minor", "A B C D E F G#")]
    [InlineData("G altered", "G Ab Bb Cb Db Eb F")]
    [InlineData("C bebop dominant", "C D E F G A Bb B")]
    [InlineData("F blues", "F Ab Bb Cb C Eb")]
    public void Tones_are_those_of_the_books(string scale, string tones) =>
        Assert.Equal(tones, string.Join(' ', Scale.Parse(scale).Tones));

    [Theory]
    [InlineData("C major", "minor", "A minor")]
    [InlineData("Eb major", "dorian", "F dorian")]
    [InlineData("F# minor", "major", "A major")]
    [InlineData("C altered", "melodic minor", "Db melodic minor")]
    public void Relatives_share_their_notes(string scale, string type, string relative) =>
        Assert.Equal(Scale.Parse(relative), Scale.Parse(scale).Relative(ScaleType.Parse(type)));

    [Fact]
    public void No_relative_where_no_rotation_sounds_like_the_type() =>
        Assert.Null(Scale.Parse("C major").Relative(ScaleType.Parse("harmonic minor")));

    [Fact]
    public void The_chords_on_the_steps_of_the_major_scale_are_the_seven_of_the_books()
    {
        string[] sevenths = ["1 3 5 7", "1 b3 5 b7", "1 b3 5 b7", "1 3 5 7", "1 3 5 b7", "1 b3 5 b7", "1 b3 b5 b7"];
        var scale = Scale.Parse("Eb major");
        Assert.Equal(
            scale.Tones.Zip(sevenths, (root, formula) => new Chord(root, Formula.Parse(formula))),
            scale.Chords()
        );
        Assert.Equal(Formula.Parse("1 3 5 7 9 #11 13"), scale.Chord(4, 7).Formula);
        Assert.Equal(Formula.Parse("1 b3 5 b7 b9 11 b13"), scale.Chord(3, 7).Formula);
    }

    [Fact]
    public void Thirds_in_an_octatonic_scale_make_diminished_sevenths() =>
        Assert.All(
            Scale.Parse("C diminished").Chords(),
            chord => Assert.Equal(Formula.Parse("1 b3 b5 bb7"), chord.Formula)
        );

    [Theory]
    [InlineData("A blues")]
    [InlineData("C whole tone")]
    public void A_scale_of_six_tones_gives_chords_of_three(string scale)
    {
        var chords = Scale.Parse(scale).Chords();
        Assert.Equal(6, chords.Count);
        Assert.All(chords, chord => Assert.Equal(3, chord.Tones.Count));
    }

    [Fact]
    public void Chords_of_a_pentatonic_have_no_numbers_that_nobody_writes()
    {
        // Every second tone of A C D E G from A: A D G C.
        Assert.Equal("1 b3 4 b7", Scale.Parse("A minor pentatonic").Chords()[0].Formula.ToString());
        foreach (var chord in ScaleType.Known.SelectMany(type => type.On(NoteName.Parse("A")).Chords()))
        {
            Assert.All(chord.Formula, degree => Assert.True(degree.Number is < 8 or 9 or 11 or 13, $"{chord}"));
        }
    }

    [Fact]
    public void Every_stacked_chord_lies_in_its_scale() =>
        Gen.Select(AnyOf.Note, AnyOf.Any(ScaleType.Known), Gen.Int[0, 11], Gen.Int[0, 11])
            .Sample(
                (tonic, type, step, more) =>
                {
                    var scale = type.On(tonic);
                    var most = scale.Count % 2 == 0 ? scale.Count / 2 : scale.Count;
                    var (carrier, tones) = ((step % scale.Count) + 1, (more % most) + 1);
                    var chord = scale.Chord(carrier, tones);
                    Assert.True(scale.Contains(chord));
                    Assert.Equal(
                        Enumerable
                            .Range(0, tones)
                            .Select(k => scale.Tones[(carrier - 1 + (2 * k)) % scale.Count].PitchClass)
                            .Order(),
                        chord.Tones.Select(tone => tone.PitchClass).Order()
                    );
                }
            );

    [Fact]
    public void A_formula_that_does_not_rise_from_one_is_no_scale()
    {
        foreach (var text in new[] { "()", "2 3", "1 3 b4", "1 #7", "b1 1 3", "1 9" })
        {
            Assert.False(Formula.Parse(text).IsScale, text);
            Assert.Throws<ArgumentException>(() => new Scale(default, Formula.Parse(text)));
        }
    }

    [Fact]
    public void Any_text_gives_a_scale_or_says_where_it_fails() =>
        Fuzz.Parser<Scale>(
            ScaleType.Known.Select((type, index) => $"{NoteName.Common[index % 21]} {type.Name}").Append("C [1 2 3 #4]")
        );
}
