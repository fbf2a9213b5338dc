using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Relations;
using TheoryKit.Theory.Words;

namespace TheoryKit.Words;

public class TheoryWordsTests
{
    [Fact]
    public void Every_reason_of_a_reading_has_words()
    {
        ReadingReason[] reasons =
        [
            new ReadingReason.RootInBass(),
            new ReadingReason.ToneInBass(Degree.Parse("b3")),
            new ReadingReason.ForeignBass(NoteName.Parse("Bb")),
            new ReadingReason.AllTones(2),
            new ReadingReason.AllTones(7),
            new ReadingReason.SomeTones(3, HasRoot: true),
            new ReadingReason.SomeTones(4, HasRoot: false),
            new ReadingReason.PowerChord(),
            new ReadingReason.AllAlterations(),
            .. "#4 b5 b6 b9 #11 b13".Split(' ').Select(static each => new ReadingReason.Altered(Degree.Parse(each))),
            .. "2 4 6 9 11 13 #9".Split(' ').Select(static each => new ReadingReason.Added(Degree.Parse(each))),
            new ReadingReason.MajorSeventh(),
            .. "1 3 5".Split(' ').Select(static each => new ReadingReason.Omitted(Degree.Parse(each))),
            new ReadingReason.RareChange(),
            new ReadingReason.Respelled(NoteName.Parse("D#"), NoteName.Parse("Eb")),
            new ReadingReason.SingleNote(),
            new ReadingReason.NoUsualName(),
        ];
        var pair = ChordPair.Of(Chord.Parse("Cm7"), Chord.Parse("Ebmaj7"));
        Kinds.Match(
            "chords",
            [typeof(ReadingReason)],
            [.. reasons.Select(static each => ((object)each, each.InWords())), (pair, pair.InWords())]
        );
        Assert.Equal(
            "D♯ respelled as E♭",
            new ReadingReason.Respelled(NoteName.Parse("D#"), NoteName.Parse("Eb")).InWords("P")
        );
    }
}
