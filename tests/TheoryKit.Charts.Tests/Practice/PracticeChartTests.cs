using TheoryKit.Charts.Figures;
using TheoryKit.Charts.Practice;
using TheoryKit.Drawing.Rendering;
using TheoryKit.Licks.Practice;

namespace TheoryKit.Charts.Tests.Practice;

public class PracticeChartTests
{
    private const string Hostile = "</script><script>alert(1)</script><a href='x'>&%{x}";

    [Fact]
    public void Every_entry_with_a_tempo_is_a_mark_at_its_day()
    {
        var marks = Figures.Of(Samples.Practice.TempoChart())["data"]!
            .Where(static trace => (string?)trace["mode"] == "markers")
            .SelectMany(static trace =>
                trace["x"]!.Zip(trace["y"]!, (x, y) => ((string)x!, (double)y, (string)trace["name"]!))
            );
        Assert.Equal(
            Samples
                .Practice.Entries.Where(static entry => entry.Tempo is not null)
                .Select(static entry => ($"{entry.Date:yyyy-MM-dd}", entry.Tempo!.Value, entry.Outcome.Name))
                .Order(),
            marks.Order()
        );
    }

    [Fact]
    public void The_line_goes_through_the_fastest_clean_tempo_of_each_day()
    {
        var history = PracticeHistory.Read(
            "2026-01-01 \"x\" at 50: clean\n2026-01-01 \"x\" at 60: clean\n2026-01-01 \"x\" at 70: stumbled\n2026-01-02 \"x\" at 65: at ease\n"
        );
        var line = Figures.Of(history.TempoChart("x"))["data"]!.First();
        Assert.Equal([60, 65], line["y"]!.Select(static y => (int)y));
        Assert.Equal(["2026-01-01", "2026-01-02"], line["x"]!.Select(static x => (string)x!));
    }

    [Fact]
    public void Outcomes_differ_in_more_than_colour()
    {
        var marks = Figures.Of(Samples.Practice.TempoChart())["data"]!
            .Where(static trace => (string?)trace["mode"] == "markers")
            .Select(static trace =>
                (
                    (string)trace["marker"]!["symbol"]!,
                    (string)trace["marker"]!["color"]! == (string)trace["marker"]!["line"]!["color"]!
                )
            )
            .ToList();
        Assert.Equal(4, marks.Count);
        Assert.Equal(marks.Count, marks.Distinct().Count());
    }

    [Fact]
    public void Days_of_a_week_count_once_and_none_after_today()
    {
        var chart = Samples.Practice.DaysChart(new(2026, 11, 23), 7);
        Assert.Equal(
            [
                "2026-10-12 3",
                "2026-10-19 4",
                "2026-10-26 1",
                "2026-11-02 2",
                "2026-11-09 0",
                "2026-11-16 1",
                "2026-11-23 0",
            ],
            chart.Table.Rows.Select(static row => $"{row[0]} {row[1]}")
        );
    }

    [Fact]
    public void What_cannot_be_shown_is_said()
    {
        Assert.Contains(
            "\"Low tide turn\"",
            Assert.Throws<ArgumentException>(() => Samples.Practice.TempoChart("Low")).Message,
            StringComparison.Ordinal
        );
        Assert.Throws<ArgumentException>(() => Samples.Practice.TempoChart("Rain on copper"));
        Assert.Throws<ArgumentException>(() => PracticeHistory.Empty.TempoChart());
        Assert.Throws<ArgumentOutOfRangeException>(() => PracticeHistory.Empty.DaysChart(new(2026, 1, 1), 0));
    }

    [Fact]
    public void Names_and_notes_are_data()
    {
        var history = PracticeHistory.Of(
            new Practised
            {
                Date = new(2026, 1, 1),
                Lick = Hostile,
                Tempo = 60,
                Outcome = Outcome.Clean,
                Note = Hostile,
            }
        );
        foreach (StudyChart chart in new StudyChart[] { history.TempoChart(), history.DaysChart(new(2026, 1, 1)) })
        {
            var html = ChartRenderers.All.Html(chart, new RenderContext("test"));
            Assert.Single(System.Text.RegularExpressions.Regex.Matches(html, "<script"));
            Assert.Single(System.Text.RegularExpressions.Regex.Matches(html, "</script"));
            Assert.DoesNotContain("<a ", html, StringComparison.Ordinal);
            Assert.DoesNotContain("\\u003ca ", html, StringComparison.Ordinal);
        }
    }
}
