namespace TheoryKit.Fingering.Hands;

// Looked up: the average hand. Its outer reach is the fan of the four fingers at their widest: the mean lengths (63.9, 70.7, 65.5,
// 53.3 mm) and the mean greatest angles between neighbours (17.2, 14.3, 32.1 degrees) of 51 adults of 18 to 30 years in
// Chatzioglou, Pinar, Govsa, "Biometric analysis hand parameters in young adults for prosthetic hand and ergonomic product
// applications", Anat. Cell Biol. 57 (2024) 172-182. Derived: with knuckles 20 mm apart, which is chosen, the tips of index
// and little finger lie 120 mm apart. Chosen: that a neck spreads a pressing hand to 136, and the reaches of the other pairs, by
// teaching practice: two frets between index and middle finger at the nut, hardly more than one between middle and ring.
// Chosen: small and large stand a sixth to either side. Lengths in the paper vary by 6 to 8 percent (one standard deviation), so
// a sixth is a little more than two deviations: about one hand in fifty is smaller, one in fifty larger.
public sealed partial record Hand
{
    private const double Sixth = 1.0 / 6;

    /// <summary>An average adult hand.</summary>
    public static Hand Average { get; } = new();

    /// <summary>A small hand, such as a young student's.</summary>
    public static Hand Small { get; } = Average.Scale(1 - Sixth) with { OtherBarreStrings = 2 };

    /// <summary>A large hand.</summary>
    public static Hand Large { get; } = Average.Scale(1 + Sixth) with { OtherBarreStrings = 4 };
}
