namespace TheoryKit.Fingering;

// The average hand: the outer reach is the fan of the four fingers at their widest, from the mean lengths and greatest
// angles of adults in Chatzioglou, Pinar, Govsa, "Biometric analysis hand parameters in young adults", Anat Cell Biol 57
// (2024) 172-182: lengths 64, 71, 66, 53 mm; angles 17, 14, 32 degrees; with knuckles 20 mm apart the tips of index and
// little finger lie about 120 mm apart, and the neck spreads a pressing hand somewhat further. The inner reaches are
// teaching practice: two frets between index and middle at the nut, hardly more than one between middle and ring.
// Small and large stand about a sixth to either side, near the 5th and 95th percentile of hand length in adults.
public sealed partial record Hand
{
    private const double Sixth = 1.0 / 6;

    /// <summary>An average adult hand.</summary>
    public static Hand Average { get; } = new();

    /// <summary>A small hand, such as a young student's.</summary>
    public static Hand Small { get; } = Average.Scale(1 - Sixth) with { BarreStrings = 6, OtherBarreStrings = 2 };

    /// <summary>A large hand.</summary>
    public static Hand Large { get; } = Average.Scale(1 + Sixth) with { OtherBarreStrings = 4 };
}
