using TheoryKit.Theory.Scales;

namespace TheoryKit.Tests.Theory.Scales;

public class ScaleTypeTests
{
    // Each family as taught: the parent, then the names of its modes in order.
    public static TheoryData<string> Families =>
        [
            "major, dorian, phrygian, lydian, mixolydian, aeolian, locrian",
            "melodic minor, dorian b2, lydian augmented, lydian dominant, mixolydian b6, locrian #2, altered",
            "harmonic minor, locrian #6, ionian #5, dorian #4, phrygian dominant, lydian #2, ultralocrian",
            "harmonic major, dorian b5, phrygian b4, lydian b3, mixolydian b2, lydian augmented #2, locrian bb7",
            "double harmonic, lydian #2 #6, ultraphrygian, hungarian minor, mixolydian b2 b5, ionian #2 #5, locrian bb3 bb7",
            "major pentatonic, egyptian, man gong, ritusen, minor pentatonic",
        ];

    [Theory]
    [MemberData(nameof(Families))]
    public void Named_modes_are_rotations_of_their_parent(string family)
    {
        var types = family.Split(", ").Select(name => ScaleType.Parse(name)).ToArray();
        Assert.Equal(types.Select(type => type.Formula), types[0].Formula.Modes);
        Assert.Equal(types, types[0].Modes);
    }

    [Theory]
    [InlineData("hirajoshi", 2, "iwato")]
    [InlineData("hirajoshi", 4, "in")]
    [InlineData("hirajoshi", 5, "lydian pentatonic")]
    [InlineData("ryukyu", 2, "balinese")]
    [InlineData("blues", 2, "major blues")]
    [InlineData("neapolitan major", 2, "leading whole tone")]
    [InlineData("neapolitan major", 5, "major locrian")]
    public void Single_modes_are_rotations(string parent, int number, string mode) =>
        Assert.Equal(ScaleType.Find(mode)!.Formula, ScaleType.Find(parent)!.Formula.Mode(number));

    // Scales that go into themselves when moved: whole tone 2 semitones, augmented 4, octatonic 3, tritone 6, chromatic 1.
    [Theory]
    [InlineData("whole tone", 2)]
    [InlineData("augmented", 4)]
    [InlineData("inverted augmented", 4)]
    [InlineData("whole-half diminished", 3)]
    [InlineData("half-whole diminished", 3)]
    [InlineData("tritone", 6)]
    [InlineData("chromatic", 1)]
    public void Symmetric_scales_have_their_symmetry(string name, int period)
    {
        var classes = ScaleType.Find(name)!.Formula.PitchClasses;
        Assert.Equal(period, Enumerable.Range(1, 12).First(by => classes.All(member => classes.Contains(member + by))));
    }

    [Fact]
    public void The_two_octatonics_and_the_two_augmented_scales_are_modes_of_each_other()
    {
        Assert.Contains(ScaleType.Find("half-whole diminished"), ScaleType.Find("diminished")!.Modes);
        Assert.Contains(ScaleType.Find("inverted augmented"), ScaleType.Find("augmented")!.Modes);
    }

    [Fact]
    public void There_are_at_least_forty_with_distinct_formulas_and_names()
    {
        Assert.True(ScaleType.Known.Count >= 40);
        Assert.Distinct(ScaleType.Known.Select(type => type.Formula));
        Assert.Distinct(
            ScaleType.Known.SelectMany(type => type.Aliases.Append(type.Name)),
            StringComparer.OrdinalIgnoreCase
        );
    }

    [Fact]
    public void Every_type_is_a_scale_and_is_found_by_formula_and_by_each_name()
    {
        foreach (var type in ScaleType.Known)
        {
            Assert.True(type.Formula.IsScale, type.Name);
            Assert.Same(type, ScaleType.Find(type.Formula));
            Assert.Same(type, ScaleType.Alike(type.Formula)[0]);
            foreach (var name in type.Aliases.Append(type.Name))
            {
                Assert.Same(type, ScaleType.Find(name));
                Assert.Same(type, ScaleType.Parse(name.ToUpperInvariant()));
                Assert.Same(type, ScaleType.Parse($" {name.Replace(" ", "  ", StringComparison.Ordinal)} "));
            }
        }
    }

    [Fact]
    public void Any_text_gives_a_type_or_says_where_it_fails() =>
        Fuzz.Parser<ScaleType>(ScaleType.Known.SelectMany(type => type.Aliases.Append(type.Name)));
}
