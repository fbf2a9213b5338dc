using TheoryKit.Theory.Notes;

namespace TheoryKit.Tests.Theory.Notes;

public class PitchTests
{
    [Fact]
    public void Text_round_trips() => Laws.RoundTrip(Gens.Pitch);

    [Fact]
    public void Equal_when_spelled_alike() => Laws.Equality(Gens.Pitch);

    [Fact]
    public void Ordered() => Laws.Order(Gens.Pitch);

    [Fact]
    public void Ordered_by_sound_first() =>
        Gens
            .Pitch.Select(Gens.Pitch)
            .Sample((a, b) => a.MidiNumber == b.MidiNumber || (a < b) == (a.MidiNumber < b.MidiNumber));

    [Fact]
    public void Fuzz_of_the_parser() => Fuzz.Parser<Pitch>(["C4", "Bb3", "F#-1", "A♭2", "E12", "Dx-2", "b𝄫5"]);

    [Fact]
    public void Null_is_refused() => Laws.Null<Pitch>();

    [Theory]
    [InlineData("", 1, "a letter")]
    [InlineData("C", 2, "an octave")]
    [InlineData("C13", 2, "an octave")]
    [InlineData("C-3", 2, "an octave")]
    [InlineData("Bb 3", 3, "an octave")]
    [InlineData("C4 x", 3, "the end")]
    public void Bad_text_is_refused_with_its_place(string text, int position, string expected) =>
        Laws.Refuses<Pitch>(text, position, expected);

    [Theory]
    // MIDI 1.0 Detailed Specification: key 60 is middle C; keys go from 0 to 127. The octave belongs to the letter.
    [InlineData("C-1", 0)]
    [InlineData("A0", 21)]
    [InlineData("E2", 40)]
    [InlineData("C4", 60)]
    [InlineData("B#3", 60)]
    [InlineData("Dbb4", 60)]
    [InlineData("Cb4", 59)]
    [InlineData("A4", 69)]
    [InlineData("C8", 108)]
    [InlineData("G9", 127)]
    public void Midi_numbers(string pitch, int number) => Assert.Equal(number, Pitch.Parse(pitch).MidiNumber);

    [Theory]
    // B. H. Suits, Physics of Music Notes (Michigan Technological University): frequencies of the equal-tempered scale, A4 = 440 Hz.
    [InlineData("C0", 16.35)]
    [InlineData("A0", 27.50)]
    [InlineData("E2", 82.41)]
    [InlineData("A2", 110.00)]
    [InlineData("D3", 146.83)]
    [InlineData("G3", 196.00)]
    [InlineData("B3", 246.94)]
    [InlineData("C4", 261.63)]
    [InlineData("E4", 329.63)]
    [InlineData("F#4", 369.99)]
    [InlineData("A4", 440.00)]
    [InlineData("B4", 493.88)]
    [InlineData("C8", 4186.01)]
    public void Frequencies(string pitch, double hertz) => Assert.Equal(hertz, Pitch.Parse(pitch).Frequency(), 0.005);

    [Fact]
    public void A4_is_440_Hz_by_ISO_16_or_what_is_asked()
    {
        Assert.Equal(440.0, Pitch.Parse("A4").Frequency());
        Assert.Equal(415.0, Pitch.Parse("A4").Frequency(415));
        foreach (var bad in new[] { 0, -440, double.NaN, double.PositiveInfinity })
        {
            Assert.Throws<ArgumentOutOfRangeException>(() => Pitch.Parse("A4").Frequency(bad));
        }
    }

    [Fact]
    public void Twelve_equal_steps_double_the_frequency()
    {
        for (var number = 0; number < 127; number++)
        {
            var ratio = Pitch.FromMidi(number + 1).Frequency() / Pitch.FromMidi(number).Frequency();
            Assert.Equal(2, Math.Pow(ratio, 12), 1e-12);
        }
    }

    [Fact]
    public void Every_midi_key_has_a_pitch()
    {
        for (var number = 0; number <= 127; number++)
        {
            var pitch = Pitch.FromMidi(number);
            Assert.Equal(number, pitch.MidiNumber);
            Assert.True(pitch.IsMidi);
            Assert.InRange(pitch.Name.Alteration, 0, 1);
        }

        Assert.Throws<ArgumentOutOfRangeException>(() => Pitch.FromMidi(-1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Pitch.FromMidi(128));
        Assert.False(Pitch.Parse("G#9").IsMidi);
        Assert.False(Pitch.Parse("Cb-1").IsMidi);
    }

    private static readonly Gen<Pitch> Middle = Gen.Select(
        Gens.UsualNoteName,
        Gen.Int[1, 9],
        (name, octave) => new Pitch(name, octave)
    );

    [Fact]
    public void Up_and_down_the_same_interval_comes_back()
    {
        Middle
            .Select(Gens.UsualInterval)
            .Sample(
                (pitch, interval) =>
                    pitch + interval - interval == pitch
                    && (pitch + interval).MidiNumber == pitch.MidiNumber + interval.Semitones
                    && pitch + interval - pitch == interval
            );
    }

    [Fact]
    public void The_interval_to_another_pitch_leads_there()
    {
        Gens.Pitch.Select(Gens.Pitch)
            .Sample((from, to) => from + from.To(to) == to && to - from == from.To(to) && from.To(to) == -to.To(from));
    }

    [Fact]
    public void Beyond_the_octaves_is_an_overflow()
    {
        Assert.Throws<OverflowException>(() => Pitch.Parse("B12") + Interval.Parse("m2"));
        Assert.Throws<OverflowException>(() => Pitch.Parse("C-2") - Interval.Parse("m2"));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Pitch(default, 13));
    }

    [Fact]
    public void Simplest_sounds_the_same() =>
        Gen.Select(Gens.NoteName, Gen.Int[0, 10], (name, octave) => new Pitch(name, octave))
            .Sample(pitch => pitch.Simplest().IsEnharmonicTo(pitch) && pitch.Simplest().Name == pitch.Name.Simplest());

    [Fact]
    public void The_pitch_of_a_name_at_a_sound()
    {
        Assert.Equal(Pitch.Parse("B#3"), Pitch.Nearest(NoteName.Parse("B#"), 60));
        Assert.Equal(Pitch.Parse("Cb4"), Pitch.Nearest(NoteName.Parse("Cb"), 59));
        Assert.Throws<ArgumentException>(() => Pitch.Nearest(NoteName.Parse("C"), 61));
    }
}
