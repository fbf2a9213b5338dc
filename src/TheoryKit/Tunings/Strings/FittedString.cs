using System.Diagnostics.CodeAnalysis;
using TheoryKit.Theory.Notes;
using TheoryKit.Values;

namespace TheoryKit.Tunings.Strings;

/// <summary>
/// A string as fitted to an instrument: a gauge in a material, or only a unit weight. Equal when gauge, core and material, or
/// the unit weight, agree.
/// </summary>
/// <remarks>
/// <para>
/// The ideal string: a pitch of f Hz on a length of L m asks for the tension T = 4 L² f² mu, mu being the mass per length. Stiffness,
/// which sharpens the overtones and adds well under 1 % to the tension of guitar strings, is left out.
/// </para>
/// <para>
/// Text: <c>0.010 in plain steel</c>, <c>0.66 mm nylon</c>, <c>0.046 in nickel wound over 0.018 in</c> where the core is known,
/// <c>0.00624 kg/m</c>. Read as well: a gauge without its zero (<c>.010 in</c>), g/m and lb/in.
/// </para>
/// </remarks>
[ReadAs("a string of a gauge or weight")]
[EqualBy(nameof(Diameter), nameof(Core), nameof(Material), nameof(UnitWeight), Operators = true)]
public sealed partial class FittedString : IEquatable<FittedString>, ISpanParsable<FittedString>
{
    /// <summary>The thinnest string, in mm. From memory: where the published strength of music wire begins.</summary>
    public const double MinDiameter = 0.1;

    /// <summary>The thickest string, in mm. From memory: where that strength ends.</summary>
    public const double MaxDiameter = 6.5;

    /// <summary>The least unit weight, in kg/m.</summary>
    public const double MinUnitWeight = 0.00005;

    /// <summary>The greatest unit weight, in kg/m.</summary>
    public const double MaxUnitWeight = 0.3;

    /// <summary>How many mm an inch is, exactly.</summary>
    public const double MillimetresPerInch = 25.4;

    /// <summary>From one gauge that is sold to the next, in mm: 0.0005 in.</summary>
    public const double GaugeStep = 0.0127;

    /// <summary>How many of these steps there are in an inch.</summary>
    private const int StepsPerInch = 2000;

    /// <summary>The thinnest wound steel string that is usually sold, in mm: 0.018 in. From memory: what is sold; the thinnest in a set of
    /// <see cref="StringSet.Known"/> has 0.020 in.</summary>
    internal const double ThinnestUsualWound = 0.018 * MillimetresPerInch;

    private FittedString(double? diameter, double? core, StringMaterial? material, double unitWeight)
    {
        Diameter = diameter;
        Core = core;
        Material = material;
        UnitWeight = unitWeight;
    }

    /// <summary>A string of a diameter in a material.</summary>
    /// <param name="diameter">The outer diameter in mm. What is within a millionth of a mm of a multiple of <see cref="GaugeStep"/> is
    /// taken for that gauge.</param>
    /// <param name="material">What it is made of.</param>
    /// <exception cref="ArgumentOutOfRangeException">The diameter is not <see cref="MinDiameter"/> to <see cref="MaxDiameter"/> mm.</exception>
    public FittedString(double diameter, StringMaterial material)
        : this(Checked(diameter), null, material, 0)
    {
        ArgumentNullException.ThrowIfNull(material);
        UnitWeight = WeightOf(Diameter!.Value, material.EffectiveDensity);
    }

    /// <summary>The outer diameter in mm; null where only the unit weight is given.</summary>
    public double? Diameter { get; }

    /// <summary>The core's diameter in mm where it was said; null for plain strings and where the material's usual core is taken.</summary>
    public double? Core { get; }

    /// <summary>What it is made of; null where only the unit weight is given.</summary>
    public StringMaterial? Material { get; }

    /// <summary>The mass per length, in kg/m.</summary>
    public double UnitWeight { get; }

