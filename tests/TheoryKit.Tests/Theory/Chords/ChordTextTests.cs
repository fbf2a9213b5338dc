using System.Text;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Words;

namespace TheoryKit.Tests.Theory.Chords;

public sealed class ChordTextTests
{
    /// <summary>What players write, by the formula they mean; from common practice, not from the catalogue.</summary>
    public static TheoryData<string, string> Writings =>
        new()
        {
            { "1 3 5", "C Cmaj CMaj CM" },
            { "1 b3 5", "Cm Cmin Cmi C- CMIN CMI Cmin" },
            { "1 b3 b5", "Cdim Co C° Cmb5 Cm(b5) Cm-5 Cm♭5 CDim" },
            { "1 3 #5", "Caug C+ C(#5) C+5 C(♯5) CAUG Caug5" },
            { "1 3 b5", "C(b5) C-5 CMb5 Cmaj(b5) C(♭5)" },
            { "1 5", "C5 C(no3) C(omit3) Comit3 Cno3 C(no 3) C(no3rd)" },
            { "1 3 5 6", "C6 CM6 Cmaj6 Cadd6 CMA6" },
            { "1 b3 5 6", "Cm6 C-6 Cmin6 Cmi6 Cmadd6" },
            { "1 3 5 6 9", "C6/9 C69 C6add9 C6(9) CM69 C(6/9)" },
            { "1 3 5 b7", "C7 Cdom7 C(7) CDOM7" },
            { "1 3 5 7", "Cmaj7 CMaj7 CMA7 Cma7 CM7 CΔ CΔ7 C∆7 C△7 C(maj7) C(M7)" },
            { "1 b3 5 b7", "Cm7 C-7 Cmin7 Cmi7 CMI7 C−7 Cm(7)" },
            { "1 b3 5 7", "CmMaj7 Cm(maj7) CmM7 C-Δ7 C-Δ Cm(M7) Cmin(maj7) C-maj7 CmΔ C-M7 Cm/maj7 Cmmaj7 Cmima7" },
            { "1 b3 b5 b7", "Cm7b5 Cm7(b5) Cø Cø7 C-7b5 Cm7-5 C-7-5 Cmin7b5 Cmi7(b5) Cm7♭5 CØ" },
            { "1 b3 b5 bb7", "Cdim7 Co7 C°7 Cº7 CDIM7" },
            { "1 b3 b5 7", "CdimMaj7 Cdim(maj7) Co(maj7) C°M7 CmMaj7b5" },
            { "1 3 #5 b7", "C7#5 C+7 Caug7 C7+5 C7+ C7(#5) C7♯5 C7aug C7(+5)" },
            { "1 3 b5 b7", "C7b5 C7-5 C7(b5) C7♭5 C7(-5)" },
            { "1 3 #5 7", "Cmaj7#5 C+maj7 C+M7 CΔ7#5 CM7+5 CaugMaj7 Cmaj7(#5) CΔ#5 C+Δ" },
            { "1 4 5", "Csus4 Csus CSus4 Cmsus4" },
            { "1 2 5", "Csus2" },
            { "1 4 5 b7", "C7sus4 C7sus Csus7 C7(sus4) Cm7sus4 Csus4(7)" },
            { "1 4 5 b7 9", "C9sus4 C9sus Csus9 C11sus C7sus4(9) C7sus4add9 C9(sus4)" },
            { "1 4 5 b7 9 13", "C13sus4 C13sus Csus13 C9sus4(13)" },
            { "1 4 5 b7 b9", "C7sus4b9 C7susb9 C7sus(b9) C7b9sus4 C7(sus4,b9)" },
            { "1 3 5 9", "Cadd9 C(add9) C(9) C/9 CAdd9 CMadd9" },
            { "1 b3 5 9", "Cmadd9 Cm(add9) Cm(9) C-add9 Cminadd9" },
            { "1 3 5 11", "Cadd11 C(add11)" },
            { "1 3 5 #11", "Cadd#11 C(#11) C(add♯11) C(+11)" },
            { "1 2 3 5", "Cadd2" },
            { "1 3 5 b7 9", "C9 Cdom9 C7(9) C7/9 C7add9" },
            { "1 3 5 7 9", "Cmaj9 CM9 CΔ9 Cma9 Cmaj7(9) Cmaj7/9 Cmaj7add9" },
            { "1 b3 5 b7 9", "Cm9 C-9 Cmin9 Cm7(9) Cm7/9" },
            { "1 b3 5 7 9", "CmMaj9 CmM9 Cm(maj9) C-Δ9" },
            { "1 3 5 b7 9 11", "C11" },
            { "1 b3 5 b7 9 11", "Cm11 C-11 Cmin11 Cm9(11) Cm7(9,11)" },
            { "1 3 5 b7 9 13", "C13 C9(13) C9add13 C7(9,13) C7/9/13 C13(no11)" },
            { "1 3 5 7 9 13", "Cmaj13 CM13 CΔ13" },
            { "1 3 5 b7 13", "C7add13 C7(13) C7/13 C7,13" },
            { "1 3 5 b7 b9", "C7b9 C7-9 C7(b9) C7♭9 C7(-9) C7/b9 C7(addb9) C9b9" },
            { "1 3 5 b7 #9", "C7#9 C7+9 C7(#9) C7♯9 C7(+9)" },
            { "1 3 5 b7 9 #11", "C9#11 C9(#11) C9+11 C7(9,#11) C11#11" },
            { "1 3 5 b7 #11", "C7#11 C7(#11) C7+11" },
            { "1 3 5 b7 b13", "C7b13 C7(b13) C7-13" },
            { "1 3 5 b7 9 b13", "C9b13 C9(b13) C7(9,b13)" },
            { "1 3 5 b7 b9 13", "C13b9 C13(b9) C7(b9,13) C7(b9/13) C7b9,13 C7(13,b9) C13-9" },
            { "1 3 5 b7 9 #11 13", "C13#11 C13(#11) C13+11 C9(#11,13)" },
            { "1 3 #5 b7 #9", "C7#5#9 C7(#5,#9) C7#9#5 C+7#9 C7(#9#5) C7+5+9 C7(#9)(#5) Caug7#9 C7+9+5" },
            { "1 3 #5 b7 b9", "C7#5b9 C7(b9,#5) C+7b9 C7+5-9 C7(#5 b9) C7-9+5" },
            { "1 3 b5 b7 b9", "C7b5b9 C7(b5,b9) C7-5-9 C7b9b5" },
            { "1 3 5 b7 #9 b13", "C7(#9,b13) C7#9b13 C7(b13,#9) C7(b13#9) C7#9(b13) C7(#9 b13)" },
            { "1 3 b5 #5 b7 b9 #9", "C7alt Calt C7(alt) C7b5#5b9#9 C7(b9,#9,b5,#5) CALT" },
            { "1 3 5 7 #11", "Cmaj7#11 CM7#11 CΔ7#11 CΔ#11 Cmaj7(#11) CΔ(#11) Cmaj7+11 Cma7♯11" },
            { "1 3 5 7 9 #11", "Cmaj9#11 CM9#11 CΔ9#11 Cmaj7(9,#11)" },
            { "1 3 #5 b7 9", "C9#5 C+9 Caug9 C9+5 C9(#5)" },
            { "1 3 b7", "C7(no5) C7no5 C7(omit5) C7omit5 C7(no 5) C7(no5th)" },
            { "3 5 b7 9", "C9(no1) C9(no root) C9noroot" },
            { "1 3 5 b7 9 #9", "C9add#9 C9(add#9) C7(9,#9)" },
        };

