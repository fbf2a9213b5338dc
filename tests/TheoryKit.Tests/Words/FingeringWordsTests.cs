using TheoryKit.Fingering.Grips;
using TheoryKit.Fingering.Hands;
using TheoryKit.Fingering.Lines;
using TheoryKit.Fingering.Moving;
using TheoryKit.Fingering.Retuning;
using TheoryKit.Fingering.Words;
using TheoryKit.Fingering.Zones;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Words;

public class FingeringWordsTests
{
    private static readonly Chord Eb = Chord.Parse("Ebmaj7");

    [Fact]
    public void Every_limit_of_a_search_has_words()
    {
        TuningRequirement[] required =
        [
            TuningRequirement.NoTwoAlike,
            TuningRequirement.Rising,
            TuningRequirement.Drone(NoteName.Parse("Bb")),
            TuningRequirement.OpenChord(Eb),
            TuningRequirement.Keeps(6),
            TuningRequirement.AtMostRetuned(1),
            TuningRequirement.AtMostRetuned(2),
        ];
        TuningLimit[] limits =
        [
            new TuningLimit.BeyondPitches(),
            new TuningLimit.TooSlack(new(40)),
            new TuningLimit.TooTight(new(170)),
            new TuningLimit.NearBreaking(0.75),
            new TuningLimit.Lacks(required[2]),
            new TuningLimit.NoteNowhere(),
            new TuningLimit.NoGrip(Eb),
            new TuningLimit.NoFingering(),
            new TuningLimit.Outdone(1),
            new TuningLimit.Outdone(1500),
        ];
        NoTuningReason[] reasons =
        [
            new NoTuningReason.NothingToSearch(),
            new NoTuningReason.OnlyOneCutOff(limits[6]),
            new NoTuningReason.AllCutOff(15_625, [new(limits[1], 625), new(limits[4], 15_000)]),
        ];
        Kinds.Match(
            "tuning-search",
            [typeof(TuningRequirement), typeof(TuningLimit), typeof(NoTuningReason)],
            [
                .. required.Select(static each => ((object)each, each.InWords())),
                .. limits.Select(static each => ((object)each, each.InWords())),
                .. reasons.Select(static each => ((object)each, each.InWords())),
            ]
        );
        Assert.Equal("an open B", required[2].InWords("P", NoteNaming.German));
        Assert.Equal("no grip for E♭maj7", limits[6].InWords("P"));
    }

    [Fact]
    public void Every_reason_for_no_zone_has_words()
    {
        NoZoneReason[] reasons =
        [
            new NoZoneReason.NoFrets(5),
            new NoZoneReason.RootNowhere(NoteName.Parse("C#"), 2, 5),
        ];
        Kinds.Match(
            "zones",
            [typeof(NoZoneReason)],
            [.. reasons.Select(static each => ((object)each, each.InWords()))]
        );
    }

    [Fact]
    public void Every_reason_for_no_grip_has_words()
    {
        NoGripReason[] reasons =
        [
            new NoGripReason.OutOfReach(Grip.Parse("1-1 5-4 x x x x"), Finger.Index, Finger.Little, 13.2),
            new NoGripReason.OutOfReach(Grip.Parse("1-T x 5-3 x x x"), Finger.Thumb, Finger.Ring, 4),
            new NoGripReason.BarresAndThumb(Eb),
            new NoGripReason.Fingers(Eb, 1),
            new NoGripReason.Fingers(Eb, 3),
            new NoGripReason.InnerMutes(Eb),
            new NoGripReason.Top(Eb, Pitch.Parse("Bb5")),
            new NoGripReason.Bass(Eb, NoteName.Parse("Bb")),
            new NoGripReason.Strings(Eb),
            new NoGripReason.Frets(Eb, 4, 6),
            new NoGripReason.OpenStrings(Eb),
            new NoGripReason.FewestStrings(Eb, 6),
            new NoGripReason.MostStrings(Eb, 1),
            new NoGripReason.RequiredTones(Eb),
            new NoGripReason.SeveralLimits(Eb),
        ];
        var without = new ChordWithoutGrip(2, reasons[3]);
        Kinds.Match(
            "grips",
            [typeof(NoGripReason), typeof(ChordWithoutGrip)],
            [.. reasons.Select(static each => ((object)each, each.InWords())), (without, without.InWords())]
        );
        Assert.Contains("E♭maj7 with B♭5 on top", reasons[6].InWords("P"), StringComparison.Ordinal);
    }

    [Fact]
    public void Every_reason_for_no_line_has_words()
    {
        NoLineReason[] reasons =
        [
            new NoLineReason.NowhereOnNeck(1, Neck.Guitar),
            new NoLineReason.OnlyOnOpenStrings(0),
            new NoLineReason.NoPlaceForHand(0, 23, 30, Neck.Guitar),
            new NoLineReason.OutOfReach(1, 1, 5, 25.4),
            new NoLineReason.OthersRingOn(1, 1, 22),
            new NoLineReason.OffItsString(3),
            new NoLineReason.CannotFollow(3, 1, 5),
        ];
        Kinds.Match(
            "lines",
            [typeof(NoLineReason)],
            [.. reasons.Select(static each => ((object)each, each.InWords()))]
        );
    }

    [Fact]
    public void Every_reason_to_move_has_words()
    {
        var g = Chord.Parse("Gm7");
        var open = new ForeignTone(new(6, 0), IsOpen: true, Pitch.Parse("Eb2"));
        var held = new ForeignTone(new(5, 3), IsOpen: false, Pitch.Parse("B2"));
        MustMoveReason[] reasons =
        [
            new MustMoveReason.ForeignTones(g, [held]),
            new MustMoveReason.ForeignTones(g, [open, held]),
            new MustMoveReason.MissingTones(g, Formula.Parse("b3")),
            new MustMoveReason.MissingTones(g, Formula.Parse("1 b3 b7")),
            new MustMoveReason.OtherBass(Pitch.Parse("Bb2"), NoteName.Parse("G")),
            new MustMoveReason.OutsideLimits(),
        ];
        var (stays, moves) = (
            new MovedPosition(new(6, 3), Pitch.Parse("G2"), Pitch.Parse("G2"), Degree.Root),
            new MovedPosition(new(6, 3), Pitch.Parse("G2"), Pitch.Parse("F2"), null)
        );
        MovedNote[] notes =
        [
            new(Pitch.Parse("G3"), new(4, 5), Stays: true, new(4, 5), new(4, 5)),
            new(Pitch.Parse("E2"), new(6, 0), Stays: false, null, null),
        ];
        Kinds.Match(
            "moving",
            [typeof(MustMoveReason)],
            [
                .. reasons.Select(static each => ((object)each, each.InWords())),
                (stays, stays.InWords()),
                (moves, moves.InWords()),
                .. notes.Select(static each => ((object)each, each.InWords())),
            ]
        );
        Assert.Equal("♭3 of Gm7 would be missing", reasons[2].InWords("P"));
    }
}
