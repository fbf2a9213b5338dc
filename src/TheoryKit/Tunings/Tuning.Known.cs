namespace TheoryKit.Tunings;

public sealed partial class Tuning
{
    /// <summary>The six-string guitar's standard tuning, E2 A2 D3 G3 B3 E4.</summary>
    public static Tuning Standard { get; } = Parse("E2 A2 D3 G3 B3 E4");
}
