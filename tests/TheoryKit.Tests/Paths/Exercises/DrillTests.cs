using Fractions;
using TheoryKit.Fingering.Lines;
using TheoryKit.Fingering.Zones;
using TheoryKit.Paths;
using TheoryKit.Paths.Exercises;
using TheoryKit.Paths.Timing;
using TheoryKit.Tests.Fingering;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Progressions;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Tests.Paths.Exercises;

public class DrillTests
{
    private static readonly Zone Gm9 = Chord.Parse("Gm9").Zones(Neck.Guitar)[1];

    [Fact]
    public void TextReadsBack()
    {
        Laws.RoundTrip(PracticeGens.Drill);
        Laws.Equality(PracticeGens.Drill);
        Laws.Null<Drill>();
        Fuzz.Parser<Drill>(["up and down", "groups of 3", "broken by 2", "figure 1 3 2", "skipped strings"]);
        Laws.Refuses<Drill>("down", 1, "up and down, skipped strings");
        Laws.Refuses<Drill>("groups of 1", 10, "2 to 12 tones");
        Laws.Refuses<Drill>("figure 1 13", 7, "each from 1 to 12");
    }

    [Fact]
    public void FiguresAreEqualHoweverTheyAreSaid()
    {
        Assert.Equal(Drill.Groups(3), Drill.Figure(1, 2, 3));
        Assert.Equal(Drill.Groups(3), Drill.Figure(4, 5, 6));
        Assert.Equal(Drill.BrokenIntervals(2), Drill.Parse("figure 1 3"));
        Assert.Equal("broken by 2", Drill.Figure(2, 4).ToString());
        Assert.Throws<ArgumentException>(() => Drill.Figure(1));
        Assert.Throws<ArgumentException>(() => Drill.Figure(0, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Drill.Groups(1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Drill.BrokenIntervals(12));
    }

    [Fact]
    public void UpAndDownGoesFromTheLowestRootToTheTopToTheBottomAndBackToThatRoot() =>
        PracticeGens.Zone.Sample(
            zone =>
            {
                // By pitches alone: the rising run from the root, the falling run of all, the rising run to the root.
                var pitches = zone.Shape.Places.Select(place => place.Pitch.MidiNumber).Order().ToList();
                var root = pitches.Find(pitch => (pitch - zone.Chord.Root.PitchClass) % 12 == 0);
                root = root == 0 ? pitches[0] : root;
                int[] expected =
                [
                    .. pitches.Where(pitch => pitch >= root),
                    .. pitches.Where(pitch => pitch < pitches[^1]).Reverse(),
                    .. pitches.Where(pitch => pitch > pitches[0] && pitch <= root),
                ];
                Assert.Equal(expected, Order(zone, Drill.UpAndDown).Select(tone => pitches[tone]));
            },
            iter: 300
        );

    [Theory]
    [InlineData("groups of 3", "0 1 2 1 2 3 2 3 4 4 3 2 3 2 1 2 1 0")]
    [InlineData("groups of 4", "0 1 2 3 1 2 3 4 4 3 2 1 3 2 1 0")]
    [InlineData("broken by 2", "0 2 1 3 2 4 4 2 3 1 2 0")]
    [InlineData("broken by 3", "0 3 1 4 4 1 3 0")]
    [InlineData("figure 1 3 2", "0 2 1 1 3 2 2 4 3 4 2 3 3 1 2 2 0 1 0")]
    [InlineData("groups of 6", "0 1 2 3 4 3 2 1 0")]
    [InlineData("up and down", "0 1 2 3 4 3 2 1 0")]
    public void AFigureIsPlayedFromEveryToneUpAndMirroredDown(string drill, string order)
    {
        // Five tones along one string, the lowest of them the root.
        var shape = ShapeRule
            .AlongString(1)
            .LayOut(new(Tuning.Standard, 648, 15), NoteName.Parse("F"), Formula.Parse("1 3 5 b7"), 1)!;
        Assert.Equal(5, shape.Notes.Count);
        Assert.Equal(order, string.Join(' ', Drill.Parse(drill).OrderOf(shape)));
    }

    [Theory]
    [InlineData("groups of 3", "2 3 4 4 3 2 3 2 1 2 1 0 0 1 2 1 2 3 2")]
    [InlineData("broken by 2", "2 4 4 2 3 1 2 0 0 2 1 3 2")]
    [InlineData("skipped strings", "2 3 4 3 2 1 0 1 2")]
    public void BelowTheRootItGoesOnToTheBottomAndBack(string drill, string order)
    {
        // From the fifth up: 5 b7 1 3 5.
        var shape = ShapeRule
            .AlongString(1)
            .LayOut(new(Tuning.Standard, 648, 14), NoteName.Parse("A"), Formula.Parse("1 3 5 b7"), 0)!;
        Assert.Equal(["5", "b7", "1", "3", "5"], shape.Places.Select(place => $"{place.Function}"));
        Assert.Equal(order, string.Join(' ', Drill.Parse(drill).OrderOf(shape)));
    }

    [Fact]
    public void SkippedStringsLeaveOutEveryOther()
    {
        var zone = Chord.Parse("G7").Zones(Neck.Guitar).First(zone => zone.Form.Letter == "E");
        var strings = Order(zone, Drill.SkippedStrings)
            .Select(tone => zone.Shape.Notes[tone].Place.Position.String)
            .ToList();
        var changes = strings.Where((number, index) => index == 0 || strings[index - 1] != number);
        Assert.Equal("6 4 5 3 4 2 3 1 3 2 4 3 5 4 6", string.Join(' ', changes));
    }

    [Fact]
    public void EveryDrillBeginsAndEndsOnTheRootAndPlaysEveryTone() =>
        Gen.Select(PracticeGens.Zone, PracticeGens.Drill)
            .Sample(
                (zone, drill) =>
                {
                    var order = Order(zone, drill);
                    var root = zone.Shape.Places.ToList().FindIndex(place => place.Function == Degree.Root);
                    Assert.Equal(root < 0 ? 0 : root, order[^1]);
                    Assert.All(order, tone => Assert.InRange(tone, 0, zone.Shape.Notes.Count - 1));
                    if (
                        drill.ToString() is "up and down" or "skipped strings"
                        || drill.ToString().StartsWith("groups", StringComparison.Ordinal)
                    )
                    {
                        Assert.Equal(order[^1], order[0]);
                        Assert.Equal(zone.Shape.Notes.Count, order.Distinct().Count());
                    }
                },
                iter: 500
            );

    [Fact]
    public void APathOfADrillIsExactAndWholeAndFingered() =>
        Gen.Select(
                PracticeGens.Zone,
                PracticeGens.Drill,
                PracticeGens.Accents,
                Gen.Int[1, 4],
                FingeringGens.OneOf("4/4", "3/4", "6/8")
            )
            .Sample(
                (zone, drill, accents, perBeat, signature) =>
                {
                    var time = TimeSignature.Parse(signature);
                    var path = zone.Drill(drill, Rhythm.Even(perBeat), accents, time, grips: false);
                    var order = Order(zone, drill);
                    Assert.Equal(
                        order.Select(tone => zone.Shape.Notes[tone].Place.Pitch),
                        path.Notes.Select(note => note.Pitch)
                    );
                    Assert.True(path.IsWholeBars);
                    Assert.Equal((order.Count + (perBeat * time.Beats) - 1) / (perBeat * time.Beats), path.BarCount);
                    for (var index = 0; index < path.Notes.Count; index++)
                    {
                        var note = path.Notes[index];
                        Assert.Equal(new Fraction(index, perBeat).Reduce(), note.Start);
                        Assert.Equal(new Fraction(1, perBeat), note.Length);
                        Assert.Equal(accents.ToString()[index % accents.Count] == '>', note.Has(Technique.Accent));
                        Assert.Equal(
                            note.Position.Fret == zone.Neck.OpenFret(note.Position.String),
                            note.Finger is null
                        );
                        Assert.Equal(new DrillReason.Tone(path.FunctionOf(note)!.Value, zone.Chord), note.Why);
                    }

                    Assert.False(
                        double.IsPositiveInfinity(
                            LineSearch.Finger(zone.Neck, path.Notes.Select(n => n.Position), zone.Hand)[0].Effort
                        )
                    );
                },
                iter: 200
            );

    [Fact]
    public void TheFingersAreThoseOfTheZone()
    {
        var path = Gm9.Drill(Drill.UpAndDown, grips: false);
        foreach (var note in path.Notes)
        {
            var own = Gm9.Shape.Notes.Single(each => each.Place.Position == note.Position);
            Assert.Equal(own.Finger, note.Finger);
        }

        Assert.Single(path.Notes.Select(note => note.Place).Distinct());
    }

    [Fact]
    public void TheGripSoundsForABarBeforeAndAfter()
    {
        var (with, without) = (Gm9.Drill(Drill.Groups(3)), Gm9.Drill(Drill.Groups(3), grips: false));
        Assert.Equal(without.BarCount + 2, with.BarCount);
        foreach (var bar in new[] { 0, with.BarCount - 1 })
        {
            var held = with.InBar(bar).ToList();
            Assert.Equal(Gm9.Grip!.Grip.Positions.Order(), held.Select(note => note.Position).Order());
            Assert.All(held, note => Assert.Equal((new Fraction(bar * 4), new Fraction(4)), (note.Start, note.Length)));
            Assert.All(held, note => Assert.Equal(Gm9.Grip.Grip[note.Position.String].Finger, note.Finger));
        }

        Assert.Equal(
            without.Notes.Select(note => note.Start + 4),
            with.Notes.Where(note => note.Start >= 4 && note.Start < with.Beats - 4).Select(note => note.Start)
        );
        Assert.Equal(Chord.Parse("Gm9"), with.ChordAt(with.Beats - 1));
    }

    [Fact]
    public void AShapeIsDrilledOnTheNeckItWasFoundOn()
    {
        var shape = ShapeRule
            .NotesPerString(3)
            .LayOut(Neck.Guitar, NoteName.Parse("G"), Formula.Parse("1 2 b3 4 5 6 b7"), 3)!;
        var path = shape.Drill(Neck.Guitar, Drill.Groups(4), Rhythm.Even(4));
        Assert.Equal(Drill.Groups(4).OrderOf(shape).Count, path.Notes.Count);
        Assert.All(path.Notes, note => Assert.NotNull(note.Finger));
        Assert.Contains(
            "found on",
            Assert.Throws<ArgumentException>(() => shape.Drill(new(Tuning.Find("DADGAD")!), Drill.UpAndDown)).Message
        );
    }

    [Fact]
    public void AccentsAreOfTheirOwnText()
    {
        Laws.RoundTrip(PracticeGens.Accents);
        Laws.Equality(PracticeGens.Accents);
        Laws.Null<AccentPattern>();
        Fuzz.Parser<AccentPattern>([">--", "-", ">->--"]);
        Laws.Refuses<AccentPattern>("x", 1, "> for a louder note");
        Assert.Equal(AccentPattern.Parse(">---"), AccentPattern.Every(4));
    }

    [Fact]
    public void AccentsReplaceThoseOfTheRhythm()
    {
        var rhythm = Rhythm.Parse("1/2> 1/2");
        var path = Gm9.Drill(Drill.UpAndDown, rhythm, AccentPattern.Every(3), grips: false);
        Assert.All(
            path.Notes.Select((note, index) => (note, index)),
            each => Assert.Equal(each.index % 3 == 0, each.note.Has(Technique.Accent))
        );
    }

    [Fact]
    public void OrdersOfRootsHaveAllTwelveOnce()
    {
        Laws.RoundTrip(PracticeGens.Cycle);
        Laws.Equality(PracticeGens.Cycle);
        Laws.Null<RootCycle>();
        Fuzz.Parser<RootCycle>(["fourths", "semitones", "shuffled 7"]);
        Laws.Refuses<RootCycle>("fifths", 1, "fourths, semitones");
        PracticeGens.Cycle.Sample(cycle => Assert.Equal(Enumerable.Range(0, 12), cycle.Order.Order()));
        Assert.Equal([0, 5, 10, 3, 8, 1, 6, 11, 4, 9, 2, 7], RootCycle.Fourths.Order);
        Assert.Equal(RootCycle.Shuffled(7).Order, RootCycle.Shuffled(7).Order);
        Assert.NotEqual(RootCycle.Shuffled(7).Order, RootCycle.Shuffled(8).Order);
    }

    [Fact]
    public void AllRootsOfAZoneComeInTheirOrderInsideItsWindow() =>
        Gen.Select(PracticeGens.Zone, PracticeGens.Cycle)
            .Sample(
                (zone, cycle) =>
                {
                    var path = zone.DrillAllRoots(Drill.UpAndDown, cycle);
                    Assert.True(path.IsWholeBars);
                    Assert.All(path.Notes, note => Assert.True(zone.Window.Contains(note.Position.Fret)));
                    var roots = path.Changes!.Chords.Select(span => span.Chord!.Root.PitchClass).ToList();
                    var order = roots.Where((root, bar) => bar == 0 || roots[bar - 1] != root).ToList();
                    var there = zone.AllRoots().Select(shape => shape.Root.PitchClass).ToHashSet();
                    Assert.Equal(
                        cycle.Order.Select(up => (zone.Chord.Root.PitchClass + up) % 12).Where(there.Contains),
                        order
                    );
                    Assert.All(
                        path.Notes,
                        note => Assert.NotNull(path.ChordAt(note.Start)!.FunctionOf(note.Pitch.Name))
                    );
                },
                iter: 40
            );

    private static List<int> Order(Zone zone, Drill drill) => [.. drill.OrderOf(zone.Shape)];
}
