using TheoryKit.Drawing.Lines;
using TheoryKit.Drawing.Necks;
using TheoryKit.Drawing.Rendering;
using TheoryKit.Drawing.Sheets;
using TheoryKit.Drawing.Tests.Markup;
using TheoryKit.Drawing.Tests.Necks;
using TheoryKit.Drawing.Zones;
using TheoryKit.Fingering.Hands;
using TheoryKit.Fingering.Zones;
using TheoryKit.Theory.Chords;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Drawing.Tests.Zones;

public class ZoneDrawingTests
{
    private static readonly RendererSet All = DrawingRenderers.All;

    private static readonly Gen<NeckDrawing> AnyBands =
        from drawing in SampleNecks.AnyDrawing
        from bands in (
            from one in Gen.Int[0, Position.MaxFret]
            from other in Gen.Int[0, Position.MaxFret]
            from name in Gen.Int[1, 8]
            select new NeckBand(new(Math.Min(one, other), Math.Max(one, other)), new string('m', name))
        ).Array[0, 10]
        select drawing.WithBands(bands);

    [Fact]
    public void Bands_on_one_lane_never_overlap_and_all_that_are_in_view_have_one() =>
        AnyBands.Sample(
            static drawing =>
            {
                var lanes = drawing.Lanes.ToList();
                Assert.Equal(
                    drawing.Bands.Count(band =>
                        band.Window.Last >= drawing.FirstFret && band.Window.First <= drawing.LastFret
                    ),
                    lanes.Count
                );
                foreach (var lane in lanes.GroupBy(static each => each.Lane))
                {
                    Assert.All(
                        lane.Zip(lane.Skip(1)),
                        static pair => Assert.True(pair.First.Band.Window.Last < pair.Second.Band.Window.First)
                    );
                }
            },
            iter: 300
        );

    [Fact]
    public void There_are_as_many_lanes_as_the_most_bands_over_one_fret() =>
        AnyBands.Sample(
            static drawing =>
            {
                var shown = drawing.Lanes.ToList();
                var most = Enumerable
                    .Range(0, Position.MaxFret + 1)
                    .Max(fret => shown.Count(each => each.Band.Window.Contains(fret)));
                Assert.Equal(most, shown.Select(static each => each.Lane + 1).DefaultIfEmpty().Max());
            },
            iter: 300
        );

    [Fact]
    public void Bands_are_drawn_inside_the_picture_and_said_in_words_and_text() =>
        AnyBands.Sample(
            static drawing =>
            {
                var svg = System.Xml.Linq.XElement.Parse(drawing.Svg());
                var height = double.Parse(
                    svg.Attribute("height")!.Value,
                    System.Globalization.CultureInfo.InvariantCulture
                );
                Assert.All(
                    svg.Descendants().Where(static each => each.Name.LocalName == "rect"),
                    rect =>
                    {
                        var y = (double?)rect.Attribute("y") ?? 0;
                        Assert.InRange(y + (double)rect.Attribute("height")!, 0, height);
                        Assert.True((double)rect.Attribute("width")! > 0);
                    }
                );
                Assert.Equal(drawing.Lanes.Count(), drawing.ToString().Count(static c => c == '['));
                Assert.All(
                    drawing.Lanes,
                    each =>
                        Assert.Contains(
                            $" {each.Band.Name}: frets {each.Band.Window.First} to {each.Band.Window.Last}.",
                            drawing.Description,
                            StringComparison.Ordinal
                        )
                );
            },
            iter: 300
        );

    [Fact]
    public void A_map_stands_back_what_no_shape_has_and_is_under_20_KB()
    {
        var shapes = Samples
            .Zones.SelectMany(static zone => zone.Shape.Places)
            .Select(static p => p.Position)
            .ToHashSet();
        var drawing = new ZoneMap(Samples.Zones).Drawing;
        Assert.All(drawing.Marks, mark => Assert.Equal(!shapes.Contains(mark.Position), mark.IsPale));
        Assert.InRange(drawing.Svg().Length, 1, 20 * 1024);
    }

    [Fact]
    public void A_map_is_of_one_chord_on_one_neck()
    {
        Assert.Throws<ArgumentException>(() => new ZoneMap([]));
        Assert.Throws<ArgumentException>(() =>
            new ZoneMap([Samples.Zones[0], Chord.Parse("Cm7").Zones(Neck.Guitar)[0]])
        );
    }

    [Theory]
    [InlineData(RootOrder.Fourths, 5)]
    [InlineData(RootOrder.Semitones, 1)]
    public void Twelve_roots_come_in_order(RootOrder order, int step)
    {
        var html = Fragment.Parse(All.Html(new RootSheet(Samples.Zones[1]) { Order = order }, new RenderContext()));
        var roots = html.Descendants("div")
            .Where(static each => each.Attribute("class")?.Value == "tk-part")
            .Select(static part => Chord.Parse(part.Element("p")!.Value.Split(',')[0]).Root.PitchClass)
            .ToList();
        Assert.Equal(Enumerable.Range(0, 12).Select(i => (3 + (i * step)) % 12), roots);
    }

