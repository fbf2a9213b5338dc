using TheoryKit.Cli.Answers;

namespace TheoryKit.Cli.Running;

/// <summary>The program is stopped from outside, or its pages are; each test runs it as its users do.</summary>
[Collection("one notebook at a time")]
public sealed class StoppingTests : IDisposable
{
    private readonly CommandLine files = new();

    public void Dispose() => files.Dispose();

    private string[] Command => ["print", files.At("notebooks"), "--out", files.At("out")];

    [LinuxFact]
    public async Task Ctrl_C_and_sigterm_end_with_the_pages_so_far_and_a_status_of_their_own()
    {
        foreach (var (signal, status) in new[] { (2, 130), (15, 143), (1, 129) })
        {
            using var program = await Looping();
            program.Signal(signal);
            Assert.Equal(status, await program.Ended());
            Assert.Empty(program.Left());
            var page = files.Page("copper-weather");
            Assert.Contains("begun</pre>", page, StringComparison.Ordinal);
            Assert.Contains("Code 2 was stopped.", page, StringComparison.Ordinal);
            Assert.Contains("Code 2 was stopped.", files.Page("index"), StringComparison.Ordinal);
            Assert.Contains("Not printed this time.", files.Page("index"), StringComparison.Ordinal);
            Assert.Empty(Directory.GetFiles(files.At("out"), ".*"));
        }
    }

    [LinuxFact]
    public async Task When_the_program_is_killed_the_notebooks_processes_end_with_it()
    {
        using var program = await Looping();
        Assert.NotEmpty(program.Left());
        program.Signal(9);
        Assert.Equal(137, await program.Ended());
        await program.NoneLeft();
    }

    [LinuxFact]
    public async Task A_print_that_was_killed_leaves_nothing_in_the_way_of_the_next()
    {
        using (var program = await Looping())
        {
            program.Signal(9);
            await program.Ended();
        }

        Directory.CreateDirectory(files.At("out"));
        File.WriteAllText(files.At("out", ".0123.unfinished"), "half a page");
        Directory.Delete(files.At("notebooks"), recursive: true);
        files.Write("copper-weather.ipynb", "1");
        Assert.Equal(0, await files.Print());
        Assert.Equal(
            ["copper-weather.html", "index.html"],
            Directory.GetFiles(files.At("out")).Select(Path.GetFileName).Order(StringComparer.Ordinal)
        );
    }

    [LinuxFact]
    public async Task A_program_whose_own_outputs_are_closed_prints_all_the_same()
    {
        files.Write("copper-weather.ipynb", "\"begun\"");
        var (file, before) = ThisProgram.Executable;
        var command = string.Join(
            ' ',
            new[] { file }.Concat(before).Concat(Command).Select(static word => $"'{word}'")
        );
        using var shell = System.Diagnostics.Process.Start("sh", ["-c", $"{command} <&- >&- 2>&-"]);
        await shell.WaitForExitAsync();
        Assert.Equal(0, shell.ExitCode);
        Assert.Contains("begun", files.Page("copper-weather"), StringComparison.Ordinal);
    }

