using System.Xml.Linq;
using TheoryKit.Drawing.Grips;
using TheoryKit.Drawing.Necks;
using TheoryKit.Drawing.Rendering;
using TheoryKit.Drawing.Sheets;
using TheoryKit.Drawing.Tests.Markup;
using TheoryKit.Drawing.Tests.Necks;
using TheoryKit.Fingering.Grips;
using TheoryKit.Fingering.Hands;
using TheoryKit.Fingering.Words;
using TheoryKit.Theory.Chords;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Drawing.Tests.Grips;

public class GripDrawingTests
{
    private static readonly RendererSet All = DrawingRenderers.All;

    // Any grip of any neck: each string muted, open, or held by any finger within four frets.
    private static readonly Gen<GripDrawing> AnyBox =
        from neck in SampleNecks.AnyNeck
        from low in Gen.Int[neck.Capo + 1, Math.Max(neck.Capo + 1, neck.Frets)]
        from strings in (
            from kind in Gen.Int[0, 2]
            from up in Gen.Int[0, 4]
            from finger in Gen.Enum<Finger>()
            select (kind, up, finger)
        ).Array[neck.StringCount]
        from isLeft in Gen.Bool
        from labels in Gen.Enum<Labels>()
        select GripDrawing.Of(
            new Grip(
                strings.Select(
                    (each, index) =>
                    {
                        var open = neck.OpenFret(index + 1);
                        var fret = Math.Max(low + each.up, open + 1);
                        return each.kind == 0 ? GripString.Muted
                            : each.kind == 1 || fret > neck.Frets ? GripString.Open(open)
                            : GripString.Held(fret, each.finger);
                    }
                )
            ),
            neck
        ) with
        {
            IsLeftHanded = isLeft,
            Labels = labels,
        };

    [Fact]
    public void Strings_held_as_before_keep_their_fingers_and_their_o()
    {
        var grip = Chord.Parse("D").Grips(Neck.Guitar)[0];
        var drawing = GripDrawing.Of(grip);
        Assert.Equal(Labels(drawing), Labels(drawing with { Against = grip.Grip }));

        static IEnumerable<string> Labels(GripDrawing drawing) =>
            System
                .Text.RegularExpressions.Regex.Matches(drawing.Svg(), ">([1-4o])</text>")
                .Select(static match => match.Groups[1].Value);
    }

    [Fact]
    public void Every_string_that_sounds_has_one_mark_inside_the_box() =>
        AnyBox.Sample(
            static drawing =>
            {
                var svg = Svg(drawing);
                var box = svg.Attribute("viewBox")!.Value.Split(' ').Select(Number).ToArray();
                var discs = svg.Descendants()
                    .Where(static each =>
                        each.Name.LocalName == "g" && each.Attribute("class")?.Value == "tk-mark-chord"
                    )
                    .SelectMany(static group => group.Descendants())
                    .Where(static each => each.Name.LocalName == "circle")
                    .ToList();
                Assert.Equal(drawing.Grip.Positions.Count(), discs.Count);
                Assert.All(
                    discs,
                    disc =>
                    {
                        Assert.InRange(Number(disc.Attribute("cx")!.Value), 8, box[2] - 8);
                        Assert.InRange(Number(disc.Attribute("cy")!.Value), 8, box[3] - 8);
                    }
                );
            },
            iter: 300
        );

    [Fact]
    public void The_words_name_every_string_once() =>
        AnyBox.Sample(
            static drawing =>
            {
                for (var number = 1; number <= drawing.Grip.Strings.Count; number++)
                {
                    Assert.Single(drawing.Description.Split($" String {number}: ").Skip(1));
                }
            },
            iter: 300
        );

    [Fact]
    public void Plain_text_has_a_line_for_every_fret_and_a_sign_for_every_finger() =>
        AnyBox.Sample(
            static drawing =>
            {
                var lines = drawing.ToString().Split('\n');
                var held = drawing.Grip.Strings.Count(static each => each.Finger is not null);
                // The line of notes below has letters and signs only; fret numbers stand before the first column.
                var signs = lines
                    .Skip(2)
                    .Sum(static line => line.Skip(3).Count(static c => c is >= '1' and <= '4' or 'T'));
                Assert.Equal(held, signs);
                Assert.All(lines, static line => Assert.Equal(line.TrimEnd(), line));
            },
            iter: 300
        );

    [Fact]
    public void The_left_hand_sees_the_mirror_image() =>
        AnyBox.Sample(
            static drawing =>
            {
                var right = Xs(drawing with { IsLeftHanded = false }, out var width);
                var left = Xs(drawing with { IsLeftHanded = true }, out _);
                Assert.Equal(
                    right.Select(x => Math.Round(width - x, 2)).Order(),
                    left.Select(static x => Math.Round(x, 2)).Order()
                );
            },
            iter: 100
        );

    [Fact]
    public void A_box_is_under_20_KB() =>
        AnyBox.Sample(static drawing => Assert.InRange(drawing.Svg().Length, 1, 20 * 1024), iter: 100);

