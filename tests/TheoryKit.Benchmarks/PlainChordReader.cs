using System.Text.RegularExpressions;

namespace TheoryKit.Benchmarks;

/// <summary>
/// Chord symbols the way one writes it in an afternoon: one compiled expression, one dictionary of qualities, alterations on
/// top. It reads the usual symbols only, as semitones without spelling, and tells no errors apart.
/// </summary>
internal static partial class PlainChordReader
{
    private static readonly Dictionary<string, int[]> Qualities = new()
    {
        [""] = [0, 4, 7],
        ["m"] = [0, 3, 7],
        ["dim"] = [0, 3, 6],
        ["aug"] = [0, 4, 8],
        ["sus4"] = [0, 5, 7],
        ["sus2"] = [0, 2, 7],
        ["6"] = [0, 4, 7, 9],
        ["m6"] = [0, 3, 7, 9],
        ["7"] = [0, 4, 7, 10],
        ["maj7"] = [0, 4, 7, 11],
        ["m7"] = [0, 3, 7, 10],
        ["dim7"] = [0, 3, 6, 9],
        ["9"] = [0, 4, 7, 10, 2],
        ["maj9"] = [0, 4, 7, 11, 2],
        ["m9"] = [0, 3, 7, 10, 2],
        ["11"] = [0, 4, 7, 10, 2, 5],
        ["13"] = [0, 4, 7, 10, 2, 9],
        ["maj13"] = [0, 4, 7, 11, 2, 9],
        ["m13"] = [0, 3, 7, 10, 2, 9],
    };

    private static readonly Dictionary<int, int> Natural = new()
    {
        [5] = 7,
        [9] = 2,
        [11] = 5,
        [13] = 9,
    };

    public static (int Root, List<int> Semitones, int Bass) Read(string symbol)
    {
        var match = Symbol().Match(symbol);
        if (!match.Success || !Qualities.TryGetValue(match.Groups["quality"].Value, out var quality))
        {
            throw new FormatException($"{symbol} is no chord.");
        }

        var semitones = new List<int>(quality);
        foreach (Capture change in match.Groups["change"].Captures)
        {
            var natural = Natural[int.Parse(change.Value[1..])];
            semitones.Remove(natural);
            semitones.Add(natural + (change.Value[0] == '#' ? 1 : -1));
        }

        var root = PitchClass(match.Groups["root"].Value);
        return (root, semitones, match.Groups["bass"].Success ? PitchClass(match.Groups["bass"].Value) : root);
    }

    private static int PitchClass(string note)
    {
        int[] white = [9, 11, 0, 2, 4, 5, 7];
        var accidental =
            note.Length == 1 ? 0
            : note[1] == '#' ? 1
            : -1;
        return (white[note[0] - 'A'] + accidental + 12) % 12;
    }

    [GeneratedRegex(
        @"^(?<root>[A-G][b#]?)(?<quality>(?:maj|m|dim|aug|sus)?\d*)\(?(?:(?<change>[b#]\d+),?)*\)?(?:/(?<bass>[A-G][b#]?))?$"
    )]
    private static partial Regex Symbol();
}
