using TheoryKit.Drawing.Rendering;
using TheoryKit.Drawing.Sheets;
using TheoryKit.Licks.Analysis;
using TheoryKit.Licks.Words;

namespace TheoryKit.Drawing.Tests.Licks;

public class LickAnalysisDrawingTests
{
    [Fact]
    public void The_sheet_of_an_analysis_is_as_expected()
    {
        var (html, text) = (
            DrawingRenderers.All.Html(Samples.Analysed, new RenderContext()),
            DrawingRenderers.All.Text(Samples.Analysed)
        );
        Expectations.Matches(text, "analysis.txt");
        Expectations.Matches(html, "analysis.html");
    }

    [Fact]
    public void Every_drawn_lick_reads_well()
    {
        var text = string.Join(
            "\n",
            DrawnLicks.All.Select(static lick =>
                string.Join(
                    "\n",
                    [
                        lick.Name,
                        .. lick.Analyse().InWords(),
                        .. lick.Analyse().Bars.Select(static bar => $"  {string.Join(' ', bar.InWords())}"),
                    ]
                )
            )
        );
        Expectations.Matches(text, "analysis-words.txt");
    }

    [Fact]
    public void The_sample_has_every_part_but_that_without_chord()
    {
        var parts = Samples.Analysed.Notes.Select(static note => note.Part).ToHashSet();
        Assert.Subset(parts, Enum.GetValues<NotePart>().Where(static part => part != NotePart.NoChord).ToHashSet());
    }

    [Fact]
    public void Notes_are_named_in_the_readers_way_in_the_words_too()
    {
        var german = DrawingRenderers
            .Named(TheoryKit.Theory.Notes.NoteNaming.German)
            .Text(DrawnLicks.Analysed.Analyse());
        Assert.Contains("up to ", german, StringComparison.Ordinal);
        Assert.DoesNotContain("Bb", german, StringComparison.Ordinal);
    }
}
