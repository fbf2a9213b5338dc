using System.Text.Json.Nodes;

namespace TheoryKit.Cli;

[Collection("one notebook at a time")]
public sealed class PrintCommandTests : IDisposable
{
    private readonly CommandLine program = new();

    public void Dispose() => program.Dispose();

    [Fact]
    public async Task Everything_a_cell_shows_is_on_the_page()
    {
        program.Write(
            "kestrel-stairs.ipynb",
            "# Kestrel Stairs",
            "Console.WriteLine(\"four <bars>\"); Console.Error.WriteLine(\"loud\");",
            "display(\"shown\"); display(HTML(\"<b>bold</b>\"));\n\"returned\"",
            "#warning No fourth bar"
        );
        Assert.Equal(0, await program.Print());
        var page = program.Page("kestrel-stairs");
        Assert.Contains("<pre class=\"console short\">four &lt;bars&gt;</pre>", page, StringComparison.Ordinal);
        Assert.Contains("<pre class=\"console error short\">loud</pre>", page, StringComparison.Ordinal);
        Assert.Contains("shown", page, StringComparison.Ordinal);
        Assert.Contains("<b>bold</b>", page, StringComparison.Ordinal);
        Assert.Contains("<pre class=\"value short\">returned</pre>", page, StringComparison.Ordinal);
        Assert.Contains("line 1, column 10: warning CS1030", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Text_that_fits_a_page_is_not_torn_between_two()
    {
        program.Write(
            "kestrel-stairs.ipynb",
            "Console.WriteLine(\"E|-5-\\nA|---\");",
            "Console.WriteLine(string.Join('\\n', Enumerable.Range(1, 400)));"
        );
        Assert.Equal(0, await program.Print());
        var page = program.Page("kestrel-stairs");
        Assert.Contains("<pre class=\"console short\">E|-5-\nA|---</pre>", page, StringComparison.Ordinal);
        Assert.Contains("<pre class=\"console\">1\n2\n", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_value_that_is_updated_shows_its_last_state_where_it_was_first_shown()
    {
        program.Write(
            "copper-weather.ipynb",
            "var context = Microsoft.DotNet.Interactive.KernelInvocationContext.Current;\n"
                + "var first = Microsoft.DotNet.Interactive.KernelInvocationContextExtensions.Display(context, \"bar one\");\n"
                + "var second = display(\"bar two\");",
            "first.Update(\"bar nine\");",
            "var third = display(\"bar three\"); third.Update(\"bar four\");"
        );
        Assert.Equal(0, await program.Print());
        var page = program.Page("copper-weather");
        Assert.DoesNotContain("bar one<", page, StringComparison.Ordinal);
        Assert.DoesNotContain("bar three<", page, StringComparison.Ordinal);
        Assert.True(
            page.IndexOf("bar nine<", StringComparison.Ordinal) is > 0 and var nine
                && nine < page.IndexOf("bar two<", StringComparison.Ordinal)
        );
        Assert.Contains("bar four<", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_failing_cell_stops_its_notebook_and_is_told_with_number_source_and_error()
    {
        program.Write(
            "copper-weather.ipynb",
            "# Copper Weather",
            "1 + 1",
            "var six = 6;\nvar none = 6 / (six - 6);",
            "\"never\""
        );
        program.Write("nine-tin-boats.ipynb", "# Nine Tin Boats", "\"fine\"");
        Assert.Equal(1, await program.Print());
        Assert.Contains("copper-weather.ipynb: code 2 failed.", program.Errors, StringComparison.Ordinal);
        Assert.Contains("   2 | var none = 6 / (six - 6);", program.Errors, StringComparison.Ordinal);
        Assert.Contains(
            "DivideByZeroException: Attempted to divide by zero.",
            program.Errors,
            StringComparison.Ordinal
        );
        var page = program.Page("copper-weather");
        Assert.Contains("<pre>2</pre>", page, StringComparison.Ordinal);
        Assert.Contains("<p>Code 2 failed.</p>", page, StringComparison.Ordinal);
        Assert.DoesNotContain("never", page, StringComparison.Ordinal);
        Assert.Contains("fine", program.Page("nine-tin-boats"), StringComparison.Ordinal);
        Assert.Contains("Code 2 failed.", program.Page("index"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Text_that_the_library_cannot_read_is_answered_with_the_message_alone()
    {
        program.Write("copper-weather.ipynb", "#r \"nuget:TheoryKit.Interactive, 0.1.0\"", "Chord.Parse(\"Cmaj77\")");
        Assert.Equal(1, await program.Print());
        Assert.Contains("\n\n\"Cmaj77\" is not a chord: at position 6", program.Errors, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", program.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Of_the_calls_to_an_error_only_the_cells_own_are_told()
    {
        program.Write(
            "copper-weather.ipynb",
            "static int Bar(int number) => new[] { 1 }.Select(n => Divide(n, number)).First();\n"
                + "static int Divide(int one, int other) => one / other;",
            "try { Bar(0); } catch (Exception e) { throw new InvalidOperationException(\"No bar.\", e); }"
        );
        Assert.Equal(1, await program.Print());
        Assert.Contains("InvalidOperationException: No bar.", program.Errors, StringComparison.Ordinal);
        Assert.Contains("because of DivideByZeroException", program.Errors, StringComparison.Ordinal);
        var calls = program.Errors.Split('\n').Where(static line => line.Contains(" at ", StringComparison.Ordinal));
        Assert.Contains(
            calls,
            static line => line.Contains("Divide(Int32 one, Int32 other)", StringComparison.Ordinal)
        );
        Assert.All(calls, static line => Assert.Contains("Submission#", line, StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_cell_that_does_not_compile_is_told_with_line_and_column()
    {
        program.Write("kestrel-stairs.ipynb", "var bars = 4;\nbars.Count()");
        Assert.Equal(1, await program.Print());
        Assert.Contains("line 2, column 6: error CS1061", program.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Packages_at_hand_need_no_registry_and_leave_line_numbers_alone()
    {
        program.WriteText("NuGet.config", "<configuration><packageSources><clear /></packageSources></configuration>");
        program.Write(
            "nine-tin-boats.ipynb",
            "#r \"nuget:TheoryKit.Interactive, 0.1.0\"\n#r \"nuget:Plotly.NET.CSharp, 0.14.0\"\nChord.Parse(\"Gm9\").On(Neck.Guitar)",
            "#r \"nuget:TheoryKit\"\n\nnowhere"
        );
        Assert.Equal(1, await program.Print());
        Assert.Contains("code 2 failed", program.Errors, StringComparison.Ordinal);
        Assert.Contains("line 3, column 1: error CS0103", program.Errors, StringComparison.Ordinal);
        Assert.Contains("<svg", program.Page("nine-tin-boats"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Values_of_the_library_and_charts_are_shown_and_plotly_is_in_the_page_once()
    {
        const string Chart = "Plotly.NET.CSharp.Chart.Line<int, int, string>(x: new[] { 1, 2 }, y: new[] { 3, 4 })";
        program.Write("nine-tin-boats.ipynb", "#r \"nuget:TheoryKit.Interactive, 0.1.0\"", "Neck.Guitar", Chart, Chart);
        program.Write("copper-weather.ipynb", "\"no chart\"");
        Assert.Equal(0, await program.Print());
        var page = program.Page("nine-tin-boats");
        Assert.Contains("<svg", page, StringComparison.Ordinal);
        Assert.Equal(2, Count(page, "class=\"tk-chart\""));
        Assert.Equal(1, Count(page, "* plotly.js v"));
        Assert.Equal(0, Count(program.Page("copper-weather"), "* plotly.js v"));
    }

    [Fact]
    public async Task Printing_twice_gives_the_same_page()
    {
        program.Write("nine-tin-boats.ipynb", "#r \"nuget:TheoryKit.Interactive, 0.1.0\"", "Neck.Guitar");
        Assert.Equal(0, await program.Print());
        var first = program.Page("nine-tin-boats");
        Assert.Equal(0, await program.Print());
        Assert.Equal(first, program.Page("nine-tin-boats"));
    }

    [Fact]
    public async Task Another_version_of_a_package_at_hand_is_noted()
    {
        program.Write("nine-tin-boats.ipynb", "#r \"nuget:TheoryKit.Interactive, 99.0.0\"");
        Assert.Equal(0, await program.Print());
        Assert.Contains("not with 99.0.0", program.Page("nine-tin-boats"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_package_that_is_nowhere_to_be_had_is_an_error_that_names_it()
    {
        program.WriteText("NuGet.config", "<configuration><packageSources><clear /></packageSources></configuration>");
        program.Write("copper-weather.ipynb", "#r \"nuget:Gannet.Row.Of.Nothing, 1.0.0\"");
        Assert.Equal(1, await program.Print());
        Assert.Contains("Gannet.Row.Of.Nothing", program.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_notebook_reads_files_beside_it()
    {
        var before = Environment.CurrentDirectory;
        program.WriteText("licks.txt", "bar one");
        program.Write("copper-weather.ipynb", "System.IO.File.ReadAllText(\"licks.txt\")");
        Assert.Equal(0, await program.Print());
        Assert.Contains("bar one", program.Page("copper-weather"), StringComparison.Ordinal);
        Assert.Equal(before, Environment.CurrentDirectory);
    }

    [Fact]
    public async Task Pictures_named_in_the_text_are_put_inside()
    {
        File.WriteAllBytes(program.WriteText("neck.png", ""), [137, 80, 78, 71]);
        var cell = CommandLine.Cell(
            true,
            "![mine](neck.png) ![pasted](attachment:a.png) ![far](https://example.org/b.png)"
        );
        cell["attachments"] = new JsonObject { ["a.png"] = new JsonObject { ["image/png"] = "AAAA" } };
        program.WriteCells("copper-weather.ipynb", cell);
        Assert.Equal(0, await program.Print());
        var page = program.Page("copper-weather");
        Assert.Contains("<img src=\"data:image/png;base64,iVBORw==\" alt=\"mine\"", page, StringComparison.Ordinal);
        Assert.Contains("<img src=\"data:image/png;base64,AAAA\" alt=\"pasted\"", page, StringComparison.Ordinal);
        Assert.Contains("<a href=\"https://example.org/b.png\">far</a>", page, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("fold", true)]
    [InlineData("show", true)]
    [InlineData("hide", false)]
    public async Task Code_is_folded_shown_or_left_out(string how, bool isThere)
    {
        program.Write("copper-weather.ipynb", "var six = 6;");
        Assert.Equal(0, await program.Print("--code", how));
        var page = program.Page("copper-weather");
        Assert.Equal(isThere, page.Contains("six", StringComparison.Ordinal));
        Assert.Equal(how == "show", page.Contains("<details class=\"source\" open>", StringComparison.Ordinal));
        Assert.Contains($"code-{how}", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_empty_notebook_gives_a_page_with_its_name()
    {
        program.WriteCells("copper-weather.ipynb");
        Assert.Equal(0, await program.Print());
        Assert.Contains("<h1>copper-weather</h1>", program.Page("copper-weather"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Html_cells_and_raw_cells_are_what_they_are()
    {
        var raw = CommandLine.Cell(false, "not code");
        raw["cell_type"] = "raw";
        program.WriteCells("copper-weather.ipynb", CommandLine.Cell(false, "#!html\n<i>slow</i>"), raw);
        Assert.Equal(0, await program.Print());
        Assert.Contains("<i>slow</i>", program.Page("copper-weather"), StringComparison.Ordinal);
        Assert.DoesNotContain("not code", program.Page("copper-weather"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_cell_for_another_kernel_is_told_from_a_failure_of_the_code()
    {
        var cell = CommandLine.Cell(false, "let bars = 4");
        cell["metadata"] = new JsonObject { ["polyglot_notebook"] = new JsonObject { ["kernelName"] = "fsharp" } };
        program.WriteCells("copper-weather.ipynb", cell);
        Assert.Equal(1, await program.Print());
        Assert.Contains("This cell is for the kernel \"fsharp\"", program.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task One_notebook_can_be_named()
    {
        var file = program.Write("copper-weather.ipynb", "1");
        program.Write("kestrel-stairs.ipynb", "2");
        Assert.Equal(0, await program.Run("print", file, "--out", program.At("out")));
        Assert.Equal(["copper-weather.html"], Directory.GetFiles(program.At("out")).Select(Path.GetFileName));
        Assert.Contains("copper-weather: code 1 of 1", program.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_list_of_a_folder_names_each_notebook_with_its_first_words()
    {
        program.Write("02-kestrel-stairs.ipynb", "# Kestrel & Stairs\n\nA waltz in *E-flat*.\n\nMore.");
        program.Write("01-copper-weather.ipynb", "# Copper Weather");
        Assert.Equal(0, await program.Print());
        var list = program.Page("index");
        Assert.Contains(
            "<a href=\"02-kestrel-stairs.html\">Kestrel &amp; Stairs</a><p>A waltz in E-flat.</p>",
            list,
            StringComparison.Ordinal
        );
        Assert.True(
            list.IndexOf("01-copper", StringComparison.Ordinal) < list.IndexOf("02-kestrel", StringComparison.Ordinal)
        );
    }

    [Fact]
    public async Task Stopping_prints_what_was_run_so_far()
    {
        program.Write("copper-weather.ipynb", "\"begun\"", "while (true) { }");
        using var stop = new CancellationTokenSource();
        using var output = new StoppingWriter(stop, "code 2 of 2");
        var console = Spectre.Console.AnsiConsole.Create(
            new()
            {
                Interactive = Spectre.Console.InteractionSupport.No,
                Out = new Spectre.Console.AnsiConsoleOutput(output),
            }
        );
        string[] command = ["print", program.At("notebooks"), "--out", program.At("out")];
        var code = await Program
            .RunAsync(command, console, TextWriter.Null, stop.Token)
            .WaitAsync(TimeSpan.FromMinutes(2));
        Assert.Equal(130, code);
        Assert.Contains("begun", program.Page("copper-weather"), StringComparison.Ordinal);
        Assert.Contains("Code 2 was stopped.", program.Page("copper-weather"), StringComparison.Ordinal);
    }

    private static int Count(string text, string part) => text.Split(part).Length - 1;

    /// <summary>Gives the sign to stop when a line is written.</summary>
    private sealed class StoppingWriter(CancellationTokenSource stop, string line) : StringWriter
    {
        public override void WriteLine(string? value)
        {
            base.WriteLine(value);
            if (value?.Contains(line, StringComparison.Ordinal) == true)
            {
                stop.Cancel();
            }
        }
    }
}
