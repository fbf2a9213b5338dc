using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Progressions;
using TheoryKit.Theory.Scales;

namespace TheoryKit.Tests.Theory.Progressions;

public class RomanNumeralTests
{
    private static readonly Gen<Degree> Degrees = Gen.Select(
        Gen.Int[1, 7],
        Gen.Int[-Degree.MaxAlteration, Degree.MaxAlteration],
        (number, alteration) => new Degree(number, alteration)
    );

    private static readonly Gen<Formula> Formulas = Gen.OneOf(
        AnyOf.Any(ChordQuality.Known).Select(quality => quality.Formula),
        AnyOf.AnyFormula
    );

    private static readonly Gen<RomanNumeral> Plain = Gen.Select(
        Degrees,
        Formulas,
        (degree, formula) => new RomanNumeral(degree, formula)
    );

    private static readonly Gen<RomanNumeral> Numerals = Gen.Select(
        Degrees,
        Formulas,
        Gen.Nullable(Degrees),
        Plain.Null(),
        (degree, formula, bass, of) => new RomanNumeral(degree, formula, bass, of)
    );

    [Fact]
    public void Text_round_trips() => Laws.RoundTrip(Numerals);

    [Fact]
    public void Equal_when_written_alike() => Laws.Equality(Numerals);

    [Fact]
    public void Null_is_refused() => Laws.Null<RomanNumeral>();

    [Fact]
    public void Every_numeral_reads_back() =>
        Numerals.Sample(
            numeral =>
            {
                Assert.Equal(numeral, RomanNumeral.Parse(numeral.ToString()));
                Assert.Equal(numeral, RomanNumeral.Parse(numeral.ToString("P")));
            },
            iter: 2_000
        );

    [Fact]
    public void Every_quality_reads_back_on_every_degree()
    {
        foreach (var quality in ChordQuality.Known)
        {
            for (var number = 1; number <= 7; number++)
            {
                var numeral = new RomanNumeral(new(number, -1), quality.Formula);
                Assert.Equal(numeral, RomanNumeral.Parse(numeral.ToString()));
                Assert.Equal(numeral, RomanNumeral.Parse(numeral.ToString("P")));
            }
        }
    }

    [Fact]
    public void Chord_and_numeral_in_a_key_are_inverse()
    {
        Gen.Select(AnyOf.Chord, AnyOf.Key)
            .Sample(
                (chord, key) =>
                {
                    var numeral = RomanNumeral.For(chord, key);
                    Assert.Equal(chord, numeral.In(key));
                    Assert.Equal(chord, RomanNumeral.Parse(numeral.ToString()).In(key));
                },
                iter: 2_000
            );
        Gen.Select(Plain, AnyOf.Key)
            .Sample(
                (numeral, key) =>
                {
                    var written = RomanNumeral.For(numeral.In(key), key);
                    Assert.Equal(numeral.In(key), written.In(key));
                    // In minor keys two ways of writing mean the same; each chord is written in one.
                    Assert.Equal(written, RomanNumeral.For(written.In(key), key));
                    Assert.True(key.IsMinor || numeral == written);
                },
                iter: 2_000
            );
    }

    [Fact]
    public void Every_common_root_over_every_common_bass_has_a_numeral_in_every_common_key()
    {
        int[] major = [0, 2, 4, 5, 7, 9, 11];
        foreach (var key in NoteName.Common.SelectMany(tonic => new Key[] { new(tonic), new(tonic, true) }))
        {
            foreach (var root in NoteName.Common)
            {
                foreach (var bass in NoteName.Common)
                {
                    var chord = new Chord(root, Formula.Parse("1 3 5"), bass);
                    var numeral = RomanNumeral.For(chord, key);
                    Assert.Equal(chord, numeral.In(key));

                    // Counted on letters and on the keyboard; in minor #VI is the major sixth, as the minor one is VI.
                    var (number, alteration) = (numeral.Degree.Number, numeral.Degree.Alteration);
                    alteration -= key.IsMinor && number is 3 or 6 or 7 && alteration > 0 ? 1 : 0;
                    Assert.Equal((int)root.Letter, ((int)key.Tonic.Letter + number - 1) % 7);
                    Assert.Equal(root.PitchClass, (key.Tonic.PitchClass + major[number - 1] + alteration + 12) % 12);
                }
            }
        }
    }

    [Fact]
    public void Diatonic_sevenths_of_a_major_key_have_no_accidentals()
    {
        string[] numerals = ["Imaj7", "ii7", "iii7", "IVmaj7", "V7", "vi7", "viiø7"];
        foreach (var tonic in NoteName.Common)
        {
            var key = new Key(tonic);
            Assert.Equal(numerals, key.Scale.Chords().Select(chord => RomanNumeral.For(chord, key).ToString()));
        }
    }

    [Fact]
    public void The_sevenths_of_a_minor_key_are_written_with_their_flats()
    {
        var key = Key.Parse("C minor");
        Assert.Equal(
            ["i7", "iiø7", "bIIImaj7", "iv7", "v7", "bVImaj7", "bVII7"],
            key.Scale.Chords().Select(chord => RomanNumeral.For(chord, key).ToString())
        );
    }

