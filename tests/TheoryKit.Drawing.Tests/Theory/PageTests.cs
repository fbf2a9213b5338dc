using TheoryKit.Drawing.Rendering;
using TheoryKit.Drawing.Sheets;
using TheoryKit.Drawing.Tests.Markup;
using TheoryKit.Drawing.Theory;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Relations;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Drawing.Tests.Theory;

public class PageTests
{
    private static readonly RendererSet All = DrawingRenderers.All;

    [Fact]
    public void Every_tone_of_any_chord_stands_on_its_page_with_its_function() =>
        Samples.AnyChord.Sample(
            static chord =>
            {
                var html = Fragment.Parse(All.Html(new ChordPage(chord), new RenderContext()));
                var rows = html.Descendants("table")
                    .First()
                    .Element("tbody")!
                    .Elements("tr")
                    .Select(static row => row.Elements().Select(static cell => cell.Value).Take(2).ToArray())
                    .ToList();
                foreach (var (tone, degree) in chord.Tones.Zip(chord.Formula))
                {
                    Assert.Contains(rows, row => row[0] == $"{tone:P}" && row[1] == $"{degree:P}");
                }

                Assert.Contains(rows, row => NoteName.Parse(row[0]).IsEnharmonicTo(chord.Bass));
                var text = All.Text(new ChordPage(chord));
                Assert.All(chord.Tones, tone => Assert.Contains($"  {tone} ", text, StringComparison.Ordinal));
            },
            iter: 200
        );

    [Fact]
    public void A_page_holds_exactly_the_places_of_the_tones_in_its_window()
    {
        var page = new ChordPage(Samples.Ebmaj7)
        {
            FirstFret = 5,
            LastFret = 9,
            ShowsRelations = false,
        };
        var text = All.Text(page);
        var neck = text[text.IndexOf("on the neck", StringComparison.Ordinal)..];
        var shown = Neck.Guitar.PlacesOf(Samples.Ebmaj7).Count(static place => place.Position.Fret is >= 5 and <= 9);
        Assert.Equal(shown, neck.Split('\n').Skip(2).Sum(static line => line.Count(char.IsAsciiDigit)));
    }

    [Theory]
    [InlineData(-3, 99)]
    [InlineData(30, 2)]
    public void A_window_beyond_the_neck_is_brought_back(int first, int last) =>
        Assert.Contains(
            "on the neck",
            All.Text(new ChordPage(Samples.Ebmaj7) { FirstFret = first, LastFret = last }),
            StringComparison.Ordinal
        );

