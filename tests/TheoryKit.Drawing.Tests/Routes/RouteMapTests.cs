using System.Xml.Linq;
using TheoryKit.Drawing.Routes;
using TheoryKit.Drawing.Sheets;
using TheoryKit.Drawing.Zones;

namespace TheoryKit.Drawing.Tests.Routes;

public class RouteMapTests
{
    [Fact]
    public void A_map_in_characters_is_as_a_reviewer_read_it() =>
        Expectations.Matches($"{Samples.Climbing[0].Map()}\n\n{Samples.Staying[0].Map()}\n", "route-maps.txt");

    [Fact]
    public void A_map_has_an_area_for_every_chord_and_a_label_for_every_note()
    {
        foreach (var route in new[] { Samples.Climbing[0], Samples.Staying[0] })
        {
            var svg = XElement.Parse(route.Map().Svg());
            var texts = svg.Descendants()
                .Where(static each => each.Name.LocalName == "text")
                .Select(static each => each.Value)
                .ToList();
            Assert.Equal(
                route.Stops.Count,
                svg.Descendants().Count(static each => each.Attribute("fill-opacity") is not null)
            );
            var functions = route
                .Stops.SelectMany(static stop => Enumerable.Repeat(stop, stop.Notes))
                .Zip(route.Path.Notes, static (stop, note) => stop.Chord.DegreeOf(note.Pitch.Name).ToString("P"))
                .ToHashSet();
            Assert.Subset(texts.ToHashSet(), functions);
        }
    }

    [Fact]
    public void Every_part_of_a_map_lies_in_its_picture_and_it_is_small()
    {
        foreach (var map in new[] { Samples.Climbing[0].Map(), Samples.Climbing[0].Map() with { Width = 320 } })
        {
            var text = map.Svg();
            Assert.True(text.Length < 40_000, $"{text.Length}");
            var svg = XElement.Parse(text);
            var width = double.Parse(svg.Attribute("width")!.Value, System.Globalization.CultureInfo.InvariantCulture);
            var xs = svg.Descendants()
                .SelectMany(static each => each.Attributes().Where(static one => one.Name.LocalName is "x" or "cx"))
                .Select(static each => double.Parse(each.Value, System.Globalization.CultureInfo.InvariantCulture));
            Assert.All(xs, x => Assert.InRange(x, 0, width));
        }
    }

    [Fact]
    public void A_map_is_not_narrower_than_it_can_be() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Samples.Climbing[0].Map() with { Width = 239 });
}
