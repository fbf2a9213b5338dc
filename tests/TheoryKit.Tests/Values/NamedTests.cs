using TheoryKit.Paths;
using TheoryKit.Paths.Joins;
using TheoryKit.Paths.MadeLines;
using TheoryKit.Theory.Scales;
using TheoryKit.Tunings.Necks;
using TheoryKit.Tunings.Strings;

namespace TheoryKit.Tests.Values;

public class NamedTests
{
    // What was typed, and a name that a reader of the message should find in it.
    public static TheoryData<string, string, string> Missed =>
        new()
        {
            { "tuning", "Opne D", "Open D" },
            { "tuning", "Dropped", "Drop D" },
            { "tuning", "DADGED", "DADGAD" },
            { "scale", "dorain", "dorian" },
            { "scale", "harmonic", "harmonic minor" },
            { "set of strings", "Light electric 9-42", "Light electric 10-46" },
            { "technique", "hamer-on", "hammer-on" },
            { "material", "nikel", "nickel" },
        };

    [Theory]
    [MemberData(nameof(Missed))]
    public void A_name_that_misses_is_told_with_the_nearest(string what, string typed, string meant)
    {
        var error = Assert.Throws<ArgumentException>(() => Named(what, typed));
        Assert.StartsWith(
            $"There is no {what} \"{typed}\"; the nearest names are ",
            error.Message,
            StringComparison.Ordinal
        );
        Assert.Contains(meant, error.Message, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void Every_known_name_finds_its_own()
    {
        Assert.All(Tuning.Known, static each => Assert.Equal(each.Tuning, Tuning.Named(each.Name)));
        Assert.All(StringSet.Known, static each => Assert.Equal(each.Set, StringSet.Named(each.Name)));
        Assert.All(StringMaterial.Known, static each => Assert.Same(each, StringMaterial.Named(each.Name)));
        Assert.All(ScaleType.Known, static each => Assert.Same(each, ScaleType.Named(each.Name)));
        Assert.All(Technique.Known, static each => Assert.Same(each, Technique.Named(each.Name)));
        Assert.All(JoinRule.Known, static each => Assert.Equal(each, JoinRule.Named(each.Name)));
        Assert.All(Approach.Known, static each => Assert.Same(each, Approach.Named(each.Name)));
    }

    private static object Named(string what, string name) =>
        what switch
        {
            "tuning" => Tuning.Named(name),
            "scale" => ScaleType.Named(name),
            "set of strings" => StringSet.Named(name),
            "technique" => Technique.Named(name),
            _ => StringMaterial.Named(name),
        };
}