    /// <summary>
    /// Whether stress and part of the breaking stress are estimates: a wound steel string doesn't say its core, and the one usual for its
    /// gauge is taken, from 0.55 of the diameter (up to 0.024 in) down to 0.36 (from 0.056 in). Whoever knows the core says it
    /// (<see cref="Over"/>).
    /// </summary>
    public bool IsStressEstimated => IsSteelWound && Core is null;

    internal bool IsSteelWound => Material is { IsWound: true, StrengthAtOneMillimetre: not null };

    /// <summary>Whether it is a wound steel string thinner than any that is usually sold.</summary>
    internal bool IsThinnerThanSold => IsSteelWound && Diameter < ThinnestUsualWound - 1e-6;

    /// <summary>A string of a gauge in inches, as in 0.010.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The gauge is not <see cref="MinDiameter"/> to <see cref="MaxDiameter"/> mm.</exception>
    public static FittedString Inches(double gauge, StringMaterial material) =>
        gauge * MillimetresPerInch is >= MinDiameter - 1e-6 and <= MaxDiameter + 1e-6 and var diameter
            ? new(Math.Clamp(diameter, MinDiameter, MaxDiameter), material)
            : throw new ArgumentOutOfRangeException(
                nameof(gauge),
                gauge,
                string.Create(
                    System.Globalization.CultureInfo.InvariantCulture,
                    $"A gauge is {MinDiameter / MillimetresPerInch:0.000} to {MaxDiameter / MillimetresPerInch:0.000} in, {MinDiameter} to {MaxDiameter} mm."
                )
            );

    /// <summary>A string of which only the mass per length is known.</summary>
    /// <param name="unitWeight">In kg/m.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not <see cref="MinUnitWeight"/> to <see cref="MaxUnitWeight"/> kg/m.</exception>
    public static FittedString OfUnitWeight(double unitWeight) =>
        unitWeight is >= MinUnitWeight and <= MaxUnitWeight
            ? new(null, null, null, unitWeight)
            : throw new ArgumentOutOfRangeException(
                nameof(unitWeight),
                unitWeight,
                string.Create(
                    System.Globalization.CultureInfo.InvariantCulture,
                    $"A string weighs {MinUnitWeight} to {MaxUnitWeight} kg/m."
                )
            );

    /// <summary>The same wound string over a core of a known diameter, in mm.</summary>
    /// <exception cref="InvalidOperationException">The string is not wound.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The core is not thinner than the string, or is under
    /// <see cref="MinDiameter"/>.</exception>
    public FittedString Over(double core)
    {
        if (Material is not { IsWound: true } || Diameter is not { } diameter)
        {
            throw new InvalidOperationException($"{this} has no core.");
        }

        var rounded = OnGrid(core);
        if (!(rounded >= MinDiameter && rounded < diameter))
        {
            throw new ArgumentOutOfRangeException(
                nameof(core),
                core,
                $"The core of {this} is {MinDiameter} mm or more and thinner than the string."
            );
        }

        return new(diameter, rounded, Material, WeightOf(diameter, Material.EffectiveDensityOver(rounded / diameter)));
    }

    /// <summary>The tension that a frequency asks for: T = 4 L² f² mu.</summary>
    /// <param name="frequency">In Hz.</param>
    /// <param name="length">The sounding length in mm.</param>
    /// <exception cref="ArgumentOutOfRangeException">Frequency or length is not a positive number.</exception>
    public Tension TensionAt(double frequency, double length)
    {
        CheckPositive(frequency, MaxFrequency, "A frequency is a positive number of Hz, at most 1,000,000.");
        CheckPositive(length, MaxLength, "A sounding length is a positive number of mm, at most 10,000.");
        var wave = 2 * length / 1000 * frequency; // the speed of the wave, in m/s
        var newtons = wave * wave * UnitWeight;
        return newtons <= Tension.Most
            ? new(newtons)
            : throw new ArgumentOutOfRangeException(
                nameof(length),
                length,
                $"At {frequency:0} Hz this length asks for more than {Tension.Most:N0} N; a shorter one would do."
            );
    }

