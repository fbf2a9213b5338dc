using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Tests.Tunings.Necks;

public class TuningKnownTests
{
    [Theory]
    [InlineData("Drop C♯", "C#2 G#2 C#3 F#3 A#3 D#4")]
    [InlineData("drop d♭", "C#2 G#2 C#3 F#3 A#3 D#4")]
    [InlineData("E♭ standard", "Eb2 Ab2 Db3 Gb3 Bb3 Eb4")]
    [InlineData("5-string bass", "B0 E1 A1 D2 G2")]
    [InlineData("5 string bass", "B0 E1 A1 D2 G2")]
    [InlineData("4-string bass", "E1 A1 D2 G2")]
    [InlineData("7-string", "B1 E2 A2 D3 G3 B3 E4")]
    [InlineData("7-string guitar", "B1 E2 A2 D3 G3 B3 E4")]
    [InlineData("8-string", "F#1 B1 E2 A2 D3 G3 B3 E4")]
    [InlineData(" Drop  D ", "D2 A2 D3 G3 B3 E4")]
    public void Names_are_found_as_players_type_them(string name, string strings) =>
        Assert.Equal(Tuning.Parse(strings), Tuning.Find(name));

    [Theory]
    [InlineData("Drop D", "Tuning.Find for a tuning by its name")]
    [InlineData("DADGAD", "Tuning.Find for a tuning by its name")]
    [InlineData("EADGBE", "pitches with octaves (E2 A2 D3 G3 B3 E4)")]
    [InlineData("E A D G B E", "pitches with octaves (E2 A2 D3 G3 B3 E4)")]
    [InlineData("E2,A2,D3,G3,B3,E4", "white space and no comma between them")]
    public void What_is_no_list_of_pitches_is_told_what_would_be(string text, string advice)
    {
        foreach (
            var error in new[]
            {
                Assert.ThrowsAny<FormatException>(() => Tuning.Parse(text)),
                Assert.ThrowsAny<FormatException>(() => Neck.Parse(text)),
            }
        )
        {
            Assert.Contains(advice, error.Message, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Forty_tunings_or_more_and_none_twice()
    {
        Assert.True(Tuning.Known.Count >= 40);
        Assert.Equal(Tuning.Known.Count, Tuning.Known.Select(known => known.Tuning).Distinct().Count());
    }

    [Fact]
    public void Every_name_finds_its_tuning_in_any_case()
    {
        foreach (var known in Tuning.Known)
        {
            Assert.Equal(known.Name, known.Tuning.Name);
            foreach (var name in known.Aliases.Prepend(known.Name))
            {
                Assert.Same(known.Tuning, Tuning.Find(name));
                Assert.Same(known.Tuning, Tuning.Find(" " + name.ToUpperInvariant()));
                Assert.Same(known.Tuning, Tuning.Find(name.ToLowerInvariant().Replace('-', ' ')));
            }
        }

        Assert.Null(Tuning.Find("no such tuning"));
        Assert.Null(Tuning.Parse("C2 C3 C4").Name);
    }

    [Fact]
    public void A_name_that_spells_its_strings_has_those_strings()
    {
        foreach (var known in Tuning.Known)
        {
            foreach (var name in known.Aliases.Prepend(known.Name))
            {
                var spelled = name.Split(' ', '-')[^1];
                if (spelled.Length >= 3 && spelled.All(c => c is >= 'A' and <= 'G'))
                {
                    Assert.Equal(
                        spelled,
                        string.Concat(known.Tuning.Strings.Reverse().Select(each => each.Open.Name.ToString()))
                    );
                }
            }
        }
    }

    [Theory]
    [InlineData("Open D", "1 3 5", "D")]
    [InlineData("Open E", "1 3 5", "E")]
    [InlineData("Open G", "1 3 5", "G")]
    [InlineData("Open A", "1 3 5", "A")]
    [InlineData("Open C", "1 3 5", "C")]
    [InlineData("Open C6", "1 3 5 6", "C")]
    [InlineData("Open D minor", "1 b3 5", "D")]
    [InlineData("Open E minor", "1 b3 5", "E")]
    [InlineData("Open G minor", "1 b3 5", "G")]
    [InlineData("Open A minor", "1 b3 5", "A")]
    [InlineData("Open C minor", "1 b3 5", "C")]
    [InlineData("High-bass open G", "1 3 5", "G")]
    [InlineData("Seven-string open G", "1 3 5", "G")]
    [InlineData("DADGAD", "1 4 5", "D")]
    [InlineData("DADEAD", "1 2 5", "D")]
    [InlineData("DGDGCD", "1 4 5", "G")]
    [InlineData("CGCGCD", "1 2 5", "C")]
    [InlineData("EADEAE", "1 4 5", "A")]
    [InlineData("EBEABE", "1 4 5", "E")]
    [InlineData("Lap steel C6", "1 3 5 6", "C")]
    [InlineData("Lap steel E7", "1 3 5 b7", "E")]
    [InlineData("Banjo open G", "1 3 5", "G")]
    [InlineData("Banjo G minor", "1 b3 5", "G")]
    [InlineData("Banjo open C", "1 3 5", "C")]
    [InlineData("Banjo open D", "1 3 5", "D")]
    [InlineData("Ukulele open C", "1 3 5", "C")]
    public void Open_strings_sound_the_chord_in_the_name(string name, string formula, string root)
    {
        var tones = Formula.Parse(formula).Tones(NoteName.Parse(root));
        Assert.Equal(tones.ToHashSet(), Tuning.Find(name)!.Strings.Select(each => each.Open.Name).ToHashSet());
    }

    [Theory]
    [InlineData("All fourths", "P4")]
    [InlineData("All fifths", "P5")]
    [InlineData("Bass standard", "P4")]
    [InlineData("Six-string bass", "P4")]
    [InlineData("Mandolin", "P5")]
    [InlineData("Tenor banjo", "P5")]
    [InlineData("Mandocello", "P5")]
    public void Tunings_of_one_interval_have_only_that(string name, string interval)
    {
        var strings = Tuning.Find(name)!.Strings;
        Assert.All(
            strings.Zip(strings.Skip(1)),
            pair => Assert.Equal(interval, pair.Second.Open.To(pair.First.Open).ToString())
        );
    }

    [Theory]
    [InlineData("Half step down", "Standard", "A1")]
    [InlineData("Whole step down", "Standard", "M2")]
    [InlineData("C standard", "Standard", "M3")]
    [InlineData("Baritone B", "Standard", "P4")]
    [InlineData("Baritone A", "Standard", "P5")]
    [InlineData("Drop C", "Drop D", "M2")]
    [InlineData("Drop B", "Drop D", "m3")]
    [InlineData("Drop A", "Drop D", "P4")]
    [InlineData("Bass half step down", "Bass", "A1")]
    [InlineData("Bass BEAD", "Bass", "P4")]
    [InlineData("Open E", "Open D", "-M2")]
    [InlineData("Open A", "Open G", "-M2")]
    [InlineData("Octave mandolin", "Mandolin", "P8")]
    public void Lowered_tunings_lie_an_interval_below(string name, string of, string interval) =>
        Assert.Equal(Tuning.Find(of)!.Transpose(-Interval.Parse(interval)), Tuning.Find(name));
}
