using System.Collections.Immutable;
using TheoryKit.Values;

namespace TheoryKit.Tunings.Strings;

public sealed partial record StringMaterial
{
    // Looked up: 7.85 g/cm³ in a wire maker's data sheet of ASTM A228 music wire. From memory: the same as the upper end of EN 1991-1-1,
    // table A.4 (77.0 to 78.5 kN/m³); other data sheets give 7800 to 7860.
    private const double Steel = 7850;

    // Looked up: 8.90 g/cm³, CRC Handbook of Chemistry and Physics, as quoted in a comparison of seven tables of densities; 8908, as others
    // have it, is said to be that of the purest nickel.
    private const double Nickel = 8900;

    // Chosen: 8 parts of nickel in 100 by weight, no maker says. Derived: 1 / (0.92 / 7850 + 0.08 / 8900) = 7924.8.
    private const double NickelPlatedSteel = 7925;

    // How thick the core of a wound steel string is. From memory: cores of electric and acoustic strings go from a bit over a third of the
    // outer diameter (the thickest strings) to nearly three fifths (the thinnest). Looked up: M. Zollner, Physics of the Electric Guitar,
    // 1.2, gives the bounds, stiffness from above and strength from below, but not these parts. Chosen: about the middle. Over 0.35 to 0.6 the weight changes by less than 4 % either way, because
    // what the core gains the wrap loses; whoever knows the core says it (FittedString.Over).
    private const double UsualCore = 0.45;

    // The same bounds gauge by gauge, which strength depends on and weight hardly: thin strings need a thick core to bear their pitch.
    // From nearly three fifths up to 0.024 in it falls to a bit over a third at 0.056 in. Chosen: no maker's figure.
    private const double ThickestCore = 0.55;
    private const double ThinnestCore = 0.36;
    private const double ThickCoreUpTo = 0.024 * FittedString.MillimetresPerInch;
    private const double ThinCoreFrom = 0.056 * FittedString.MillimetresPerInch;

    // Looked up: Budynas and Nisbett, Shigley's Mechanical Engineering Design, table 10-4: the least tensile strength of music wire by ASTM
    // A228 is A / d^m, A = 201 kpsi in^m and m = 0.145, as its solutions quote the table; 2211 MPa mm^m as a published calculator of springs
    // has it (201 converts to 2215). From memory: d from 0.10 to 6.5 mm. Another published fit, 2153.5 / d^0.1625 for 0.3 to 6 mm, is
    // within 2 % of it for the plain strings of usual sets.
    private const double MusicWireStrength = 2211e6;
    private const double MusicWireExponent = 0.145;

    /// <summary>Plain steel, the wire of the thin strings: 7850 kg/m³; 2211 MPa at 1 mm, falling with the diameter to the power of
    /// 0.145. Looked up: a data sheet of ASTM A228 music wire; its least strength after Shigley's Mechanical Engineering Design, table 10-4.</summary>
    public static StringMaterial PlainSteel { get; } =
        new("plain steel", Steel) { StrengthAtOneMillimetre = MusicWireStrength, StrengthExponent = MusicWireExponent };

    /// <summary>Nickel-plated steel, 7925 kg/m³, round a steel core. Derived: from steel and 8 % nickel, a share that is chosen.</summary>
    public static StringMaterial NickelWound { get; } = OnSteel("nickel wound", NickelPlatedSteel);

    /// <summary>Nickel, 8900 kg/m³, round a steel core. Looked up: CRC Handbook of Chemistry and Physics, as quoted.</summary>
    public static StringMaterial PureNickelWound { get; } = OnSteel("pure nickel wound", Nickel);

    /// <summary>Phosphor bronze (UNS C51000, 5 % tin), 8860 kg/m³, round a steel core. Looked up: 0.320 lb/in³, 8.86 g/cm³, data
    /// sheets of ASTM B139.</summary>
    public static StringMaterial PhosphorBronzeWound { get; } = OnSteel("phosphor bronze wound", 8860);

    /// <summary>What the trade calls 80/20 bronze, copper with 20 % zinc (UNS C24000), 8660 kg/m³, round a steel core.
    /// Looked up: 0.313 lb/in³, 8.66 g/cm³, a mill's data sheet of ASTM B36.</summary>
    public static StringMaterial BronzeWound { get; } = OnSteel("bronze wound", 8660);

    /// <summary>
    /// Nylon, the plain strings of a classical guitar: 1070 kg/m³. Looked up: N. Lynch-Aird and J. Woodhouse, "Mechanical Properties
    /// of Nylon Harp Strings", Materials 10 (2017) 497, tell two kinds apart. From memory: that the lighter one, taken here, has this density and
    /// is polyamide 6/12.
    /// </summary>
    /// <remarks>A nylon string gives way by some per cent while it settles: the gauge is the one in tune, not the packet's. No strength is
    /// given because published ones differ by a factor of two.</remarks>
    public static StringMaterial Nylon { get; } = new("nylon", 1070);

    /// <summary>Fluorocarbon (polyvinylidene fluoride), plain strings thinner than nylon: 1780 kg/m³. From memory: data sheets of
    /// the polymer by ISO 1183, 1770 to 1790.</summary>
    public static StringMaterial Fluorocarbon { get; } = new("fluorocarbon", 1780);

    /// <summary>
    /// Silver-plated copper, 8960 kg/m³, round nylon threads of 1140 kg/m³: the basses of a classical guitar. Looked up: copper in the CRC
    /// Handbook, as quoted; polyamide 6/6 in tables of plastics. Chosen: the core, a half.
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

    /// <summary>The material of that name, whatever the case.</summary>
    /// <exception cref="ArgumentException">There is none; the message says which names come nearest.</exception>
    public static StringMaterial Named(string name) =>
        Find(name) ?? throw NearNames.NoSuch(name, "material", Known.Select(static each => each.Name), nameof(name));

    private static StringMaterial OnSteel(string name, double wrap) =>
        new(name, Steel)
        {
            WrapDensity = wrap,
            CoreRatio = UsualCore,
            StrengthAtOneMillimetre = MusicWireStrength,
            StrengthExponent = MusicWireExponent,
        };
}
