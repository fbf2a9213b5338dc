using TheoryKit.Theory.Notes;
using TheoryKit.Values;

namespace TheoryKit.Drawing.Sheets;

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
    public static string Number(int number) => number <= Numbers.Length ? Numbers[number - 1] : English.Ordinal(number);

    /// <summary>"E flat", "F double sharp".</summary>
    public static string Of(NoteName note) =>
        note.Letter
        + note.Alteration switch
        {
            0 => "",
            > 0 => $" {Signs(note.Alteration)}sharp",
            _ => $" {Signs(-note.Alteration)}flat",
        };

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
