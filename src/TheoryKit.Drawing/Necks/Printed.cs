using TheoryKit.Tunings.Necks;

namespace TheoryKit.Drawing.Necks;

/// <summary>Values as captions print them.</summary>
internal static class Printed
{
    /// <summary>The tuning as players say it, with printed signs unless another format is asked for.</summary>
    public static string Of(Tuning tuning, IFormatProvider? naming, string? format = "P") =>
        string.Join(
            ' ',
            tuning
                .Strings.Reverse()
                .Select(each => each.Open.ToString(format, naming) + (each.Start == 0 ? "" : $"@{each.Start}"))
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
