using Fractions;
using TheoryKit.Paths;
using TheoryKit.Paths.Exercises;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Necks;
using Path = TheoryKit.Paths.Path;

namespace TheoryKit.Tests.Paths.Exercises;

public class PickStrokesTests
{
    // Strings of notes one beat apart; h before one that is hammered on.
    private static Path Line(string strings, Fraction? length = null) =>
        new(
            Neck.Guitar,
            strings
                .Split(' ')
                .Select(
                    (text, index) =>
                    {
                        var position = new Position(text[^1] - '0', 5 + (index % 3));
                        return new PathNote
                        {
                            Position = position,
                            Pitch = Pitch.FromMidi(Neck.Guitar.MidiNumberAt(position)),
                            Start = index * (length ?? Fraction.One),
                            Length = length ?? Fraction.One,
                            Techniques = text[0] == 'h' ? [Technique.HammerOn] : [],
                        };
                    }
                )
        );

    private static string Signs(IEnumerable<PickStroke> strokes) =>
        string.Join(
            ' ',
            strokes.Select(stroke =>
                stroke.Direction is { } direction ? (direction == PickDirection.Down ? "d" : "u") : "-"
            )
        );

    [Theory]
    [InlineData("alternate", "6 6 6 5 5 5", "d u d u d u")]
    [InlineData("alternate", "6 h6 6 5 h5 5", "d - u d - u")]
    [InlineData("economy", "6 6 6 5 5 5 4", "d u d d u d d")]
    [InlineData("economy", "1 1 2 2 3 3", "d u u d u d")]
    [InlineData("economy", "6 h6 h6 5 4 3", "d - - d d d")]
    [InlineData("economy", "4 3 5 4 6", "d d u d u")]
    [InlineData("pendulum 1/2", "6 5 4 3", "d d d d")]
    [InlineData("pendulum 1", "6 5 h5 3 2", "d u - u d")]
    public void EveryNoteHasTheStrokeOfTheRule(string rule, string strings, string strokes) =>
        Assert.Equal(strokes, Signs(new PickStrokes(Line(strings), Picking.Parse(rule))));

    [Fact]
    public void TheHandSwingsThroughTriplets() =>
        Assert.Equal(
            "d d u d d u",
            Signs(new PickStrokes(Line("6 6 6 5 5 5", new(1, 3)), Picking.Pendulum(new(1, 2))))
        );

    [Fact]
    public void NotesThatStartTogetherAreOneStroke()
    {
        var zone = TheoryKit.Fingering.Zones.ZoneSearch.Zones(Chord.Parse("G7"), Neck.Guitar)[1];
        foreach (var rule in Picking.Known)
        {
            var strokes = new PickStrokes(zone.Drill(Drill.UpAndDown), rule);
            var first = strokes.First(stroke => stroke.Note.Start >= 4); // after the grip
            Assert.Equal(PickDirection.Down, first.Direction);
            Assert.Equal(strokes.Path.Notes, strokes.Select(stroke => stroke.Note));
            Assert.All(
                strokes.GroupBy(stroke => stroke.Note.Start),
                together => Assert.Single(together.Select(stroke => stroke.Direction).Distinct())
            );
        }
    }

    [Fact]
    public void TextReadsBack()
    {
        Laws.RoundTrip(PracticeGens.Picking);
        Laws.Equality(PracticeGens.Picking);
        Laws.Null<Picking>();
        Fuzz.Parser<Picking>(["alternate", "economy", "pendulum 1/2"]);
        Laws.Refuses<Picking>("sweep", 1, "alternate, economy");
        Laws.Refuses<Picking>("pendulum 0", 9, "length in beats");
    }
}
