using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;

namespace TheoryKit.Tests.Theory.Chords;

public class FormulaTests
{
    [Fact]
    public void Text_round_trips() => Laws.RoundTrip(Gens.Formula);

    [Fact]
    public void Equal_when_the_degrees_are() => Laws.Equality(Gens.Formula);

    [Fact]
    public void Fuzz_of_the_parser() =>
        Fuzz.Parser<Formula>(["1 3 5", "1 b3 5 b7 9", "()", " 1,b3 , 5 ", "#11 b13", "1 ♭3 ♭♭7", "5 3 1"]);

    [Fact]
    public void Null_is_refused() => Laws.Null<Formula>();

    [Theory]
    [InlineData("5 b3 1", "1 b3 5")]
    [InlineData("9 b7 5 3 1", "1 3 5 b7 9")]
    [InlineData("1,3,5", "1 3 5")]
    [InlineData("#9 b9 1", "1 b9 #9")]
    [InlineData("()", "()")]
    public void Degrees_are_read_in_any_order_and_written_in_theirs(string text, string written) =>
        Assert.Equal(written, Formula.Parse(text).ToString());

    [Theory]
    [InlineData("", 1, "a number")]
    [InlineData("1 3 x", 6, "a number")]
    [InlineData("1 3 3", 5, "3 is there already")]
    [InlineData("1 35", 3, "a number from 1 to 15")]
    [InlineData("1 3b5", 4, "white space or a comma")]
    [InlineData("1,", 3, "a number")]
    public void Bad_text_is_refused_with_its_place(string text, int position, string expected) =>
        Laws.Refuses<Formula>(text, position, expected);

    [Fact]
    public void Is_the_sorted_set_of_its_degrees()
    {
        Gens.Degree.HashSet[0, 15]
            .Sample(set =>
            {
                var formula = new Formula(set);
                var sorted = set.Order().ToList();
                return formula.SequenceEqual(sorted)
                    && formula.Count == sorted.Count
                    && sorted.Index().All(each => formula[each.Index] == each.Item)
                    && sorted.All(formula.Contains)
                    && formula.PitchClasses.SequenceEqual(sorted.Select(degree => degree.PitchClass).Distinct().Order())
                    && Enumerable
                        .Range(-12, 36)
                        .All(n => formula.At(n) == FirstOrNull(sorted, d => d.PitchClass == (n + 12) % 12))
                    && Enumerable
                        .Range(1, 15)
                        .All(n => formula.WithNumber(n) == FirstOrNull(sorted, d => d.Number == n))
                    && formula.Simple.ToHashSet().SetEquals(set.Select(degree => degree.Simple));
            });
    }

    [Fact]
    public void Set_operations_do_what_they_do_to_sets()
    {
        Gens.Formula.Select(Gens.Formula, Gens.Degree)
            .Sample(
                (a, b, degree) =>
                    a.Union(b).ToHashSet().SetEquals(Enumerable.Union(a, b))
                    && a.Intersect(b).ToHashSet().SetEquals(Enumerable.Intersect(a, b))
                    && a.Except(b).ToHashSet().SetEquals(Enumerable.Except(a, b))
                    && a.Contains(b) == b.ToHashSet().IsSubsetOf(a)
                    && a.With(degree).Contains(degree)
                    && !a.Without(degree).Contains(degree)
                    && (a.Contains(degree) ? a.Without(degree).With(degree) == a : a.With(degree).Without(degree) == a)
            );
    }

    [Fact]
    public void Each_degree_at_most_once_when_made()
    {
        Assert.Throws<ArgumentException>(() => new Formula([new Degree(3), new Degree(3)]));
        Assert.Throws<ArgumentOutOfRangeException>(() => Formula.Parse("1 3")[2]);
    }

    [Theory]
    // The design's own case, and chords whose spelling players get wrong.
    [InlineData("G#", "1 3 5 b7", "G# B# D# F#")]
    [InlineData("C", "1 b3 b5 bb7", "C Eb Gb Bbb")]
    [InlineData("Db", "1 b3 5 b7", "Db Fb Ab Cb")]
    [InlineData("D#", "1 3 #5", "D# F## A##")]
    [InlineData("Bb", "1 3 5 b7 #9 b13", "Bb D F Ab C# Gb")]
    [InlineData("Cb", "1 b3 b5 bb7", "Cb Ebb Gbb Bbbb")]
    public void Tones_are_spelled_by_number(string root, string formula, string tones) =>
        Assert.Equal(tones, string.Join(' ', Formula.Parse(formula).Tones(NoteName.Parse(root))));

    private static Degree? FirstOrNull(IEnumerable<Degree> degrees, Func<Degree, bool> condition)
    {
        foreach (var degree in degrees)
        {
            if (condition(degree))
            {
                return degree;
            }
        }

        return null;
    }
}
