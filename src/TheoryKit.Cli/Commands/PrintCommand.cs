using System.ComponentModel;
using Spectre.Console;
using Spectre.Console.Cli;
using TheoryKit.Cli.Notebooks;
using TheoryKit.Cli.Pages;
using TheoryKit.Cli.Running;

namespace TheoryKit.Cli.Commands;

/// <summary>Runs notebooks and writes each as a page, and a list of them for a folder.</summary>
internal sealed class PrintCommand(IAnsiConsole console, TextWriter errors) : AsyncCommand<PrintCommand.Settings>
{
    public override async Task<int> ExecuteAsync(
        CommandContext context,
        Settings settings,
        CancellationToken cancellationToken
    )
    {
        var notebooks = NotebookReader.Find(settings.Path).Select(NotebookReader.Read).ToList();
        var folder = Path.GetFullPath(settings.Out);
        CreateFolder(folder);
        var printed = new List<Printed>();
        await PrintProgress
            .On(console)
            .RunAsync(
                notebooks,
                async report =>
                {
                    foreach (var notebook in notebooks)
                    {
                        printed.Add(
                            await Print(notebook, settings.Code, folder, report, cancellationToken)
                                .ConfigureAwait(false)
                        );
                        if (cancellationToken.IsCancellationRequested)
                        {
                            break;
                        }
                    }
                }
            )
            .ConfigureAwait(false);

        if (Directory.Exists(settings.Path))
        {
            var title =
                $"Studies in {Path.GetFileName(Path.TrimEndingDirectorySeparator(Path.GetFullPath(settings.Path)))}";
            var entries = printed.Select(static page => (page.Notebook, page.Failed));
            await WriteAsync(Path.Combine(folder, "index.html"), IndexPage.Html(title, entries)).ConfigureAwait(false);
        }

        await Tell(printed).ConfigureAwait(false);
        return cancellationToken.IsCancellationRequested ? Program.Interrupted
            : printed.Exists(static page => page.Failed is not null) ? Program.CellFailed
            : 0;
    }

    private static async Task<Printed> Print(
        Notebook notebook,
        CodeOnPage code,
        string folder,
        Action<Notebook, CodeCell?> report,
        CancellationToken cancellation
    )
    {
        using var runner = new NotebookRunner(notebook);
        foreach (var cell in notebook.CodeCells)
        {
            report(notebook, cell);
            if (!await runner.RunAsync(cell, cancellation).ConfigureAwait(false))
            {
                break;
            }
        }

        var runs = runner.Runs;
        report(notebook, null);
        var file = Path.Combine(folder, notebook.Name + ".html");
        await WriteAsync(file, new NotebookPage(notebook, runs, code).Html()).ConfigureAwait(false);
        return new(notebook, file, runs.FirstOrDefault(static run => !run.Succeeded));
    }

    private async Task Tell(List<Printed> printed)
    {
        foreach (var page in printed)
        {
            console.WriteLine(Path.GetRelativePath(Environment.CurrentDirectory, page.File));
        }

        foreach (var (notebook, _, failed) in printed)
        {
            if (failed is not null)
            {
                var message = $"""

                    {Path.GetFileName(notebook.Path)}: code {failed.Cell.Number} {failed.Fate}.

                    {Indented(failed.Cell.Source)}

                    {failed.Error}
                    """;
                await errors.WriteLineAsync(message).ConfigureAwait(false);
            }
        }
    }

    private static string Indented(string source) =>
        string.Join('\n', source.TrimEnd().Split('\n').Select(static (line, i) => $"{i + 1, 4} | {line}"));

    private static void CreateFolder(string folder)
    {
        try
        {
            Directory.CreateDirectory(folder);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new NotebookException($"The folder {folder} can't be made: {e.Message}", e);
        }
    }

    private static async Task WriteAsync(string file, string text)
    {
        try
        {
            await File.WriteAllTextAsync(file, text).ConfigureAwait(false);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new NotebookException($"{file} can't be written: {e.Message}", e);
        }
    }

    private sealed record Printed(Notebook Notebook, string File, CellRun? Failed);

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
    }
}
