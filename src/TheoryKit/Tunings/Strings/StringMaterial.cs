namespace TheoryKit.Tunings.Strings;

/// <summary>
/// What a string is made of: one material through and through, or a core with a wire wound round it. Equal when all figures
/// agree.
/// </summary>
/// <remarks>
/// <para>
/// The catalogue (<see cref="Known"/>) is closed, so that every string can be written and read; a string of anything else is given
/// by its unit weight (<see cref="FittedString.OfUnitWeight"/>).
/// </para>
/// <para>
/// A wound string of outer diameter D over a core of diameter c = k D weighs, per metre,
/// pi/4 D² (core density k² + packing wrap density (1 - k²)): what the core fills, and what part of the ring around it the wrap
/// fills. See <see cref="RoundWirePacking"/> for that part.
/// </para>
/// </remarks>
public sealed partial record StringMaterial
{
    private StringMaterial(string name, double density)
    {
        Name = name;
        Density = density;
    }

    /// <summary>The name, as in <c>plain steel</c>; unique in the catalogue.</summary>
    public string Name { get; }

    /// <summary>The density of a plain string, or of the core of a wound one, in kg/m³.</summary>
    public double Density { get; }

    /// <summary>The density of the wire wound round the core, in kg/m³; null for a plain string.</summary>
    public double? WrapDensity { get; private init; }

    /// <summary>
    /// The core's diameter as a part of the outer one, where a string doesn't say its own; null for a plain string.
    /// </summary>
    public double? CoreRatio { get; private init; }

    /// <summary>Which part of the ring round the core is wire, the rest being air; null for a plain string.</summary>
    public double? PackingFactor => CoreRatio is { } ratio ? RoundWirePacking(ratio) : null;

    /// <summary>Whether a wire is wound round a core.</summary>
    public bool IsWound => WrapDensity is not null;

    /// <summary>
    /// The tensile strength of a plain string (or of a wound one's core) of 1 mm, in Pa; null where strings of it have no
    /// published strength that could be relied on.
    /// </summary>
    public double? StrengthAtOneMillimetre { get; private init; }

    /// <summary>By which power of the diameter the strength falls: thin wire is drawn harder.</summary>
    public double StrengthExponent { get; private init; }

    /// <summary>The mass of a string of this material by its volume, in kg/m³: the density, or what core, wrap and air come to.</summary>
    public double EffectiveDensity => CoreRatio is { } ratio ? EffectiveDensityOver(ratio) : Density;

    /// <summary>
    /// The tensile strength, in Pa, of a plain string (or of a wound one's core) of a diameter in mm: the least that a new, straight one
    /// bears; less after kinks, rust, or at the ball and the post. Null where none is known.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The diameter is not a positive number.</exception>
    public double? TensileStrength(double diameter)
    {
        if (!(diameter > 0) || double.IsInfinity(diameter))
        {
            throw new ArgumentOutOfRangeException(nameof(diameter), diameter, "A diameter is a positive number of mm.");
        }

        return StrengthAtOneMillimetre / Math.Pow(diameter, StrengthExponent);
    }

    /// <summary>
    /// Which part of the ring round a core a round wire fills that is wound tightly, turn against turn:
    /// pi/4 sqrt(1 + ((1 - k) / (pi (1 + k)))²) for a core of k times the outer diameter.
    /// </summary>
    /// <remarks>
    /// A wire of diameter w round a core of diameter c has its centre on a helix of diameter c + w that climbs w a turn. So one
    /// turn is sqrt((pi (c + w))² + w²) long and holds pi/4 w² times that, in a ring of the volume pi (c + w) w w. With
    /// k = c / (c + 2 w) the quotient is as above: pi/4, as for a torus in its square box, and up to 5 % more for the climb (under 1 %
    /// for usual cores). The wire is taken as round and not pressed into the core.
    /// </remarks>
    /// <param name="coreRatio">The core's diameter as a part of the outer one, above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The ratio is not above 0 and below 1.</exception>
    public static double RoundWirePacking(double coreRatio)
    {
        if (!(coreRatio is > 0 and < 1))
        {
            throw new ArgumentOutOfRangeException(nameof(coreRatio), coreRatio, "A core is thinner than its string.");
        }

        var climb = (1 - coreRatio) / (Math.PI * (1 + coreRatio));
        return Math.PI / 4 * Math.Sqrt(1 + (climb * climb));
    }

    /// <summary>
    /// The core's diameter in mm that is usual for a wound steel string of a diameter: 0.55 of it up to 0.61 mm (0.024 in), 0.36 from
    /// 1.42 mm (0.056 in) on, and in proportion between. Chosen: within the bounds that M. Zollner, Physics of the Electric Guitar,
    /// 1.2, discusses. Null for other materials.
    /// </summary>
    internal double? UsualCoreOf(double diameter)
    {
        if (!IsWound || StrengthAtOneMillimetre is null)
        {
            return null;
        }

        var part = Math.Clamp((diameter - ThickCoreUpTo) / (ThinCoreFrom - ThickCoreUpTo), 0, 1);
        return diameter * (ThickestCore + (part * (ThinnestCore - ThickestCore)));
    }

    /// <summary>The effective density of a wound string over a core of this part of its diameter, in kg/m³.</summary>
    internal double EffectiveDensityOver(double coreRatio)
    {
        var core = coreRatio * coreRatio;
        return (Density * core) + (RoundWirePacking(coreRatio) * WrapDensity!.Value * (1 - core));
    }

    /// <summary>The name.</summary>
    public override string ToString() => Name;
}
