namespace TheoryKit.Tunings;

/// <summary>Between which tensions a string plays well and lasts.</summary>
/// <param name="Lightest">The least tension: below it a string is slack.</param>
/// <param name="Heaviest">The most tension: above it a string is heavy for the hand, the neck and the bridge.</param>
/// <param name="MostOfBreaking">The most stress as a part of the breaking stress, above 0 and at most 1.</param>
public sealed partial record TensionLimits(Tension Lightest, Tension Heaviest, double MostOfBreaking)
{
    /// <summary>For a guitar: 40 to 150 N, three quarters of the breaking stress.</summary>
    public static TensionLimits Default { get; } = new(new(40), new(150), 0.75);

    /// <summary>The least tension: below it a string is slack.</summary>
    public Tension Lightest { get; } =
        Lightest.Newtons >= 0
            ? Lightest
            : throw new ArgumentOutOfRangeException(nameof(Lightest), Lightest, "The least tension is 0 N or more.");

    /// <summary>The most tension: above it a string is heavy for the hand, the neck and the bridge.</summary>
    public Tension Heaviest { get; } =
        Heaviest > Lightest
            ? Heaviest
            : throw new ArgumentOutOfRangeException(
                nameof(Heaviest),
                Heaviest,
                $"The most tension is more than the least, {Lightest}."
            );

    /// <summary>The most stress as a part of the breaking stress, above 0 and at most 1.</summary>
    public double MostOfBreaking { get; } =
        MostOfBreaking is > 0 and <= 1
            ? MostOfBreaking
            : throw new ArgumentOutOfRangeException(
                nameof(MostOfBreaking),
                MostOfBreaking,
                "A part of the breaking stress is above 0 and at most 1."
            );

    /// <summary>What these limits say of a string at a tension.</summary>
    /// <param name="tension">The tension.</param>
    /// <param name="breakingPart">The stress as a part of the breaking stress, where it is known.</param>
    public StringState StateOf(Tension tension, double? breakingPart) =>
        breakingPart >= 1 ? StringState.Breaking
        : breakingPart > MostOfBreaking ? StringState.NearBreaking
        : tension > Heaviest ? StringState.Heavy
        : tension < Lightest ? StringState.Slack
        : StringState.Comfortable;
}
