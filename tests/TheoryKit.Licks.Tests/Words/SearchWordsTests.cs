using TheoryKit.Licks.Search;
using TheoryKit.Licks.Tests.Moves;
using TheoryKit.Licks.Words;
using TheoryKit.Paths;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Licks.Tests.Words;

/// <summary>Every reason for which a lick is found has words, and so have likeness and differences.</summary>
public class SearchWordsTests
{
    [Fact]
    public void Reasons() =>
        Sentences.Matches<FoundReason>(
            [
                new FoundReason.Functions(new(new Degree(3, -1)), 1, 1, 1),
                new FoundReason.Functions(new(new Degree(9, -1), null, new Degree(1)), 2, new(5, 2), 2),
                new FoundReason.Functions(new(new Degree(3, -1)), 1, 1, 3),
                new FoundReason.StrongBeat(new(7, -1), 3, 1),
                new FoundReason.PlayedWith(Technique.Bend, 1, 2),
                new FoundReason.PlayedWith(Technique.Bend, 3, 2),
                new FoundReason.OverChord(Chord.Parse("Ebm9")),
                new FoundReason.Shaped(new()),
                new FoundReason.Shaped(new(Direction.Up, Direction.Down)),
                new FoundReason.Tagged("Bb only"),
                new FoundReason.OfTune("Nine Tin Boats"),
                new FoundReason.Counted(LickCriterion.Countable.Tempo, 92.5),
                new FoundReason.Counted(LickCriterion.Countable.Bars, 1),
                new FoundReason.Counted(LickCriterion.Countable.Bars, 2),
                new FoundReason.Counted(LickCriterion.Countable.Notes, 1),
                new FoundReason.Counted(LickCriterion.Countable.Notes, 8),
                .. Enum.GetValues<TextPlace>()
                    .Select(static place => new FoundReason.Saying(
                        "boats",
                        place,
                        place == TextPlace.Header ? "from" : null
                    )),
                new FoundReason.Alike(0.999),
                new FoundReason.Alike(1),
                new FoundReason.Itself(),
                new FoundReason.InTuning(Tuning.Parse("Eb2 Ab2 Db3 Gb3 Bb3 Eb4")),
                new FoundReason.OnNeck(Neck.Guitar),
                new FoundReason.Not(new LickCriterion.PlayedWith(Technique.Bend)),
            ],
            static each =>
                each.InWords() == each.InWords("P") ? each.InWords() : $"{each.InWords()} | {each.InWords("P")}",
            "words-found.txt"
        );

    [Fact]
    public void What_differs_is_told_note_by_note()
    {
        var likeness = Likeness.Of(
            LickLine.Parse("0:1/2 +4:1/2 +3:1/2 -2:1 x:1"),
            LickLine.Parse("0:1/2 +3:1/2 +4:1/2 -2:1/2 -1:1 0:2")
        );
        Assert.Equal(
            [
                "3 semitones up instead of 4 semitones up",
                "4 semitones up instead of 3 semitones up",
                "1/2 beat instead of 1 beat",
                "1 semitone down instead of a dead note",
                "only in the second",
            ],
            likeness.Differences.Select(static each => each.InWords())
        );
        Assert.Equal($"{likeness.Percent} % alike", likeness.InWords());
        var kept = new KeptLick { Lick = MovedLickTests.Line("4/4: C7", "2:5"), File = "a.lick.txt" };
        Assert.Equal("by hand, by hand: the same", new SimilarLicks { Licks = [kept, kept], Likeness = 1 }.InWords());
        Assert.Equal(
            "by hand: over C7; of Low Tide",
            new FoundLick
            {
                Kept = kept,
                Score = 1,
                Reasons = [new FoundReason.OverChord(Chord.Parse("C7")), new FoundReason.OfTune("Low Tide")],
            }.InWords()
        );
    }
}
