using Fractions;
using TheoryKit.Values;

namespace TheoryKit.Paths.Timing;

/// <summary>
/// How a beat is divided when eighths are swung: the part of the beat that its first half lasts. Equal when the part is. The
/// default value is straight, 1/2; two to one, as triplets have it, is 2/3. Derived: two of three triplet notes; no figure of players measured.
/// </summary>
/// <remarks>Text: <c>straight</c> or the part, as in <c>2/3</c>; from 1/2 up to, but not with, 1, in parts no smaller than 1/100.</remarks>
[ReadAs("a swing")]
public readonly partial record struct Swing : ISpanParsable<Swing>
{
    private const int MaxDenominator = 100;

    private readonly Fraction beyond; // beyond a half

    /// <summary>A swing.</summary>
    /// <param name="part">The part of the beat that its first half lasts, from 1/2 up to, but not with, 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">It is not, or its denominator is more than 100.</exception>
    public Swing(Fraction part)
    {
        if (!IsPart(part))
        {
            throw new ArgumentOutOfRangeException(nameof(part), $"{part}", Range);
        }

        beyond = (part - Half).Reduce();
    }

    /// <summary>Not swung.</summary>
    public static Swing Straight => default;

    /// <summary>Two to one: the first half lasts as long as two triplet notes.</summary>
    public static Swing Triplet { get; } = new(new Fraction(2, 3));

    /// <summary>The part of the beat that its first half lasts.</summary>
    public Fraction Part => (Half + beyond).Reduce();

    private static Fraction Half => new(1, 2);

    private const string Range =
        "A swing is a part of a beat from 1/2 up to, but not with, 1, in parts no smaller than 1/100.";

    /// <summary>When a written moment is played, exactly: each half of a beat is stretched or squeezed evenly.</summary>
    /// <param name="beat">The written moment in beats.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not a finite number.</exception>
    public Fraction Play(Fraction beat)
    {
        beat = Check.Finite(beat);
        if (beyond == Fraction.Zero)
        {
            return beat;
        }

        var whole = new Fraction(System.Numerics.BigInteger.Divide(beat.Numerator, beat.Denominator));
        var rest = beat - whole;
        if (rest < Fraction.Zero)
        {
            (whole, rest) = (whole - Fraction.One, rest + Fraction.One);
        }

        var played = rest < Half ? rest * 2 * Part : Part + (((rest - Half) * 2) * (Fraction.One - Part));
        return (whole + played).Reduce();
    }

    /// <summary>The swing as <see cref="Parse(string, IFormatProvider?)"/> reads it.</summary>
    public override string ToString() => beyond == Fraction.Zero ? "straight" : $"{Part}";

    internal static bool Read(ref TextCursor cursor, out Swing swing)
    {
        swing = default;
        if (cursor.Take("straight"))
        {
            return true;
        }

        var start = cursor.Position;
        if (
            !cursor.TakeNumber(3, out var over)
            || !cursor.Take('/')
            || !cursor.TakeNumber(3, out var under)
            || under == 0
            || new Fraction(over, under) is var part && !IsPart(part)
        )
        {
            return cursor.Fail(
                start,
                "straight, or the part of a beat that its first half lasts (2/3), from 1/2 up to 1"
            );
        }

        swing = new(part);
        return true;
    }

    private static bool IsPart(Fraction part) =>
        part >= Half && part < Fraction.One && part.Reduce().Denominator <= MaxDenominator;
}
