using TheoryKit.Fingering.Hands;
using TheoryKit.Fingering.Zones;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Tests.Fingering.Zones;

public class ShapeRuleTests
{
    private static readonly Formula Major = Formula.Parse("1 2 3 4 5 6 7");
    private static readonly NoteName C = NoteName.Parse("C");

    [Fact]
    public void ThreeNotesAStringOfAMajorScaleLeaveNothingOut()
    {
        for (var fret = 1; fret <= 8; fret++)
        {
            var shape = ShapeRule.NotesPerString(3).LayOut(Neck.Guitar, C, Major, fret, Hand.Large)!;
            Assert.True(shape.IsComplete);
            Assert.Equal(18, shape.Notes.Count);
            Assert.All(shape.Places.GroupBy(place => place.Position.String), each => Assert.Equal(3, each.Count()));
            var pitches = shape.Places.Select(place => place.Pitch.MidiNumber).ToArray();
            Assert.Equal(pitches.Order().Distinct(), pitches);
            Assert.InRange(pitches[^1] - pitches[0], 29, 30); // two octaves and three steps: a fourth, or a tritone
        }
    }

    [Fact]
    public void OneNoteAStringOfAScaleSaysWhatItLeavesOut()
    {
        var shape = ShapeRule.NotesPerString(1).LayOut(Neck.Guitar, C, Major, 3)!;
        Assert.False(shape.IsComplete);
        var all = shape
            .Places.Select(place => place.Pitch)
            .Concat(shape.Missing)
            .Select(pitch => pitch.MidiNumber)
            .Order();
        var expected = Enumerable
            .Range(43, shape.Places[^1].Pitch.MidiNumber - 42)
            .Where(midi => Major.At(midi) is not null);
        Assert.Equal(expected, all);
    }

    [Fact]
    public void AlongAStringLieAllItsTones()
    {
        var shape = ShapeRule.AlongString(2).LayOut(Neck.Guitar, C, Formula.Parse("1 3 5"), 0)!;
        Assert.Equal("2:1 2:5 2:8 2:13 2:17 2:20", string.Join(' ', shape.Places.Select(place => place.Position)));
        Assert.True(shape.IsComplete);
        Assert.Null(ShapeRule.AlongString(7).LayOut(Neck.Guitar, C, Major, 0));
    }

    [Fact]
    public void AWindowOfAZoneHasTheShapeOfTheZone()
    {
        foreach (var zone in Chord.Parse("Fm7").Zones(Neck.Guitar))
        {
            var shape = ShapeRule
                .Window(zone.Window.Width)
                .LayOut(Neck.Guitar, zone.Chord.Root, zone.Chord.Formula, zone.Window.First);
            Assert.Equal(zone.Shape, shape);
            Assert.Equal(zone.Shape.GetHashCode(), shape!.GetHashCode());
        }
    }

    [Fact]
    public void WhatTheHandOrTheNeckHasNotGotHasNoLayout()
    {
        Assert.Null(ShapeRule.Window(9).LayOut(Neck.Guitar, C, Major, 1));
        Assert.Null(ShapeRule.Window(4).LayOut(Neck.Guitar, C, Major, 20));
        Assert.Null(ShapeRule.NotesPerString(3).LayOut(Neck.Guitar, C, Major, 19));
    }

    [Fact]
    public void RulesHaveTheirLimits()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => ShapeRule.Window(0));
        Assert.Throws<ArgumentOutOfRangeException>(() => ShapeRule.NotesPerString(0));
        Assert.Throws<ArgumentOutOfRangeException>(() => ShapeRule.AlongString(13));
        Assert.Throws<ArgumentOutOfRangeException>(() => ShapeRule.Window(4).LayOut(Neck.Guitar, C, Major, 23));
        Assert.Equal(ShapeRule.Window(4), ShapeRule.Window(4));
    }
}
