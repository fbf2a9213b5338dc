using Microsoft.DotNet.Interactive.Commands;
using Microsoft.DotNet.Interactive.Events;
using TheoryKit.Fingering.Retuning;
using TheoryKit.Interactive.Notebooks;

namespace TheoryKit.Interactive;

[Collection("one kernel at a time")]
public sealed class NotebookSearchTests
{
    [Fact]
    public async Task A_search_shows_a_bar_that_ends_as_words_and_returns_its_answer()
    {
        using var kernel = await NotebookKernel.Start();
        var shown = new List<KernelEvent>();
        using var watching = kernel.Root.KernelEvents.Subscribe(shown.Add);
        var html = (await kernel.Run(Cell(within: 1)))["text/html"];
        Assert.Contains("The least effort first", html, StringComparison.Ordinal);
        Assert.Contains(
            "role=\"progressbar\"",
            Html(shown.OfType<DisplayedValueProduced>().First()),
            StringComparison.Ordinal
        );
        var updates = shown.OfType<DisplayedValueUpdated>().ToList();
        Assert.InRange(updates.Count, 1, 102);
        Assert.Equal("729 tunings searched: ", Text(updates[^1])[.."729 tunings searched: ".Length]);
    }

    [Fact]
    public async Task A_search_that_is_cancelled_says_how_far_it_came()
    {
        using var kernel = await NotebookKernel.Start();
        var stopped = new TaskCompletionSource<string>();
        var isAsked = false;
        using var watching = kernel.Root.KernelEvents.Subscribe(happened =>
        {
            if (happened is DisplayEvent display)
            {
                if (Text(display).StartsWith("Stopped", StringComparison.Ordinal))
                {
                    stopped.TrySetResult(Text(display));
                }
                else if (!isAsked)
                {
                    isAsked = true;
                    _ = kernel.Root.SendAsync(new Cancel());
                }
            }
        });
        // Far more than can be searched here.
        var result = await kernel.Root.SendAsync(new SubmitCode(Cell(within: 12)));
        Assert.Single(result.Events.OfType<CommandFailed>());
        Assert.StartsWith(
            "Stopped after ",
            await stopped.Task.WaitAsync(TimeSpan.FromMinutes(1)),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task Outside_a_notebook_it_only_searches()
    {
        var query = new TuningQuery
        {
            Base = TheoryKit.Tunings.Necks.Neck.Guitar,
            Within = 1,
            Chords = WeightedChord.Of(TheoryKit.Theory.Chords.Chord.ParseList("Gm7 C7")),
        };
        Assert.Equal(TuningSearch.Find(query), await NotebookSearch.FindAsync(query));
    }

    private static string Cell(int within) =>
        $"var query = new TuningQuery {{ Base = Neck.Guitar, Within = {within}, Chords = WeightedChord.Of(Chord.ParseList(\"Gm7 C7\")) }};\n"
        + "await query.FindAsync()";

    private static string Html(DisplayEvent shown) =>
        shown.FormattedValues.First(static form => form.MimeType == "text/html").Value;

    private static string Text(DisplayEvent shown) =>
        shown.FormattedValues.FirstOrDefault(static form => form.MimeType == "text/plain")?.Value ?? "";
}
