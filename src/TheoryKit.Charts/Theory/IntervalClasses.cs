using System.Collections.Immutable;

namespace TheoryKit.Charts.Theory;

/// <summary>The six interval classes: an interval and its inversion are one, octaves aside.</summary>
internal static class IntervalClasses
{
    /// <summary>1 (semitone) to 6 (tritone).</summary>
    public static IEnumerable<int> All { get; } = Enumerable.Range(1, 6).ToImmutableArray();

    /// <summary>The two intervals of a class, <c>m2 M7</c>.</summary>
    public static string Short(int intervalClass) =>
        intervalClass switch
        {
            1 => "m2 M7",
            2 => "M2 m7",
            3 => "m3 M6",
            4 => "M3 m6",
            5 => "P4 P5",
            6 => "A4 d5",
            _ => throw new ArgumentOutOfRangeException(
                nameof(intervalClass),
                intervalClass,
                "An interval class is 1 (semitone) to 6 (tritone)."
            ),
        };

    /// <summary>The smaller interval's name, in the singular.</summary>
    public static string Name(int intervalClass) =>
        intervalClass switch
        {
            1 => "semitone",
            2 => "whole tone",
            3 => "minor third",
            4 => "major third",
            5 => "fourth",
            _ => "tritone",
        };

    /// <summary>The class of so many semitones, 0 to 6.</summary>
    public static int Class(int semitones)
    {
        var within = ((semitones % 12) + 12) % 12;
        return Math.Min(within, 12 - within);
    }
}
