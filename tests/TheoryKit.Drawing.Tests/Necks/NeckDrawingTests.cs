using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using TheoryKit.Drawing.Necks;
using TheoryKit.Drawing.Rendering;
using TheoryKit.Drawing.Sheets;
using TheoryKit.Drawing.Zones;
using TheoryKit.Licks.Moves;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Scales;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Drawing.Tests.Necks;

public partial class NeckDrawingTests
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    [Fact]
    public void Every_mark_and_label_lies_inside_the_picture() =>
        SampleNecks.AnyDrawing.Sample(static drawing =>
        {
            var picture = Picture(drawing);
            var (width, height) = Size(picture);
            foreach (var (x, y, reach, _) in Marks(picture))
            {
                Assert.InRange(x, reach, width - reach);
                Assert.InRange(y, reach, height - reach);
            }

            foreach (var text in picture.Descendants(Svg + "text"))
            {
                Assert.InRange(Number(text, "x"), 0, width);
                Assert.InRange(Number(text, "y"), 6, height);
            }
        });

    [Fact]
    public void Every_mark_shown_is_drawn_once_in_the_shape_of_its_role() =>
        SampleNecks.AnyDrawing.Sample(static drawing =>
        {
            var expected = Shown(drawing)
                .GroupBy(static mark => mark.Role)
                .ToDictionary(static g => g.Key, static g => g.Count());
            var drawn = Marks(Picture(drawing))
                .GroupBy(static mark => mark.Role)
                .ToDictionary(static g => g.Key, static g => g.Count());
            Assert.Equal(expected.OrderBy(static each => each.Key), drawn.OrderBy(static each => each.Key));
        });

    [Fact]
    public void A_root_is_a_rounded_square_a_chord_tone_a_disc_a_colour_tone_a_ring_and_the_rest_smaller_dots()
    {
        var position = new Position(3, 5);
        XElement Shape(ToneRole role) =>
            Picture(NeckDrawing.Of(Neck.Guitar, [new Mark(position) { Role = role }]))
                .Descendants(Svg + "g")
                .Single(static g => Class(g).StartsWith("tk-mark", StringComparison.Ordinal))
                .Element(Svg + "g")!;

        var root = Shape(ToneRole.Root).Element(Svg + "rect")!;
        Assert.Equal(root.Attribute("width")!.Value, root.Attribute("height")!.Value);
        Assert.True(Number(root, "rx") > 2);
        var chord = Shape(ToneRole.ChordTone);
        Assert.Equal(Look.Chord.Light, chord.Attribute("fill")!.Value);
        var colour = Shape(ToneRole.ColourTone);
        Assert.Equal(Look.Colour.Light, colour.Attribute("stroke")!.Value);
        Assert.Equal(Look.Board.Light, colour.Attribute("fill")!.Value);
        var other = Shape(ToneRole.Other).Element(Svg + "circle")!;
        Assert.True(Number(other, "r") < Number(chord.Element(Svg + "circle")!, "r") / 2);
    }

    [Fact]
    public void The_left_hand_sees_the_mirror_of_the_right() =>
        SampleNecks.AnyDrawing.Sample(static drawing =>
        {
            var right = Picture(drawing.WithLeftHand(false));
            var left = Picture(drawing.WithLeftHand());
            Assert.Equal(Size(right), Size(left));
            var width = Size(right).Width;
            AssertClose(
                Marks(right).Select(mark => (width - mark.X, mark.Y)),
                Marks(left).Select(static mark => (mark.X, mark.Y))
            );
            AssertClose(
                right.Descendants(Svg + "line").Select(line => (width - Number(line, "x1"), Number(line, "y1"))),
                left.Descendants(Svg + "line").Select(static line => (Number(line, "x1"), Number(line, "y1")))
            );
            Assert.Equal(Texts(right), Texts(left));
        });

    [Fact]
    public void A_mark_lies_behind_its_fret_and_before_the_one_below() =>
        SampleNecks
            .AnyDrawing.Where(static drawing => drawing.FirstFret <= 1)
            .Sample(static drawing =>
            {
                drawing = drawing.WithLeftHand(false);
                var picture = Picture(drawing);
                var wires = Wires(picture);
                foreach (var group in Shown(drawing).GroupBy(static mark => mark.Role))
                {
                    var drawn = Marks(picture).Where(mark => mark.Role == group.Key).ToList();
                    foreach (var (mark, at) in group.OrderBy(static mark => mark.Position).Zip(drawn))
                    {
                        var fret = mark.Position.Fret;
                        Assert.True(fret == 0 || at.X < wires[fret - 1]);
                        Assert.True(
                            fret < 2 || fret == drawing.Neck.OpenFret(mark.Position.String) || at.X > wires[fret - 2]
                        );
                    }
                }
            });

    [Fact]
    public void Frets_are_true_to_scale() =>
        SampleNecks
            .AnyNeck.Where(static neck => neck.Frets >= 3)
            .Sample(static neck =>
            {
                var wires = Wires(Picture(NeckDrawing.Of(neck)));
                Assert.Equal(neck.Frets, wires.Count);
                var scale = (wires[^1] - wires[0]) / (neck.FretDistance(neck.Frets) - neck.FretDistance(1));
                for (var fret = 2; fret <= neck.Frets; fret++)
                {
                    var expected = (neck.FretDistance(fret) - neck.FretDistance(1)) * scale;
                    Assert.Equal(expected, wires[fret - 1] - wires[0], 0.11);
                }
            });

    [Fact]
    public void String_1_is_at_the_top_and_every_string_is_there() =>
        SampleNecks.AnyNeck.Sample(static neck =>
        {
            var strings = Picture(NeckDrawing.Of(neck)).Descendants(Svg + "line").ToList();
            Assert.Equal(neck.StringCount, strings.Count);
            Assert.Equal(strings, strings.OrderBy(static line => Number(line, "y2")));
        });

    [Fact]
    public void Ids_are_unique_in_a_page_of_many_drawings() =>
        SampleNecks
            .AnyDrawing.Array[2, 6]
            .Sample(static drawings =>
            {
                var context = new RenderContext();
                var page = string.Concat(drawings.Select(drawing => DrawingRenderers.All.Html(drawing, context)));
                var ids = AnId().Matches(page).Select(static match => match.Groups[1].Value).ToList();
                Assert.Equal(3 * drawings.Length, ids.Count);
                Assert.Equal(ids.Count, ids.Distinct().Count());
                foreach (Match match in ALabelledBy().Matches(page))
                {
                    Assert.All(match.Groups[1].Value.Split(' '), id => Assert.Contains(id, ids));
                }
            });

    [Fact]
    public void The_description_tells_every_mark_shown_and_no_other() =>
        SampleNecks.AnyDrawing.Sample(static drawing =>
        {
            var told = ASentence()
                .Matches(drawing.Description)
                .SelectMany(sentence =>
                {
                    var number = int.Parse(sentence.Groups[1].Value, CultureInfo.InvariantCulture);
                    return sentence.Groups[2].Value.Split("; ").Select(words => (String: number, Words: words));
                })
                .ToList();
            var shown = Shown(drawing).ToList();
            Assert.Equal(shown.Count, told.Count);
            foreach (var mark in shown)
            {
                var (@string, fret) = (mark.Position.String, mark.Position.Fret);
                var place = fret == drawing.Neck.OpenFret(@string) ? "open" : $"fret {fret}";
                var words = Assert
                    .Single(
                        told,
                        each =>
                            each.String == @string
                            && (each.Words + " ").Replace(',', ' ').StartsWith(place + " ", StringComparison.Ordinal)
                    )
                    .Words;
                Assert.Contains(mark.Name?.ToString("P", drawing.Naming) ?? "", words, StringComparison.Ordinal);
                Assert.Contains(
                    mark.Function is { } function ? $"the {function:P}" : "",
                    words,
                    StringComparison.Ordinal
                );
                Assert.Contains(
                    mark.Finger switch
                    {
                        null => "",
                        0 => "thumb",
                        var f => $"finger {f}",
                    },
                    words,
                    StringComparison.Ordinal
                );
            }
        });

    [Fact]
    public void Forty_marks_with_every_label_stay_under_20_kilobytes() =>
        SampleNecks
            .Drawing(40, 40)
            .Sample(static drawing =>
            {
                var whole = drawing.WithFrets(0, drawing.Neck.Frets).WithKey();
                Assert.InRange(Encoding.UTF8.GetByteCount(whole.Svg()), 1000, 20 * 1024);
            });

    [Fact]
    public void Forty_of_the_longest_marks_on_the_largest_neck_stay_under_20_kilobytes()
    {
        var neck = Neck.Parse("E2 A2 D3 G3 B3 E4 E2 A2 D3 G3 B3 E4, 36 frets, capo 9");
        var marks = Enumerable
            .Range(0, 40)
            .Select(static i => new Mark(new Position((i % 12) + 1, 36 - (i / 12 * 2)))
            {
                Function = Degree.Parse("bb13"),
                Name = NoteName.Parse("Gbb"),
                Finger = 2,
                Role = (ToneRole)(i % 4),
            });
        var drawing = NeckDrawing.Of(neck, marks).WithKey().WithLeftHand().WithNaming(NoteNaming.Solfege);
        Assert.InRange(Encoding.UTF8.GetByteCount(drawing.Svg()), 1000, 20 * 1024);
    }

    [Fact]
    public void A_picture_has_no_script_and_refers_to_nothing_outside() =>
        SampleNecks.AnyDrawing.Sample(static drawing =>
        {
            var svg = drawing.Svg();
            Assert.DoesNotContain("<script", svg, StringComparison.OrdinalIgnoreCase);
            Assert.DoesNotContain("href", svg, StringComparison.OrdinalIgnoreCase);
            Assert.DoesNotContain("url(", svg, StringComparison.OrdinalIgnoreCase);
            Assert.DoesNotContain("@import", svg, StringComparison.OrdinalIgnoreCase);
            Assert.Single(AnAddress().Matches(svg)); // the namespace
        });

    [Fact]
    public void Without_style_sheets_only_the_chosen_labels_show() =>
        SampleNecks.AnyDrawing.Sample(static drawing =>
        {
            var shown = Picture(drawing)
                .Descendants(Svg + "g")
                .Where(static g =>
                    Class(g).StartsWith("tk-l ", StringComparison.Ordinal) && g.Attribute("display") is null
                );
            Assert.True(shown.Count() <= 1);
        });

    [Fact]
    public void Text_that_looks_like_markup_is_text_everywhere()
    {
        const string Evil = "<script>\"'&";
        var drawing = NeckDrawing
            .Of(Neck.Guitar, [new Mark(new Position(1, 3)) { Label = "<b>&" }])
            .WithTitle(Evil)
            .WithDescription(Evil);
        var html = DrawingRenderers.All.Html(drawing, new RenderContext());
        Assert.DoesNotContain("<script", html, StringComparison.Ordinal);
        Assert.DoesNotContain("<b>", html, StringComparison.Ordinal);
        var picture = Picture(drawing);
        Assert.Equal(Evil, picture.Element(Svg + "title")!.Value);
        Assert.Equal(Evil, picture.Element(Svg + "desc")!.Value);
        Assert.Contains("<b>&", Texts(picture));
    }

    [Fact]
    public void Only_the_labels_that_exist_are_offered_and_one_is_chosen()
    {
        var marks = new[] { new Mark(new Position(6, 3), Degree.Root) };
        var html = DrawingRenderers.All.Html(NeckDrawing.Of(Neck.Guitar, marks), new RenderContext());
        Assert.Equal(["f", "0"], ARadio().Matches(html).Select(static match => match.Groups[1].Value));
        Assert.Single(AChecked().Matches(html));
        html = DrawingRenderers.All.Html(
            NeckDrawing
                .Of(Neck.Guitar, marks.Select(static mark => mark with { Finger = 2, Name = default(NoteName) }))
                .WithLabels(Labels.Fingers),
            new RenderContext()
        );
        Assert.Equal(["f", "n", "g", "0"], ARadio().Matches(html).Select(static match => match.Groups[1].Value));
        Assert.Contains("value=\"g\" checked", html, StringComparison.Ordinal);
        Assert.DoesNotContain(
            "<fieldset",
            DrawingRenderers.All.Html(Neck.Guitar, new RenderContext()),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void The_radio_buttons_of_two_figures_do_not_touch_each_other()
    {
        var context = new RenderContext();
        var names = Enumerable
            .Range(0, 2)
            .Select(_ =>
                AName()
                    .Matches(DrawingRenderers.All.Html(SampleNecks.Guitar, context))
                    .Select(static m => m.Value)
                    .Distinct()
                    .Single()
            );
        Assert.Equal(2, names.Distinct().Count());
    }

    [Fact]
    public void A_mark_off_the_neck_is_refused()
    {
        Assert.Throws<ArgumentException>(static () =>
            NeckDrawing.Of(SampleNecks.Ukulele, [new Mark(new Position(5, 0))])
        );
        Assert.Throws<ArgumentException>(static () =>
            NeckDrawing.Of(SampleNecks.Ukulele, [new Mark(new Position(1, 16))])
        );
        Assert.Throws<ArgumentException>(static () =>
            NeckDrawing.Of(SampleNecks.Banjo, [new Mark(new Position(5, 4))])
        );
        Assert.Throws<ArgumentException>(static () =>
            NeckDrawing.Of(Neck.Guitar.WithCapo(2), [new Mark(new Position(1, 1))])
        );
    }

    [Theory]
    [InlineData(-1, 5)]
    [InlineData(0, 0)]
    [InlineData(5, 4)]
    [InlineData(5, 23)]
    public void Frets_that_are_not_there_are_refused(int first, int last) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => SampleNecks.Guitar.WithFrets(first, last));

    [Theory]
    [InlineData("6:5 4:8", 5, 8)]
    [InlineData("6:7 5:7", 7, 10)]
    [InlineData("6:1 2:3", 0, 4)]
    [InlineData("5:3 1:0", 0, 4)]
    [InlineData("1:22", 19, 22)]
    public void The_frets_of_the_marks_are_at_least_four_and_begin_at_the_nut_if_near(
        string positions,
        int first,
        int last
    )
    {
        var drawing = NeckDrawing
            .Of(Neck.Guitar, positions.Split(' ').Select(static text => new Mark(Position.Parse(text))))
            .WithFretsOfMarks();
        Assert.Equal((first, last), (drawing.FirstFret, drawing.LastFret));
    }

    [Fact]
    public void The_frets_of_the_marks_show_them_all() =>
        SampleNecks.AnyDrawing.Sample(static drawing =>
            Shown(drawing.WithFretsOfMarks()).Count() == drawing.Marks.Length
        );

    [Fact]
    public void Drawings_are_equal_by_value() =>
        SampleNecks.AnyDrawing.Sample(static drawing =>
        {
            var same = drawing.WithMarks(drawing.Marks.Select(static mark => mark with { }));
            Assert.Equal(drawing, same);
            Assert.Equal(drawing.GetHashCode(), same.GetHashCode());
            Assert.Equal(drawing.Svg(), same.Svg());
            Assert.NotEqual(drawing, drawing.WithTitle("another"));
            Assert.NotEqual(drawing, drawing.WithLeftHand(!drawing.IsLeftHanded));
            Assert.NotEqual(drawing, drawing.WithDescription("another"));
        });

    [Fact]
    public void A_label_too_long_for_a_mark_is_refused() =>
        Assert.Throws<ArgumentException>(static () => new Mark(new Position(1, 1)) { Label = "lower" });

    [Theory]
    [InlineData(-1)]
    [InlineData(5)]
    public void A_hand_has_four_fingers_and_a_thumb(int finger) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new Mark(new Position(1, 1)) { Finger = finger });

    [Fact]
    public void A_chord_is_marked_at_all_its_places_and_nowhere_else()
    {
        var chord = new Chord(NoteName.Parse("Eb"), SampleNecks.MajorSeventh);
        var drawing = chord.On(Neck.Guitar);
        Assert.Equal(
            Neck.Guitar.PlacesOf(chord).Select(static place => place.Position),
            drawing.Marks.Select(static mark => mark.Position)
        );
        Assert.All(
            drawing.Marks,
            static mark => Assert.Equal(NoteName.Parse("Eb").Add(mark.Function!.Value), mark.Name)
        );
    }

    [Fact]
    public void A_title_names_the_chord_or_scale_in_the_readers_way()
    {
        var chord = Chord.Parse("Ebmaj7").On(Neck.Guitar);
        Assert.Equal("E♭maj7", chord.Title);
        Assert.StartsWith("Es", chord.WithNaming(NoteNaming.German).Title, StringComparison.Ordinal);
        Assert.Equal("mine", chord.WithTitle("mine").WithNaming(NoteNaming.German).Title);
        Assert.Equal("E♭ dorian", Scale.Parse("Eb dorian").On(Neck.Guitar).Title);
        Assert.Equal("E♭ 1 ♭3 5", Formula.Parse("1 b3 5").On(NoteName.Parse("Eb"), Neck.Guitar).Title);
        Assert.Equal("Six strings", NeckDrawing.Of(Neck.Guitar).Title);
    }

    [Fact]
    public void Notes_are_named_in_the_readers_way_unless_the_drawing_says()
    {
        var drawing = Chord.Parse("Bb7").On(Neck.Guitar).WithLabels(Labels.NoteNames);
        var german = DrawingRenderers.Named(NoteNaming.German);
        Assert.Contains(">As<", german.Html(drawing, new RenderContext()), StringComparison.Ordinal);
        Assert.Contains(">H<", german.Html(Neck.Guitar, new RenderContext()), StringComparison.Ordinal);
        Assert.Contains(" H3", german.Text(Tuning.Standard), StringComparison.Ordinal);
        var named = drawing.WithNaming(NoteNaming.Solfege);
        Assert.Contains(">La♭<", german.Html(named, new RenderContext()), StringComparison.Ordinal);
    }

    [Fact]
    public void Plain_text_has_a_line_for_each_string_and_a_label_for_each_mark() =>
        SampleNecks.AnyDrawing.Sample(static drawing =>
        {
            var lines = drawing.WithLabels(Labels.None).WithTitle("t").ToString().Split('\n');
            Assert.Equal(drawing.Neck.StringCount + 2, lines.Length);
            Assert.Equal(Shown(drawing).Count(), lines.Skip(2).Sum(static line => line.Count(static c => c == '*')));
        });

    private static IEnumerable<Mark> Shown(NeckDrawing drawing) =>
        drawing.Marks.Where(mark => mark.Position.Fret >= drawing.FirstFret && mark.Position.Fret <= drawing.LastFret);

    private static XElement Picture(NeckDrawing drawing) => XDocument.Parse(drawing.Svg()).Root!;

    private static (double Width, double Height) Size(XElement picture)
    {
        var box = picture
            .Attribute("viewBox")!
            .Value.Split(' ')
            .Select(static part => double.Parse(part, CultureInfo.InvariantCulture))
            .ToList();
        Assert.Equal((0, 0), (box[0], box[1]));
        return (box[2], box[3]);
    }

    private static IEnumerable<(double X, double Y, double Reach, ToneRole Role)> Marks(XElement picture) =>
        from g in picture.Descendants(Svg + "g")
        let kind = Class(g)
        where kind.StartsWith("tk-mark-", StringComparison.Ordinal)
        from shape in g.Element(Svg + "g")!.Elements()
        select kind switch
        {
            "tk-mark-root" => (
                Number(shape, "x") + (Number(shape, "width") / 2),
                Number(shape, "y") + (Number(shape, "height") / 2),
                Number(shape, "width") / 2,
                ToneRole.Root
            ),
            "tk-mark-chord" => Circle(shape, ToneRole.ChordTone),
            "tk-mark-colour" => Circle(shape, ToneRole.ColourTone),
            _ => Circle(shape, ToneRole.Other),
        };

    private static (double, double, double, ToneRole) Circle(XElement shape, ToneRole role) =>
        (Number(shape, "cx"), Number(shape, "cy"), Number(shape, "r"), role);

    // The frets are the one path with an outline.
    private static List<double> Wires(XElement picture) =>
        [
            .. AMove()
                .Matches(
                    picture
                        .Descendants(Svg + "path")
                        .Single(static path => path.Attribute("stroke") is not null)
                        .Attribute("d")!
                        .Value
                )
                .Select(static match => double.Parse(match.Groups[1].Value, CultureInfo.InvariantCulture)),
        ];

    private static List<string> Texts(XElement picture) =>
        [.. picture.Descendants(Svg + "text").Select(static text => text.Value)];

    private static double Number(XElement element, string attribute) =>
        double.Parse(element.Attribute(attribute)!.Value, CultureInfo.InvariantCulture);

    private static string Class(XElement element) => element.Attribute("class")?.Value ?? "";

    private static void AssertClose(
        IEnumerable<(double X, double Y)> expected,
        IEnumerable<(double X, double Y)> actual
    )
    {
        foreach (var (one, other) in expected.Zip(actual))
        {
            Assert.Equal(one.X, other.X, 0.011);
            Assert.Equal(one.Y, other.Y, 0.011);
        }
    }

    [GeneratedRegex(@" id=""([^""]+)""")]
    private static partial Regex AnId();

    [GeneratedRegex(@"aria-labelledby=""([^""]+)""")]
    private static partial Regex ALabelledBy();

    [GeneratedRegex(@"String (\d+): ([^.]*)\.")]
    private static partial Regex ASentence();

    [GeneratedRegex(@"\w+://")]
    private static partial Regex AnAddress();

    [GeneratedRegex(@"type=""radio"" name=""[^""]+"" value=""(.)""")]
    private static partial Regex ARadio();

    [GeneratedRegex(@" name=""[^""]+""")]
    private static partial Regex AName();

    [GeneratedRegex(@" checked=")]
    private static partial Regex AChecked();

    [GeneratedRegex(@"M([-\d.]+) ")]
    private static partial Regex AMove();
}
