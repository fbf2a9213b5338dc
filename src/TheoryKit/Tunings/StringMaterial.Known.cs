using System.Collections.Immutable;

namespace TheoryKit.Tunings;

public sealed partial record StringMaterial
{
    // Carbon steel as engineers reckon it, 7850 kg/m³ (EN 1991-1-1, table A.4: 77.0 to 78.5 kN/m³); handbooks of wire give 7800 to 7860.
    private const double Steel = 7850;

    // Steel with 8 parts of nickel (8908, CRC Handbook of Chemistry and Physics) in 100 by weight: 1 / (0.92 / 7850 + 0.08 / 8908).
    private const double NickelPlatedSteel = 7925;

    // How thick the core of a wound steel string is. Cores of electric and acoustic strings go from a bit over a third of the outer
    // diameter (the thickest strings) to nearly three fifths (the thinnest): M. Zollner, Physics of the Electric Guitar, 1.2, discusses
    // the bounds: stiffness from above, strength from below. Over 0.35 to 0.6 the weight changes by less than 4 % either way, because
    // what the core gains the wrap loses; whoever knows the core says it (FittedString.Over).
    private const double UsualCore = 0.45;

    // The same bounds gauge by gauge, which strength depends on and weight hardly: thin strings need a thick core to bear their pitch.
    // From nearly three fifths up to 0.024 in it falls to a bit over a third at 0.056 in. An estimate, no maker's figure.
    private const double ThickestCore = 0.55;
    private const double ThinnestCore = 0.36;
    private const double ThickCoreUpTo = 0.024 * FittedString.MillimetresPerInch;
    private const double ThinCoreFrom = 0.056 * FittedString.MillimetresPerInch;

    // Budynas and Nisbett, Shigley's Mechanical Engineering Design, table 10-4: the least tensile strength of music wire by ASTM A228 is
    // A / d^m with A = 2211 MPa mm^m and m = 0.145, d from 0.10 to 6.5 mm.
    private const double MusicWireStrength = 2211e6;
    private const double MusicWireExponent = 0.145;

    /// <summary>Plain steel, the wire of the thin strings: 7850 kg/m³ (EN 1991-1-1, table A.4); 2211 MPa at 1 mm, falling with the diameter to the power of
    /// 0.145 (least strength of music wire by ASTM A228, after Shigley's Mechanical Engineering Design, table 10-4).</summary>
    public static StringMaterial PlainSteel { get; } =
        new("plain steel", Steel) { StrengthAtOneMillimetre = MusicWireStrength, StrengthExponent = MusicWireExponent };

    /// <summary>Nickel-plated steel, 7925 kg/m³ (8 % nickel of 8908, CRC Handbook), round a steel core.</summary>
    public static StringMaterial NickelWound { get; } = OnSteel("nickel wound", NickelPlatedSteel);

    /// <summary>Nickel, 8908 kg/m³ (CRC Handbook of Chemistry and Physics), round a steel core.</summary>
    public static StringMaterial PureNickelWound { get; } = OnSteel("pure nickel wound", 8908);

    /// <summary>Phosphor bronze (UNS C51000, 5 % tin), 8860 kg/m³ (0.320 lb/in³, data sheet of ASTM B139), round a steel core.</summary>
    public static StringMaterial PhosphorBronzeWound { get; } = OnSteel("phosphor bronze wound", 8860);

    /// <summary>What the trade calls 80/20 bronze, copper with 20 % zinc (UNS C24000), 8660 kg/m³ (0.313 lb/in³, Copper Development
    /// Association), round a steel core.</summary>
    public static StringMaterial BronzeWound { get; } = OnSteel("bronze wound", 8660);

    /// <summary>
    /// Nylon, the plain strings of a classical guitar: 1070 kg/m³. The lighter of the two kinds that N. Lynch-Aird and J. Woodhouse,
    /// "Mechanical Properties of Nylon Harp Strings", Materials 10 (2017) 497, tell apart; polyamide 6/12.
    /// </summary>
    /// <remarks>A nylon string gives way by some per cent while it settles: the gauge is the one in tune, not the packet's. No strength is
    /// given because published ones differ by a factor of two.</remarks>
    public static StringMaterial Nylon { get; } = new("nylon", 1070);

    /// <summary>Fluorocarbon (polyvinylidene fluoride), plain strings thinner than nylon: 1780 kg/m³ (ISO 1183, data sheets of the
    /// polymer: 1770 to 1790).</summary>
    public static StringMaterial Fluorocarbon { get; } = new("fluorocarbon", 1780);

    /// <summary>
    /// Silver-plated copper, 8960 kg/m³ (copper: CRC Handbook), round nylon threads of 1140 kg/m³ (polyamide 6/6): the basses of a
    /// classical guitar.
    /// </summary>
    /// <remarks>Only a rough guess: soft threads are squeezed, and their part of the string, here a half, is a third to two thirds by
    /// string. Where the unit weight is known, say it instead.</remarks>
    public static StringMaterial WoundNylon { get; } = new("wound nylon", 1140) { WrapDensity = 8960, CoreRatio = 0.5 };

    /// <summary>All materials.</summary>
    public static ImmutableArray<StringMaterial> Known { get; } =
    [PlainSteel, NickelWound, PureNickelWound, PhosphorBronzeWound, BronzeWound, Nylon, Fluorocarbon, WoundNylon];

    /// <summary>The material of that name, whatever the case; null if there is none.</summary>
    public static StringMaterial? Find(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        return Known.FirstOrDefault(each => each.Name.Equals(name.Trim(), StringComparison.OrdinalIgnoreCase));
    }

    private static StringMaterial OnSteel(string name, double wrap) =>
        new(name, Steel)
        {
            WrapDensity = wrap,
            CoreRatio = UsualCore,
            StrengthAtOneMillimetre = MusicWireStrength,
            StrengthExponent = MusicWireExponent,
        };
}
