using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Words;

namespace TheoryKit.Tests.Theory.Chords;

public sealed class ChordSymbolTests
{
    // By semitones over the root, how chord tones are usually spelled.
    private static readonly string[] Spellings =
    [
        "1",
        "b9 b2",
        "9 2",
        "b3 #9",
        "3",
        "11 4",
        "b5 #11 #4",
        "5",
        "#5 b13 b6",
        "6 13 bb7",
        "b7",
        "7",
    ];

    private static readonly Lazy<List<(Formula Formula, string? Symbol)>> All = new(() =>
        [.. Formulas().Select(formula => (formula, ChordSymbol.For(formula)))]
    );

    [Fact]
    public void Every_set_of_up_to_seven_tones_in_every_usual_spelling_is_read_back_by_its_symbol_and_no_two_share_one()
    {
        var (symbols, names) = (new HashSet<string>(), new HashSet<string>());
        foreach (var (formula, symbol) in All.Value)
        {
            var name = formula.InWords();
            Assert.True(names.Add(name), $"Two formulas are called {name}.");
            Assert.Equal(symbol is null, name.StartsWith("no usual name: 1", StringComparison.Ordinal));
            if (symbol is not null)
            {
                Assert.True(symbols.Add(symbol), $"Two formulas are written {symbol}.");
                Assert.Equal(formula, Chord.Parse($"C{symbol}").Formula);
                Assert.Equal(formula, Chord.Parse($"C{ChordSymbol.For(formula, "P")}").Formula);
            }
        }
    }

    [Fact]
    public void Two_tones_and_three_of_a_scale_with_a_third_or_fifth_have_a_symbol_in_some_spelling()
    {
        var named = All
            .Value.Where(each => each.Symbol is not null)
            .Select(each => each.Formula.PitchClasses)
            .ToHashSet();
        var nameless = All
            .Value.Select(each => each.Formula.PitchClasses)
            .Distinct()
            .Where(set => set.Count == 2 || (set.Count == 3 && IsWithinMajorScale(set) && ThirdsAndFifth.Overlaps(set)))
            .Where(set => !named.Contains(set));
        Assert.Equal("", string.Join("; ", nameless.Select(set => string.Join(' ', set))));
    }

    [Fact]
    public void No_symbol_goes_beyond_the_limits()
    {
        foreach (var (formula, _) in All.Value.Where((each, index) => each.Symbol is not null && index % 5 == 0))
        {
            var costs = ChordSymbol.Costs(formula)!;
            Assert.InRange(costs.Sum(cost => cost.Cost), 0, ChordSymbol.MaxCost);
            Assert.Equal(costs.Sum(cost => cost.Cost), ChordSymbol.Cost(formula));
            Assert.InRange(costs.Count(cost => cost.Reason is ReadingReason.Added), 0, 2);
            Assert.InRange(costs.Count(cost => cost.Reason is ReadingReason.Omitted), 0, 2);
        }
    }

    [Theory]
    [InlineData("1 3 b7", "7(no5)")]
    [InlineData("1 5 b7", "7(no3)")]
    [InlineData("3 5 b7 9", "9(no1)")]
    [InlineData("1 3 5 b7 9 11 13", "13add11")]
    [InlineData("1 b3 5 b7 9 11 13", "m13add11")]
    [InlineData("1 3 5 b7 b9 #11 13", "13(b9,#11)")]
    [InlineData("1 3 5 b7 b9 #9 #11 b13", "7(b9,#9,#11,b13)")]
    [InlineData("1 3 5 b7 9 #9", "9add#9")]
    [InlineData("1 b3 b5 b7 b13", "m7b5b13", "m7b5(b13)")]
    [InlineData("1 3 #5 9", "aug(add9)")]
    [InlineData("1 b3 5 b9", "maddb9")]
    [InlineData("1 3 5 b9", "addb9")]
    [InlineData("1 4 5 9", "sus4add9")]
    [InlineData("1 3 5 6 b7", "7add6")]
    [InlineData("1 b3 b5 bb7 7", "dim7(maj7)")]
    [InlineData("1 3 5 7 #11 13", "maj7(#11,add13)")]
    [InlineData("1 4 b7", "7sus4(no5)")]
    public void The_symbol_is_what_a_player_would_write(string formula, string written, string? canonical = null)
    {
        Assert.Equal(canonical ?? written, ChordSymbol.For(Formula.Parse(formula)));
        Assert.Equal(Formula.Parse(formula), Chord.Parse("C" + written).Formula);
    }

