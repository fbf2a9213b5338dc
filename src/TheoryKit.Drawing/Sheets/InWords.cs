using System.Globalization;
using TheoryKit.Theory;

namespace TheoryKit.Drawing;

/// <summary>Values said in English words, for names and for readers who hear the page.</summary>
internal static class InWords
{
    private static readonly string[] Numbers =
    [
        "unison",
        "second",
        "third",
        "fourth",
        "fifth",
        "sixth",
        "seventh",
        "octave",
        "ninth",
        "tenth",
        "eleventh",
        "twelfth",
        "thirteenth",
        "fourteenth",
        "fifteenth",
    ];

    /// <summary>"minor third", "doubly augmented fourth", "descending perfect fifth".</summary>
    public static string Of(Interval interval)
    {
        var quality = interval.Quality;
        var name = quality[0] switch
        {
            'P' => "perfect",
            'M' => "major",
            'm' => "minor",
            'A' => Times(quality.Length) + "augmented",
            _ => Times(quality.Length) + "diminished",
        };
        return $"{(interval.Descends ? "descending " : "")}{name} {Number(interval.Number)}";
    }

    /// <summary>"third", and beyond the fifteenth "22nd".</summary>
    public static string Number(int number) => number <= Numbers.Length ? Numbers[number - 1] : Ordinal(number);

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

    /// <summary>"E flat", "F double sharp".</summary>
    public static string Of(NoteName note) =>
        note.Letter
        + note.Alteration switch
        {
            0 => "",
            > 0 => $" {Signs(note.Alteration)}sharp",
            _ => $" {Signs(-note.Alteration)}flat",
        };

    /// <summary>"one string", "3 strings".</summary>
    public static string Count(int count, string one, string? many = null) =>
        count == 1 ? $"1 {one}" : $"{count} {many ?? one + "s"}";

    /// <summary>"a", "a and b", "a, b and c".</summary>
    public static string List(IEnumerable<string> items)
    {
        var all = items.ToList();
        return all.Count <= 1 ? string.Concat(all) : $"{string.Join(", ", all.SkipLast(1))} and {all[^1]}";
    }

    private static string Signs(int count) =>
        count switch
        {
            1 => "",
            2 => "double ",
            3 => "triple ",
            _ => $"{count} times ",
        };

    private static string Times(int times) =>
        times switch
        {
            1 => "",
            2 => "doubly ",
            3 => "triply ",
            _ => $"{times} times ",
        };
}
