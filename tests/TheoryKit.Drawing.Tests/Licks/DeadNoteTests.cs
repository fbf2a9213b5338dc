using System.Xml.Linq;
using Fractions;
using TheoryKit.Drawing.Licks;
using TheoryKit.Drawing.Paths;
using TheoryKit.Drawing.Rendering;
using TheoryKit.Drawing.Sheets;
using TheoryKit.Drawing.Tests.Markup;
using TheoryKit.Fingering.Zones;
using TheoryKit.Licks;
using TheoryKit.Licks.Analysis;
using TheoryKit.Licks.Moves;
using TheoryKit.Licks.Words;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Drawing.Tests.Licks;

/// <summary>A dead note is a click: it has no pitch, no function and no place on the neck.</summary>
public class DeadNoteTests
{
    private static readonly RendererSet All = DrawingRenderers.All;

    /// <summary>High on the neck, with a click on an open string, whose B is the b9 of the chord.</summary>
    private static Lick Stoop { get; } =
        DrawnLicks.Of(
            "Stoop",
            "Kestrel Stairs",
            "3/4: Bb7",
            "1/2",
            "1:10 1:6/pull-off 2:9 2:0/dead_note 2:6 3:7/slide_out_down"
        );

    [Fact]
    public void A_tab_shows_an_x_without_a_mark()
    {
        var svg = XElement.Parse(Stoop.Path.Tab().Svg());
        var texts = svg.Descendants()
            .Where(static each => each.Name.LocalName == "text")
            .Select(static each => each.Value);
        Assert.Contains("x", texts);
        Assert.DoesNotContain("♭9", texts);
        Assert.Equal("5 notes and 1 dead one over B♭7", Stoop.Path.Tab().Title);
        Assert.Contains(
            "beat 2 and 1/2 dead note on string 2, for 1/2 beat;",
            Stoop.Path.Tab().Description,
            StringComparison.Ordinal
        );
        Assert.DoesNotContain("B3,", Stoop.Path.Tab().Description, StringComparison.Ordinal);
    }

    [Fact]
    public void A_neck_shows_what_sounds_only()
    {
        var neck = new PathNeck(Stoop.Path).Drawing;
        Assert.Equal(5, neck.Marks.Length);
        Assert.Equal(5, neck.Trail.Length);
        Assert.Equal(6, neck.FirstFret);
        Assert.DoesNotContain("open", neck.Description, StringComparison.Ordinal);
    }

    [Fact]
    public void Dead_notes_alone_are_drawn_too()
    {
        var lick = DrawnLicks.Of("Clicks", "", "4/4: A7", "1", "2:0/dead_note 3:0/dead_note");
        Assert.Equal("2 dead notes over A7", lick.Path.Tab().Title);
        var page = Fragment.Parse(All.Html(lick, new RenderContext()));
        Assert.Single(page.Descendants(), static each => each.Name.LocalName == "svg");
        Assert.Empty(new PathNeck(lick.Path).Drawing.Marks);
        Assert.Contains("2 dead notes", All.Text(lick), StringComparison.Ordinal);
        Assert.DoesNotContain("frets", All.Text(lick.Displaced(Fraction.One)), StringComparison.Ordinal);
    }

    [Fact]
    public void A_moved_click_has_no_function_and_does_not_widen_the_frets()
    {
        var text = All.Text(Stoop.Transpose(Interval.Parse("M2")));
        Assert.Contains("8 to 12, before 6 to 10", text, StringComparison.Ordinal);
        Assert.Contains("of 5 notes", text, StringComparison.Ordinal);
        Assert.Contains("dead note on string 2", text, StringComparison.Ordinal);
        Assert.DoesNotContain("B3", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_click_in_a_zone_stays_on_its_string_and_within() =>
        Samples
            .Of([.. Chord.Parse("Bb7").Zones(Neck.Guitar)])
            .Sample(zone =>
            {
                var tone = Stoop.InZone(zone).Tones.Single(static each => each.Before.IsDead);
                Assert.Equal(2, tone.After.Position.String);
                Assert.True(zone.Window.Contains(tone.After.Position.Fret));
                Assert.Null(tone.FunctionAfter);
                Assert.Equal("Bar 1, beat 2 and 1/2: the dead note on string 2 stays.", tone.InWords());
            });

    [Fact]
    public void A_click_does_what_another_click_does()
    {
        var louder = Stoop with
        {
            Name = "Sounding",
            Path = new(
                Stoop.Path.Neck,
                Stoop.Path.Notes.Select(static note => note.IsDead ? note with { Techniques = [] } : note),
                Stoop.Path.Time,
                Stoop.Path.Changes
            ),
        };
        Assert.Empty(new LickComparison([Stoop, Stoop]).Differences);
        Assert.Equal([new Fraction(3, 2)], new LickComparison([Stoop, louder]).Differences);
        Assert.Equal([new Fraction(3, 2)], new LickComparison([louder, Stoop]).Differences);
    }

    [Fact]
    public void An_analysis_counts_what_sounds()
    {
        var text = All.Text(Stoop.Path.Analyse());
        Assert.Contains("5 notes and 1 dead one over Bb7", text, StringComparison.Ordinal);
        Assert.Contains("All 5 notes are chord tones", text, StringComparison.Ordinal);
        Assert.DoesNotContain("B3  ", text, StringComparison.Ordinal);
        Assert.Equal(NotePart.Dead, Stoop.Path.Analyse().Notes[3].Part);
    }
}
