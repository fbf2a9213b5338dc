using TheoryKit.Theory.Notes;
using Burnside = TheoryKit.Tests.Theory.Notes.PitchClassSetTests.Burnside;

namespace TheoryKit.Tests.Theory.Notes;

public class SetClassTests
{
    [Fact]
    public void There_are_224_classes_as_Burnside_has_it()
    {
        Assert.Equal(224, Burnside.Bracelets());
        Assert.Equal(Burnside.Bracelets(), SetClass.All.Count);
    }

    [Fact]
    public void Classes_by_size()
    {
        Assert.Equal([1, 1, 6, 12, 29, 38, 50, 38, 29, 12, 6, 1, 1], Burnside.BraceletsBySize());
        Assert.Equal(
            Burnside.BraceletsBySize(),
            Enumerable.Range(0, 13).Select(size => SetClass.All.Count(each => each.Cardinality == size))
        );
    }

    [Fact]
    public void Two_sets_are_of_one_class_exactly_when_one_is_moved_or_mirrored_into_the_other()
    {
        Gens.PitchClassSet.Select(Gens.PitchClassSet)
            .Sample(
                (a, b) =>
                    (a.SetClass == b.SetClass)
                    == Enumerable.Range(0, 12).Any(n => a.Transpose(n) == b || a.Invert(n) == b)
            );
    }

    [Fact]
    public void Set_counts_add_up_to_all_sets()
    {
        Assert.Equal(1 << 12, SetClass.All.Sum(each => each.SetCount));
        foreach (var each in SetClass.All)
        {
            var sets = Enumerable
                .Range(0, 12)
                .SelectMany(n => new[] { each.PrimeForm.Transpose(n), each.PrimeForm.Invert(n) })
                .Distinct()
                .Count();
            Assert.Equal(sets, each.SetCount);
            Assert.Equal(
                Enumerable.Range(0, 12).Any(n => each.PrimeForm.Invert(n) == each.PrimeForm),
                each.IsInversionallySymmetrical
            );
        }
    }

    [Fact]
    public void Z_partners_are_mutual_and_twenty_three_pairs()
    {
        // Published count: 1 pair of tetrachords, 3 of pentachords, 15 of hexachords, and their complements (Forte 1973).
        var paired = SetClass.All.Where(each => each.ZPartner is not null).ToList();
        Assert.All(paired, each => Assert.Equal(each, each.ZPartner!.Value.ZPartner));
        Assert.Equal(
            [(4, 2), (5, 6), (6, 30), (7, 6), (8, 2)],
            paired.GroupBy(each => each.Cardinality).Select(group => (group.Key, group.Count()))
        );
        Assert.Equal("(0 1 3 7)", SetClass.Parse("(0 1 4 6)").ZPartner.ToString());
    }

    [Fact]
    public void Hexachord_and_complement_have_the_same_vector()
    {
        // The hexachord theorem (Babbitt).
        Assert.All(
            SetClass.All.Where(each => each.Cardinality == 6),
            each => Assert.Equal(each.IntervalVector, each.Complement.IntervalVector)
        );
    }

    [Theory]
    // Straus, Introduction to Post-Tonal Theory, list of set classes (prime forms by Rahn's rule).
    [InlineData("{0 4 7}", "(0 3 7)", "<0 0 1 1 1 0>", 1, 0)]
    [InlineData("{0 3 7}", "(0 3 7)", "<0 0 1 1 1 0>", 1, 0)]
    [InlineData("{0 4 8}", "(0 4 8)", "<0 0 0 3 0 0>", 3, 3)]
    [InlineData("{0 3 6}", "(0 3 6)", "<0 0 2 0 0 1>", 1, 1)]
    [InlineData("{0 4 7 11}", "(0 1 5 8)", "<1 0 1 2 2 0>", 1, 1)]
    [InlineData("{0 4 7 10}", "(0 2 5 8)", "<0 1 2 1 1 1>", 1, 0)]
    [InlineData("{0 3 7 10}", "(0 3 5 8)", "<0 1 2 1 2 0>", 1, 1)]
    [InlineData("{0 3 6 10}", "(0 2 5 8)", "<0 1 2 1 1 1>", 1, 0)]
    [InlineData("{0 3 6 9}", "(0 3 6 9)", "<0 0 4 0 0 2>", 4, 4)]
    [InlineData("{0 1 4 6}", "(0 1 4 6)", "<1 1 1 1 1 1>", 1, 0)]
    [InlineData("{0 2 4 7 9}", "(0 2 4 7 9)", "<0 3 2 1 4 0>", 1, 1)]
    [InlineData("{0 2 4 6 8 10}", "(0 2 4 6 8 10)", "<0 6 0 6 0 3>", 6, 6)]
    [InlineData("{0 2 4 5 7 9 11}", "(0 1 3 5 6 8 10)", "<2 5 4 3 6 1>", 1, 1)]
    [InlineData("{0 2 3 5 6 8 9 11}", "(0 1 3 4 6 7 9 10)", "<4 4 8 4 4 4>", 4, 4)]
    public void Textbook_values(string set, string primeForm, string vector, int transpositional, int inversional)
    {
        var setClass = PitchClassSet.Parse(set).SetClass;
        Assert.Equal(primeForm, setClass.ToString());
        Assert.Equal(vector, setClass.IntervalVector.ToString());
        Assert.Equal(transpositional, setClass.TranspositionalSymmetry);
        Assert.Equal(inversional, setClass.InversionalSymmetry);
    }

    [Fact]
    public void Text_round_trips_and_any_member_is_read()
    {
        foreach (var each in SetClass.All)
        {
            Assert.Equal(each, SetClass.Parse(each.ToString()));
        }

        Assert.Equal(SetClass.Parse("(0 3 7)"), SetClass.Parse("(2 6 9)"));
        Assert.Contains("position 6", Assert.ThrowsAny<FormatException>(() => SetClass.Parse("(0 3 x)")).Message);
    }

    [Fact]
    public void Order_is_by_size_then_members()
    {
        Assert.Equal(
            SetClass
                .All.OrderBy(each => each.Cardinality)
                .ThenBy(each => string.Concat(each.PrimeForm.Select(x => (char)('a' + x))), StringComparer.Ordinal),
            SetClass.All
        );
    }

    [Fact]
    public void Subset_classes_of_the_major_scale_hold_the_six_kinds_of_interval()
    {
        var major = PitchClassSet.Parse("{0 2 4 5 7 9 11}").SetClass;
        Assert.Equal(6, major.SubsetClasses(2).Count);
        Assert.True(major.Contains(SetClass.Parse("(0 3 7)")));
        Assert.False(major.Contains(SetClass.Parse("(0 4 8)")));
        Assert.Empty(major.SubsetClasses(8));
        Assert.Equal([SetClass.Of(PitchClassSet.Empty)], major.SubsetClasses(0));
    }
}
