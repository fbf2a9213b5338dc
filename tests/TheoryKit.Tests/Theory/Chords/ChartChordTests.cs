using System.Text.RegularExpressions;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;

namespace TheoryKit.Tests.Theory.Chords;

/// <summary>Chords as charts write them: <c>Expected/chords-in-charts.txt</c>, written by hand.</summary>
public sealed partial class ChartChordTests
{
    private const string Root = "C";

    public static TheoryData<string> Lines =>
        [
            .. File.ReadLines(At())
                .Where(static line =>
                    line.Contains(" : ", StringComparison.Ordinal) || line.Contains(": C", StringComparison.Ordinal)
                ),
        ];

    [Theory]
    [MemberData(nameof(Lines))]
    public void A_symbol_of_a_chart_has_its_tones_or_is_refused(string line)
    {
        var (tones, spellings) = (line[..line.IndexOf(':', StringComparison.Ordinal)].Trim(), Spellings(line));
        var wrong = new List<string>();
        foreach (var (spelling, index) in spellings.Select(static (each, index) => (each, index)))
        {
            var half = index % 2 == 0 ? "fitted" : "judging";
            var read = Chord.TryParse(spelling, null, out var chord) ? Said(chord) : "refused";
            if (read != tones)
            {
                wrong.Add($"{spelling} ({half}): {read}");
            }
        }

        Assert.True(wrong.Count == 0, $"{tones}: {string.Join("; ", wrong)}");
    }

    private static string Said(Chord chord)
    {
        Assert.Equal(NoteName.Parse(Root), chord.Root);
        return chord.Bass == chord.Root ? chord.Formula.ToString() : $"{chord.Formula} / {Bass(chord)}";
    }

    // By letters and semitones, counted here.
    private static string Bass(Chord chord)
    {
        var number = ((chord.Bass.Letter - chord.Root.Letter + 7) % 7) + 1;
        var natural = new[] { 0, 2, 4, 5, 7, 9, 11 }[number - 1];
        var alteration = (((chord.Bass.PitchClass - chord.Root.PitchClass - natural + 18) % 12) + 12) % 12 - 6;
        return new string(alteration < 0 ? 'b' : '#', Math.Abs(alteration)) + number;
    }

    private static IEnumerable<string> Spellings(string line) =>
        Spelling().Matches(line[(line.IndexOf(':', StringComparison.Ordinal) + 1)..]).Select(static each => each.Value);

    private static string At() =>
        Path.Combine(Repository.Root, "tests", "TheoryKit.Tests", "Expected", "chords-in-charts.txt");

    // Blanks part spellings, but not inside parentheses.
    [GeneratedRegex(@"(?:\([^)\s]*(?: [^)]*)?\)|[^\s])+")]
    private static partial Regex Spelling();
}
