using System.Reactive.Linq;
using Microsoft.DotNet.Interactive;
using Microsoft.DotNet.Interactive.Commands;
using Microsoft.DotNet.Interactive.CSharp;
using Microsoft.DotNet.Interactive.Events;
using Microsoft.DotNet.Interactive.Formatting;
using Microsoft.DotNet.Interactive.PackageManagement;
using TheoryKit.Cli.Notebooks;
using TheoryKit.Drawing;
using TheoryKit.Interactive;

namespace TheoryKit.Cli.Running;

/// <summary>
/// Runs the cells of one notebook, in order, in this process with the real C# kernel. One at a time: formatters, console
/// and current folder belong to the process.
/// </summary>
public sealed class NotebookRunner : IDisposable
{
    private static readonly Lazy<PackagesAtHand> AtHand = new(PackagesAtHand.Load);

    private readonly CSharpKernel csharp = new();
    private readonly CompositeKernel root;
    private readonly PackageExtensions extensions;
    private readonly RenderContext context = new();
    private readonly string folderBefore = Environment.CurrentDirectory;
    private readonly OutputCollector collector = new();
    private readonly List<(CodeCell Cell, string? Error, bool WasStopped)> runs = [];
    private readonly IDisposable watching;
    private bool isLoaded;

    /// <summary>Starts the kernel; the notebook's folder becomes the current one until the runner is disposed.</summary>
    public NotebookRunner(Notebook notebook)
    {
        ArgumentNullException.ThrowIfNull(notebook);
        csharp
            .UseNugetDirective(
                static (kernel, packages) =>
                {
                    kernel.AddAssemblyReferences(packages.SelectMany(static package => package.AssemblyPaths));
                    return Task.CompletedTask;
                }
            )
            .UseKernelHelpers()
            .UseWho()
            .UseValueSharing();
        root = new CompositeKernel { new HtmlKernel() };
        root.Add(csharp, ["c#", "C#"]);
        root.DefaultKernelName = csharp.Name;
        root.UseImportMagicCommand();
        extensions = new(root);
        watching = root.KernelEvents.Subscribe(collector.Receive);
        Formatter.ResetToDefault();
        Formatter.DefaultMimeType = HtmlFormatter.MimeType;
        Formatter.SetPreferredMimeTypesFor(typeof(string), PlainTextFormatter.MimeType);
        Environment.CurrentDirectory = Path.GetDirectoryName(notebook.Path) ?? folderBefore;
    }

    /// <summary>The cells run so far with what they show by now: a cell may still change what an earlier one showed.</summary>
    public IReadOnlyList<CellRun> Runs =>
        [.. runs.Select((run, i) => new CellRun(run.Cell, collector.Outputs(i), run.Error, run.WasStopped))];

    /// <summary>Runs the next cell.</summary>
    /// <returns>Whether it ran to its end.</returns>
    public async Task<bool> RunAsync(CodeCell cell, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(cell);
        collector.BeginCell();
        runs.Add((cell, null, WasStopped: true));
        string? error;
        try
        {
            error = await Submit(cell, cancellation).ConfigureAwait(false);
        }
        catch (OperationCanceledException) when (cancellation.IsCancellationRequested)
        {
            // What the cell was doing may still go on in the background.
            return false;
        }

        runs[^1] = (cell, error, WasStopped: false);
        return error is null;
    }

    private async Task<string?> Submit(CodeCell cell, CancellationToken cancellation)
    {
        var code = AtHand.Value.TakeFrom(cell.Source, out var requests);
        if (requests.Count > 0)
        {
            Answer(requests);
        }

        if (string.IsNullOrWhiteSpace(code))
        {
            return null;
        }

        var kernel = root.FindKernelByName(cell.Kernel)?.Name;
        if (kernel is null)
        {
            return $"This cell is for the kernel \"{cell.Kernel}\"; C# and HTML cells run here.";
        }

        var packages = new List<PackageAdded>();
        using var noting = root.KernelEvents.OfType<PackageAdded>().Subscribe(packages.Add);
        var result = await root.SendAsync(new SubmitCode(code, kernel), cancellation)
            .WaitAsync(cancellation)
            .ConfigureAwait(false);
        cancellation.ThrowIfCancellationRequested();
        await extensions.Load(packages).ConfigureAwait(false);
        var failure = result.Events.OfType<CommandFailed>().FirstOrDefault();
        return failure is null ? null : Describe(failure);
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        Environment.CurrentDirectory = folderBefore;
        watching.Dispose();
        root.Dispose();
    }

    private void Answer(IReadOnlyList<PackagesAtHand.Request> requests)
    {
        csharp.AddAssemblyReferences(requests.SelectMany(static request => request.Assemblies).Distinct());
        foreach (var request in requests.Where(static request => request.IsOtherVersion))
        {
            collector.Warn($"This page was made with {request.Name} {request.Version}, not with {request.Asked}.");
        }

        if (!isLoaded && requests.Any(static request => request.Name == typeof(InteractiveExtension).Namespace))
        {
            isLoaded = true;
            _ = InteractiveExtension.Load(
                root,
                new InteractiveOptions { Context = context, ChartsBringScript = false }
            );
        }
    }

    private string Describe(CommandFailed failure)
    {
        if (failure.Exception is CodeSubmissionCompilationErrorException && collector.Errors.Count > 0)
        {
            return string.Join('\n', collector.Errors);
        }

        return failure.Exception is { } thrown ? ExceptionText.Of(thrown) : failure.Message;
    }
}
