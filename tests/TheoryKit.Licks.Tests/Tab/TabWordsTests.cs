using TheoryKit.Licks.Tab.Remarks;
using TheoryKit.Licks.Words;
using TheoryKit.Paths;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Progressions;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Licks.Tests.Tab;

public class TabWordsTests
{
    private static readonly TabRemark[] Samples =
    [
        new TabRemark.CharactersReplaced(),
        new TabRemark.UpsideDown(),
        new TabRemark.OtherString(NoteName.Parse("D"), 6, Pitch.Parse("E2")),
        new TabRemark.StringsUnnamed(Tuning.Known.First(static known => known.Tuning.StringCount == 4)),
        new TabRemark.SomeStrings(2, 5),
        new TabRemark.UnusualNames(Tuning.Parse("E2 A2 D3 G3 B3 F#4"), Tuning.Standard),
        new TabRemark.CountedTime(6, TimeSignature.Parse("6/8")),
        new TabRemark.BarsMoved(),
        new TabRemark.BarLinesMoved(),
        new TabRemark.Repeated(3),
        new TabRemark.StruckTogether(),
        new TabRemark.RowPassedOver(),
        new TabRemark.NoNoteAbove(),
        new TabRemark.NoNoteBelow(),
        new TabRemark.NoFinger(),
        new TabRemark.OtherChord(Chord.Parse("Ebmaj7"), Chord.Parse("Cm7")),
        new TabRemark.OtherChord(null, Chord.Parse("C13")),
        new TabRemark.SignPassedOver("zz"),
        new TabRemark.DigitsApart(5, 7, 24),
        new TabRemark.ManyDigits("5712", 24, 12),
        new TabRemark.TwoDigits(12),
        new TabRemark.SlideOverGap('/', 9),
        new TabRemark.BendBy(1, 7, 50),
        new TabRemark.BendBy(2, 7, 100),
        new TabRemark.BendBy(4, 7, 200),
        new TabRemark.BendBy(3, 7, 150),
        new TabRemark.BendUnsaid(),
        new TabRemark.TrillUnsaid(9),
        new TabRemark.BetweenCounts(new(5, 12), true),
        new TabRemark.BetweenCounts(new(19, 12), false),
        new TabRemark.NoCommonMeasure(),
        new TabRemark.BarNotFull(),
        new TabRemark.BarTooFull(5, TimeSignature.Parse("3/4")),
        new TabRemark.ValuesShared(),
        new TabRemark.SpacingAsTime(new(1, 4)),
        new TabRemark.ShorterNotes(12, new(1, 2), TimeSignature.Common, new(1, 3)),
        new TabRemark.EqualNotes(new(1, 2)),
        new TabRemark.LongerNeck(24, 24),
        new TabRemark.CountedFromCapo(1, 3),
        new TabRemark.OtherName(Pitch.Parse("Eb4"), NoteName.Parse("F")),
        new TabRemark.NothingBent(8),
        new TabRemark.NoNode(8),
        new TabRemark.SlideFrom(5, 7),
        new TabRemark.SlideFrom(7, 5),
        new TabRemark.WrongWay(Technique.HammerOn, 7, 7),
        new TabRemark.WrongWay(Technique.PullOff, 7, 7),
        new TabRemark.WrongWay(Technique.HammerOn, 7, 5),
        new TabRemark.WrongWay(Technique.PullOff, 5, 7),
        new TabRemark.ReleaseAlone(),
        new TabRemark.OpenBend(),
        new TabRemark.BendTooFar(),
        new TabRemark.BendNowhere(),
        new TabRemark.TrillNowhere(),
    ];

    [Fact]
    public void Each_remark_is_said_in_words() =>
        Expectations.Matches(
            string.Join('\n', Samples.Select(static each => $"{each.GetType().Name}: {each.InWords()}")) + "\n",
            "words-tab.txt"
        );

    [Fact]
    public void Every_kind_has_words() =>
        Assert.Equal(
            typeof(TabRemark).GetNestedTypes().Select(static kind => kind.Name).Order(StringComparer.Ordinal),
            Samples.Select(static each => each.GetType().Name).Distinct().Order(StringComparer.Ordinal)
        );
}
