using TheoryKit.Theory.Notes;
using TheoryKit.Values;

namespace TheoryKit.Tunings.Strings;

/// <summary>Which gauge gives a wanted tension: the exact one, and the nearest that is sold.</summary>
public sealed record GaugeChoice
{
    internal GaugeChoice() { }

    /// <summary>The pitch.</summary>
    public required Pitch Pitch { get; init; }

    /// <summary>The sounding length in mm.</summary>
    public required double Length { get; init; }

    /// <summary>The tension that is wanted.</summary>
    public required Tension Wanted { get; init; }

    /// <summary>The string that gives just that tension.</summary>
    public required FittedString Exact
    {
        get;
        init => field = Check.NotNull(value, nameof(Exact));
    }

    /// <summary>The gauge on the grid of <see cref="FittedString.GaugeStep"/> whose tension is nearest to the wanted one.</summary>
    public required FittedString Nearest
    {
        get;
        init => field = Check.NotNull(value, nameof(Nearest));
    }

    /// <summary>The tension of <see cref="Nearest"/>.</summary>
    public required Tension Tension { get; init; }

    /// <summary>By how much that is more than wanted (less, if negative).</summary>
    public Tension Difference => Tension - Wanted;

    /// <summary>
    /// The stress of <see cref="Nearest"/> as a part of the breaking stress: an estimate where
    /// <see cref="FittedString.IsStressEstimated"/>, null where it isn't known.
    /// </summary>
    public double? BreakingPart => Nearest.BreakingPart(Tension);

    /// <summary>
    /// Whether <see cref="Nearest"/> breaks, is near breaking or neither: by the limits of the report that suggests it, else by
    /// <see cref="TensionLimits.DefaultMostOfBreaking"/>. Whether the tension is slack or heavy is for whoever wants it to say.
    /// </summary>
    public StringState State => TensionLimits.BreakingState(BreakingPart, MostOfBreaking) ?? StringState.Comfortable;

    /// <summary>What is amiss with <see cref="Nearest"/>; null where nothing is. Show <see cref="Caution"/> with it.</summary>
    public GaugeWarning? Warning => GaugeWarning.For(this);

    /// <summary>The caution that belongs to a string that breaks or nearly does, <see cref="Cautions.Strings"/>; null for others.</summary>
    public string? Caution => State == StringState.Comfortable ? null : Cautions.Strings;

    internal double MostOfBreaking { get; init; } = TensionLimits.DefaultMostOfBreaking;
}