    [Fact]
    public void Across_qualities_tones_of_the_first_chord_stand_back_and_new_ones_stand_out() =>
        Gen.Select(Gen.Int[0, 4], Samples.Of(ChordQuality.Known.Where(static q => q.Formula.Count == 4).ToList()))
            .Sample(
                static (index, quality) =>
                {
                    var across = ZoneAcrossQualities.Of(Samples.Zones[index], [quality]);
                    foreach (var zone in across.Zones.Skip(1))
                    {
                        Assert.Equal(Samples.Zones[index].Form, zone.Form);
                        var text = All.Text(across);
                        var neck = text[..text.IndexOf("Grips", StringComparison.Ordinal)].Split("\n\n")[^2];
                        var first = across.Zones[0].Shape.Places.Select(static p => p.Pitch.MidiNumber).ToHashSet();
                        Assert.Equal(
                            zone.Shape.Places.Count(place => first.Contains(place.Pitch.MidiNumber)),
                            neck.Count(static c => c == '*')
                        );
                    }
                },
                iter: 30
            );

    [Fact]
    public void A_zone_page_lists_every_tone_with_its_finger()
    {
        foreach (var zone in Samples.Zones)
        {
            var html = Fragment.Parse(All.Html(new ZonePage(zone), new RenderContext()));
            var rows = html.Descendants("tbody").Last().Elements("tr").ToList();
            Assert.Equal(
                zone.Shape.Notes.Select(static note =>
                    (
                        $"{note.Place.Pitch:P}",
                        $"{note.Place.Position.String}",
                        note.Finger is { } finger ? $"{(int)finger}" : "o"
                    )
                ),
                rows.Select(static row => row.Elements().Select(static cell => cell.Value).ToList())
                    .Select(static cells => (cells[0], cells[2], cells[4]))
            );
        }
    }

    [Fact]
    public void A_line_shows_its_order_and_where_the_hand_shifts()
    {
        var text = All.Text(Samples.Line);
        Assert.Contains("Note by note", text, StringComparison.Ordinal);
        var drawing = new LineDrawing(Samples.Line[0], Neck.Guitar) { Chord = Chord.Parse("Gm9") };
        Assert.Equal(
            Samples.Line[0].Shifts.Count(),
            Fragment
                .Parse(All.Html(drawing, new RenderContext()))
                .Descendants("td")
                .Count(static cell => cell.Value.Contains("fret", StringComparison.Ordinal))
        );
        // G3 is the first note and the last.
        Assert.Contains("1,10", All.Text(drawing), StringComparison.Ordinal);
    }

    [Fact]
    public void Zones_without_a_grip_are_named()
    {
        var zones = Chord.Parse("G").Zones(SampleNecks.Banjo);
        var without = zones.Where(static zone => zone.Grip is null).ToList();
        Assert.NotEmpty(without);
        Assert.All(
            without,
            zone => Assert.Contains($"no grip at frets {zone.Window}", All.Text(zones), StringComparison.Ordinal)
        );
    }

    [Fact]
    public void A_hand_carries_the_caution() =>
        Assert.Contains("Stop when it hurts", All.Text(Hand.Small), StringComparison.Ordinal);

    [Theory]
    [InlineData("guitar", "E2 A2 D3 G3 B3 E4")]
    [InlineData("tenor-banjo", "C3 G3 D4 A4, 585 mm, 19 frets")]
    public void Zones_are_as_expected(string name, string neck) =>
        Expectations.Matches(All.Text(Samples.Ebmaj7.Zones(Neck.Parse(neck))), $"zones-{name}.txt");

    [Fact]
    public void A_map_is_as_expected() =>
        Expectations.Matches(new ZoneMap(Samples.Zones).Drawing.Svg(), "zones-map.svg");

    [Fact]
    public void A_zone_page_is_as_expected()
    {
        Expectations.Matches(All.Text(new ZonePage(Samples.Zones[2])), "zone-page.txt");
        Expectations.Matches(All.Html(new ZonePage(Samples.Zones[2]), new RenderContext()), "zone-page.html");
    }

    [Fact]
    public void Sheets_of_zones_are_as_expected()
    {
        Expectations.Matches(All.Text(new RootSheet(Samples.Zones[2])), "zone-roots.txt");
        Formula[] qualities = [Formula.Parse("1 3 5 b7"), Formula.Parse("1 b3 5 b7"), Formula.Parse("1 b3 b5 b7")];
        Expectations.Matches(All.Text(ZoneAcrossQualities.Of(Samples.Zones[2], qualities)), "zone-across.txt");
    }

    [Fact]
    public void Drawings_of_zones_are_equal_by_value()
    {
        var again = Samples.Ebmaj7.Zones(Neck.Guitar);
        Assert.Equal(new ZoneMap(Samples.Zones), new ZoneMap(again));
        Assert.Equal(new ZonePage(Samples.Zones[0]), new ZonePage(again[0]));
        Assert.NotEqual(new ZonePage(Samples.Zones[0]), new ZonePage(again[1]));
        Assert.Equal(Samples.Zones[0].InAllRoots(), again[0].InAllRoots());
    }
}