    [Theory]
    [MemberData(nameof(Writings))]
    public void Players_write_it_in_many_ways(string formula, string writings)
    {
        var expected = Formula.Parse(formula);
        // Spaces part the writings here, but not inside parentheses.
        foreach (
            var text in System.Text.RegularExpressions.Regex.Matches(writings, @"(\([^)]*\)|\S)+").Select(m => m.Value)
        )
        {
            Assert.Equal(new Chord(NoteName.Parse("C"), expected), Chord.Parse(text));
            Assert.Equal(
                new Chord(NoteName.Parse("F#"), expected, NoteName.Parse("E")),
                Chord.Parse($"F#{text[1..]}/E")
            );
        }
    }

    [Theory]
    [InlineData("Bb", "Bb", "1 3 5", "Bb")]
    [InlineData("bbm7", "Bb", "1 b3 5 b7", "Bb")]
    [InlineData("c-7", "C", "1 b3 5 b7", "C")]
    [InlineData("Cb9", "Cb", "1 3 5 b7 9", "Cb")]
    [InlineData("C(b9)", "C", "1 3 5 b9", "C")]
    [InlineData("C#5", "C#", "1 5", "C#")]
    [InlineData("Cbb5", "Cbb", "1 5", "Cbb")]
    [InlineData("Fxm7", "F##", "1 b3 5 b7", "F##")]
    [InlineData("C6/9/E", "C", "1 3 5 6 9", "E")]
    [InlineData("Dm7/G", "D", "1 b3 5 b7", "G")]
    [InlineData("D/f#", "D", "1 3 5", "F#")]
    [InlineData("C/bb", "C", "1 3 5", "Bb")]
    [InlineData("C/C", "C", "1 3 5", "C")]
    [InlineData("G♭Δ7♯11/B♭", "Gb", "1 3 5 7 #11", "Bb")]
    [InlineData("C[1 b2 4 #5]", "C", "1 b2 4 #5", "C")]
    [InlineData("C[#5, 4 b2 1]/E", "C", "1 b2 4 #5", "E")]
    [InlineData("Eb[1 b3 5]", "Eb", "1 b3 5", "Eb")]
    public void Root_formula_and_bass_are_told_apart(string text, string root, string formula, string bass) =>
        Assert.Equal(new Chord(NoteName.Parse(root), Formula.Parse(formula), NoteName.Parse(bass)), Chord.Parse(text));

