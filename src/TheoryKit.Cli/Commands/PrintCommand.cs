using System.ComponentModel;
using Spectre.Console;
using Spectre.Console.Cli;
using TheoryKit.Cli.Answers;
using TheoryKit.Cli.Notebooks;
using TheoryKit.Cli.Pages;
using TheoryKit.Cli.Running;
using TheoryKit.Cli.Running.Processes;

namespace TheoryKit.Cli.Commands;

/// <summary>Runs notebooks and writes each as a page, and a list of them for a folder.</summary>
internal sealed class PrintCommand(IAnsiConsole console, TextWriter errors) : AsyncCommand<PrintCommand.Settings>
{
    private const string Index = "index";

    /// <summary>How much of the machine's memory all notebooks may use together, and one in any case, in percent.</summary>
    private const int MemoryOfAll = 75;

    private const int MemoryOfOne = 25;

    private readonly string here = Environment.CurrentDirectory;

    public override async Task<int> ExecuteAsync(
        CommandContext context,
        Settings settings,
        CancellationToken cancellationToken
    )
    {
        var notebooks = NotebookReader.Find(settings.Path).Select(NotebookReader.Read).ToList();
        var title = Directory.Exists(settings.Path)
            ? $"Studies in {Path.GetFileName(Path.TrimEndingDirectorySeparator(Path.GetFullPath(settings.Path)))}"
            : null;
        if (title is not null && notebooks.Find(static each => each.Name == Index) is { } index)
        {
            throw new NotebookException(
                $"{index.Path} would be printed over the list of its folder, {Index}.html; give it another name, or print it by itself."
            );
        }

        using var folder = await PageFolder
            .OpenAsync(
                settings.Out,
                () => console.WriteLine($"Another print is writing to {settings.Out}; this one waits for it."),
                cancellationToken
            )
            .ConfigureAwait(false);
        var printed = new Printed[notebooks.Count];
        try
        {
            await PrintProgress
                .On(console)
                .RunAsync(
                    notebooks,
                    report => PrintAll(notebooks, settings, folder, printed, report, cancellationToken)
                )
                .ConfigureAwait(false);
        }
        finally
        {
            Offspring.EndAdopted();
        }

        if (title is not null)
        {
            var entries = printed.Select(static each => (each.Notebook, each.Failed, each.IsThere));
            folder.Write(Index + ".html", IndexPage.Html(title, entries));
        }

        await Tell(printed).ConfigureAwait(false);
        return printed.Select(static each => each.Problem).FirstOrDefault(static problem => problem is not null)
                is { } problem
                ? throw problem
            : cancellationToken.IsCancellationRequested ? ExitStatus.Interrupted
            : Array.Exists(printed, static each => each.Failed is not null) ? ExitStatus.CellFailed
            : 0;
    }

    private static Task PrintAll(
        List<Notebook> notebooks,
        Settings settings,
        PageFolder folder,
        Printed[] printed,
        Action<Notebook, CodeCell?> report,
        CancellationToken cancellation
    )
    {
        var atOnce = Math.Min(Environment.ProcessorCount, notebooks.Count);
        var memory = Math.Max(MemoryOfOne, MemoryOfAll / atOnce);
        return Parallel.ForAsync(
            0,
            notebooks.Count,
            new ParallelOptions { MaxDegreeOfParallelism = atOnce },
            async (i, _) =>
            {
                var notebook = notebooks[i];
                printed[i] = new(notebook, folder.PathOf(notebook.Name + ".html"));
                if (!cancellation.IsCancellationRequested)
                {
                    printed[i] = await Print(printed[i], settings, memory, folder, report, cancellation)
                        .ConfigureAwait(false);
                }
            }
        );
    }

    private static async Task<Printed> Print(
        Printed page,
        Settings settings,
        int memory,
        PageFolder folder,
        Action<Notebook, CodeCell?> report,
        CancellationToken cancellation
    )
    {
        var run = new NotebookRun(page.Notebook, settings.Limit, memory);
        await run.RunAsync(cell => report(page.Notebook, cell), cancellation).ConfigureAwait(false);
        report(page.Notebook, null);
        var cells = run.Cells;
        page = page with
        {
            // Not its outputs: they would be kept until all notebooks are printed.
            Failed = cells.FirstOrDefault(static cell => !cell.Succeeded) is { } failed
                ? failed with
                {
                    Outputs = [],
                }
                : null,
            Stray = run.Stray,
        };
        try
        {
            var html = new NotebookPage(page.Notebook, cells, settings.Code).Html();
            folder.Write(Path.GetFileName(page.File), html);
            return page with { IsThere = true };
        }
        catch (NotebookException e)
        {
            return page with { Problem = e };
        }
    }

    private async Task Tell(IReadOnlyList<Printed> printed)
    {
        foreach (var page in printed.Where(static page => page.IsThere))
        {
            console.WriteLine(Path.GetRelativePath(here, page.File));
        }

        foreach (var page in printed)
        {
            var name = Path.GetFileName(page.Notebook.Path);
            if (page.Failed is { } failed)
            {
                var message = $"""

                    {name}: code {failed.Cell.Number} {failed.Fate}.

                    {Indented(failed.Cell.Source)}

                    {failed.Error}
                    """;
                await errors.WriteLineAsync(message).ConfigureAwait(false);
            }

            if (page.Stray.Length > 0)
            {
                await errors.WriteLineAsync($"{name}: {page.Stray}").ConfigureAwait(false);
            }
        }
    }

    private static string Indented(string source) =>
        string.Join('\n', source.TrimEnd().Split('\n').Select(static (line, i) => $"{i + 1, 4} | {line}"));

    /// <param name="Notebook">The notebook.</param>
    /// <param name="File">The page's path.</param>
    private sealed record Printed(Notebook Notebook, string File)
    {
        /// <summary>The cell it stopped at.</summary>
        public CellRun? Failed { get; init; }

        /// <summary>What cells wrote past the notebook, in words.</summary>
        public string Stray { get; init; } = "";

        /// <summary>Whether the page was written.</summary>
        public bool IsThere { get; init; }

        /// <summary>Why it could not be.</summary>
        public NotebookException? Problem { get; init; }
    }

    /// <summary>The options of <c>print</c>.</summary>
    internal sealed class Settings : CommandSettings
    {
        [CommandArgument(0, "[PATH]")]
        [Description("A notebook, or a folder of them.")]
        [DefaultValue("notebooks")]
        public string Path { get; init; } = "notebooks";

        [CommandOption("-o|--out <FOLDER>")]
        [Description("Where the pages go.")]
        [DefaultValue("artifacts/print")]
        public string Out { get; init; } = "artifacts/print";

        [CommandOption("--code <HOW>")]
        [Description(
            "The cells' code: [bold]fold[/] (folded on the screen, not on paper), [bold]show[/] or [bold]hide[/]."
        )]
        [DefaultValue(CodeOnPage.Fold)]
        public CodeOnPage Code { get; init; }

        [CommandOption("--cell-limit <TIME>")]
        [Description("How long a cell may run: seconds, or a time such as [bold]90s[/], [bold]5m[/] or [bold]2h[/].")]
        [DefaultValue(CellLimit.Default)]
        public string CellLimitText { get; init; } = CellLimit.Default;

        /// <summary>How long a cell may run.</summary>
        public TimeSpan Limit => CellLimit.Parse(CellLimitText);

        /// <inheritdoc/>
        public override ValidationResult Validate()
        {
            try
            {
                _ = Limit;
                return base.Validate();
            }
            catch (FormatException e)
            {
                return ValidationResult.Error($"--cell-limit: {e.Message}");
            }
        }
    }
}