    [Theory]
    [InlineData("C major", "ii7", "Dm7")]
    [InlineData("Eb major", "V7", "Bb7")]
    [InlineData("C major", "bVImaj7", "Abmaj7")]
    [InlineData("C minor", "viio7", "Bdim7")]
    [InlineData("C minor", "imaj7", "CmMaj7")]
    [InlineData("A minor", "i", "Am")]
    [InlineData("A minor", "VI", "F")]
    [InlineData("A minor", "III", "C")]
    [InlineData("A minor", "VII", "G")]
    [InlineData("A minor", "bVI", "F")]
    [InlineData("A minor", "bIIImaj7", "Cmaj7")]
    [InlineData("A minor", "bVII7", "G7")]
    [InlineData("A minor", "VImaj7", "Fmaj7")]
    [InlineData("A minor", "iv7", "Dm7")]
    [InlineData("A minor", "V7", "E7")]
    [InlineData("A minor", "bII", "Bb")]
    [InlineData("A minor", "viio7", "G#dim7")]
    [InlineData("A minor", "#viio7", "G#dim7")]
    [InlineData("A minor", "viø7", "F#m7b5")]
    [InlineData("A minor", "#viø7", "F#m7b5")]
    [InlineData("A minor", "#VI", "F#")]
    [InlineData("A minor", "III+", "Caug")]
    [InlineData("A minor", "V7/VI", "C7")]
    [InlineData("A minor", "VII/3rd", "G/B")]
    [InlineData("A minor", "V/VII", "D")]
    [InlineData("C major", "VI", "A")]
    [InlineData("C major", "III7", "E7")]
    [InlineData("C major", "I6/4", null)]
    [InlineData("C major", "V6/5", null)]
    [InlineData("C major", "I6/5th", "C6/G")]
    [InlineData("C major", "V7/V", "D7")]
    [InlineData("F major", "V7/ii", "D7")]
    [InlineData("C major", "V7/V/V", "A7")]
    [InlineData("C major", "I6", "C6")]
    [InlineData("C major", "I6/9", "C6/9")]
    [InlineData("C major", "I/3rd", "C/E")]
    [InlineData("C major", "V7/b7th", "G7/F")]
    [InlineData("C major", "V7/3rd/V", "D7/F#")]
    [InlineData("C major", "iv", "Fm")]
    [InlineData("C major", "#ivø7", "F#m7b5")]
    [InlineData("C major", "V7sus4", "G7sus4")]
    [InlineData("C major", "subV7", null)]
    [InlineData("C major", "V[1 4 b7]", "G[1 4 b7]")]
    [InlineData("C major", "iimadd9", "Dmadd9")]
    public void Numerals_mean_what_players_mean(string key, string numeral, string? chord)
    {
        Assert.Equal(chord is not null, RomanNumeral.TryParse(numeral, null, out var read));
        if (chord is not null)
        {
            Assert.Equal(Chord.Parse(chord), read!.In(Key.Parse(key)));
        }
    }

    [Fact]
    public void A_six_four_is_told_how_to_be_written()
    {
        var error = Assert.ThrowsAny<FormatException>(() => RomanNumeral.Parse("I6/4"));
        Assert.Contains("its six-four is I/5th", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_minor_chart_means_its_natural_minor_chords() =>
        Assert.Equal(Changes.Parse("A minor: Am | F | C | G").Bars, Changes.Parse("A minor: i | VI | III | VII").Bars);

    [Theory]
    [InlineData("IIm7", "ii7")]
    [InlineData("iim7", "ii7")]
    [InlineData("ii-7", "ii7")]
    [InlineData("vii°7", "viio7")]
    [InlineData("viidim7", "viio7")]
    [InlineData("vii7b5", "viiø7")]
    [InlineData("VIIm7b5", "viiø7")]
    [InlineData("iM7", "imaj7")]
    [InlineData("i(maj7)", "imaj7")]
    [InlineData("IΔ", "Imaj7")]
    [InlineData("♭VII7", "bVII7")]
    [InlineData("V7/3", "V7/3rd")]
    [InlineData("V7/1st", "V7")]
    [InlineData("I/5/IV", "I/5th/IV")]
    public void Other_ways_of_writing_are_read(string text, string canonical) =>
        Assert.Equal(canonical, RomanNumeral.Parse(text).ToString());

    [Theory]
    [InlineData("iisus4")]
    [InlineData("ii+")]
    [InlineData("Vi7")]
    [InlineData("VIII")]
    [InlineData("V/V/V/V/V")]
    [InlineData("V/V/3rd")]
    [InlineData("bbbbV")]
    public void What_contradicts_itself_is_refused(string text) =>
        Assert.False(RomanNumeral.TryParse(text, null, out _));

    [Fact]
    public void Any_text_gives_a_numeral_or_says_where_it_fails() =>
        Fuzz.Parser<RomanNumeral>([
            "I",
            "ii7",
            "V7",
            "bVImaj7",
            "viiø7",
            "V7/V",
            "I6",
            "i6/9",
            "V7/3rd/ii",
            "#ivo7",
            "IV[1 2 5]",
            "V7(b9, 13)",
            "imaj7",
        ]);
}