    [Theory]
    [InlineData("Esus4", "Esus4")]
    [InlineData("Es", "Eb")]
    [InlineData("Essus4", "Ebsus4")]
    [InlineData("Asus2", "Asus2")]
    [InlineData("As7", "Ab7")]
    [InlineData("Asus", "Asus4")]
    [InlineData("Assus", "Absus4")]
    [InlineData("B7", "Bb7")]
    [InlineData("Hm7b5/A", "Bm7b5/A")]
    [InlineData("Fism7/Cis", "F#m7/C#")]
    [InlineData("Ges6/9/B", "Gb6/9/Bb")]
    [InlineData("Esaug", "Ebaug")]
    [InlineData("C7/Es", "C7/Eb")]
    [InlineData("c", "Cm")]
    [InlineData("h", "Bm")]
    [InlineData("cis7", "C#m7")]
    [InlineData("b", "Bbm")]
    [InlineData("am7", "Am7")]
    public void German_names_are_read_and_backed_out_of(string german, string english) =>
        Assert.Equal(Chord.Parse(english), Chord.Parse(german, NoteNaming.German));

    [Theory]
    [InlineData("C7M", "Cmaj7")]
    [InlineData("Cm7M", "CmMaj7")]
    [InlineData("C7M(9)", "Cmaj9")]
    [InlineData("C7M/G", "Cmaj7/G")]
    [InlineData("Cm(+7)", "CmMaj7")]
    [InlineData("Cm#7", "CmMaj7")]
    [InlineData("Cm+7", "CmMaj7")]
    [InlineData("C^7", "Cmaj7")]
    [InlineData("C^", "Cmaj7")]
    [InlineData("Cm^7", "CmMaj7")]
    [InlineData("Cj7", "Cmaj7")]
    [InlineData("Cj9", "Cmaj9")]
    [InlineData("Cmajor7", "Cmaj7")]
    [InlineData("Cmajor", "C")]
    [InlineData("Cminor7", "Cm7")]
    [InlineData("Cminor", "Cm")]
    [InlineData("Cminor(major7)", "CmMaj7")]
    [InlineData("Csus2/4", "Csus24")]
    [InlineData("Csus4/2", "Csus24")]
    public void Spellings_of_other_charts_are_read(string text, string chord) =>
        Assert.Equal(Chord.Parse(chord), Chord.Parse(text));

    [Theory]
    [InlineData("c")]
    [InlineData("g7")]
    [InlineData("C7#7")]
    [InlineData("C#7#7")]
    [InlineData("Cm7#7")]
    [InlineData("Cj")]
    [InlineData("Cmj7")] // major to some, minor to others
    [InlineData("C7Ma")]
    [InlineData("Cdim7M")]
    public void Spellings_that_players_disagree_on_are_refused(string text) =>
        Assert.False(Chord.TryParse(text, null, out _));

