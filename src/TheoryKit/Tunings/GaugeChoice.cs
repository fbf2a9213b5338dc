using TheoryKit.Theory;

namespace TheoryKit.Tunings;

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
    public required FittedString Exact { get; init; }

    /// <summary>The gauge on the grid of <see cref="FittedString.GaugeStep"/> whose tension is nearest to the wanted one.</summary>
    public required FittedString Nearest { get; init; }

    /// <summary>The tension of <see cref="Nearest"/>.</summary>
    public required Tension Tension { get; init; }

    /// <summary>By how much that is more than wanted (less, if negative).</summary>
    public Tension Difference => Tension - Wanted;

    /// <summary>
    /// The stress of <see cref="Nearest"/> as a part of the breaking stress: an estimate where
    /// <see cref="FittedString.IsStressEstimated"/>, null where it isn't known.
    /// </summary>
    public double? BreakingPart => Nearest.BreakingPart(Tension);

    /// <summary>That part for a reader: <c>53 %</c>, <c>about 60 %</c> for an estimate, else <c>not known</c>.</summary>
    public string BreakingPartInWords => TensionWords.Part(Nearest, BreakingPart, MostOfBreaking) ?? "not known";

    /// <summary>
    /// Whether <see cref="Nearest"/> breaks, is near breaking or neither: by the limits of the report that suggests it, else by
    /// <see cref="TensionLimits.DefaultMostOfBreaking"/>. Whether the tension is slack or heavy is for whoever wants it to say.
    /// </summary>
    public StringState State => TensionLimits.BreakingState(BreakingPart, MostOfBreaking) ?? StringState.Comfortable;

    /// <summary>What is amiss with <see cref="Nearest"/>, in sentences; null where nothing is. Show <see cref="Caution"/> with it.</summary>
    public string? Warning => TensionWords.Warning(this);

    /// <summary>The warning with pitches in a format ("G" or "P") and in the language of a <see cref="NoteNaming"/>.</summary>
    /// <exception cref="FormatException">Another format.</exception>
    public string? WarningAs(string? format, IFormatProvider? naming = null) =>
        TensionWords.Warning(this, format, naming);

    /// <summary>The caution that belongs to a string that breaks or nearly does, <see cref="Cautions.Strings"/>; null for others.</summary>
    public string? Caution => State == StringState.Comfortable ? null : Cautions.Strings;

    internal double MostOfBreaking { get; init; } = TensionLimits.DefaultMostOfBreaking;
}
