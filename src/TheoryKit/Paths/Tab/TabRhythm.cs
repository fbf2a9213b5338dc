using System.Globalization;
using System.Numerics;
using Fractions;

namespace TheoryKit.Paths;

/// <summary>Values of a row of rhythm: letters, dots, tuplets, or beats in parentheses.</summary>
internal static class TabRhythm
{
    /// <summary>Letters from a whole note down to a 64th.</summary>
    public const string Letters = "whqestx";

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
}
