using TheoryKit.Fingering.Retuning;
using TheoryKit.Theory.Chords;
using TheoryKit.Tunings.Necks;
using TheoryKit.Tunings.Strings;
using TheoryKit.Tunings.Turns;

namespace TheoryKit.Tests.Tunings.Strings;

public class TensionLimitsTests
{
    [Fact]
    public void Text_round_trips() => Laws.RoundTrip(StringGens.Limits);

    [Fact]
    public void Equal_when_written_alike() => Laws.Equality(StringGens.Limits);

    [Fact]
    public void Null_is_refused() => Laws.Null<TensionLimits>();

    [Fact]
    public void Fuzz_of_the_parser() =>
        Fuzz.Parser<TensionLimits>([
            "40 N to 170 N, 0.75 of breaking",
            "4 kgf to 15 kgf",
            "9 lbf to 40lbf,.8 of breaking",
        ]);

    [Theory]
    [InlineData("-1 N to 100 N", 1, "0 N or more")]
    [InlineData("40 N", 5, "\"to\" and the most tension")]
    [InlineData("40 N to 30 N", 9, "a tension of more than 40 N")]
    [InlineData("40 N to 170 N, 0 of breaking", 16, "a part above 0")]
    [InlineData("40 N to 170 N, 2 of breaking", 16, "a number from 0 to 1")]
    [InlineData("40 N to 170 N, 0.5", 19, "\"of breaking\"")]
    public void Bad_text_is_refused_with_its_place(string text, int position, string expected) =>
        Laws.Refuses<TensionLimits>(text, position, expected);

    [Fact]
    public void What_are_no_limits_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new TensionLimits(new(-1), new(10)));
        Assert.Throws<ArgumentOutOfRangeException>(() => new TensionLimits(new(10), new(10)));
        Assert.Throws<ArgumentOutOfRangeException>(() => new TensionLimits(new(10), new(20), 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => new TensionLimits(new(10), new(20), 1.01));
        Assert.Throws<ArgumentOutOfRangeException>(() => new TensionLimits(new(10), new(20), double.NaN));
    }

    [Theory]
    [InlineData(40, null, StringState.Comfortable)]
    [InlineData(170, 0.75, StringState.Comfortable)]
    [InlineData(39.9, 0.1, StringState.Slack)]
    [InlineData(170.1, null, StringState.Heavy)]
    [InlineData(170.1, 0.76, StringState.NearBreaking)]
    [InlineData(30, 0.76, StringState.NearBreaking)]
    [InlineData(100, 1.0, StringState.Breaking)]
    [InlineData(10, 3.0, StringState.Breaking)]
    public void The_worst_that_is_true_is_said(double newtons, double? part, StringState expected) =>
        Assert.Equal(expected, TensionLimits.Default.StateOf(new Tension(newtons), part));

    [Fact]
    public void Where_none_are_said_they_are_those_of_the_instrument()
    {
        var bass = Tuning.Find("Bass standard")!;
        var own = StringSet.Parse(
            "0.100 in nickel wound, 0.080 in nickel wound, 0.060 in nickel wound, 0.040 in nickel wound"
        );
        Assert.Equal(TensionLimits.Bass, TensionLimits.For(own, bass));
        Assert.Equal(TensionLimits.Bass, TensionLimits.For(StringSet.Find("Bass 45-105"), Tuning.Parse("E1 A1 D2 A2")));
        Assert.Equal(TensionLimits.Bass, TensionLimits.For(own, Tuning.Parse("E1 A1 D2 F#2"), bass));
        Assert.Equal(TensionLimits.Small, TensionLimits.For(null, Tuning.Find("Ukulele low G")));
        Assert.Equal(TensionLimits.Default, TensionLimits.For(StringSet.Known[0].Set, Tuning.Standard));
        Assert.Equal(TensionLimits.Default, TensionLimits.For(null, null, Tuning.Parse("E2 A2 D3 G3 B3 F4")));
        Assert.Equal(TensionLimits.Bass, TensionLimits.For("five-string bass"));

        var neck = new Neck(Tuning.Parse("E1 A1 D2 A2"), 864);
        Assert.Equal(TensionLimits.Bass, neck.Tensions(own, bass).Limits);
        Assert.Equal(TensionLimits.Bass, new Scordatura(bass, Tuning.Find("Bass drop D")!).Tensions(own, 864).Limits);
        Assert.Equal(
            TensionLimits.Bass,
            TuningComparison
                .Of(neck, [bass], Chord.ParseList("A"), limits: new() { MinSounding = 2 }, strings: own)
                .TensionLimits
        );
        var query = new TuningQuery
        {
            Base = neck.With(bass),
            Chords = WeightedChord.Of(Chord.ParseList("A")),
            Strings = own,
        };
        Assert.Equal(TensionLimits.Bass, query.TensionLimits);
        Assert.Equal(TensionLimits.Small, (query with { TensionLimits = TensionLimits.Small }).TensionLimits);
    }

    [Fact]
    public void A_string_within_the_limits_survives_a_bend_by_a_whole_tone() =>
        Assert.True(TensionLimits.Default.MostOfBreaking * Math.Pow(2, 4 / 12.0) < 1);
}
