using Fractions;
using TheoryKit.Fingering.Zones;
using TheoryKit.Paths;
using TheoryKit.Paths.Exercises;
using TheoryKit.Paths.Joins;
using TheoryKit.Paths.MadeLines;
using TheoryKit.Paths.Routes;
using TheoryKit.Paths.Words;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Scales;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Words;

public class PathsWordsTests
{
    private static readonly Chord Eb = Chord.Parse("Ebmaj7");
    private static readonly Degree FlatThird = Degree.Parse("b3");
    private static readonly Pitch Bb3 = Pitch.Parse("Bb3");

    [Fact]
    public void Every_reason_for_a_note_has_words()
    {
        var scale = Scale.Parse("Eb lydian");
        NoteReason Leading(Approach way, int stage, bool isAbove, Scale? of = null) =>
            new MadeReason.Leading(way, stage, isAbove, of, new(3), Eb);
        NoteReason[] reasons =
        [
            new DrillReason.Tone(FlatThird, Eb),
            new DrillReason.OfGrip(new(7), Eb),
            new DrillReason.IntoZone(new(5), Eb, new(5, 8)),
            new JoinReason.Start(Eb),
            new JoinReason.Start(null),
            new JoinReason.Turned(AtTop: true),
            new JoinReason.Turned(AtTop: false),
            new JoinReason.Entry(Eb, Bb3, JoinWay.WentOn, IsAbove: true),
            new JoinReason.Entry(Eb, Bb3, JoinWay.Turned, IsAbove: false),
            new JoinReason.Entry(Eb, Bb3, JoinWay.Held, IsAbove: false),
            new JoinReason.LeadsInto(Bb3, IsBelow: true),
            new JoinReason.LeadsInto(Bb3, IsBelow: false),
            new RouteReason.Enters(Eb, new(3), null),
            new RouteReason.Enters(Eb, new(3), Chord.Parse("Gm")),
            new RouteReason.Anticipates(Eb, new(3), null, new Fraction(1, 2)),
            new RouteReason.Anticipates(Eb, new(3), Chord.Parse("Gm"), 2),
            new MadeReason.Target(new(3), Eb),
            new MadeReason.ChordTone(new(7), Eb),
            new MadeReason.Passing(scale, new(5), Eb),
            Leading(Approach.FromBelow, 0, isAbove: false),
            Leading(Approach.TwiceFromAbove, 0, isAbove: true),
            Leading(Approach.ScaleFromAbove, 0, isAbove: true, scale),
            .. Approach
                .Known.Where(static way => way.IsEnclosure)
                .Take(1)
                .Select(way => Leading(way, 1, isAbove: false, scale)),
        ];
        Kinds.Match("notes", [typeof(NoteReason)], [.. reasons.Select(static each => ((object)each, each.InWords()))]);
        Assert.Equal("a semitone below B♭3, into which it leads", reasons[10].InWords("P"));
    }

    [Fact]
    public void Every_plan_and_every_reason_for_no_route_has_words()
    {
        RoutePlan[] plans =
        [
            new RoutePlan.Stay(),
            new RoutePlan.Stay(new(5, 8)),
            new RoutePlan.Climb(3, 12),
            new RoutePlan.Climb(12, 3) { By = 1 },
            new RoutePlan.Climb(3, 12) { By = 2 },
            new RoutePlan.Roam(),
            new RoutePlan.Roam(3),
        ];
        ChordLack[] lacks =
        [
            new ChordLack.ShapeAt(new(5, 8)),
            new ChordLack.Zone(),
            new ChordLack.Target([3, 7]),
            new ChordLack.Reach(),
            new ChordLack.ZoneInPlan(plans[2]),
        ];
        NoRouteReason[] reasons =
        [
            new NoRouteReason.NoNotes(),
            new NoRouteReason.TooFewWindows(3, 2),
            new NoRouteReason.Blocked(1, Eb, lacks[1]),
        ];
        Kinds.Match(
            "routes",
            [typeof(RoutePlan), typeof(ChordLack), typeof(NoRouteReason)],
            [
                .. plans.Select(static each => ((object)each, each.InWords())),
                .. lacks.Select(static each => ((object)each, each.InWords())),
                .. reasons.Select(static each => ((object)each, each.InWords())),
            ]
        );
    }

    [Fact]
    public void A_line_through_zones_has_words()
    {
        var travel = ZoneTravel.Of(Eb.Zones(Neck.Guitar));
        Assert.Equal($"E♭maj7 through {travel.Zones.Count} zones, up the neck", travel.InWords("P"));
    }

    [Fact]
    public void Joins_have_words()
    {
        Join[] joins =
        [
            new(Eb, FlatThird, Chord.Parse("Cm7"), Degree.Root, JoinWay.WentOn, 1),
            new(Eb, FlatThird, Chord.Parse("Cm7"), Degree.Root, JoinWay.WentOn, 4),
        ];
        JoinExtent[] extents =
        [
            new(24, 192, 96, 24),
            new(1, 1, 1, 1),
            new(1, 3, new Fraction(3, 2), new Fraction(1, 2)),
        ];
        JoinCell[] cells =
        [
            new(new(5, 8), 8, Bb3, Direction.Up, 0, 24, 6, 3, 4),
            new(new(5, 8), 1, Bb3, Direction.Up, 2, 1, 1, 3, 4),
        ];
        Kinds.Match(
            "joins",
            [typeof(JoinRule)],
            [
                .. JoinRule.Known.Select(static each => ((object)each, each.InWords())),
                .. joins.Select(static each => ((object)each, each.InWords())),
                .. extents.Select(static each => ((object)each, each.InWords())),
                .. cells.Select(static each => ((object)each, each.InWords())),
            ]
        );
    }
}