    /// <summary>The tension that a pitch asks for.</summary>
    /// <param name="pitch">The pitch.</param>
    /// <param name="length">The sounding length in mm.</param>
    /// <param name="a4">The frequency of A4 in Hz; 440 by ISO 16.</param>
    /// <exception cref="ArgumentOutOfRangeException">Length or reference is not a positive number.</exception>
    public Tension TensionAt(Pitch pitch, double length, double a4 = Pitch.StandardA4) =>
        TensionAt(pitch.Frequency(a4), length);

    /// <summary>
    /// The stress in Pa at a tension: over the whole section of a plain string, over the core of a wound one (the wrap carries next to
    /// nothing). For a plain string in tune it is 4 L² f² times the density, whatever the gauge. An estimate where
    /// <see cref="IsStressEstimated"/>. Null where the section that carries isn't known: only a unit weight is given, or a string wound
    /// on threads doesn't say its core.
    /// </summary>
    public double? StressAt(Tension tension) =>
        Carrying is { } diameter ? tension.Newtons / (Math.PI / 4 * diameter * diameter * 1e-6) : null;

    /// <summary>The stress in Pa at a pitch; null where the section that carries isn't known.</summary>
    /// <inheritdoc cref="TensionAt(Pitch, double, double)"/>
    public double? StressAt(Pitch pitch, double length, double a4 = Pitch.StandardA4) =>
        StressAt(TensionAt(pitch, length, a4));

    /// <summary>
    /// The stress as a part of the breaking stress: at 1 the string breaks. An estimate where <see cref="IsStressEstimated"/>; null where
    /// the stress or the strength isn't known.
    /// </summary>
    public double? BreakingPart(Tension tension) =>
        Carrying is { } diameter && Material?.TensileStrength(diameter) is { } strength
            ? StressAt(tension) / strength
            : null;

    /// <summary>The stress at a pitch as a part of the breaking stress; null where the stress or the strength isn't known.</summary>
    /// <inheritdoc cref="TensionAt(Pitch, double, double)"/>
    public double? BreakingPart(Pitch pitch, double length, double a4 = Pitch.StandardA4) =>
        BreakingPart(TensionAt(pitch, length, a4));

    /// <summary>
    /// Which gauge of a material gives a wanted tension at a pitch: T = 4 L² f² mu, solved for the diameter in mu. Whether that string
    /// bears the pitch stands in <see cref="GaugeChoice.State"/>.
    /// </summary>
    /// <param name="wanted">The tension, more than 0 N.</param>
    /// <param name="pitch">The pitch.</param>
    /// <param name="length">The sounding length in mm.</param>
    /// <param name="material">The material; a wound one over its usual core.</param>
    /// <param name="a4">The frequency of A4 in Hz; 440 by ISO 16.</param>
    /// <exception cref="ArgumentOutOfRangeException">Tension, length or reference is not a positive number, or the string would be
    /// thinner than <see cref="MinDiameter"/> or thicker than <see cref="MaxDiameter"/>.</exception>
    public static GaugeChoice GaugeFor(
        Tension wanted,
        Pitch pitch,
        double length,
        StringMaterial material,
        double a4 = Pitch.StandardA4
    )
    {
        ArgumentNullException.ThrowIfNull(material);
        CheckPositive(length, MaxLength, "A sounding length is a positive number of mm, at most 10,000.");
        CheckPositive(wanted.Newtons, double.MaxValue, "A wanted tension is more than 0 N.", nameof(wanted));
        return TryGaugeFor(wanted, pitch, length, material, a4, out var choice, out var problem)
            ? choice
            : throw new ArgumentOutOfRangeException(nameof(wanted), wanted, problem);
    }

    internal static bool TryGaugeFor(
        Tension wanted,
        Pitch pitch,
        double length,
        StringMaterial material,
        double a4,
        [NotNullWhen(true)] out GaugeChoice? choice,
        [NotNullWhen(false)] out string? problem
    )
    {
        choice = null;
        if (
            !TryGauges(
                wanted,
                pitch,
                length,
                a4,
                material.EffectiveDensity,
                gauge => new(gauge, material),
                out var exact,
                out var nearest
            )
        )
        {
            problem = string.Create(
                System.Globalization.CultureInfo.InvariantCulture,
                $"{wanted.ToString(1)} at {pitch} on {length:0.#} mm takes {material} of {exact:0.###} mm; a string is {MinDiameter} to {MaxDiameter} mm thick."
            );
            return false;
        }

        problem = null;
        choice = new()
        {
            Pitch = pitch,
            Length = length,
            Wanted = wanted,
            Exact = new(exact, material),
            Nearest = nearest,
            Tension = nearest.TensionAt(pitch, length, a4),
        };
        return true;
    }

