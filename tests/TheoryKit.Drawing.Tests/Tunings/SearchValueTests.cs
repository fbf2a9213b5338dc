using TheoryKit.Drawing.Rendering;
using TheoryKit.Drawing.Sheets;
using TheoryKit.Drawing.Tests.Markup;
using TheoryKit.Fingering.Retuning;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Necks;
using TheoryKit.Tunings.Strings;

namespace TheoryKit.Drawing.Tests.Tunings;

public class SearchValueTests
{
    private static readonly RendererSet All = DrawingRenderers.All;

    [Fact]
    public void Without_strings_it_is_said_that_tension_was_not_looked_at_and_where_plain_steel_would_break()
    {
        var query = new TuningQuery
        {
            Base = Neck.Parse("E2 A2 D3 G3 B3 Ab4"),
            Chords = WeightedChord.Of(Chord.ParseList("Em7")),
            Within = 1,
            Best = 3,
            Requirements = [.. Enumerable.Range(2, 5).Select(TuningRequirement.Keeps)],
        };
        var text = DrawingRenderers.All.Text(TuningSearch.Find(query));
        Assert.Contains("Tension was not looked at", text, StringComparison.Ordinal);
        Assert.Matches(
            "near breaking, or break.*string[ \u00a0]1 at[ \u00a0]A4 \\(9[0-9][ \u00a0]% of its breaking stress\\)",
            text
        );
        var fitted = DrawingRenderers.All.Text(
            TuningSearch.Find(query with { Base = Neck.Guitar, Strings = StringSet.Find("Light acoustic 12-53") })
        );
        Assert.DoesNotContain("Tension was not looked at", fitted, StringComparison.Ordinal);
    }

    [Fact]
    public void An_answer_as_text() => Expectations.Matches(All.Text(Samples.Search), "search-Copper-Weather.txt");

    [Fact]
    public void An_answer_of_no_tuning_says_what_cut_off_most() =>
        Expectations.Matches(All.Text(Samples.NoTuning), "search-no-tuning.txt");

    [Fact]
    public void A_bar_as_text_and_as_html()
    {
        var progress = new TuningProgress(300, 729, Samples.Search[0]);
        Expectations.Matches(All.Text(progress), "search-progress.txt");
        var bar = Fragment
            .Parse(All.Html(progress, new RenderContext()))
            .Descendants("div")
            .Single(static each => each.Attribute("role")?.Value == "progressbar");
        Assert.Equal("41", bar.Attribute("aria-valuenow")?.Value);
        Assert.NotEmpty(bar.Attribute("aria-label")!.Value);
    }

    [Fact]
    public void However_often_a_bar_is_shown_what_follows_has_the_same_ids()
    {
        var context = new RenderContext();
        All.Html(new TuningProgress(300, 729, Samples.Search[0]), context);
        Assert.Equal(new RenderContext().NextId(), context.NextId());
    }

    [Fact]
    public void A_bar_is_full_only_at_the_end()
    {
        Assert.Contains("] 99 %", All.Text(new TuningProgress(999_999, 1_000_000, null)), StringComparison.Ordinal);
        Assert.Contains("] 100 %", All.Text(new TuningProgress(1_000_000, 1_000_000, null)), StringComparison.Ordinal);
    }

    [Fact]
    public void The_ranking_has_a_row_for_each_and_for_the_runner_up()
    {
        var html = Fragment.Parse(All.Html(Samples.Search, new RenderContext()));
        var rows = html.Descendants("table").First().Element("tbody")!.Elements("tr").Count();
        Assert.Equal(Samples.Search.Count + (Samples.Search.RunnerUp is null ? 0 : 1), rows);
    }

    [Fact]
    public void The_caution_of_strings_stands_where_one_is_tuned_up_and_only_there()
    {
        foreach (var found in Samples.Search)
        {
            Assert.Equal(
                found.Offsets.Any(static offset => offset > 0),
                All.Text(found).Contains(Cautions.Strings, StringComparison.Ordinal)
            );
        }
    }

    [Fact]
    public void Notes_in_what_is_required_are_named_in_the_readers_way() =>
        Assert.Equal(
            "an open B",
            DrawingRenderers.Named(NoteNaming.German).Text(TuningRequirement.Drone(NoteName.Parse("Bb"))).Trim()
        );
}
