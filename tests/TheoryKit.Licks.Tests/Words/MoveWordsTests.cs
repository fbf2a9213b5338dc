using Fractions;
using TheoryKit.Fingering.Hands;
using TheoryKit.Fingering.Zones;
using TheoryKit.Licks.Moves;
using TheoryKit.Licks.Tests.Moves;
using TheoryKit.Licks.Words;
using TheoryKit.Paths;
using TheoryKit.Paths.Timing;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Progressions;
using TheoryKit.Theory.Scales;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Licks.Tests.Words;

/// <summary>Every kind of move, loss and reason has words.</summary>
public class MoveWordsTests
{
    private static readonly Pitch Eb4 = Pitch.Parse("Eb4");
    private static readonly Chord C7 = Chord.Parse("C7");
    private static readonly Chord Cm7 = Chord.Parse("Cm7");
    private static readonly Chord Bbsus = Chord.Parse("Bb7sus4");

    [Fact]
    public void Moves() =>
        Sentences.Matches<LickMove>(
            [
                new LickMove.ByInterval(Interval.Parse("m3")),
                new LickMove.ToKey(Key.Parse("Eb major")),
                new LickMove.ByOctaves(0),
                new LickMove.ByOctaves(1),
                new LickMove.ByOctaves(-2),
                new LickMove.ToZone(C7.Zones(Neck.Guitar)[0]),
                new LickMove.ToStrings([3]),
                new LickMove.ToStrings([4, 2, 3]),
                new LickMove.ToNeck(Neck.Guitar),
                new LickMove.ToTuning(Neck.Parse("Eb2 Ab2 Db3 Gb3 Bb3 Eb4")),
                new LickMove.ForHand(Hand.Large),
                new LickMove.ToChord(Bbsus),
                new LickMove.ToChanges(Changes.Parse("4/4: Bbm7 | Eb7")),
                new LickMove.Backwards(),
                new LickMove.ByBeats(0),
                new LickMove.ByBeats(new(1, 2)),
                new LickMove.ByBeats(-3),
                new LickMove.ToRhythm(Rhythm.Parse("1 1/2 1/2")),
            ],
            static each => Both(each.InWords(), each.InWords("P")),
            "words-moves.txt"
        );

    [Fact]
    public void Losses() =>
        Sentences.Matches<MoveLoss>(
            [
                new MoveLoss.OfTechnique(new TechniqueLoss.Unjoined(Technique.Slide, JoinLack.SameFret)),
                new MoveLoss.OutsideZone(new(5, 8), new PlaceLack.NotThere(), new(3, 10), 2, false),
                new MoveLoss.OutsideZone(new(5, 8), new PlaceLack.NotFree(), new(3, 0), 5, true),
                Outside(new PlaceLack.JoinedTo(Technique.HammerOn, Eb4)),
                Outside(new PlaceLack.JoinedTo(Technique.Release, Eb4)),
                Outside(new PlaceLack.JoinedBy(Technique.PullOff, Eb4)),
                Outside(new PlaceLack.JoinedBy(Technique.Slide, Eb4)),
                new MoveLoss.OffStrings([2], new PlaceLack.NotThere(), 3),
                new MoveLoss.OffStrings([2, 1], new PlaceLack.NotThere(), 3),
                new MoveLoss.OffStrings([2, 1], new PlaceLack.NotFree(), 3),
                .. Enum.GetValues<StringLack>()
                    .Select(static lack => new MoveLoss.OffItsString(6, lack, Eb4, new(2, 4))),
                .. Enum.GetValues<StringsLack>().Select(static lack => new MoveLoss.OffItsStrings(lack)),
                .. Enum.GetValues<OctaveLack>().Select(static lack => new MoveLoss.OctaveOfAll(1, lack)),
                new MoveLoss.OffNeck(Pitch.Parse("Eb1"), Pitch.Parse("Eb3"), 2),
                .. Enum.GetValues<CrowdLack>().Select(static lack => new MoveLoss.Crowded(lack, Eb4, -1)),
                new MoveLoss.LeftOut(CrowdLack.Strings),
                new MoveLoss.PositionsOfHand(),
                new MoveLoss.FingersOfHand(),
                new MoveLoss.FingersOfMove(),
                new MoveLoss.Bend(Eb4),
                new MoveLoss.Harmonic(Eb4, true),
                new MoveLoss.Harmonic(Eb4, false),
                new MoveLoss.ReleaseEnd(0),
                new MoveLoss.ReleaseEnd(50),
                new MoveLoss.BendStart(Eb4, Pitch.Parse("G4"), 400, 200),
                new MoveLoss.TrillNote(),
            ],
            static each => $"{Both(each.Lost(), each.Lost("P"))}; {Both(each.Instead(), each.Instead("P"))}",
            "words-losses.txt"
        );

