using TheoryKit.Theory;

namespace TheoryKit.Tunings;

/// <summary>One string in tune: how hard it pulls, and whether it likes that.</summary>
public sealed record StringTension
{
    internal StringTension() { }

    /// <summary>The string's number.</summary>
    public required int Number { get; init; }

    /// <summary>What it is tuned to.</summary>
    public required Pitch Pitch { get; init; }

    /// <summary>The string.</summary>
    public required FittedString String { get; init; }

    /// <summary>Its sounding length open, with no capo, in mm; shorter than the scale for a short string.</summary>
    public required double Length { get; init; }

    /// <summary>The tension.</summary>
    public required Tension Tension { get; init; }

    /// <summary>What the reference tunes it to; null without a reference.</summary>
    public Pitch? ReferencePitch { get; init; }

    /// <summary>By how much the tension is more than in the reference tuning (less, if negative); null without a reference.</summary>
    public Tension? Change { get; init; }

    /// <summary>The stress in Pa; null where the section that carries isn't known.</summary>
    public double? Stress { get; init; }

    /// <summary>The stress as a part of the breaking stress; null where it isn't known.</summary>
    public double? BreakingPart { get; init; }

    /// <summary>What the limits say of it.</summary>
    public required StringState State { get; init; }

    /// <summary>What would help, where something is amiss; null for a comfortable string.</summary>
    public string? Advice { get; init; }
}
