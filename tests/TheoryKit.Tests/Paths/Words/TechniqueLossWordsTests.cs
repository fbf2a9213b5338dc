using TheoryKit.Paths;
using TheoryKit.Paths.Words;

namespace TheoryKit.Tests.Paths.Words;

/// <summary>Every technique that can be lost has words.</summary>
public class TechniqueLossWordsTests
{
    [Fact]
    public void Losses()
    {
        TechniqueLoss[] samples =
        [
            .. Enum.GetValues<JoinLack>().Select(static lack => new TechniqueLoss.Unjoined(Technique.Slide, lack)),
            new TechniqueLoss.OutOfReach(Technique.HammerOn, 2, 12),
            new TechniqueLoss.Turned(Technique.HammerOn, Technique.PullOff, Rises: false),
            new TechniqueLoss.Turned(Technique.PullOff, Technique.HammerOn, Rises: true),
            new TechniqueLoss.OpenBend(),
            new TechniqueLoss.NoNode(),
            new TechniqueLoss.TrillOffString(),
            .. Enum.GetValues<ReleaseLack>().Select(static lack => new TechniqueLoss.Unreleased(lack, false)),
            new TechniqueLoss.Unreleased(ReleaseLack.NothingBent, true),
            .. Enum.GetValues<FretLack>().Select(static lack => new TechniqueLoss.NoFret(Technique.Vibrato, lack)),
            new TechniqueLoss.Unplayable([Technique.Bend, Technique.Trill]),
        ];
        Assert.Equal(
            typeof(TechniqueLoss).GetNestedTypes().Select(static kind => kind.Name).Order(StringComparer.Ordinal),
            samples.Select(static each => each.GetType().Name).Distinct().Order(StringComparer.Ordinal)
        );
        Expectations.Matches(
            string.Concat(samples.Select(static each => $"{each.GetType().Name}: {each.Lost()}; {each.Instead()}\n")),
            "words-technique-losses.txt"
        );
    }
}
