using System.Globalization;

namespace TheoryKit.Values;

/// <summary>Reads the numbers in texts.</summary>
internal static class Measure
{
    /// <summary>Reads white space and a decimal number between two bounds, both included.</summary>
    public static bool Read(ref TextCursor cursor, double least, double most, out double value)
    {
        cursor.SkipSpaces();
        var start = cursor.Position;
        while (char.IsAsciiDigit(cursor.Current) || cursor.Current == '.')
        {
            cursor.Position++;
        }

        // Very small numbers are written with an exponent.
        if (cursor.Position > start && cursor.Current is 'E' && cursor.Rest is [_, '-', >= '0' and <= '9', ..])
        {
            cursor.Position += 2;
            while (char.IsAsciiDigit(cursor.Current))
            {
                cursor.Position++;
            }
        }

        return (
                double.TryParse(
                    cursor.Text[start..cursor.Position],
                    NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent,
                    CultureInfo.InvariantCulture,
                    out value
                )
                && value >= least
                && value <= most
            ) || cursor.Fail(start, string.Create(CultureInfo.InvariantCulture, $"a number from {least} to {most}"));
    }
}
