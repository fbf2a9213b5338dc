using System.Text.RegularExpressions;
using TheoryKit.Charts.Figures;
using TheoryKit.Charts.Paths;
using TheoryKit.Charts.Practice;
using TheoryKit.Charts.Theory;
using TheoryKit.Charts.Tunings;
using TheoryKit.Drawing.Rendering;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Scales;

namespace TheoryKit.Charts.Tests;

public partial class StudyChartTests
{
    private const string Hostile = "</script><script>alert(1)</script><a href='http://example.org'>&\"%{x}";

    private static readonly Dictionary<string, StudyChart> Charts = new()
    {
        ["interval-content"] = new IntervalContentChart(Samples.Sevenths),
        ["interval-content-of-many"] = new IntervalContentChart(Samples.Many),
        ["shared-tones"] = new SharedTonesChart(Samples.NineTinBoats),
        ["ladder"] = new LadderChart(Samples.Many),
        ["formula-map"] = new FormulaMapChart(Samples.Many),
        ["join-map"] = new JoinMapChart(Samples.NineTinBoatsJoined),
        ["one-tone-away"] = new OneToneAwayChart(Samples.Many),
        ["tuning-map"] = new TuningMapChart(Samples.CopperWeather),
        ["effort-distribution"] = new EffortDistributionChart(Samples.CopperWeather),
        ["tension"] = new TensionChart(Samples.CopperWeather),
        ["contour"] = Samples.NineTinBoatsLine.ContourChart(),
        ["interval-layout"] = new IntervalLayoutChart(Samples.CopperWeather),
        ["tempo"] = Samples.Practice.TempoChart(),
        ["tempo-of-one"] = Samples.Practice.TempoChart("Low tide turn"),
        ["practice-days"] = Samples.Practice.DaysChart(new(2026, 11, 24), 8),
    };

    public static TheoryData<string> Kinds { get; } = [.. Charts.Keys];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void The_text_says_all_the_picture_shows(string kind) =>
        Expectations.Matches(ChartRenderers.All.Text(Charts[kind]), $"{kind}.txt");

