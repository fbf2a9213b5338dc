using Microsoft.DotNet.Interactive;
using Microsoft.DotNet.Interactive.Commands;
using Microsoft.DotNet.Interactive.CSharp;
using Microsoft.DotNet.Interactive.Events;
using TheoryKit.Interactive.Cells;
using TheoryKit.Licks;
using TheoryKit.Licks.Tab;
using TheoryKit.Licks.Words;
using TheoryKit.Paths.Timing;
using TheoryKit.Theory.Progressions;

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
        await kernel.Run("var bars = tune.Transpose(Interval.Parse(\"M2\")).Bars.Count;");
        Assert.Equal(4, await Value<int>(kernel, "bars"));
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
    [InlineData("#!changes --time 3/4\n4/4: Gm7", 1, 0)]
    [InlineData("#!changes --time 3/x\nGm7", 0, 19)]
    [InlineData("#!changes --name tune --key \"Eb dur\"\nGm7", 0, 32)]
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

    private const string Hostile = "</script><script>alert(1)</script><img src=x onerror=alert(1)>";

    private const string Tab = """
        #!tab --name lowTide --changes "Gm9 | C13" --tempo 96 --tune "Nine Tin Boats" --tags "bossa, slow"
        E|-----------------|-----------------|
        B|---------6-------|-5---------------|
        G|-----7-------7---|-----7---5-------|
        D|-8---------------|-------------8---|
        A|-----------------|-----------------|
        E|-----------------|-----------------|
        """;

    [Fact]
    public async Task Tab_is_shown_and_left_as_a_lick_for_the_next_cell()
    {
        using var kernel = await NotebookKernel.Start();
        var events = await Submit(kernel, Tab);
        Assert.Empty(events.OfType<CommandFailed>().Select(static failed => failed.Message));
        var lick = (await Value<Lick>(kernel, "lowTide"))!;
        Assert.Equal(lick, Shown(events));
        Assert.Equal(
            ("Low tide", "Nine Tin Boats", 96.0, "bossa slow"),
            (lick.Name, lick.Tune, lick.Tempo, string.Join(' ', lick.Tags))
        );
        Assert.Equal(Changes.Parse("Gm9 | C13"), lick.Path.Changes);
        Assert.Equal(
            ["4:8", "3:7", "2:6", "3:7", "2:5", "3:7", "3:5", "4:8"],
            lick.Path.Notes.Select(static note => note.Position.ToString())
        );
        await kernel.Run(
            "Lick again = lowTide.Displaced(new Fraction(1, 2)).Lick; var notes = again.Path.Notes.Count;"
        );
        Assert.Equal(8, await Value<int>(kernel, "notes"));
    }

    [Fact]
    public async Task Tab_is_read_with_its_options()
    {
        using var kernel = await NotebookKernel.Start();
        Assert.Empty(
            (
                await Submit(
                    kernel,
                    "var one = 1;\n#!tab --tuning \"Open D\" --time 3/4 --swing 2/3 --title \"Slow \\\"rain\\\" \\\\\"\n"
                        + "D|-0---2---4---|\nA|-------------|\nF|-------------|\nD|-------------|\nA|-------------|\nD|-0-----------|\n#!csharp\nvar two = 2;"
                )
            )
                .OfType<CommandFailed>()
                .Select(static failed => failed.Message)
        );
        var lick = (await Value<Lick>(kernel, "lick"))!;
        Assert.Equal("Slow \"rain\" \\", lick.Name);
        Assert.Equal(TheoryKit.Tunings.Necks.Tuning.Find("Open D"), lick.Path.Neck.Tuning);
        Assert.Equal((TimeSignature.Parse("3/4"), Swing.Triplet), (lick.Path.Time, lick.Swing));
        Assert.Equal(2, await Value<int>(kernel, "two"));
    }

    [Fact]
    public async Task The_first_line_keeps_its_columns()
    {
        const string Text =
            "    Gm9               C13\ne|-----------------|-----------------|\nB|-5---6---5---3---|-8-------5---3---|\n";
        using var kernel = await NotebookKernel.Start();
        var events = await Submit(
            kernel,
            $"var one = 1;\n#!tab --name low\n{Text}G|-----------------|-----------------|"
        );
        Assert.Empty(events.OfType<CommandFailed>().Select(static failed => failed.Message));
        Assert.Equal(Changes.Parse("Gm9 | C13"), (await Value<Lick>(kernel, "low"))!.Path.Changes);
    }

    [Theory]
    [InlineData("#!tab --changes Gm9 | C13\nE|-0-|", 0, 20)]
    [InlineData("#!tab --title \"The big one --changes \"C7\"\nE|-0-|", 0, 38)]
    [InlineData("#!tab --name a --tempo\nE|-0-|", 0, 15)]
    [InlineData("#!tab --tempo --name a\nE|-0-|", 0, 6)]
    [InlineData("#!tab --tune \"open\nE|-0-|", 0, 13)]
    public async Task An_option_that_would_be_lost_is_underlined(string cell, int line, int character) =>
        await What_cannot_be_read_is_underlined_where_it_stands(cell, line, character);

    [Fact]
    public void A_value_without_its_quotation_marks_is_shown_with_them()
    {
        var wrong = Assert.Throws<CellException>(() =>
            CellDirective.Options("#!tab --changes Gm9 | C13 --tempo 96", ["--changes", "--tempo"])
        );
        Assert.EndsWith("--changes \"Gm9 | C13\"", wrong.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Quotation_marks_in_a_value_end_nothing()
    {
        using var kernel = await NotebookKernel.Start();
        var events = await Submit(
            kernel,
            "#!tab --title \"the \\\"q\\\"\" --tune \"Nine Tin Boats\" --changes \"C7\"\ne|-0---|\nB|---5-|\nG|-----|"
        );
        Assert.Empty(events.OfType<CommandFailed>().Select(static failed => failed.Message));
        var lick = (await Value<Lick>(kernel, "lick"))!;
        Assert.Equal(("the \"q\"", "Nine Tin Boats", "C7"), (lick.Name, lick.Tune, $"{lick.Path.Changes}"));
    }

    [Fact]
    public void Any_line_has_options_or_is_refused_at_a_place_inside_it()
    {
        string[] known = ["--name", "--tune"];
        var pieces = new[]
        {
            "--name",
            "--tune",
            "--else",
            " ",
            "\t",
            "\"",
            "\\",
            "a",
            "Gm9 | C13",
            "@x",
            "\u00e9",
            "-",
        };
        Gen.OneOf(
                Gen.Int[0, pieces.Length - 1].Select(index => pieces[index]).Array[0, 12].Select(string.Concat),
                Gen.String
            )
            .Sample(text =>
            {
                var line = "#!tab " + text.Replace('\n', ' ');
                try
                {
                    Assert.All(CellDirective.Options(line, known), each => Assert.Contains(each.Key, known));
                }
                catch (CellException error)
                {
                    Assert.Equal(1, error.Line);
                    Assert.InRange(error.Column, 1, line.Length);
                    Assert.InRange(error.Length, 1, line.Length + 1 - error.Column);
                }
            });
    }

    [Theory]
    [InlineData("#!tab\nno tab here", 1, 0)]
    [InlineData("#!tab --tempo fast\nE|-0-|", 0, 14)]
    [InlineData("#!tab --changes \"Gm9 | Xm\"\nE|-0-|", 0, 23)]
    [InlineData("#!tab --title \"a\\nb\"\nE|-0-|\nB|---|", 0, 6)]
    [InlineData("#!tab --swing 3\nE|-0-|\nB|---|", 0, 14)]
    public async Task What_is_no_tab_is_underlined_where_it_stands(string cell, int line, int character) =>
        await What_cannot_be_read_is_underlined_where_it_stands(cell, line, character);

    [Fact]
    public async Task What_was_read_in_one_of_several_ways_is_underlined_where_it_stands_and_told()
    {
        const string Text = "E|-0--------|\nB|----0-----|\nG|-----r7---|\nD|----------|\nA|----------|\nE|----------|";
        var remarks = PlainTab.Read(Text).Remarks;
        Assert.NotEmpty(remarks);
        using var kernel = await NotebookKernel.Start();
        var events = await Submit(kernel, $"var one = 1;\n#!tab\n\n{Text}");
        Assert.Empty(events.OfType<CommandFailed>().Select(static failed => failed.Message));
        Assert.Equal(
            remarks.Select(static remark => (remark.Line + 2, remark.Column - 1, remark.Length, remark.InWords())),
            events
                .OfType<DiagnosticsProduced>()
                .SelectMany(static each => each.Diagnostics)
                .Where(static each => each.Code == "TK")
                .Select(static each =>
                    (
                        each.LinePositionSpan.Start.Line,
                        each.LinePositionSpan.Start.Character,
                        each.LinePositionSpan.End.Character - each.LinePositionSpan.Start.Character,
                        each.Message
                    )
                )
        );
        var told = string.Concat(
            events
                .OfType<DisplayedValueProduced>()
                .SelectMany(static shown => shown.FormattedValues)
                .Select(static form => System.Net.WebUtility.HtmlDecode(form.Value))
        );
        Assert.All(remarks, remark => Assert.Contains(remark.InWords(), told, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Options_and_text_are_data_in_what_is_shown()
    {
        using var kernel = await NotebookKernel.Start();
        var events = await Submit(
            kernel,
            $"#!tab --title \"{Hostile}\" --tune \"{Hostile}\" --tags \"{Hostile}\"\n# {Hostile}\nE|-0-1-|\nB|-----|\nG|-----|\nD|-----|\nA|-----|\nE|-----|\n\n{Hostile}\n"
        );
        Assert.Empty(events.OfType<CommandFailed>().Select(static failed => failed.Message));
        Assert.Equal(Hostile, (await Value<Lick>(kernel, "lick"))!.Name);
        var html = string.Concat(
            events
                .OfType<DisplayedValueProduced>()
                .SelectMany(static shown => shown.FormattedValues)
                .Where(static form => form.MimeType == "text/html")
                .Select(static form => form.Value)
        );
        Assert.NotEmpty(html);
        Assert.DoesNotContain("<script", html, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("<img", html, StringComparison.OrdinalIgnoreCase);
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