    [LinuxFact]
    public async Task Where_a_page_cannot_be_written_the_others_are_and_the_status_says_so()
    {
        files.Write("copper-weather.ipynb", "1");
        files.Write("kestrel-stairs.ipynb", "2");
        Directory.CreateDirectory(files.At("out", "copper-weather.html", "inside"));
        Assert.Equal(2, await files.Print());
        Assert.Contains("copper-weather.html can't be written", files.Errors, StringComparison.Ordinal);
        Assert.Contains("kestrel-stairs", files.Page("kestrel-stairs"), StringComparison.Ordinal);
        Assert.Contains("Not printed this time.", files.Page("index"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Two_prints_into_one_folder_wait_for_each_other_and_the_list_is_true_of_the_pages()
    {
        // Each run of a notebook has a number of its own; the list names what failed in the same run.
        files.WriteText("runs.txt", "");
        const string Count =
            "using System.IO; File.AppendAllText(\"runs.txt\", \"x\"); var run = File.ReadAllText(\"runs.txt\").Length; Console.Write($\"run {run}.\");";
        files.Write("copper-weather.ipynb", Count, "if (run == 1) { throw new Exception(\"first\"); }");
        using var first = new CliProcess(Command);
        using var second = new CliProcess(Command);
        var statuses = new[] { await first.Ended(), await second.Ended() };
        Assert.Equal([0, 1], statuses.Order());
        Assert.Contains("run 2.", files.Page("copper-weather"), StringComparison.Ordinal);
        Assert.DoesNotContain("failed", files.Page("copper-weather"), StringComparison.Ordinal);
        Assert.DoesNotContain("failed", files.Page("index"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_reader_never_sees_half_a_page()
    {
        using var folder = await Pages.PageFolder.OpenAsync(files.At("out"), static () => { }, default);
        string[] pages = [new string('a', 3_000_000), new string('b', 2_000_000)];
        folder.Write("page.html", pages[0]);
        var writing = Task.Run(() =>
        {
            for (var i = 0; i < 100; i++)
            {
                folder.Write("page.html", pages[i % 2]);
            }
        });
        while (!writing.IsCompleted)
        {
            Assert.Contains(await File.ReadAllTextAsync(files.At("out", "page.html")), pages);
        }

        await writing;
        Assert.Equal(["page.html"], Directory.GetFiles(files.At("out")).Select(Path.GetFileName));
    }

    [Fact]
    public async Task A_notebook_whose_page_would_be_the_list_is_refused()
    {
        files.Write("index.ipynb", "1");
        Assert.Equal(2, await files.Print());
        Assert.Contains("give it another name", files.Errors, StringComparison.Ordinal);
        Assert.Equal(0, await files.Run("print", files.At("notebooks", "index.ipynb"), "--out", files.At("out")));
    }

    [Fact]
    public async Task Of_many_that_begin_the_same_study_one_writes_it()
    {
        var codes = await Task.WhenAll(
            Enumerable
                .Range(0, 16)
                .Select(_ =>
                    Task.Run(() =>
                        Program.RunAsync(["new", "copper-weather", "--out", files.At("new")], Silent(), TextWriter.Null)
                    )
                )
        );
        Assert.Single(codes, 0);
        Assert.Equal(15, codes.Count(static code => code == 2));
    }

    [Fact]
    public async Task A_cell_has_as_long_as_is_said()
    {
        files.Write("copper-weather.ipynb", "using System.Threading; Console.Write(\"begun\"); Thread.Sleep(-1);");
        Assert.Equal(1, await files.Print("--cell-limit", "10s"));
        Assert.Contains("code 1 took too long.", files.Errors, StringComparison.Ordinal);
        Assert.Contains("It did not end within 10 seconds", files.Page("copper-weather"), StringComparison.Ordinal);
        Assert.Contains("begun</pre>", files.Page("copper-weather"), StringComparison.Ordinal);
        Assert.Equal(2, await files.Print("--cell-limit", "soon"));
        Assert.Contains("--cell-limit: \"soon\" is not a time", files.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_written_past_the_notebook_is_told_of()
    {
        files.Write("copper-weather.ipynb", "Console.OpenStandardOutput().Write(\"stray words\"u8);");
        Assert.Equal(0, await files.Print());
        Assert.Contains(
            "copper-weather.ipynb: 11 bytes were written past the notebook and are on no page: stray words",
            files.Errors,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task An_exit_and_a_full_stack_are_told_apart()
    {
        files.Write("copper-weather.ipynb", "Environment.Exit(7);");
        files.Write("kestrel-stairs.ipynb", "int Down(int n) => Down(n + 1) + 1; Down(0);");
        files.Write(
            "nine-tin-boats.ipynb",
            "using System.Threading; new Thread(() => throw new Exception(\"row\")).Start(); Thread.Sleep(-1);"
        );
        Assert.Equal(1, await files.Print());
        Assert.Contains("It ended with status 7", files.Page("copper-weather"), StringComparison.Ordinal);
        Assert.Contains("Stack overflow", files.Page("kestrel-stairs"), StringComparison.Ordinal);
        Assert.Contains("System.Exception: row", files.Page("nine-tin-boats"), StringComparison.Ordinal);
    }

    private static Spectre.Console.IAnsiConsole Silent() =>
        Spectre.Console.AnsiConsole.Create(new() { Out = new Spectre.Console.AnsiConsoleOutput(new StringWriter()) });

    /// <summary>The program while as many notebooks loop as it runs at once, and one more waits.</summary>
    private async Task<CliProcess> Looping()
    {
        var names = Enumerable.Range(0, Environment.ProcessorCount).Select(static i => $"loop-{i:00}").ToList();
        names[0] = "copper-weather";
        foreach (var name in names)
        {
            files.Write(
                $"{name}.ipynb",
                "using System.IO; Console.Write(\"begun\");",
                "System.Diagnostics.Process.Start(\"sleep\", \"7002\"); "
                    + $"File.WriteAllText(\"{name}.txt\", \"\"); while (true) {{ }}"
            );
            File.Delete(files.At("notebooks", $"{name}.txt"));
        }

        files.Write("zz-waits.ipynb", "1");
        var program = new CliProcess(Command);
        var ended = program.Ended();
        while (!names.TrueForAll(name => File.Exists(files.At("notebooks", $"{name}.txt"))))
        {
            Assert.False(ended.IsCompleted, "The program has ended by itself.");
            await Task.Delay(50);
        }

        return program;
    }
}