    [Theory]
    [InlineData("C7, Dm7", "C7", "Dm7")]
    [InlineData("C7,Dm7", "C7", "Dm7")]
    [InlineData("C7 , Dm7", "C7", "Dm7")]
    [InlineData("C/E, Bb7,B7", "C/E", "Bb7", "B7")]
    [InlineData("C7,b9, F", "C7b9", "F")]
    [InlineData("C7(b9, 13), F[1 4 b7],G", "C13b9", "F7sus4(no5)", "G")]
    public void A_list_of_chords_is_parted_by_commas_or_white_space(string text, params string[] chords) =>
        Assert.Equal(chords, Chord.ParseList(text).Select(chord => chord.ToString()));

    [Theory]
    [InlineData(" C7 ")]
    [InlineData("C7\n")]
    [InlineData("\tC7")]
    public void White_space_around_a_chord_says_nothing(string text)
    {
        Assert.Equal(Chord.Parse("C7"), Chord.Parse(text));
        Assert.True(Chord.TryParse(text, null, out var chord));
        Assert.Equal(Chord.Parse("C7"), chord);
    }

    [Fact]
    public void A_chord_with_a_space_in_it_says_that_it_is_written_without()
    {
        var error = Assert.ThrowsAny<FormatException>(() => Chord.Parse("C maj7"));
        Assert.Contains("written without spaces (Cmaj7)", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_known_quality_on_every_root_over_every_bass_reads_back()
    {
        foreach (var quality in ChordQuality.Known)
        {
            foreach (var root in NoteName.Common)
            {
                foreach (var bass in NoteName.Common)
                {
                    var chord = quality.On(root, bass);
                    Assert.Equal(chord, Chord.Parse(chord.ToString()));
                    Assert.Equal(chord, Chord.Parse(chord.ToString("P")));
                }

                foreach (var naming in NoteNaming.Known)
                {
                    var chord = quality.On(root, root + Interval.Parse("m3"));
                    Assert.Equal(chord, Chord.Parse(chord.ToString(null, naming), naming));
                    Assert.Equal(chord, Chord.Parse(chord.ToString("P", naming), naming));
                }
            }
        }
    }

    [Fact]
    public void Every_chord_reads_back() =>
        Gens
            .NoteName.Select(
                Gens.Formula.Where(formula => formula.Count > 0),
                Gens.NoteName,
                AnyOf.Any(NoteNaming.Known)
            )
            .Sample(
                (root, formula, bass, naming) =>
                {
                    var chord = new Chord(root, formula, bass);
                    return Chord.Parse(chord.ToString(null, naming), naming) == chord
                        && Chord.Parse(chord.ToString("P", naming), naming) == chord;
                }
            );

    [Fact]
    public void Chords_of_usual_tones_read_back_in_every_language() =>
        Gens
            .Chord.Select(AnyOf.Any(NoteNaming.Known))
            .Sample(
                (chord, naming) =>
                    Chord.Parse(chord.ToString(null, naming), naming) == chord
                    && Chord.Parse(chord.ToString("P", naming), naming) == chord
            );

    [Theory]
    [InlineData("Bbm7b5", "B♭ø7")]
    [InlineData("F#dim7/A", "F♯°7/A")]
    [InlineData("Ebmaj7#11", "E♭maj7♯11")]
    [InlineData("C7(#9,b13)", "C7(♯9,♭13)")]
    [InlineData("Db[1 b2 b3 3]", "D♭[1 ♭2 ♭3 3]")]
    [InlineData("C7alt", "C7alt")]
    public void The_printed_form_has_printed_signs(string plain, string printed)
    {
        Assert.Equal(printed, Chord.Parse(plain).ToString("P"));
        Assert.Equal(plain, Chord.Parse(printed).ToString());
    }

    [Theory]
    [InlineData("Eb7b9/G", "E♭ dominant seventh, flat nine, over G")]
    [InlineData("C", "C major triad")]
    [InlineData("C9(#5,no3)", "C dominant ninth, sharp five, without the third")]
    [InlineData("C7(no3,no5)", "C dominant seventh, without the third and the fifth")]
    [InlineData("C[1 b2 b3 3]", "C no usual name: 1 ♭2 ♭3 3")]
    public void A_chord_is_said_in_words(string text, string words) =>
        Assert.Equal(words, Chord.Parse(text).InWords("P"));

    [Fact]
    public void A_chord_knows_its_quality_and_symbol()
    {
        Assert.Equal("half-diminished seventh", Chord.Parse("Bø").Quality?.Name);
        Assert.Equal("m7b5", Chord.Parse("Bø").Symbol);
        Assert.Null(Chord.Parse("C7(no5)").Quality);
        Assert.Equal("7(no5)", Chord.Parse("C7(no5)").Symbol);
        Assert.Null(Chord.Parse("C[1 b2 b3 3]").Symbol);
    }

    [Fact]
    public void Any_text_gives_a_chord_or_says_where_it_goes_wrong() => Fuzz.Parser<Chord>(Seeds);

    [Fact]
    public void Any_text_in_German_gives_a_chord_or_says_where_it_goes_wrong() =>
        Fuzz.Parser<Chord>(["Esus4", "Asus2/Es", "Fism7b5", "Heses9", "B7(#9,b13)"], 20_000, NoteNaming.German);

    [Fact]
    public void A_million_texts_are_read_or_refused_without_an_exception()
    {
        string[] seeds = [.. Seeds];
        var random = new Random(7);
        var read = 0;
        Span<char> text = stackalloc char[64];
        for (var count = 0; count < 1_000_000; count++)
        {
            // The head of one, the tail of another, and a sign changed.
            var (head, tail) = (seeds[random.Next(seeds.Length)], seeds[random.Next(seeds.Length)]);
            var (cut, from) = (random.Next(head.Length + 1), random.Next(tail.Length + 1));
            head.AsSpan(0, cut).CopyTo(text);
            tail.AsSpan(from).CopyTo(text[cut..]);
            var length = cut + tail.Length - from;
            if (length > 0 && random.Next(2) == 0)
            {
                text[random.Next(length)] =
                    random.Next(4) == 0 ? (char)random.Next(0x10000) : tail[random.Next(tail.Length)];
            }

            read += Chord.TryParse(text[..length], null, out _) ? 1 : 0;
        }

        Assert.InRange(read, 50_000, 950_000);
    }

    [Fact]
    public void Errors_say_where_and_what_would_have_worked()
    {
        string[] texts =
        [
            "",
            "H7",
            "7",
            "Cq",
            "Cmj7",
            "C8",
            "C3",
            "Cm0",
            "C°0",
            "c7",
            "Cm5",
            "Cmaj8",
            "Cdim6",
            "Cdom",
            "C7xx",
            "C7#12",
            "C7(",
            "C7()",
            "C7(b9",
            "C7(b9;13)",
            "C7(10)",
            "Cadd7",
            "Cadd",
            "Cno",
            "Cno9",
            "Cadd3",
            "C7#13",
            "C7b11",
            "C7#11b5",
            "C7sus3",
            "C7maj7",
            "Cmalt",
            "C7/",
            "C7/H",
            "C/Ebm",
            "C[",
            "C[]",
            "C[()]",
            "C[1 b3",
            "C[1 1]",
            "C[16]",
            "C[1 b3]x",
            "C(no1,no3,no5)",
            "C7 b9",
            "C############",
        ];
        var messages = new StringBuilder();
        foreach (var text in texts)
        {
            messages.Append(Fuzz.Complaint<Chord>(text)).Append('\n');
        }

        Expectations.Matches(messages.ToString(), "complaints-chords.txt");
    }

    private static IEnumerable<string> Seeds =>
        ChordQuality
            .Known.SelectMany(quality => quality.Aliases.Append(quality.Symbol))
            .Select((symbol, index) => $"{NoteName.Common[index % 21]}{symbol}{(index % 3 == 0 ? "/Eb" : "")}")
            .Concat(["C[1 b2 4 #5]", "F#[1 4 b7]/E", "C7(b9, #11, no5)", "Dm7,11", "C9(no root)", "Csus(b2)"]);
}
