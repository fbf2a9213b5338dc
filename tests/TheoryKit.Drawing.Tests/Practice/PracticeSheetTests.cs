using System.Xml.Linq;
using TheoryKit.Drawing.Rendering;
using TheoryKit.Drawing.Sheets;
using TheoryKit.Drawing.Tests.Markup;
using TheoryKit.Licks.Practice;

namespace TheoryKit.Drawing.Tests.Practice;

public class PracticeSheetTests
{
    private static readonly RendererSet All = DrawingRenderers.All;

    [Fact]
    public void What_to_practise_today_in_plain_text() =>
        Expectations.Matches(All.Text(PracticeSamples.Day), "practice-today.txt");

    [Fact]
    public void What_to_practise_today_as_a_page() =>
        Expectations.Matches(All.Html(PracticeSamples.Day, new RenderContext()), "practice-today.html");

    [Fact]
    public void The_log_with_the_line_that_is_not_understood() =>
        Expectations.Matches(All.Text(PracticeSamples.History), "practice-log.txt");

    [Fact]
    public void Each_due_lick_is_there_as_tab_and_the_caution_once()
    {
        var html = Fragment.Parse(All.Html(PracticeSamples.Day, new RenderContext()));
        Assert.Equal(PracticeSamples.Day.Licks.Count, html.Descendants("figure").Count());
        Assert.Equal(2, All.Text(PracticeSamples.Day).Split(Cautions.Hands).Length);
        Assert.Single(All.Text(PracticeHistory.Empty.Due(PracticeSamples.Today, [])).Split(Cautions.Hands));
    }

    [Fact]
    public void No_word_of_a_sheet_blames()
    {
        // A month without practice is a number.
        var day = PracticeSamples.History.Due(PracticeSamples.Today.AddDays(40), PracticeSamples.Folder);
        var text = All.Text(day);
        Assert.Contains("0 this week, 0 this month", text, StringComparison.Ordinal);
        foreach (var word in new[] { "miss", "fail", "lost", "broke", "late", "only", "should", "must", "!" })
        {
            Assert.DoesNotContain(word, text.Split(Cautions.Hands)[0], StringComparison.OrdinalIgnoreCase);
        }
    }

    [Fact]
    public void Text_of_users_is_data()
    {
        foreach (var value in PracticeSamples.Extremes)
        {
            var html = All.Html(value, new RenderContext());
            var parsed = Fragment.Parse(html);
            Assert.DoesNotContain(parsed.Descendants(), static each => each.Name.LocalName is "script" or "img" or "b");
            Assert.DoesNotContain(
                parsed.Descendants().Attributes(),
                static each => each.Name.LocalName.StartsWith("on", StringComparison.OrdinalIgnoreCase)
            );
        }
    }

    [Fact]
    public void One_lick_practised_several_times_is_one_lick()
    {
        var text = All.Text(PracticeSamples.History.Find("Turn of the stairs")!);
        Assert.Contains("Practised 4 times", text, StringComparison.Ordinal);
        Assert.DoesNotContain("4 licks", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_log_that_is_no_file_yet_says_that_nothing_was_practised() =>
        Assert.Equal(
            "practice.log\nNothing practised yet.",
            All.Text(PracticeLog.Open(System.IO.Path.Combine(System.IO.Path.GetTempPath(), "none", "practice.log")))
        );
}
