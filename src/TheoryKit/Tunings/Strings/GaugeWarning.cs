using TheoryKit.Theory.Notes;
using TheoryKit.Values;

namespace TheoryKit.Tunings.Strings;

/// <summary>What is amiss with a gauge that is chosen for a tension. Equal when kind and figures are.</summary>
[Checked]
public abstract partial record GaugeWarning
{
    private GaugeWarning() { }

    /// <summary>It breaks at this pitch, or is near breaking.</summary>
    /// <param name="Gauge">The string.</param>
    /// <param name="Pitch">The pitch.</param>
    /// <param name="BreakingPart">The stress as a part of the breaking stress.</param>
    /// <param name="MostOfBreaking">The most that such a part should be.</param>
    /// <param name="Advice">What would help.</param>
    public sealed partial record NearBreaking(
        FittedString Gauge,
        Pitch Pitch,
        double BreakingPart,
        double MostOfBreaking,
        StringAdvice Advice
    ) : GaugeWarning
    {
        /// <summary>Which of the two.</summary>
        public StringState State => BreakingPart >= 1 ? StringState.Breaking : StringState.NearBreaking;
    }

    /// <summary>It is a wound string thinner than those that are sold.</summary>
    /// <param name="Gauge">The string.</param>
    public sealed partial record ThinnerThanSold(FittedString Gauge) : GaugeWarning;

    internal static GaugeWarning? For(GaugeChoice choice)
    {
        if (choice is { State: not StringState.Comfortable, BreakingPart: { } part })
        {
            var safe = TensionLimits.HighestSafe(choice.Pitch, part, choice.MostOfBreaking);
            return new NearBreaking(
                choice.Nearest,
                choice.Pitch,
                part,
                choice.MostOfBreaking,
                StringAdvice.AgainstBreaking(choice.Nearest, safe)
            );
        }

        return choice.Nearest.IsThinnerThanSold ? new ThinnerThanSold(choice.Nearest) : null;
    }
}
