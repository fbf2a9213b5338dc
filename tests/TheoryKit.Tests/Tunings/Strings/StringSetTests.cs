using TheoryKit.Tunings.Necks;
using TheoryKit.Tunings.Strings;

namespace TheoryKit.Tests.Tunings.Strings;

public class StringSetTests
{
    [Fact]
    public void Text_round_trips() => Laws.RoundTrip(StringGens.Set);

    [Fact]
    public void Equal_when_written_alike() => Laws.Equality(StringGens.Set);

    [Fact]
    public void Null_is_refused() => Laws.Null<StringSet>();

    [Fact]
    public void Fuzz_of_the_parser() =>
        Fuzz.Parser<StringSet>([.. StringSet.Known.Select(static known => known.Set.ToString())], 20_000);

    [Theory]
    [InlineData("0.010 in plain steel", 21, "3 strings or more, with commas between them")]
    [InlineData("0.010 in plain steel 0.013 in plain steel", 22, "3 strings or more, with commas between them")]
    [InlineData("0.5 g/m, 0.5 g/m, ", 19, "a gauge with its material")]
    [InlineData(
        "1 g/m,1 g/m,1 g/m,1 g/m,1 g/m,1 g/m,1 g/m,1 g/m,1 g/m,1 g/m,1 g/m,1 g/m,1 g/m",
        73,
        "no more than 12 strings"
    )]
    public void Bad_text_is_refused_with_its_place(string text, int position, string expected) =>
        Laws.Refuses<StringSet>(text, position, expected);

    [Fact]
    public void String_1_is_said_last()
    {
        var set = StringSet.Parse(
            "0.026 in nickel wound, 0.017 in plain steel, 0.013 in plain steel, 0.010 in plain steel"
        );
        Assert.Equal(FittedString.Parse("0.010 in plain steel"), set[1]);
        Assert.Equal(FittedString.Parse("0.026 in nickel wound"), set[4]);
        Assert.Equal(set[1], set.First());
        Assert.Throws<ArgumentOutOfRangeException>(() => set[0]);
        Assert.Throws<ArgumentOutOfRangeException>(() => set[5]);
    }

    [Fact]
    public void Another_string_in_one_place_leaves_the_others()
    {
        StringGens
            .Set.Select(Gen.Int[1, 12], StringGens.String)
            .Sample(
                (set, place, fitted) =>
                {
                    var number = 1 + (place % set.Count);
                    var changed = set.With(number, fitted);
                    for (var i = 1; i <= set.Count; i++)
                    {
                        Assert.Equal(i == number ? fitted : set[i], changed[i]);
                    }
                }
            );
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            StringSet.Known[0].Set.With(7, FittedString.Parse("0.010 in plain steel"))
        );
    }

    [Fact]
    public void What_is_no_set_is_refused()
    {
        var one = FittedString.Parse("0.010 in plain steel");
        Assert.Throws<ArgumentException>(() => new StringSet(one, one));
        Assert.Throws<ArgumentException>(() => new StringSet(Enumerable.Repeat(one, 13)));
        Assert.Throws<ArgumentException>(() => new StringSet(one, null!, one));
    }

    [Fact]
    public void Known_sets_are_found_by_their_names()
    {
        Assert.Equal(StringSet.Known.Length, StringSet.Known.Select(known => known.Name).Distinct().Count());
        Assert.Equal(StringSet.Known.Length, StringSet.Known.Select(known => known.Set).Distinct().Count());
        foreach (var known in StringSet.Known)
        {
            Assert.Equal(known.Set, StringSet.Find(known.Name.ToUpperInvariant()));
            Assert.Equal(known.Name, known.Set.Name);
        }

        Assert.Null(StringSet.Find("rubber bands"));
    }

    public static TheoryData<string, string, double, string> Usual =>
        new()
        {
            { "Extra light electric 9-42", "E2 A2 D3 G3 B3 E4", 648, "guitar" },
            { "Light electric 10-46", "E2 A2 D3 G3 B3 E4", 648, "guitar" },
            { "Light top heavy bottom 10-52", "D2 A2 D3 G3 B3 E4", 648, "guitar" },
            { "Medium electric 11-49", "Eb2 Ab2 Db3 Gb3 Bb3 Eb4", 648, "guitar" },
            { "Heavy electric 12-52", "E2 A2 D3 G3 B3 E4", 628, "guitar" },
            { "Baritone electric 14-68", "B1 E2 A2 D3 F#3 B3", 686, "guitar" },
            { "Seven-string electric 10-59", "B1 E2 A2 D3 G3 B3 E4", 648, "guitar" },
            { "Eight-string electric 10-74", "F#1 B1 E2 A2 D3 G3 B3 E4", 686, "guitar" },
            { "Extra light acoustic 10-47", "E2 A2 D3 G3 B3 E4", 645, "guitar" },
            { "Custom light acoustic 11-52", "E2 A2 D3 G3 B3 E4", 645, "guitar" },
            { "Light acoustic 12-53", "E2 A2 D3 G3 B3 E4", 645, "guitar" },
            { "Medium acoustic 13-56", "E2 A2 D3 G3 B3 E4", 645, "guitar" },
            { "Classical nylon", "E2 A2 D3 G3 B3 E4", 650, "guitar" },
            { "Light banjo 9-20", "G4@5 D3 G3 B3 D4", 670, "guitar" },
            { "Light mandolin 10-34", "G3 D4 A4 E5", 352, "guitar" },
            { "Bass 45-105", "E1 A1 D2 G2", 864, "bass" },
            { "Five-string bass 45-130", "B0 E1 A1 D2 G2", 864, "bass" },
            { "Fluorocarbon ukulele", "G4 C4 E4 A4", 380, "small" },
        };

    [Theory]
    [MemberData(nameof(Usual))]
    public void A_known_set_is_comfortable_in_the_tuning_it_is_for(
        string name,
        string tuning,
        double length,
        string limits
    )
    {
        var report = new Neck(Tuning.Parse(tuning), length).Tensions(StringSet.Find(name)!);
        var expected = limits switch
        {
            "bass" => TensionLimits.Bass,
            "small" => TensionLimits.Small,
            _ => TensionLimits.Default,
        };
        Assert.Equal(expected, report.Limits);
        Assert.Empty(report.Warnings);
        Assert.Null(report.Caution);
    }

    [Fact]
    public void Every_known_set_has_its_tuning_above() =>
        Assert.Equal(StringSet.Known.Select(known => known.Name).Order(), Usual.Select(row => (string)row[0]).Order());
}
