using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Strings;
using TheoryKit.Tunings.Turns;
using TheoryKit.Tunings.Words;

namespace TheoryKit.Words;

public class TuningsWordsTests
{
    [Fact]
    public void Everything_that_tensions_have_to_say_has_words()
    {
        var (plain, wound) = (
            FittedString.Parse("0.010 in plain steel"),
            FittedString.Parse("0.024 in phosphor bronze wound")
        );
        var safe = Pitch.Parse("Bb4");
        StringAdvice[] advice =
        [
            new StringAdvice.FitHeavier(plain, new(65)),
            new StringAdvice.FitHeavierOrTuneHigher(),
            new StringAdvice.FitLighter(plain, new(65)),
            new StringAdvice.FitLighterOrTuneLower(),
            new StringAdvice.TuneLower(),
            new StringAdvice.ThickerCoreOrLower(safe),
            new StringAdvice.LowerOrShorterScale(safe),
            new StringAdvice.LowerOrShorterScale(null),
        ];
        StringTension Amiss(StringState state, FittedString fitted, double? part, Tension tension) =>
            new()
            {
                Number = 1,
                Pitch = Pitch.Parse("Eb5"),
                String = fitted,
                Length = 648,
                Tension = tension,
                BreakingPart = part,
                State = state,
            };
        TensionWarning[] warnings =
        [
            new TensionWarning.NotComfortable(Amiss(StringState.Slack, plain, 0.2, new(30))),
            new TensionWarning.NotComfortable(Amiss(StringState.Heavy, plain, 0.5, new(190))),
            new TensionWarning.NotComfortable(Amiss(StringState.NearBreaking, plain, 0.8, new(120))),
            new TensionWarning.NotComfortable(Amiss(StringState.Breaking, wound, 1.05, new(240.9))),
            new TensionWarning.MuchMoreInAll(new(123.4), 0.26),
        ];
        GaugeWarning[] gauges =
        [
            new GaugeWarning.NearBreaking(plain, Pitch.Parse("Eb5"), 0.751, 0.75, advice[6]),
            new GaugeWarning.NearBreaking(wound, Pitch.Parse("Eb5"), 1.27, 0.75, advice[5]),
            new GaugeWarning.ThinnerThanSold(wound),
        ];
        TensionNote[] notes =
        [
            new TensionNote.Estimated(),
            new TensionNote.NotKnown([3, 2, 1], 3),
            new TensionNote.NotKnown([1], 6),
            new TensionNote.NotKnown([6, 5, 4], 6),
        ];
        Kinds.Match(
            "tension",
            [typeof(StringAdvice), typeof(TensionWarning), typeof(GaugeWarning), typeof(TensionNote)],
            [
                .. advice.Select(static each => ((object)each, each.InWords())),
                .. warnings.Select(static each => ((object)each, each.InWords())),
                .. gauges.Select(static each => ((object)each, each.InWords())),
                .. notes.Select(static each => ((object)each, each.InWords())),
            ]
        );
        Assert.Contains("B♭4 or lower", advice[6].InWords("P"), StringComparison.Ordinal);
        Assert.Contains("B4 or lower", advice[6].InWords("P", NoteNaming.German), StringComparison.Ordinal);
    }

    [Fact]
    public void Turns_and_checks_have_words()
    {
        StringTurn[] turns =
        [
            new(6, Pitch.Parse("E2"), Pitch.Parse("D2")),
            new(3, Pitch.Parse("G3"), Pitch.Parse("Ab3")),
            new(1, Pitch.Parse("E4"), Pitch.Parse("E4")),
        ];
        TuningCheck[] checks =
        [
            new(new(6, 0), new(4, 0), -1),
            new(new(1, 0), new(6, 0), 2),
            new(new(3, 3), new(2, 0), 0),
        ];
        Kinds.Match(
            "turns",
            [typeof(StringTurn), typeof(TuningCheck)],
            [
                .. turns.Select(static each => ((object)each, each.InWords())),
                .. checks.Select(static each => ((object)each, each.InWords())),
            ]
        );
        Assert.Equal("string 3: G3 up 1 semitone to A♭3", turns[1].InWords("P"));
    }
}
