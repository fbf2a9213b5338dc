using System.Xml.Linq;
using TheoryKit.Drawing.Rendering;
using TheoryKit.Drawing.Sheets;
using TheoryKit.Drawing.Tests.Markup;
using TheoryKit.Drawing.Tunings;
using TheoryKit.Fingering.Grips;
using TheoryKit.Fingering.Hands;
using TheoryKit.Fingering.Retuning;
using TheoryKit.Fingering.Words;
using TheoryKit.Theory.Chords;
using TheoryKit.Tunings.Necks;
using TheoryKit.Tunings.Strings;
using TheoryKit.Tunings.Words;

namespace TheoryKit.Drawing.Tests.Tunings;

public class ComparisonOfTuningsTests
{
    private static readonly RendererSet All = DrawingRenderers.All;

    [Fact]
    public void A_tune_in_four_tunings_reads_as_expected() =>
        Expectations.Matches(All.Text(Samples.Tunings), "tunings-Copper-Weather.txt");

    [Fact]
    public void Every_effort_stands_in_the_first_table_the_least_of_a_row_strong()
    {
        var rows = Table(0).Element("tbody")!.Elements("tr").ToList();
        for (var chord = 0; chord < Samples.Tunings.Chords.Count; chord++)
        {
            var cells = rows[chord].Elements().Skip(1).ToList();
            var efforts = Samples.Tunings.Columns.Select(column => column.Cells[chord].LeastEffort!.Value).ToList();
            Assert.Equal(efforts.Select(effort => $"{effort:0.0}"), cells.Select(cell => cell.Value));
            Assert.Equal(
                efforts.Select(effort => effort == efforts.Min()),
                cells.Select(cell => cell.Elements("span").Any())
            );
        }
    }

    [Fact]
    public void A_neck_is_drawn_for_every_tuning_and_a_box_for_every_grip()
    {
        var html = Fragment.Parse(All.Html(Samples.Tunings, new RenderContext()));
        Assert.Equal(4, html.Descendants().Count(each => (string?)each.Attribute("class") == "tk-part"));
        Assert.Equal(
            Samples.Tunings.Columns.Sum(static column => column.Playable),
            html.Descendants().Count(each => (string?)each.Attribute("class") == "tk-box")
        );
    }

    [Fact]
    public void What_is_not_asked_for_is_left_out()
    {
        var text = All.Text(new ComparisonOfTunings(Samples.Tunings) { ShowsGrips = false, ShowsNumbers = false });
        Assert.DoesNotContain("The easiest grips", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Chord by chord", text, StringComparison.Ordinal);
        Assert.Contains("Dadd9 in DADGAD", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_chord_of_choice_is_drawn() =>
        Assert.Contains(
            "Ebmaj7 in Open D",
            All.Text(new ComparisonOfTunings(Samples.Tunings) { Chord = Samples.Ebmaj7 }),
            StringComparison.Ordinal
        );

    [Fact]
    public void A_chord_without_a_grip_is_said_with_its_reason()
    {
        var comparison = TuningComparison.Of(
            Neck.Guitar,
            [Tuning.Standard],
            [Chord.Parse("Gm7")],
            Hand.Small.Scale(0.5),
            new()
            {
                OpenStrings = OpenStrings.None,
                MinSounding = 6,
                LastFret = 5,
            }
        );
        var text = All.Text(comparison);
        Assert.Matches(@"\n  Gm7 +no grip\n", text);
        var reason = comparison.Columns[0].Cells[0].Grips.Reason!.InWords();
        Assert.Contains($"Gm7: no grip. {reason}", text, StringComparison.Ordinal);
        Assert.Contains(reason, All.Text(comparison.Columns[0].Cells[0]), StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_amiss_with_the_strings_stands_with_the_caution()
    {
        var set = StringSet.Find("Light electric 10-46");
        var chords = Chord.ParseList("Dadd9");
        Tuning[] calm = [Tuning.Standard, Tuning.Find("DADGAD")!];
        Assert.DoesNotContain(
            Cautions.Strings,
            All.Text(TuningComparison.Of(Neck.Guitar, calm, chords, strings: set)),
            StringComparison.Ordinal
        );
        var high = TuningComparison.Of(Neck.Guitar, [.. calm, Tuning.Find("All fifths")!], chords, strings: set);
        var text = All.Text(high);
        Assert.Contains(", breaks", text, StringComparison.Ordinal);
        Assert.Contains(
            $"All fifths: {high.Columns[2].Tensions!.Warnings[0].InWords()}",
            text,
            StringComparison.Ordinal
        );
        Assert.Contains(Cautions.Strings, text, StringComparison.Ordinal);
    }

    [Fact]
    public void Any_string_tuned_up_goes_with_the_caution_with_and_without_strings()
    {
        var chords = Chord.ParseList("Dadd9");
        Tuning[] up = [Tuning.Standard, Tuning.Parse("E2 B2 D3 G3 B3 E4")];
        foreach (var set in new[] { null, StringSet.Find("Light electric 10-46") })
        {
            var text = All.Text(TuningComparison.Of(Neck.Guitar, up, chords, strings: set));
            Assert.Equal(2, text.Split(Cautions.Strings).Length);
        }

        Tuning[] down = [Tuning.Standard, Tuning.Find("Drop D")!];
        Assert.DoesNotContain(
            Cautions.Strings,
            All.Text(TuningComparison.Of(Neck.Guitar, down, chords)),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void The_tensions_have_a_heading_that_no_table_scrolls_away_and_figures_on_one_line()
    {
        var comparison = TuningComparison.Of(
            Neck.Guitar,
            [Tuning.Standard, Tuning.Find("DADGAD")!],
            Chord.ParseList("Dadd9"),
            strings: StringSet.Find("Light electric 10-46")
        );
        var html = Fragment.Parse(All.Html(comparison, new RenderContext()));
        var heading = html.Descendants()
            .Single(static each => !each.HasElements && each.Value == "Tension of the strings, Light electric 10-46");
        Assert.DoesNotContain(heading.Ancestors(), static each => (string?)each.Attribute("class") == "tk-wide");
        Assert.Contains("72.6\u00a0N", html.Value, StringComparison.Ordinal);
        Assert.DoesNotContain("72.6 N", html.Value, StringComparison.Ordinal);
    }

    [Fact]
    public void Tunings_of_the_same_effort_are_not_least_and_most()
    {
        var chords = Chord.ParseList("A D");
        var same = All.Text(TuningComparison.Of([Neck.Guitar, new(Tuning.Standard, 648, 21)], chords));
        Assert.Contains("in every tuning", same, StringComparison.Ordinal);
        Assert.DoesNotContain("most effort", same, StringComparison.Ordinal);
    }

    private static XElement Table(int place) =>
        Fragment.Parse(All.Html(Samples.Tunings, new RenderContext())).Descendants("table").ElementAt(place);
}
