using TheoryKit.Tunings;

namespace TheoryKit.Drawing;

/// <summary>Values as captions print them.</summary>
internal static class Printed
{
    /// <summary>The tuning with printed signs, as players say it.</summary>
    public static string Of(Tuning tuning, IFormatProvider? naming) =>
        string.Join(
            ' ',
            tuning
                .Strings.Reverse()
                .Select(each => each.Open.ToString("P", naming) + (each.Start == 0 ? "" : $"@{each.Start}"))
        );

    private static readonly string[] Numbers =
    [
        "no",
        "one",
        "two",
        "three",
        "four",
        "five",
        "six",
        "seven",
        "eight",
        "nine",
        "ten",
        "eleven",
        "twelve",
    ];

    /// <summary>A small number in words.</summary>
    public static string Number(int number) => number < Numbers.Length ? Numbers[number] : $"{number}";

    /// <summary>The text with a capital first letter.</summary>
    public static string Capital(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];
}