    /// <summary>The nearest gauge of the same make, its core in the same proportion, that gives a tension.</summary>
    internal bool TryWithTension(
        Tension wanted,
        Pitch pitch,
        double length,
        double a4,
        [NotNullWhen(true)] out FittedString? found,
        [NotNullWhen(false)] out string? problem
    )
    {
        if (Core is not { } core)
        {
            found = TryGaugeFor(wanted, pitch, length, Material!, a4, out var choice, out problem)
                ? choice.Nearest
                : null;
            return found is not null;
        }

        var ratio = core / Diameter!.Value;
        var density = Material!.EffectiveDensityOver(ratio);
        FittedString Make(double gauge) => new FittedString(gauge, Material).Over(Math.Max(gauge * ratio, MinDiameter));
        var isFound = TryGauges(wanted, pitch, length, a4, density, Make, out var exact, out found);
        problem = isFound
            ? null
            : string.Create(
                System.Globalization.CultureInfo.InvariantCulture,
                $"it would have to be {exact:0.###} mm thick."
            );
        return isFound;
    }

    /// <summary>The diameter that gives a tension, and of the two gauges around it the one whose tension is nearer.</summary>
    private static bool TryGauges(
        Tension wanted,
        Pitch pitch,
        double length,
        double a4,
        double density,
        Func<double, FittedString> make,
        out double exact,
        [NotNullWhen(true)] out FittedString? nearest
    )
    {
        var wave = 2 * length / 1000 * pitch.Frequency(a4);
        exact = Math.Sqrt(wanted.Newtons / (wave * wave) / (Math.PI / 4 * density)) * 1000;
        nearest = null;
        if (!(exact is >= MinDiameter and <= MaxDiameter))
        {
            return false;
        }

        var below = Math.Floor(exact / GaugeStep) * GaugeStep;
        nearest = new[] { below, below + GaugeStep }
            .Where(static gauge => gauge is >= MinDiameter and <= MaxDiameter)
            .Select(make)
            .MinBy(each => Math.Abs(each.TensionAt(pitch, length, a4).Newtons - wanted.Newtons));
        return nearest is not null;
    }

    /// <summary>The diameter of what carries the tension, in mm.</summary>
    private double? Carrying =>
        Material is { IsWound: true } wound ? Core ?? wound.UsualCoreOf(Diameter!.Value) : Diameter;

    private static double WeightOf(double diameter, double density) =>
        Math.PI / 4 * diameter * diameter * 1e-6 * density;

    private static double Checked(double diameter)
    {
        var rounded = OnGrid(diameter);
        return rounded is >= MinDiameter and <= MaxDiameter
            ? rounded
            : throw new ArgumentOutOfRangeException(
                nameof(diameter),
                diameter,
                $"A string is {MinDiameter} to {MaxDiameter} mm thick."
            );
    }

    /// <summary>Takes 0.254 mm and 0.010 in for one gauge, however they were computed.</summary>
    private static double OnGrid(double diameter)
    {
        var steps = Math.Round(diameter * StepsPerInch / MillimetresPerInch);
        var gauge = steps * MillimetresPerInch / StepsPerInch;
        return Math.Abs(gauge - diameter) < 1e-6 ? gauge : diameter;
    }

    // Beyond any string, and within what a tension can be.
    private const double MaxFrequency = 1e6;
    private const double MaxLength = 1e4;

    private static void CheckPositive(
        double value,
        double most,
        string message,
        [System.Runtime.CompilerServices.CallerArgumentExpression(nameof(value))] string? name = null
    )
    {
        if (!(value > 0 && value <= most))
        {
            throw new ArgumentOutOfRangeException(name, value, message);
        }
    }
}
