using System.Collections.Immutable;
using TheoryKit.Values;

namespace TheoryKit.Tunings.Necks;

/// <summary>A tuning that players know by a name.</summary>
/// <param name="Name">The name, unique in the catalogue.</param>
/// <param name="Tuning">What the strings are tuned to.</param>
/// <param name="Instrument">The instrument it is used on, as in "guitar" or "five-string banjo".</param>
[EqualBy(nameof(Name), nameof(Tuning), nameof(Instrument))]
[Checked]
public sealed partial record KnownTuning(string Name, Tuning Tuning, string Instrument)
{
    /// <summary>Other names of the same tuning, also on other instruments.</summary>
    public ImmutableArray<string> Aliases { get; init; } = [];

    /// <summary>Name, instrument and strings, for a reader.</summary>
    public override string ToString() => $"{Name} ({Instrument}): {Tuning}";
}
