using Newtonsoft.Json.Linq;
using TheoryKit.Charts.Paths;
using TheoryKit.Charts.Theory;
using TheoryKit.Charts.Tunings;
using TheoryKit.Fingering.Grips;
using TheoryKit.Fingering.Hands;
using TheoryKit.Fingering.Retuning;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Charts.Tests.Tunings;

public class TuningChartTests
{
    // Five strings, none of them open, on a neck of five frets: not every chord has a grip.
    private static readonly TuningComparison Scarce = TuningComparison.Of(
        new Neck(Tuning.Standard, 648, 5),
        [Tuning.Standard, Tuning.Find("C standard")!],
        Samples.CopperWeather.Chords,
        Hand.Average,
        new() { MinSounding = 5, OpenStrings = OpenStrings.None }
    );

    [Fact]
    public void A_map_shows_the_least_effort_and_no_number_where_there_is_no_grip()
    {
        var chart = Scarce.MapChart();
        var shown = Figures.Of(chart)["data"]![0]!["z"]!;
        var without = 0;
        for (var row = 0; row < Scarce.Chords.Count; row++)
        {
            for (var column = 0; column < 2; column++)
            {
                var efforts = GripSearch
                    .Find(Scarce.Limits.For(Scarce.Chords[row], Scarce.Necks[column], Hand.Average))
                    .Select(grip => grip.Effort)
                    .ToList();
                Assert.Equal(efforts.Count == 0 ? null : efforts.Min(), chart.Value(row, column));
                Assert.Equal(efforts.Count == 0, shown[row]![column]!.Type == JTokenType.Null);
                Assert.Equal(
                    efforts.Count == 0 ? "no grip" : $"{efforts.Min():0.0}",
                    chart.Table.Rows[row][column + 1]
                );
                without += efforts.Count == 0 ? 1 : 0;
            }
        }

        Assert.InRange(without, 1, 7);
        Assert.Equal(without, Figures.Texts(chart).Count(static text => text == "no grip"));
        Assert.Contains("No grip: ", chart.Description, StringComparison.Ordinal);
        Assert.Contains(
            "no grip: ",
            (string?)Figures.Of(chart)["data"]![0]!["customdata"]!.ToString(),
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData(TuningMeasure.Grips)]
    [InlineData(TuningMeasure.Shapes)]
    [InlineData(TuningMeasure.CompleteZones)]
    public void A_map_counts_what_it_is_asked_to(TuningMeasure measure)
    {
        var chart = Samples.CopperWeather.MapChart(measure);
        var most = 0.0;
        for (var row = 0; row < 4; row++)
        {
            for (var column = 0; column < 3; column++)
            {
                var cell = Samples.CopperWeather.Columns[column].Cells[row];
                var expected = measure switch
                {
                    TuningMeasure.Grips => cell.Grips.Count,
                    TuningMeasure.Shapes => cell.DistinctShapes,
                    _ => cell.Zones.Count(static zone => zone.Shape.Missing.Count == 0),
                };
                Assert.Equal(expected, chart.Value(row, column));
                Assert.Equal($"{expected}", chart.Table.Rows[row][column + 1]);
                most = Math.Max(most, expected);
            }
        }

        var shown = Figures.Of(chart)["data"]![0]!["z"]!;
        Assert.Equal(1, shown.Max(static row => row.Max(static cell => (double)cell)));
        Assert.Equal(chart.Value(2, 1)!.Value / most, (double)shown[2]![1]!, 1e-9);
        Assert.Throws<ArgumentOutOfRangeException>(() => Samples.CopperWeather.MapChart((TuningMeasure)9));
    }

    [Fact]
    public void Quarters_lie_where_counting_puts_them() =>
        // Of 4k + 1 values the quarters are values themselves: so many lie below, so many above.
        Gen.Select(Gen.Int[0, 30], Gen.Int[0, 1000])
            .SelectMany(static pair => Gen.Int[0, 100].Array[(4 * pair.Item1) + 1])
            .Sample(static values =>
            {
                var spread = EffortSpread.Of(values.Select(static value => (double)value))!;
                var quarter = (values.Length - 1) / 4;
                Assert.Equal(values.Length, spread.Count);
                Assert.Equal(values.Min(), spread.Least);
                Assert.Equal(values.Max(), spread.Most);
                foreach (
                    var (part, at) in new[] { (1, spread.LowerQuarter), (2, spread.Median), (3, spread.UpperQuarter) }
                )
                {
                    Assert.True(values.Count(value => value < at) <= part * quarter);
                    Assert.True(values.Count(value => value <= at) >= (part * quarter) + 1);
                    Assert.Contains((int)at, values);
                }
            });

    [Fact]
    public void Between_two_values_quarters_are_drawn_straight()
    {
        // By hand: of 1 2 4 8 the first quarter is 3/4 of the way from 1 to 2, the median 3, the third 1/4 of the way from 4 to 8.
        Assert.Equal(new(4, 1, 1.75, 3, 5, 8), EffortSpread.Of([8, 1, 4, 2]));
        Assert.Equal(new(1, 5, 5, 5, 5, 5), EffortSpread.Of([5]));
        Assert.Null(EffortSpread.Of([]));
    }

    [Fact]
    public void A_box_holds_all_grips_and_a_mark_the_easiest_of_each_chord()
    {
        var chart = Samples.CopperWeather.EffortChart();
        var data = Figures.Of(chart)["data"]!;
        for (var row = 0; row < 3; row++)
        {
            var efforts = Samples
                .CopperWeather.Chords.SelectMany(chord =>
                    GripSearch.Find(Samples.CopperWeather.Limits.For(chord, Samples.CopperWeather.Necks[row]))
                )
                .Select(static grip => grip.Effort)
                .ToList();
            Assert.Equal(efforts.Count, chart.Spread(row)!.Count);
            Assert.Equal(efforts.Min(), (double)data[0]!["lowerfence"]![row]!, 1e-9);
            Assert.Equal(efforts.Max(), (double)data[0]!["upperfence"]![row]!, 1e-9);
        }

        Assert.Equal(12, data[1]!["x"]!.Count());
    }

    [Fact]
    public void A_tuning_without_a_grip_has_no_box_and_says_so()
    {
        var chart = TuningComparison
            .Of([Neck.Guitar, new(Tuning.Parse("E1 E2 E3"), 900, 3)], Samples.CopperWeather.Chords)
            .EffortChart();
        Assert.Null(chart.Spread(1));
        var figure = Figures.Of(chart);
        Assert.Single(figure["data"]![0]!["y"]!);
        Assert.EndsWith("<br>no grip", (string?)figure["layout"]!["yaxis"]!["ticktext"]![1], StringComparison.Ordinal);
        Assert.Contains("E1 E2 E3 has no grip", chart.Description, StringComparison.Ordinal);
    }

    [Fact]
    public void A_bar_is_as_high_as_the_string_pulls()
    {
        var data = Figures.Of(Samples.CopperWeather.TensionChart())["data"]!;
        for (var tuning = 0; tuning < 3; tuning++)
        {
            for (var place = 0; place < 6; place++)
            {
                // T = 4 L^2 f^2 mu, L in m.
                var number = 6 - place;
                var frequency =
                    440 * Math.Pow(2, (Samples.CopperWeather.Necks[tuning].Tuning[number].Open.MidiNumber - 69) / 12.0);
                var expected =
                    4 * 0.648 * 0.648 * frequency * frequency * Samples.CopperWeather.Strings![number].UnitWeight;
                Assert.Equal(expected, (double)data[tuning]!["y"]![place]!, 1e-6);
            }
        }
    }

    [Fact]
    public void Strings_beyond_the_limits_are_named_with_the_caution()
    {
        var calm = Samples.CopperWeather.TensionChart();
        Assert.Contains("Every string is comfortable", calm.Description, StringComparison.Ordinal);
        Assert.DoesNotContain(Cautions.Strings, calm.Description, StringComparison.Ordinal);
        foreach (var more in new[] { 0, 3 })
        {
            var chart = TuningComparison
                .Of(
                    Neck.Guitar,
                    [
                        Tuning.Find("All fifths")!,
                        Tuning.Find("Drop A")!,
                        .. Samples.CopperWeather.Necks.Take(more).Select(static neck => neck.Tuning),
                    ],
                    Samples.CopperWeather.Chords,
                    strings: Samples.CopperWeather.Strings
                )
                .TensionChart();
            Assert.Contains("string 1 in All fifths breaks (163.0 N)", chart.Description, StringComparison.Ordinal);
            Assert.Contains("in Drop A slack", chart.Description, StringComparison.Ordinal);
            Assert.Contains(Cautions.Strings, chart.Description, StringComparison.Ordinal);
            Assert.Contains(Figures.Texts(chart), static text => text.Contains("breaks", StringComparison.Ordinal));
            Assert.Contains(Figures.Texts(chart), static text => text.Contains("slack", StringComparison.Ordinal));
        }
    }

    [Fact]
    public void Without_strings_there_is_no_tension_and_the_error_says_what_to_give()
    {
        var error = Assert.Throws<ArgumentException>(() => Scarce.TensionChart());
        Assert.Contains("Give TuningComparison.Of a set of strings", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Steps_are_the_semitones_between_neighbouring_strings()
    {
        var chart = TuningComparison
            .Of([Neck.Guitar, new(Tuning.Find("Ukulele")!)], Samples.CopperWeather.Chords)
            .IntervalChart();
        Assert.Equal(["5 (P4)", "5 (P4)", "5 (P4)", "4 (M3)", "5 (P4)"], chart.Table.Rows[0].Skip(1));
        // G4 C4 E4 A4: a fifth down, a third, a fourth.
        Assert.Equal(["", "", "-7 (-P5)", "4 (M3)", "5 (P4)"], chart.Table.Rows[1].Skip(1));
        Assert.Equal(-7, chart.Step(1, 3)!.Value.Semitones);
        Assert.Null(chart.Step(1, 4));
        Assert.Contains("Alike in all: 3 to 2, 2 to 1.", chart.Description, StringComparison.Ordinal);
        Assert.Equal(JTokenType.Null, Figures.Of(chart)["data"]![0]!["z"]![1]![0]!.Type);
    }
}
