using System.Collections.Immutable;
using TheoryKit.Cli.Running.Channel;

namespace TheoryKit.Cli.Running;

public sealed class CellOutputsTests
{
    private readonly CellOutputs outputs = new();

    public CellOutputsTests() => outputs.BeginCell();

    [Fact]
    public void Text_is_joined_until_something_else_is_shown()
    {
        outputs.Take(new Wrote("one ", false));
        outputs.Take(new Wrote("two", false));
        outputs.Take(new Wrote("loud", true));
        outputs.Take(new Wrote("three", false));
        Assert.Equal(
            [new ConsoleOutput("one two", false), new ConsoleOutput("loud", true), new ConsoleOutput("three", false)],
            outputs.Of(0)
        );
    }

    [Fact]
    public void A_surrogate_pair_may_come_in_halves()
    {
        outputs.Take(new Wrote("\ud83c", false));
        outputs.Take(new Wrote("\udfb8", false));
        Assert.Equal([new ConsoleOutput("🎸", false)], outputs.Of(0));
    }

    [Fact]
    public void Text_beyond_the_limit_of_a_cell_is_counted_and_noted()
    {
        var line = new string('x', 1_000_000);
        for (var i = 0; i < 100; i++)
        {
            outputs.Take(new Wrote(line, false));
        }

        var shown = outputs.Of(0);
        Assert.Equal(OutputLimits.CellCharacters, ((ConsoleOutput)shown[0]).Text.Length);
        Assert.StartsWith(
            "Left out here: 92,000,000 characters. A page shows at most 8,000,000",
            Note(shown),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void The_limit_tears_no_surrogate_pair()
    {
        outputs.Take(new Wrote(new string('x', OutputLimits.CellCharacters - 1) + "🎸", false));
        Assert.EndsWith("xx", ((ConsoleOutput)outputs.Of(0)[0]).Text, StringComparison.Ordinal);
        Assert.StartsWith("Left out here: 2 characters.", Note(outputs.Of(0)), StringComparison.Ordinal);
    }

    [Fact]
    public void Outputs_beyond_the_limit_are_counted_and_noted()
    {
        for (var i = 0; i < 5_000; i++)
        {
            outputs.Take(Value(null, "12345"));
        }

        Assert.Equal(OutputLimits.CellOutputs + 1, outputs.Of(0).Count);
        Assert.StartsWith(
            "Left out here: 15,000 characters and 3,000 outputs.",
            Note(outputs.Of(0)),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void A_value_is_shown_whole_or_not_at_all_and_what_is_smaller_still_goes_on_the_page()
    {
        outputs.Take(Value(null, new string('<', OutputLimits.CellCharacters + 1)));
        outputs.Take(Value(null, "small"));
        outputs.Take(new LeftOut(10, 1));
        Assert.Equal("small", ((ValueOutput)outputs.Of(0)[0]).Forms["text/html"]);
        Assert.StartsWith(
            "Left out here: 8,000,011 characters and 2 outputs.",
            Note(outputs.Of(0)),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void All_cells_of_a_notebook_share_a_limit()
    {
        for (var cell = 0; cell < 10; cell++)
        {
            outputs.Take(new Wrote(new string('x', 5_000_000), false));
            outputs.BeginCell();
        }

        var all = Enumerable.Range(0, 10).SelectMany(outputs.Of).OfType<ConsoleOutput>();
        Assert.Equal(OutputLimits.NotebookCharacters, all.Sum(static text => text.Text.Length));
    }

    [Fact]
    public void A_value_that_changes_without_end_takes_the_room_of_its_last_state()
    {
        outputs.Take(Value("bars", ""));
        for (var i = 0; i < 100; i++)
        {
            outputs.Take(Value("bars", new string('x', 1_000_000 + i), isUpdate: true));
        }

        Assert.Equal(1_000_099, ((ValueOutput)Assert.Single(outputs.Of(0))).Forms["text/html"].Length);
    }

    [Fact]
    public void A_change_that_is_too_long_leaves_what_was_there()
    {
        outputs.Take(Value("bars", "four"));
        outputs.Take(Value("bars", new string('x', OutputLimits.CellCharacters + 1), isUpdate: true));
        Assert.Equal("four", ((ValueOutput)outputs.Of(0)[0]).Forms["text/html"]);
        Assert.Contains("1 outputs", Note(outputs.Of(0)), StringComparison.Ordinal);
    }

    [Fact]
    public void A_later_cell_changes_what_an_earlier_one_showed()
    {
        outputs.Take(Value("bars", "four"));
        outputs.BeginCell();
        outputs.Take(Value("bars", "nine", isUpdate: true));
        Assert.Equal("nine", ((ValueOutput)Assert.Single(outputs.Of(0))).Forms["text/html"]);
        Assert.Empty(outputs.Of(1));
    }

    /// <summary>Whatever comes, in whatever order, the sums hold: what is shown and what is left out is what came.</summary>
    [Fact]
    public void Nothing_is_lost_without_being_counted() =>
        Gen.Select(Gen.Int[0, 3], Gen.Int[0, 3_000_000])
            .Array[0, 60]
            .Sample(
                static events =>
                {
                    var taken = new CellOutputs();
                    taken.BeginCell();
                    foreach (var (kind, length) in events)
                    {
                        var text = new string('x', length);
                        taken.Take(kind < 2 ? new Wrote(text, kind == 1) : Value(null, text));
                    }

                    var shown = taken.Of(0);
                    var kept = shown.Sum(static output =>
                        output switch
                        {
                            ConsoleOutput console => console.Text.Length,
                            ValueOutput value => value.Forms["text/html"].Length,
                            _ => 0,
                        }
                    );
                    var all = events.Sum(static each => (long)each.Item2);
                    Assert.True(kept <= OutputLimits.CellCharacters);
                    Assert.Equal(all == kept, !shown.Any(static output => output is WarningOutput) || all == kept);
                    if (all > kept)
                    {
                        Assert.StartsWith(
                            OutputLimits.Said(all - kept, 0).Split(" characters")[0],
                            Note(shown),
                            StringComparison.Ordinal
                        );
                    }
                },
                iter: 100
            );

    private static string Note(ImmutableList<CellOutput> shown) => ((WarningOutput)shown[^1]).Text;

    private static Showed Value(string? id, string html, bool isUpdate = false) =>
        new(id, isUpdate, ImmutableDictionary<string, string>.Empty.Add("text/html", html));
}