    [Fact]
    public void A_grip_needs_as_many_strings_as_the_neck() =>
        Assert.Throws<ArgumentException>(() => GripDrawing.Of(Grip.Parse("x 3-3 2-2 o"), Neck.Guitar));

    [Fact]
    public void A_grip_by_itself_offers_fingers_only() =>
        Assert.DoesNotContain(
            "Functions",
            All.Html(GripDrawing.Of(Grip.Parse("x 3-3 2-2 o 1-1 o")), new RenderContext()),
            StringComparison.Ordinal
        );

    [Fact]
    public void What_another_grip_holds_too_stands_back()
    {
        // Em and E7 without the little finger: the two middle strings.
        var drawing = GripDrawing.Of(Grip.Parse("o 2-2 o 1-1 o o"), Neck.Guitar) with
        {
            Against = Grip.Parse("o 2-2 2-3 o o o"),
        };
        Assert.Equal(
            [6, 5, 2, 1],
            drawing.Marks.Where(static mark => mark.IsPale).Select(static mark => mark.Position.String)
        );
    }

    [Fact]
    public void A_sheet_counts_the_grips_it_does_not_draw()
    {
        var sheet = new GripSheet(Samples.Grips) { Most = 5 };
        var html = Fragment.Parse(All.Html(sheet, new RenderContext()));
        Assert.Equal(5, html.Descendants().Count(static each => each.Name.LocalName == "svg"));
        Assert.Contains($"and {Samples.Grips.Count - 5} more", Fragment.TextOf(html), StringComparison.Ordinal);
    }

    [Fact]
    public void An_empty_answer_gives_its_reason()
    {
        var reason = Samples.Unreachable.Reason!.InWords();
        Assert.Contains(reason, All.Text(Samples.Unreachable), StringComparison.Ordinal);
        Assert.Equal(reason, All.Text(new GripSheet(Samples.Unreachable)));
    }

    [Fact]
    public void A_progression_has_a_box_for_each_chord_and_the_way_between_them()
    {
        var html = Fragment.Parse(
            All.Html(ProgressionSearch.Find(Samples.KestrelStairs, Samples.Grips.Query), new RenderContext())
        );
        Assert.Equal(4, html.Descendants().Count(static each => each.Name.LocalName == "svg"));
        Assert.Equal(3, html.Descendants("p").Count(static each => each.Attribute("class")?.Value == "tk-motion"));
    }

    [Fact]
    public void Sheets_are_equal_by_value()
    {
        Assert.Equal(new GripSheet(Samples.Grips), new GripSheet([.. Samples.Grips]));
        Assert.NotEqual(new GripSheet(Samples.Grips), new GripSheet(Samples.Grips) { Most = 3 });
        Assert.Equal(GripDrawing.Of(Samples.Grips[0]), GripDrawing.Of(Samples.Grips[0]));
    }

    [Theory]
    [InlineData("grip-open", "x 3-3 2-2 o 1-1 o", "E2 A2 D3 G3 B3 E4")]
    [InlineData("grip-barre", "8-1 10-3 8-1 8-1 8-1 8-1", "E2 A2 D3 G3 B3 E4")]
    [InlineData("grip-capo", "x x o@3 5-1 6-3 5-2", "E2 A2 D3 G3 B3 E4, capo 3")]
    [InlineData("grip-banjo", "o@5 2-2 o 1-1 o", "G4@5 D3 G3 B3 D4, 670 mm")]
    [InlineData("grip-seven-strings", "3-1 5-3 5-4 3-1 x x x", "B1 E2 A2 D3 G3 B3 E4")]
    public void A_box_is_as_expected(string name, string grip, string neck)
    {
        var drawing = GripDrawing.Of(Grip.Parse(grip), Neck.Parse(neck)) with { Title = name[5..] };
        Expectations.Matches(drawing.Svg(), name + ".svg");
        Expectations.Matches(drawing.ToString(), name + ".txt");
    }

    [Fact]
    public void An_answer_is_as_expected() => Expectations.Matches(All.Text(Samples.Grips), "grips-Ebmaj7.txt");

    [Fact]
    public void A_progression_is_as_expected() =>
        Expectations.Matches(
            All.Text(ProgressionSearch.Find(Samples.KestrelStairs, Samples.Grips.Query)),
            "grips-Kestrel-Stairs.txt"
        );

    private static List<double> Xs(GripDrawing drawing, out double width)
    {
        var svg = Svg(drawing);
        width = Number(svg.Attribute("width")!.Value);
        return
        [
            .. svg.Descendants()
                .Where(static each => each.Name.LocalName == "circle")
                .Select(static each => Number(each.Attribute("cx")!.Value)),
        ];
    }

    private static XElement Svg(GripDrawing drawing) => XElement.Parse(drawing.Svg());

    private static double Number(string text) => double.Parse(text, System.Globalization.CultureInfo.InvariantCulture);
}
