using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using TheoryKit.Values;

namespace TheoryKit.Tunings.Strings;

public sealed partial class FittedString
{
    private const double KilogramsPerMetreInPoundPerInch = 0.45359237 / 0.0254;

    // A name never begins with another that stands after it.
    private static readonly StringMaterial[] ByLength =
    [
        .. StringMaterial.Known.OrderByDescending(static each => each.Name.Length),
    ];

    /// <summary>The string as <see cref="Parse(string, IFormatProvider?)"/> reads it.</summary>
    public override string ToString() =>
        Material is null ? string.Create(CultureInfo.InvariantCulture, $"{UnitWeight:R} kg/m")
        : Core is { } core ? $"{Length(Diameter!.Value)} {Material.Name} over {Length(core)}"
        : $"{Length(Diameter!.Value)} {Material.Name}";

    internal static bool Read(ref TextCursor cursor, [MaybeNullWhen(false)] out FittedString result)
    {
        result = null;
        cursor.SkipSpaces();
        var start = cursor.Position;
        if (!char.IsAsciiDigit(cursor.Current) && cursor.Current != '.')
        {
            return cursor.Fail(
                "a gauge with its material (0.010 in plain steel, 0.66 mm nylon) or a unit weight (0.0004 kg/m)"
            );
        }

        if (!Measure.Read(ref cursor, 0, 1e6, out var number))
        {
            return false;
        }

        cursor.SkipSpaces();
        double? weight =
            cursor.Take("kg/m") ? number
            : cursor.Take("g/m") ? (double)((decimal)number / 1000) // in decimals, so that 0.52 g/m is 0.00052 kg/m
            : cursor.Take("lb/in") ? number * KilogramsPerMetreInPoundPerInch
            : null;
        if (weight is { } unitWeight)
        {
            if (!(unitWeight is >= MinUnitWeight and <= MaxUnitWeight))
            {
                return cursor.Fail(
                    start,
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"a unit weight from {MinUnitWeight:0.#####} to {MaxUnitWeight} kg/m"
                    )
                );
            }

            result = OfUnitWeight(unitWeight);
            return true;
        }

        if (!ReadUnit(ref cursor, "mm or in and the material, or kg/m, after the number", ref number))
        {
            return false;
        }

        if (!(OnGrid(number) is >= MinDiameter and <= MaxDiameter))
        {
            return cursor.Fail(start, Diameters);
        }

        cursor.SkipSpaces();
        if (ReadMaterial(ref cursor) is not { } material)
        {
            return cursor.Fail(
                $"a material: {string.Join(", ", StringMaterial.Known.Select(static each => each.Name))}"
            );
        }

        result = new(number, material);
        var end = cursor.Position;
        cursor.SkipSpaces();
        if (!cursor.Take("over"))
        {
            cursor.Position = end;
            return true;
        }

        if (!material.IsWound)
        {
            return cursor.Fail(end, $"no core, for {material.Name} has none");
        }

        cursor.SkipSpaces();
        start = cursor.Position;
        if (!Measure.Read(ref cursor, 0, 1e6, out var core))
        {
            return false;
        }

        cursor.SkipSpaces();
        if (!ReadUnit(ref cursor, "mm or in after the core's diameter", ref core))
        {
            return false;
        }

        core = OnGrid(core);
        if (!(core >= MinDiameter && core < result.Diameter))
        {
            result = null;
            return cursor.Fail(
                start,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"a core of {MinDiameter} mm or more, thinner than the string"
                )
            );
        }

        result = result.Over(core);
        return true;
    }

    private static string Diameters =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"a gauge from {MinDiameter} to {MaxDiameter} mm ({MinDiameter / MillimetresPerInch:0.0000} to {MaxDiameter / MillimetresPerInch:0.0000} in)"
        );

    /// <summary>Reads the unit, and makes millimetres of the number.</summary>
    private static bool ReadUnit(ref TextCursor cursor, string expected, ref double number)
    {
        if (cursor.Take("mm"))
        {
            return true;
        }

        if (cursor.Take("in"))
        {
            number *= MillimetresPerInch;
            return true;
        }

        return cursor.Fail(expected);
    }

    private static StringMaterial? ReadMaterial(ref TextCursor cursor)
    {
        foreach (var material in ByLength)
        {
            if (cursor.Take(material.Name))
            {
                return material;
            }
        }

        return null;
    }

    /// <summary>In inches what is a gauge, else in mm.</summary>
    private static string Length(double diameter)
    {
        var steps = Math.Round(diameter * StepsPerInch / MillimetresPerInch);
        return (steps * MillimetresPerInch / StepsPerInch).Equals(diameter)
            ? string.Create(CultureInfo.InvariantCulture, $"{steps / StepsPerInch:0.000#} in")
            : string.Create(CultureInfo.InvariantCulture, $"{diameter:R} mm");
    }
}