    [Theory]
    [MemberData(nameof(Kinds))]
    public void The_fragment_names_itself_and_refers_to_nothing_outside(string kind)
    {
        var chart = Charts[kind];
        var html = ChartRenderers.All.Html(chart, new RenderContext("test"));
        Assert.Contains(
            $"aria-label=\"{System.Net.WebUtility.HtmlEncode($"{chart.Title}. {chart.Description}")}\"",
            html,
            StringComparison.Ordinal
        );
        Assert.DoesNotMatch(Outside(), html);
        Assert.All(
            chart.Tabulate("P").Rows,
            row => Assert.Contains($"<th scope=\"row\">{row[0]}</th>", html, StringComparison.Ordinal)
        );
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void The_chart_has_titles_on_it_and_on_its_axes(string kind)
    {
        var chart = Charts[kind];
        var layout = Figures.Of(chart)["layout"]!;
        Assert.Equal(chart.Title, (string?)layout["title"]!["text"]);
        Assert.All(["xaxis", "yaxis"], axis => Assert.NotEmpty((string)layout[axis]!["title"]!["text"]!));
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Colours_are_plain_for_plotly_and_by_name_for_our_pages(string kind)
    {
        var chart = Charts[kind];
        Assert.DoesNotContain("var(", Figures.Of(chart).ToString(), StringComparison.Ordinal);
        var html = ChartRenderers.All.Html(chart, new RenderContext("test"));
        Assert.DoesNotContain(
            "\"#",
            html[html.IndexOf("<script>", StringComparison.Ordinal)..],
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void A_name_cannot_break_out_of_its_place()
    {
        NamedFormula[] formulas = [Samples.Named(Hostile, "1 3 5"), Samples.Named("m", "1 b3 5")];
        StudyChart[] charts =
        [
            formulas.IntervalContentChart(),
            formulas.LadderChart(),
            formulas.MapChart(),
            formulas.OneToneAwayChart(),
        ];
        foreach (var chart in charts)
        {
            var html = ChartRenderers.All.Html(chart, new RenderContext("test"));
            Assert.Single(Regex.Matches(html, "<script"));
            Assert.Single(Regex.Matches(html, "</script"));
            Assert.DoesNotContain("<a ", html, StringComparison.Ordinal);
            Assert.DoesNotContain("\\u003ca ", html, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_table_and_a_named_formula_show_by_themselves()
    {
        var context = new RenderContext("test");
        Assert.Contains(
            "<th scope=\"row\">a&lt;b</th>",
            Html(
                new ChartTable(
                    ["name"],
                    [
                        ["a<b"],
                    ]
                )
            ),
            StringComparison.Ordinal
        );
        Assert.Equal("<span><strong>my ♭9</strong> 1 ♭9</span>", Html(Samples.Named("my b9", "1 b9")));
        Assert.Equal("my b9: 1 b9", ChartRenderers.All.Text(Samples.Named("my b9", "1 b9")));

        string Html(object value) => ChartRenderers.All.Html(value, context);
    }

    [Fact]
    public void Charts_of_the_same_values_are_equal()
    {
        Assert.Equal(new LadderChart(Samples.Many), Samples.Many.LadderChart());
        Assert.Equal(new LadderChart(Samples.Many).GetHashCode(), Samples.Many.LadderChart().GetHashCode());
        Assert.NotEqual<StudyChart>(new LadderChart(Samples.Many), new LadderChart(Samples.Sevenths));
        Assert.NotEqual<StudyChart>(new LadderChart(Samples.Many), new IntervalContentChart(Samples.Many));
    }

    [Fact]
    public void A_formula_without_a_name_goes_by_its_degrees()
    {
        NamedFormula named = Formula.Parse("1 b3 5");
        Assert.Equal("1 b3 5", named.Name);
        Assert.Equal(new LadderChart(named), new[] { named.Formula }.Named().LadderChart());
    }

    [Theory]
    [InlineData("m7b5", "1 b3 b5 b7")]
    [InlineData("Bbm7b5", "1 b3 b5 b7")]
    [InlineData("F#m7b5/E", "1 b3 b5 b7")]
    public void Chords_and_qualities_are_printed_as_elsewhere(string name, string formula)
    {
        var chord = Chord.Parse(char.IsUpper(name[0]) ? name : "C" + name);
        var printed = chord.ToString("P");
        Assert.Equal(char.IsUpper(name[0]) ? printed : printed[1..], Samples.Named(name, formula).PrintedName);
    }

    [Theory]
    [InlineData("my 13#11", "my 13♯11")]
    [InlineData("with bb7", "with ♭♭7")]
    [InlineData("harmonic minor", "harmonic minor")]
    [InlineData("double b", "double b")]
    public void Other_names_have_flats_and_sharps_before_numbers_printed(string name, string printed) =>
        Assert.Equal(printed, Samples.Named(name, "1 3 5").PrintedName);

    [Fact]
    public void Qualities_scales_and_chords_bring_their_names()
    {
        Assert.Equal("m7b5", NamedFormula.From(ChordQuality.Parse("m7b5")).Name);
        Assert.Equal("major triad", NamedFormula.From(ChordQuality.Known[0]).Name);
        Assert.Equal("dorian", NamedFormula.From(ScaleType.Parse("dorian")).Name, ignoreCase: true);
        Assert.Equal(new LadderChart(Chord.Parse("Gm9")), new[] { Chord.Parse("Gm9") }.Named().LadderChart());
    }

    [Fact]
    public void The_whole_catalogue_fits_into_each_chart()
    {
        var all = ChordQuality.Known.Named().ToList();
        Assert.Equal(all.Count, Figures.Of(all.MapChart())["data"]!.Sum(static trace => trace["x"]!.Count()));
        Assert.NotEmpty(Figures.Of(all.OneToneAwayChart())["data"]!);
        Assert.NotEmpty(Figures.Of(all.IntervalContentChart())["data"]!);
        Assert.NotEmpty(Figures.Of(all.LadderChart())["data"]!);
    }

    [GeneratedRegex("""https?:|//[a-z]|\ssrc=|url\(|@import""", RegexOptions.IgnoreCase)]
    private static partial Regex Outside();
}
