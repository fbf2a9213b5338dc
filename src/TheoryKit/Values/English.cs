using System.Globalization;
using Fractions;

namespace TheoryKit.Values;

/// <summary>The rules of English that every room of words needs: plurals, ordinals, lists.</summary>
internal static class English
{
    /// <summary>"1 string", "3 strings", "2 matches" where the plural is given.</summary>
    public static string Count(int count, string one, string? many = null) =>
        count == 1 ? $"1 {one}" : string.Create(CultureInfo.InvariantCulture, $"{count} {many ?? one + "s"}");

    /// <summary>"1 beat", "3/2 beats".</summary>
    public static string Beats(Fraction beats) => $"{beats.Reduce()} {(beats > Fraction.One ? "beats" : "beat")}";

    /// <summary>"a", "a and b", "a, b and c".</summary>
    public static string List(IEnumerable<string> items, string last = "and")
    {
        var all = items.ToList();
        return all.Count <= 1 ? string.Concat(all) : $"{string.Join(", ", all.SkipLast(1))} {last} {all[^1]}";
    }

    /// <summary>"1st", "2nd", "13th".</summary>
    public static string Ordinal(int number) =>
        number.ToString(CultureInfo.InvariantCulture)
        + (
            number % 100 is 11 or 12 or 13
                ? "th"
                : (number % 10) switch
                {
                    1 => "st",
                    2 => "nd",
                    3 => "rd",
                    _ => "th",
                }
        );

    /// <summary>"first", "third", "thirteenth"; beyond the fifteenth "22nd".</summary>
    public static string OrdinalInWords(int number) =>
        number is >= 1 and <= 15 ? Ordinals[number - 1] : Ordinal(number);

    /// <summary>"once", "twice", "3 times".</summary>
    public static string Times(int count) =>
        count switch
        {
            1 => "once",
            2 => "twice",
            _ => string.Create(CultureInfo.InvariantCulture, $"{count} times"),
        };

    private static readonly string[] Ordinals =
    [
        "first",
        "second",
        "third",
        "fourth",
        "fifth",
        "sixth",
        "seventh",
        "eighth",
        "ninth",
        "tenth",
        "eleventh",
        "twelfth",
        "thirteenth",
        "fourteenth",
        "fifteenth",
    ];
}
