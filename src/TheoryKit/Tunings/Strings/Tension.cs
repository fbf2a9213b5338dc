using System.Globalization;
using TheoryKit.Values;

namespace TheoryKit.Tunings.Strings;

/// <summary>
/// How hard a string pulls, or by how much more (less, if negative) than another; held in newtons. The default value is 0 N.
/// </summary>
/// <remarks>
/// Range: every finite number. Text: <c>72.6 N</c>; kilograms-force and pounds-force are read too: <c>7.4 kgf</c>,
/// <c>16.3 lbf</c>.
/// </remarks>
[ReadAs("a tension")]
[Ordered]
public readonly partial record struct Tension : IComparable<Tension>, ISpanParsable<Tension>
{
    /// <summary>How many newtons one kilogram-force is: standard gravity, 9.80665 m/s². Looked up: 3rd General Conference on
    /// Weights and Measures (1901).</summary>
    public const double NewtonsPerKilogramForce = 9.80665;

    /// <summary>How many newtons one pound-force is: the international pound in standard gravity. Looked up: 0.45359237 kg,
    /// exactly.</summary>
    public const double NewtonsPerPoundForce = 0.45359237 * NewtonsPerKilogramForce;

    internal const double Most = 1e8;

    /// <summary>A tension of so many newtons.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not a number, or beyond 10^8 N.</exception>
    public Tension(double newtons)
    {
        if (!(Math.Abs(newtons) <= Most))
        {
            throw new ArgumentOutOfRangeException(nameof(newtons), newtons, "A tension is a finite number of newtons.");
        }

        Newtons = newtons == 0 ? 0 : newtons; // no negative zero
    }

    /// <summary>In newtons.</summary>
    public double Newtons { get; }

    /// <summary>In kilograms-force: the weight of so many kilograms.</summary>
    public double KilogramsForce => Newtons / NewtonsPerKilogramForce;

    /// <summary>In pounds-force: the weight of so many pounds.</summary>
    public double PoundsForce => Newtons / NewtonsPerPoundForce;

    /// <summary>A tension of so many kilograms-force.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not a number, or beyond 10^8 N.</exception>
    public static Tension FromKilogramsForce(double kilograms) =>
        new(
            Check.Range(kilograms, -Most / NewtonsPerKilogramForce, Most / NewtonsPerKilogramForce)
                * NewtonsPerKilogramForce
        );

    /// <summary>A tension of so many pounds-force.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not a number, or beyond 10^8 N.</exception>
    public static Tension FromPoundsForce(double pounds) =>
        new(Check.Range(pounds, -Most / NewtonsPerPoundForce, Most / NewtonsPerPoundForce) * NewtonsPerPoundForce);

    /// <summary>Both together.</summary>
    public static Tension operator +(Tension left, Tension right) => new(left.Newtons + right.Newtons);

    /// <summary>By how much the first is more than the second.</summary>
    public static Tension operator -(Tension left, Tension right) => new(left.Newtons - right.Newtons);

    /// <summary>Both together.</summary>
    public Tension Add(Tension other) => this + other;

    /// <summary>By how much this is more than the other.</summary>
    public Tension Subtract(Tension other) => this - other;

    /// <inheritdoc/>
    public int CompareTo(Tension other) => Newtons.CompareTo(other.Newtons);

    /// <summary>The tension, to the last digit, as <see cref="Parse(string, IFormatProvider?)"/> reads it.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Newtons:R} N");

    /// <summary>The tension for a reader, in newtons with a fixed number of decimals: <c>72.6 N</c>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The decimals are not 0 to 9.</exception>
    public string ToString(int decimals)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(decimals);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(decimals, 9);
        // "+ 0" because -0.04 would be "-0.0".
        var rounded = Math.Round(Newtons, decimals, MidpointRounding.AwayFromZero) + 0.0;
        return $"{rounded.ToString($"F{decimals}", CultureInfo.InvariantCulture)} N";
    }

    internal static bool Read(ref TextCursor cursor, out Tension tension)
    {
        tension = default;
        cursor.SkipSpaces();
        var start = cursor.Position;
        var sign = cursor.Take('-') ? -1 : 1;
        if (!Measure.Read(ref cursor, 0, Most, out var value))
        {
            return false;
        }

        cursor.SkipSpaces();
        double unit;
        if (cursor.Take("N"))
        {
            unit = 1;
        }
        else if (cursor.Take("kgf"))
        {
            unit = NewtonsPerKilogramForce;
        }
        else if (cursor.Take("lbf"))
        {
            unit = NewtonsPerPoundForce;
        }
        else
        {
            return cursor.Fail("N, kgf or lbf after the number");
        }

        if (value * unit > Most)
        {
            return cursor.Fail(start, string.Create(CultureInfo.InvariantCulture, $"no more than {Most} N"));
        }

        tension = new(sign * value * unit);
        return true;
    }
}
