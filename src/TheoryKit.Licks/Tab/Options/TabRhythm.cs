using System.Globalization;
using System.Numerics;
using Fractions;
using TheoryKit.Paths.Timing;

namespace TheoryKit.Licks.Tab.Options;

/// <summary>Values of a row of rhythm: letters, dots, tuplets, or beats in parentheses.</summary>
internal static class TabRhythm
{
    /// <summary>Letters from a whole note down to a 64th.</summary>
    public const string Letters = "whqestx";

    // Far beyond any rhythm; the time to add would grow with the square of what is tied.
    private const int LongestDenominator = 4096;

    /// <summary>A length in beats as it is written.</summary>
    /// <param name="beats">The length.</param>
    /// <param name="unit">The note that is a beat.</param>
    public static string Write(Fraction beats, int unit)
    {
        if (WrittenValue.Of(beats * new Fraction(1, unit)) is not { } value)
        {
            return $"({beats.Reduce()})";
        }

        var letter = Letters[BitOperations.Log2((uint)value.Unit)];
        return $"{letter}{new string('.', value.Dots)}{(value.Tuplet == 1 ? "" : value.Tuplet.ToString(CultureInfo.InvariantCulture))}";
    }

    /// <summary>In the place of how many as many notes of a tuplet stand: the next lower power of two, of 2 and 4 (in threes) 3.</summary>
    public static int InPlaceOf(int tuplet) =>
        tuplet switch
        {
            1 => 1,
            2 or 4 => 3,
            _ => 1 << (31 - BitOperations.LeadingZeroCount((uint)(tuplet - 1))),
        };

    /// <summary>Whether a word is a value, or several that are tied, or a rest.</summary>
    public static bool IsRhythm(string word)
    {
        var rest = word.AsSpan();
        rest = rest.Length > 1 && rest[0] is 'r' or 'R' ? rest[1..] : rest;
        foreach (var range in rest.Split('+'))
        {
            var part = rest[range];
            if (part.IsEmpty || !IsValue(part))
            {
                return false;
            }
        }

        return true;

        static bool IsValue(ReadOnlySpan<char> part)
        {
            if (part[0] == '(')
            {
                part = part[1..];
                if (!part.EndsWith(")"))
                {
                    return false;
                }

                part = part[..^1];
                var slash = part.IndexOf('/');
                return IsDigits(slash < 0 ? part : part[..slash]) && (slash < 0 || IsDigits(part[(slash + 1)..]));
            }

            if (!Letters.Contains(char.ToLowerInvariant(part[0]), StringComparison.Ordinal))
            {
                return false;
            }

            part = part[1..].TrimStart('.');
            return part.IsEmpty || (part.Length <= 4 && IsDigits(part));
        }

        static bool IsDigits(ReadOnlySpan<char> digits) =>
            digits.Length is > 0 and <= 18
            && !digits.ContainsAnyExceptInRange('0', '9')
            && digits.ContainsAnyExcept('0');
    }

    /// <summary>How many beats a word lasts that <see cref="IsRhythm"/>.</summary>
    /// <param name="word">The word.</param>
    /// <param name="unit">The note that is a beat.</param>
    public static Fraction Read(string word, int unit)
    {
        var sum = Fraction.Zero;
        foreach (var part in word.TrimStart('r', 'R').Split('+'))
        {
            if (sum.Denominator.GetBitLength() > LongestDenominator)
            {
                sum = sum.Reduce();
                if (sum.Denominator.GetBitLength() > LongestDenominator)
                {
                    // No measure holds it, whatever follows.
                    return sum;
                }
            }

            if (part[0] == '(')
            {
                var inner = part[1..^1].Split('/');
                sum += new Fraction(
                    BigInteger.Parse(inner[0], CultureInfo.InvariantCulture),
                    inner.Length > 1 ? BigInteger.Parse(inner[1], CultureInfo.InvariantCulture) : BigInteger.One
                );
                continue;
            }

            var value = 1 << Letters.IndexOf(char.ToLowerInvariant(part[0]), StringComparison.Ordinal);
            var dots = Math.Min(part.AsSpan(1).Count('.'), WrittenValue.MaxDots);
            var digits = part.AsSpan(1).TrimStart('.');
            var tuplet = digits.IsEmpty ? 1 : int.Parse(digits, CultureInfo.InvariantCulture);
            sum += new Fraction((1 << (dots + 1)) - 1, value << dots) * unit * new Fraction(InPlaceOf(tuplet), tuplet);
        }

        return sum.Reduce();
    }
}
