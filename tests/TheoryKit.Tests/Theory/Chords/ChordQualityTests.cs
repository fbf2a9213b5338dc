using TheoryKit.Theory.Chords;

namespace TheoryKit.Tests.Theory.Chords;

public sealed class ChordQualityTests
{
    public static TheoryData<string> Names => [.. ChordQuality.Known.Select(quality => quality.Name)];

    [Fact]
    public void There_are_at_least_sixty() => Assert.True(ChordQuality.Known.Count >= 60);

    [Fact]
    public void No_two_share_a_symbol_a_name_a_formula_or_an_alias()
    {
        var known = ChordQuality.Known;
        Assert.Equal(known.Count, known.Select(quality => quality.Symbol).Distinct().Count());
        Assert.Equal(known.Count, known.Select(quality => quality.Name).Distinct().Count());
        Assert.Equal(known.Count, known.Select(quality => quality.Formula).Distinct().Count());
        string[] writings = [.. known.SelectMany(quality => quality.Aliases.Append(quality.Symbol))];
        Assert.Equal(writings.Length, writings.Distinct().Count());
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void The_symbol_and_every_alias_read_as_the_formula(string name)
    {
        var quality = ChordQuality.Parse(name);
        Assert.Equal(name, quality.ToString());
        foreach (var symbol in quality.Aliases.Append(quality.Symbol))
        {
            Assert.Equal(quality.Formula, Chord.Parse("C" + symbol).Formula);
            Assert.Same(quality, ChordQuality.Parse(symbol));
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void The_symbol_is_the_one_that_the_rules_compose(string name)
    {
        var quality = ChordQuality.Parse(name);
        if (quality.Symbol != "7alt")
        {
            Assert.Equal(quality.Symbol, ChordSymbol.Composed(quality.Formula));
        }
    }

    [Fact]
    public void Every_formula_is_found_by_itself_alone()
    {
        Assert.All(ChordQuality.Known, quality => Assert.Same(quality, ChordQuality.Find(quality.Formula)));
        Assert.Null(ChordQuality.Find(Formula.Parse("1 b2 4")));
    }

    [Fact]
    public void The_reader_survives_any_text() =>
        Fuzz.Parser<ChordQuality>(
            ChordQuality.Known.Select(quality => quality.Symbol).Where(symbol => symbol != ""),
            20_000
        );
}
