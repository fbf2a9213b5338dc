using TheoryKit.Theory.Notes;
using TheoryKit.Values;

namespace TheoryKit.Tunings.Strings;

/// <summary>What would help a string that is not comfortable. Equal when kind and figures are.</summary>
[Checked]
public abstract partial record StringAdvice
{
    private StringAdvice() { }

    /// <summary>For a slack string a heavier one.</summary>
    /// <param name="Gauge">Which.</param>
    /// <param name="Tension">What it pulls.</param>
    public sealed partial record FitHeavier(FittedString Gauge, Tension Tension) : StringAdvice;

    /// <summary>For a slack string a heavier one, which one can't be told, or a higher pitch.</summary>
    public sealed record FitHeavierOrTuneHigher : StringAdvice;

    /// <summary>For a heavy string a lighter one.</summary>
    /// <param name="Gauge">Which.</param>
    /// <param name="Tension">What it pulls.</param>
    public sealed partial record FitLighter(FittedString Gauge, Tension Tension) : StringAdvice;

    /// <summary>For a heavy string a lighter one, which one can't be told, or a lower pitch.</summary>
    public sealed record FitLighterOrTuneLower : StringAdvice;

    /// <summary>For a heavy string a lower pitch, as no lighter one bears this.</summary>
    public sealed record TuneLower : StringAdvice;

    /// <summary>For a wound string near breaking a thicker core or a lower pitch.</summary>
    /// <param name="HighestSafe">The highest pitch within the limits; null where it isn't known.</param>
    public sealed partial record ThickerCoreOrLower(Pitch? HighestSafe) : StringAdvice;

    /// <summary>
    /// For any other string near breaking a lower pitch or a shorter scale. The stress of a plain string is 4 L² f² times the density: only
    /// the pitch and the length are in it.
    /// </summary>
    /// <param name="HighestSafe">The highest pitch within the limits; null where it isn't known.</param>
    public sealed partial record LowerOrShorterScale(Pitch? HighestSafe) : StringAdvice;

    internal static StringAdvice? For(StringTension each) =>
        each.State switch
        {
            StringState.Slack => each.Suggested is { } gauge
                ? new FitHeavier(gauge.Nearest, gauge.Tension)
                : new FitHeavierOrTuneHigher(),
            StringState.Heavy => each.Suggested is { } gauge ? new FitLighter(gauge.Nearest, gauge.Tension)
            : each.String.Material is null ? new FitLighterOrTuneLower()
            : new TuneLower(),
            StringState.NearBreaking or StringState.Breaking => AgainstBreaking(each.String, each.HighestSafePitch),
            _ => null,
        };

    internal static StringAdvice AgainstBreaking(FittedString fitted, Pitch? safe) =>
        fitted.Material is { IsWound: true } ? new ThickerCoreOrLower(safe) : new LowerOrShorterScale(safe);
}
