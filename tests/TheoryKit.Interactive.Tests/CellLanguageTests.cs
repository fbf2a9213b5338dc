using Microsoft.DotNet.Interactive;
using Microsoft.DotNet.Interactive.Commands;
using Microsoft.DotNet.Interactive.CSharp;
using Microsoft.DotNet.Interactive.Events;
using TheoryKit.Theory;

namespace TheoryKit.Interactive;

[Collection("one kernel at a time")]
public sealed class CellLanguageTests
{
    private const string Chart = """
        #!changes --name tune --key "Eb major" --time 3/4
        Ebmaj7 | Cm7
        Fm7    | Bb7
        """;

    [Fact]
    public async Task A_chord_chart_is_shown_and_left_in_a_variable()
    {
        using var kernel = await NotebookKernel.Start();
        var events = await Submit(kernel, Chart);
        Assert.Empty(events.OfType<CommandFailed>().Select(static failed => failed.Message));
        var expected = Changes.Parse("3/4, Eb major: Ebmaj7 | Cm7 | Fm7 | Bb7");
        Assert.Equal(expected, Shown(events));
        Assert.Contains("<li", Html(events), StringComparison.Ordinal);
        Assert.Equal(expected, await Value<Changes>(kernel, "tune"));
        Assert.Contains(
            "Changes",
            (await kernel.Run("tune.GetType().FullName"))["text/plain"],
            StringComparison.Ordinal
        );
        Assert.Contains(
            "4",
            (await kernel.Run("tune.Transpose(Interval.Parse(\"M2\")).Bars.Count"))["text/plain"],
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData("#!changes\n3/4, F major: ii7 | V7", "changes", "3/4, F major: Gm7 | C7")]
    [InlineData("#!changes --time 3/4\n3/4: Gm7 | C7", "changes", "3/4: Gm7 | C7")]
    [InlineData("#!changes --key \"F major\" --name t1\nii7\nV7 | Imaj7\n", "t1", "F major: Gm7 | C7 | Fmaj7")]
    [InlineData("var before = 1;\n#!changes --name t2\n\nGm7 | C7", "t2", "Gm7 | C7")]
    public async Task Charts_are_read_with_their_options(string cell, string name, string changes)
    {
        using var kernel = await NotebookKernel.Start();
        var events = await Submit(kernel, cell);
        Assert.Empty(events.OfType<CommandFailed>().Select(static failed => failed.Message));
        Assert.Equal(Changes.Parse(changes), await Value<Changes>(kernel, name));
    }

    [Theory]
    [InlineData("#!changes\nGm7 | Xm7", 1, 6)]
    [InlineData("#!changes\nGm7\nC7 | H%", 2, 5)]
    [InlineData("var one = 1;\n#!changes\nGm7 |\n\n  Xm7", 4, 2)]
    [InlineData("#!changes --time 3/4\nXm7", 1, 0)]
    [InlineData("#!changes --time 3/x\nGm7", 0, 19)]
    [InlineData("#!changes --name tune --key \"Eb dur\"\nGm7", 0, 31)]
    [InlineData("#!changes --name 2tunes\nGm7", 0, 17)]
    public async Task What_cannot_be_read_is_underlined_where_it_stands(string cell, int line, int character)
    {
        using var kernel = await NotebookKernel.Start();
        var events = await Submit(kernel, cell);
        var message = Assert.Single(events.OfType<CommandFailed>()).Message;
        var underlined = Assert.Single(
            events.OfType<DiagnosticsProduced>().SelectMany(static each => each.Diagnostics)
        );
        Assert.Equal(
            (line, character),
            (underlined.LinePositionSpan.Start.Line, underlined.LinePositionSpan.Start.Character)
        );

        // The message shows the same line with the caret under the same character.
        var lines = message.Split('\n');
        Assert.Equal("  " + cell.Split('\n')[line], lines[^2]);
        Assert.Equal(character + 2, lines[^1].IndexOf('^', StringComparison.Ordinal));
        Assert.Contains($"line {line + 1}", lines[0], StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("class")]
    [InlineData("await")]
    [InlineData("a b")]
    [InlineData("x = 1; System.Environment.Exit(3); int y")]
    [InlineData("x;Console.WriteLine(1)")]
    [InlineData("@x")]
    [InlineData("x\\ny")]
    [InlineData("<b>x</b>")]
    public async Task A_name_that_is_no_identifier_reaches_nothing(string name)
    {
        using var kernel = await NotebookKernel.Start();
        var events = await Submit(kernel, $"#!changes --name \"{name}\"\nGm7 | C7");
        Assert.NotEmpty(events.OfType<CommandFailed>());
        Assert.Empty(events.OfType<DisplayedValueProduced>());
        Assert.Empty(events.OfType<StandardOutputValueProduced>());
    }

    [Fact]
    public async Task Loading_twice_adds_the_languages_once()
    {
        using var kernel = await NotebookKernel.Start();
        await InteractiveExtension.Load(kernel.Root);
        foreach (var name in CellLanguages.Names)
        {
            Assert.Single(kernel.Root.FindKernels(each => each.Name == name));
        }

        Assert.Empty((await Submit(kernel, Chart)).OfType<CommandFailed>());
    }

    private static object? Shown(IEnumerable<KernelEvent> events) =>
        events.OfType<DisplayedValueProduced>().First().Value;

    private static string Html(IEnumerable<KernelEvent> events) =>
        events
            .OfType<DisplayedValueProduced>()
            .First()
            .FormattedValues.First(static form => form.MimeType == "text/html")
            .Value;

    private static async Task<IReadOnlyList<KernelEvent>> Submit(NotebookKernel kernel, string cell)
    {
        var seen = new List<KernelEvent>();
        using (kernel.Root.KernelEvents.Subscribe(seen.Add))
        {
            await kernel.Root.SendAsync(new SubmitCode(cell));
        }

        return seen;
    }

    private static async Task<T?> Value<T>(NotebookKernel kernel, string name)
    {
        await Task.CompletedTask;
        var csharp = kernel.Root.FindKernels(static each => each is CSharpKernel).Cast<CSharpKernel>().Single();
        Assert.True(csharp.TryGetValue<T>(name, out var value), $"There is no variable {name}.");
        return value;
    }
}