    [Fact]
    public void A_bass_that_is_no_tone_is_named_as_such()
    {
        var text = All.Text(new ChordPage(Chord.Parse("Ebmaj7/A")) { Neck = null });
        Assert.Contains("augmented fourth", text, StringComparison.Ordinal);
        Assert.Contains("bass, not in the formula", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_seventh_chord_page_reads_as_expected()
    {
        Expectations.Matches(All.Text(new ChordPage(Samples.Ebmaj7)), "page-Ebmaj7.txt");
        Expectations.Matches(
            Fragment.WithoutStyle(All.Html(new ChordPage(Samples.Ebmaj7), new RenderContext())),
            "page-Ebmaj7.html"
        );
    }

    [Fact]
    public void A_tune_compared_reads_as_expected()
    {
        var page = ComparisonPage.Of(Samples.KestrelStairs);
        Expectations.Matches(All.Text(page), "comparison-Kestrel-Stairs.txt");
        Expectations.Matches(
            Fragment.WithoutStyle(All.Html(page, new RenderContext())),
            "comparison-Kestrel-Stairs.html"
        );
    }

    [Fact]
    public void A_minor_seventh_is_a_sixth_of_its_third_and_has_two_triads_inside()
    {
        var text = All.Text(new ChordPage(Chord.Parse("Cm7")) { Neck = null });
        Assert.Contains(
            """
            Chords inside
              chord  in words     stands on  its tones here
              Cm     minor triad  1          1 b3 5
              Eb     major triad  b3         b3 5 b7

            The same notes from another root
              chord  in words  stands on
              Eb6    sixth     b3
            2 other tones give no usual name.
            """,
            text,
            StringComparison.Ordinal
        );
        Assert.Contains(" C7(no3) ", text, StringComparison.Ordinal);
        Assert.Contains("  b3 to 3       Eb to E       C7 ", text, StringComparison.Ordinal);
        Assert.Contains("  C dorian  ", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_chord_page_respells_nothing_silently()
    {
        var text = All.Text(new ChordPage(Chord.Parse("G#7alt/D")) { Neck = null });
        Assert.Matches(@"\n  Caug +augmented triad +3 +3 #5 1 +B# as C, D## as E\n", text);
    }

    [Fact]
    public void Tables_of_related_formulas_say_where_there_is_no_usual_name()
    {
        // E G Bb C, G Bb C E and Bb C E G are inversions of C7, no other chords.
        Assert.Equal(
            "No chord that has a usual name, from 3 tones.",
            All.Text(Formula.Parse("1 3 5 b7").Relations().Rotations)
        );
        Assert.StartsWith(
            "1 chord, on a degree; 2 other tones give no usual name\n",
            All.Text(Formula.Parse("1 b3 5 b7").Relations().Rotations),
            StringComparison.Ordinal
        );
        var near = All.Text(Formula.Parse("1 b3 5 b7").Relations().Neighbours);
        Assert.Matches(@"\n  1 b3 6 b7 +5 to 6 +no usual name\n", near);
        Assert.Matches(@"\n  1 b3 b7 +leave out 5 +minor seventh, without the fifth\n", near);
    }

    [Fact]
    public void A_power_chord_says_what_it_has_not()
    {
        var text = All.Text(new ChordPage(Chord.Parse("C5")) { Neck = null });
        Assert.Contains("No triad and no seventh chord lies inside.", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_page_without_neck_and_relations_is_ladder_and_table() =>
        Assert.Equal(
            """
            C5  C power chord

             7  ·
            b7  ·
             6  ·
            b6  ·
             5  5 G
            b5  ·
             4  ·
             3  ·
            b3  ·
             2  ·
            b2  ·
             1  1 C

            Tones and functions
              tone  function  above the root  semitones  role
              C     1         perfect unison          0  root
              G     5         perfect fifth           7  chord tone
            """,
            All.Text(new ChordPage(Chord.Parse("C5")) { Neck = null, ShowsRelations = false })
        );

    [Fact]
    public void A_comparison_has_a_column_for_every_chord_and_a_row_for_every_sound()
    {
        // Eb G Bb D, C Eb G Bb, F Ab C Eb, Bb D F Ab: seven sounds, those of Eb major.
        var table = Fragment
            .Parse(All.Html(ComparisonPage.Of(Samples.KestrelStairs), new RenderContext()))
            .Descendants("table")
            .First();
        Assert.Equal(
            ["sound", "E♭maj7", "Cm7", "Fm7", "B♭7", "in"],
            table.Element("thead")!.Descendants("th").Select(static head => head.Value)
        );
        Assert.Equal(
            ["D", "C", "B♭", "A♭", "G", "F", "E♭"],
            table.Element("tbody")!.Elements("tr").Select(static row => row.Element("th")!.Value)
        );
    }

    [Fact]
    public void A_comparison_has_one_switch_for_all_its_necks()
    {
        var html = Fragment.Parse(All.Html(ComparisonPage.Of(Samples.KestrelStairs), new RenderContext()));
        Assert.Single(html.Descendants("fieldset"));
        Assert.Equal(1 + 4, html.Descendants().Count(static each => each.Name.LocalName == "svg"));
    }

    [Fact]
    public void Any_chords_compare() =>
        Samples
            .AnyChord.Array[1, 4]
            .Sample(
                static chords =>
                {
                    var html = Fragment.Parse(All.Html(ComparisonPage.Of(chords), new RenderContext()));
                    Assert.Equal(chords.Length * (chords.Length - 1) / 2, Rows(html, "Two by two"));
                },
                iter: 50
            );

    [Fact]
    public void Any_formula_however_odd_has_a_page_a_card_and_a_comparison() =>
        Gen.Select(Samples.AnyFormula, Samples.AnyFormula, Samples.Of(NoteName.Common))
            .Sample(
                static (one, other, root) =>
                {
                    var values = new object[]
                    {
                        one,
                        one.Relations(),
                        new ChordPage(new Chord(root, one)) { Neck = null },
                        ComparisonPage.Of(root, one, other) with
                        {
                            Neck = null,
                        },
                    };
                    foreach (var value in values)
                    {
                        Assert.NotEmpty(All.Text(value));
                        Fragment.Parse(All.Html(value, new RenderContext()));
                    }
                },
                iter: 100
            );

    [Fact]
    public void Pages_are_equal_by_value()
    {
        Assert.Equal(new ChordPage(Samples.Ebmaj7), new ChordPage(Chord.Parse("Ebmaj7")));
        Assert.NotEqual(new ChordPage(Samples.Ebmaj7), new ChordPage(Samples.Ebmaj7) { LastFret = 5 });
        Assert.Equal(ComparisonPage.Of(Samples.KestrelStairs), ComparisonPage.Of(Samples.KestrelStairs));
    }

    private static int Rows(System.Xml.Linq.XElement html, string caption) =>
        html.Descendants("table")
            .Where(table => table.Element("caption")!.Value == caption)
            .Sum(static table => table.Element("tbody")!.Elements("tr").Count());
}
