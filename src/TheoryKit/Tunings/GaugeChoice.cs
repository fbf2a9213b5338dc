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
}
