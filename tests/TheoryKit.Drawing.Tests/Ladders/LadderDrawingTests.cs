using System.Xml.Linq;
using TheoryKit.Drawing.Ladders;
using TheoryKit.Drawing.Rendering;
using TheoryKit.Drawing.Sheets;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;

namespace TheoryKit.Drawing.Tests.Ladders;

public class LadderDrawingTests
{
    [Fact]
    public void A_seventh_chord_has_twelve_rungs() =>
        Assert.StartsWith(
            "A ladder of 12 rungs",
            Description(LadderDrawing.Of(Samples.Ebmaj7)),
            StringComparison.Ordinal
        );

    [Fact]
    public void A_thirteenth_goes_up_to_the_thirteenth() =>
        Assert.StartsWith(
            "A ladder of 22 rungs",
            Description(LadderDrawing.Of(Formula.Parse("1 3 5 b7 9 13"))),
            StringComparison.Ordinal
        );

    [Fact]
    public void Chords_over_one_root_are_aligned_by_function_over_several_by_sound()
    {
        Assert.Equal(LadderAlignment.Function, LadderDrawing.Of(Chord.Parse("C7"), Chord.Parse("Cm7")).Alignment);
        Assert.Equal(LadderAlignment.Sound, LadderDrawing.Of(Samples.KestrelStairs).Alignment);
    }

    [Fact]
    public void Neighbours_are_an_interval_apart_and_the_shared_are_named() =>
        Assert.Equal(
            "A ladder of 12 rungs, a semitone each, the lowest at the bottom."
                + " C7: 1 (C), then M3 up to 3 (E), then m3 up to 5 (G), then m3 up to ♭7 (B♭)."
                + " Cm7: 1 (C), then m3 up to ♭3 (E♭), then M3 up to 5 (G), then m3 up to ♭7 (B♭)."
                + " Shared by all: 1, 5 and ♭7.",
            Description(LadderDrawing.Of(Chord.Parse("C7"), Chord.Parse("Cm7")))
        );

    [Fact]
    public void Common_tones_of_chords_with_other_roots_lie_on_one_rung() =>
        Assert.Equal(
            """
                Dm7   G7    Cmaj7
            C#  ·     ·     ·
             C  b7 C  ·     1 C
             B  ·     3 B   7 B
            Bb  ·     ·     ·
             A  5 A   ·     ·
            Ab  ·     ·     ·
             G  ·     1 G   5 G
            F#  ·     ·     ·
             F  b3 F  b7 F  ·
             E  ·     ·     3 E
            Eb  ·     ·     ·
             D  1 D   5 D   ·
            """,
            DrawingRenderers.All.Text(LadderDrawing.Of(Chord.Parse("Dm7"), Chord.Parse("G7"), Chord.Parse("Cmaj7")))
        );

    [Theory]
    [InlineData("")]
    [InlineData("()")]
    public void A_column_has_a_tone(string formula) =>
        Assert.Throws<ArgumentException>(() =>
            new LadderDrawing(formula.Length == 0 ? [] : [new LadderColumn(Formula.Empty)])
        );

    [Fact]
    public void By_sound_every_column_has_a_root() =>
        Assert.Throws<ArgumentException>(static () =>
            new LadderDrawing([new LadderColumn(Formula.Parse("1 3"))], LadderAlignment.Sound)
        );

    [Fact]
    public void Equal_by_value()
    {
        Assert.Equal(LadderDrawing.Of(Samples.KestrelStairs), LadderDrawing.Of(Samples.KestrelStairs));
        Assert.Equal(
            LadderDrawing.Of(Samples.KestrelStairs).GetHashCode(),
            LadderDrawing.Of(Samples.KestrelStairs).GetHashCode()
        );
        Assert.NotEqual(LadderDrawing.Of(Samples.Ebmaj7), LadderDrawing.Of(Samples.KestrelStairs));
    }

    [Fact]
    public void Every_degree_of_any_formula_has_its_mark() =>
        Gen.Select(Samples.AnyFormula, Gen.Int[0, 20])
            .Sample(
                static (formula, root) =>
                {
                    var ladder = new LadderDrawing([new LadderColumn(formula, NoteName.Common[root])]);
                    var svg = Svg(ladder);
                    var marks = svg.Descendants()
                        .Count(static each =>
                            each.Name.LocalName == "circle"
                            || (each.Name.LocalName == "rect" && each.Attribute("rx")?.Value == "4.5")
                        );
                    Assert.Equal(formula.Count, marks);
                    Assert.All(
                        formula,
                        degree =>
                            Assert.Contains(
                                $"{degree:P} ({NoteName.Common[root] + degree.Interval:P})",
                                svg.Value,
                                StringComparison.Ordinal
                            )
                    );
                }
            );

    [Fact]
    public void A_hostile_title_stays_text()
    {
        const string Title = "</title><script>alert('1')</script> & \"x\"";
        var svg = Svg(new LadderDrawing([new LadderColumn(Formula.Parse("1 5"), null, Title)]));
        Assert.Contains(Title, svg.Value, StringComparison.Ordinal);
        Assert.DoesNotContain(svg.Descendants(), static each => each.Name.LocalName == "script");
    }

    [Fact]
    public void Four_seventh_chords_are_drawn_as_expected() =>
        Expectations.Matches(
            DrawingRenderers.All.Html(
                LadderDrawing.Of("Cmaj7 C7 Cm7 Cm7b5".Split(' ').Select(static each => Chord.Parse(each))),
                new RenderContext()
            ),
            "ladder-four-sevenths.svg"
        );

    private static XElement Svg(LadderDrawing ladder) =>
        XElement.Parse(DrawingRenderers.All.Html(ladder, new RenderContext()));

    private static string Description(LadderDrawing ladder) =>
        Svg(ladder).Elements().Single(static each => each.Name.LocalName == "desc").Value;
}