    [Fact]
    public void Reasons() =>
        Sentences.Matches<RefitReason>(
            [
                new RefitReason.NoChord(false, false),
                new RefitReason.NoChord(false, true),
                new RefitReason.NoChord(true, false),
                new RefitReason.ToneOfChord(new(3), C7, new(3, -1), Cm7, false),
                new RefitReason.ToneOfChord(new(5), C7, new(5), Cm7, true),
                new RefitReason.OneOfSeveral(new(9, -1), Chord.Parse("C7b9#9"), new(9), Chord.Parse("C9"), false),
                new RefitReason.Suspended(new(4), Bbsus, true),
                new RefitReason.Resolved(new(4), new(3, -1), Cm7, false),
                new RefitReason.ToneOfScale(7, new(7), Chord.Parse("C"), false),
                new RefitReason.NearestThere(new(13), new(5, 1), Chord.Parse("E7alt"), true),
                new RefitReason.NothingThere(new(13), Chord.Parse("E7alt")),
                new RefitReason.Bass(Chord.Parse("C/E"), Chord.Parse("Cm/Eb")),
                new RefitReason.ColourInChord(new(9), C7, new(9), Chord.Parse("Cm9")),
                new RefitReason.ColourOfSeveral(new(9), new(9, -1), Chord.Parse("C7b9#9")),
                new RefitReason.Colour(new(2), Chord.Parse("C"), new(9), Cm7),
                new RefitReason.Colour(new(13), C7, new(13, -1), Cm7),
                new RefitReason.NoColour(new(11), Cm7, new(11), C7, false),
                new RefitReason.NoColour(new(9), Cm7, new(9, -1), C7, true),
                new RefitReason.Leading(-1, Eb4.Name),
                new RefitReason.Leading(2, Eb4.Name),
                new RefitReason.Unled(),
            ],
            static each => Both(each.InWords(), each.InWords("P")),
            "words-refitting.txt"
        );

    [Fact]
    public void A_remark_and_a_note_are_sentences()
    {
        Assert.Equal(
            "Bar 2, beat 2 and 1/2: Eb4 loses the other note of the trill: it would be the same or on the other side; instead one as far away as before.",
            new MoveRemark(2, new Fraction(5, 2), Eb4, new MoveLoss.TrillNote()).InWords()
        );
        Assert.Equal(
            "Bar 2, beat 1: the dead note loses its place: no hand reaches all that is struck with it; instead the others without it.",
            new MoveRemark(2, 1, null, new MoveLoss.LeftOut(CrowdLack.Reach)).InWords()
        );
        Assert.Equal(
            "The lick loses its octave: it would leave the zone by more notes; instead an octave lower.",
            new MoveRemark(null, null, null, new MoveLoss.OctaveOfAll(-1, OctaveLack.Zone)).InWords()
        );
        var moved = MovedLickTests.Line("4/4: C7", "2:5").Refit(Cm7);
        Assert.Equal(
            "Bar 1, beat 1: E♭4 (♭3) stays.",
            (moved.Tones[0] with { SoundedBefore = Eb4, FunctionBefore = new Degree(3, -1), Why = null }).InWords("P")
        );
        Assert.Equal(
            "Bar 1, beat 1, now bar 1, beat 2: E4 (3) becomes Eb4 (b3): the 3 of C7 becomes the b3 of Cm7.",
            (moved.Tones[0] with { BeatAfter = 2 }).InWords()
        );
        Assert.Equal(["by hand, to Cm7", "Nothing is lost."], moved.InWords());
    }

    private static MoveLoss.OutsideZone Outside(PlaceLack why) => new(new(5, 5), why, new(3, 6), 1, false);

    private static string Both(string plain, string printed) => plain == printed ? plain : $"{plain} | {printed}";
}