    [Theory]
    [InlineData("1")] // a note
    [InlineData("1 2 3 4 5 6 7")] // a scale
    [InlineData("1 b2 2 b3")] // a cluster
    [InlineData("1 b6")] // an interval
    [InlineData("1 3 5 #5 b6")] // one sound under two names
    [InlineData("1 3 5 bb9")] // no player's tone
    [InlineData("()")]
    public void What_no_player_would_recognise_has_no_symbol(string formula) =>
        Assert.Null(ChordSymbol.For(Formula.Parse(formula)));

    [Fact]
    public void Tones_of_every_known_quality_on_every_root_are_spelled_as_counting_keys_says()
    {
        foreach (var quality in ChordQuality.Known)
        {
            foreach (var root in NoteName.Common)
            {
                Assert.Equal(
                    quality.Formula.Select(degree => Spell(root.ToString(), degree.ToString())),
                    quality.On(root).Tones.Select(tone => tone.ToString())
                );
            }
        }
    }

    /// <summary>
    /// A second way to spell: walk the letters, count the keys of a piano from root to tone, and add the signs that make up the
    /// difference to where the major scale of the root puts it.
    /// </summary>
    private static string Spell(string root, string degree)
    {
        // Two octaves and a half of keys, black ones nameless.
        const string Keys = "C.D.EF.G.A.BC.D.EF.G.A.BC.D.EF.G.A.BC.D.EF.G.A.B";
        // Whole and half steps of a major scale.
        int[] steps = [2, 2, 1, 2, 2, 2, 1, 2, 2, 1, 2, 2, 2, 1];
        var number = int.Parse(degree.TrimStart('b', '#'), System.Globalization.CultureInfo.InvariantCulture);
        var wanted = steps.Take(number - 1).Sum() + degree.Count(c => c == '#') - degree.Count(c => c == 'b');

        var rootKey = Keys.IndexOf(root[0], StringComparison.Ordinal);
        var key = rootKey;
        for (var letters = 1; letters < number; letters++)
        {
            key = Keys.IndexOfAny([.. "ABCDEFG"], key + 1);
        }

        var rootSigns = root.Count(c => c == '#') - root.Count(c => c == 'b');
        var signs = rootKey + rootSigns + wanted - key;
        return Keys[key] + new string(signs > 0 ? '#' : 'b', Math.Abs(signs));
    }

    private static readonly HashSet<int> ThirdsAndFifth = [3, 4, 7];

    private static bool IsWithinMajorScale(PitchClassSet set) =>
        Enumerable
            .Range(0, 12)
            .Any(key => set.All(tone => "0 2 4 5 7 9 11".Split(' ').Contains($"{(tone + key) % 12}")));

    private static IEnumerable<Formula> Formulas()
    {
        for (var mask = 1; mask < 1 << 12; mask += 2)
        {
            IEnumerable<Formula> formulas = [Formula.Empty];
            for (var semitones = 0; semitones < 12; semitones++)
            {
                if ((mask & (1 << semitones)) != 0)
                {
                    var degrees = Spellings[semitones].Split(' ').Select(degree => Degree.Parse(degree)).ToArray();
                    formulas = formulas.SelectMany(_ => degrees, (formula, degree) => formula.With(degree));
                }
            }

            if (int.PopCount(mask) <= 7)
            {
                foreach (var formula in formulas)
                {
                    yield return formula;
                }
            }
        }
    }
}
