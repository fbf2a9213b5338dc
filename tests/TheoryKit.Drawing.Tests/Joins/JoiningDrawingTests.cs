using TheoryKit.Drawing.Rendering;
using TheoryKit.Drawing.Sheets;
using TheoryKit.Fingering.Zones;
using TheoryKit.Paths.Joins;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Progressions;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Drawing.Tests.Joins;

public class JoiningDrawingTests
{
    private static readonly RendererSet All = DrawingRenderers.All;

    [Fact]
    public void An_exercise_in_a_terminal() => Expectations.Matches(All.Text(Samples.Joined), "joined.txt");

    [Fact]
    public void An_exercise_with_silence_and_a_lead_in() =>
        Expectations.Matches(All.Text(Samples.JoinedWithSilence), "joined-with-silence.txt");

    [Fact]
    public void An_exercise_on_a_page() =>
        Expectations.Matches(All.Html(Samples.Joined, new RenderContext("x")), "joined.html");

    [Fact]
    public void A_table() => Expectations.Matches(All.Text(Samples.JoinTable), "join-table.txt");

    [Fact]
    public void A_long_cycle_is_written_out_as_far_as_it_can_be_read_and_says_so()
    {
        // One note a chord up and down a neck of one long zone: 22 frets of three strings, each chord the same.
        var changes = Changes.Parse("4/4: C[1 b2 2 b3 3 4 b5 5 b6 6 b7 7]");
        var joined = JoinSearch.Find(
            new()
            {
                Changes = changes,
                Neck = new(Tuning.Parse("C3 C4 C5")),
                Shapes =
                [
                    ShapeRule
                        .NotesPerString(12)
                        .LayOut(
                            new(Tuning.Parse("C3 C4 C5")),
                            NoteName.Parse("C"),
                            changes.Chords[0].Chord!.Formula,
                            1
                        ),
                ],
                NotesPerChord = 1,
            }
        );
        Assert.Equal(70, joined.LeadIn.Chords + joined.Cycle.Chords);
        var text = All.Text(joined);
        Assert.Contains("its first 64 of ", text, StringComparison.Ordinal);
        Assert.Contains("in shapes of their own, 1 note per chord", text, StringComparison.Ordinal);
    }
}
