using TheoryKit.Theory.Notes;
using TheoryKit.Values;

namespace TheoryKit.Tunings.Strings;

/// <summary>One string in tune: how hard it pulls, and whether that suits it. Equal when all that is said of it agrees.</summary>
public sealed record StringTension
{
    internal StringTension() { }

    /// <summary>The string's number.</summary>
    public required int Number { get; init; }

    /// <summary>What it is tuned to.</summary>
    public required Pitch Pitch { get; init; }

    /// <summary>The string.</summary>
    public required FittedString String
    {
        get;
        init => field = Check.NotNull(value, nameof(String));
    }

    /// <summary>Its sounding length open, with no capo, in mm; shorter than the scale for a short string.</summary>
    public required double Length { get; init; }

    /// <summary>The tension.</summary>
    public required Tension Tension { get; init; }

    /// <summary>What the reference tunes it to; null without a reference.</summary>
    public Pitch? ReferencePitch { get; init; }

    /// <summary>By how many semitones it is tuned up from the reference (down, if negative); null without a reference.</summary>
    public int? Retuned => Pitch.MidiNumber - ReferencePitch?.MidiNumber;

    /// <summary>By how much the tension is more than in the reference tuning (less, if negative); null without a reference.</summary>
    public Tension? Change { get; init; }

    /// <summary>The stress in Pa: an estimate where <see cref="FittedString.IsStressEstimated"/>, null where the section that carries
    /// isn't known.</summary>
    public double? Stress { get; init; }

    /// <summary>The stress as a part of the breaking stress: an estimate where <see cref="FittedString.IsStressEstimated"/>, null where it
    /// isn't known.</summary>
    public double? BreakingPart { get; init; }

    /// <summary>What the limits say of it.</summary>
    public required StringState State { get; init; }

    /// <summary>
    /// The gauge that would put a slack or heavy string right: at the tension of the reference where that is within the limits, else in
    /// their middle. In the same material; in plain steel where a wound string would be thinner than any that is sold, or too weak. Null
    /// for other strings, where the material isn't known, and where no gauge would bear the pitch.
    /// </summary>
    public GaugeChoice? Suggested { get; init; }

    /// <summary>The highest pitch at which the stress stays within the limits; null where the stress or the strength isn't known.</summary>
    public Pitch? HighestSafePitch { get; init; }

    internal double MostOfBreaking { get; init; } = TensionLimits.DefaultMostOfBreaking;

    /// <summary>What would help where something is amiss; null for a comfortable string.</summary>
    public StringAdvice? Advice => StringAdvice.For(this);

    /// <summary>Number, pitch and tension, for a reader.</summary>
    public override string ToString() => $"string {Number}, {Pitch}: {Tension.ToString(1)}, {String}";
}
