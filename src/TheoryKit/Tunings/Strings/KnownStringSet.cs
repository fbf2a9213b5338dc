using TheoryKit.Values;

namespace TheoryKit.Tunings.Strings;

/// <summary>A set of strings that players know by a name.</summary>
/// <param name="Name">The name, unique in the catalogue.</param>
/// <param name="Set">The strings.</param>
/// <param name="Instrument">The instrument it is used on, as in "electric guitar".</param>
[Checked]
public sealed partial record KnownStringSet(string Name, StringSet Set, string Instrument)
{
    /// <summary>Name, instrument and strings, for a reader.</summary>
    public override string ToString() => $"{Name} ({Instrument}): {Set}";
}
