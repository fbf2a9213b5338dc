using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Scales;

namespace TheoryKit.Tests.Theory.Notes;

/// <summary>
/// Spelling by a second method: on the line of fifths, where a name is one number, a degree is a fixed distance from its root and
/// nothing needs to be said of letters and semitones.
/// </summary>
public class SpellingTests
{
    [Fact]
    public void Every_known_formula_over_every_common_root()
    {
        var formulas = ChordQuality
            .Known.Select(quality => quality.Formula)
            .Concat(ScaleType.Known.Select(type => type.Formula))
            .ToList();
        Assert.Equal(21, NoteName.Common.Count);
        foreach (var root in NoteName.Common)
        {
            foreach (var formula in formulas)
            {
                Assert.Equal(
                    formula.Select(degree => OnTheLineOfFifths(root.ToString(), degree.ToString())),
                    formula.Tones(root).Select(tone => tone.ToString())
                );
            }
        }
    }

    [Fact]
    public void Every_degree_over_names_with_up_to_two_accidentals()
    {
        Gens.UsualNoteName.Select(Gens.Degree)
            .Sample((root, degree) => root.Add(degree).ToString() == OnTheLineOfFifths($"{root}", $"{degree}"));
    }

    // … Bb F C G D A E B F# …: seven names of one kind, then the same with a sharp more.
    private static string OnTheLineOfFifths(string root, string degree)
    {
        var accidentals = degree.TrimEnd("0123456789".ToCharArray());
        var number = (int.Parse(degree[accidentals.Length..]) - 1) % 7;
        int[] fifths = [0, 2, 4, -1, 1, 3, 5];
        var place =
            "FCGDAEB".IndexOf(root[0], StringComparison.Ordinal)
            + (7 * Sharps(root[1..]))
            + fifths[number]
            + (7 * Sharps(accidentals));
        var kind = (int)Math.Floor(place / 7.0);
        return "FCGDAEB"[place - (7 * kind)] + new string(kind > 0 ? '#' : 'b', Math.Abs(kind));
    }

    private static int Sharps(string accidentals) =>
        accidentals.Count(c => c == '#') - accidentals.Count(c => c == 'b');
}
