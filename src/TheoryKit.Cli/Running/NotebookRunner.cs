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
        Formatter.ResetToDefault();
        Formatter.DefaultMimeType = HtmlFormatter.MimeType;
        Formatter.SetPreferredMimeTypesFor(typeof(string), PlainTextFormatter.MimeType);
        Environment.CurrentDirectory = Path.GetDirectoryName(notebook.Path) ?? folderBefore;
    }

    /// <summary>Runs one cell.</summary>
    /// <exception cref="OperationCanceledException">
    /// Cancelled; what the cell was doing may still go on in the background.
    /// </exception>
    public async Task<CellRun> RunAsync(CodeCell cell, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(cell);
        var code = AtHand.Value.TakeFrom(cell.Source, out var requests);
        var collector = new OutputCollector();
        if (requests.Count > 0)
        {
            Answer(requests, collector);
        }

        if (string.IsNullOrWhiteSpace(code))
        {
            return new(cell, collector.Outputs, null);
        }

        var packages = new List<PackageAdded>();
        using var watching = root.KernelEvents.Subscribe(collector.Receive);
        using var noting = root.KernelEvents.OfType<PackageAdded>().Subscribe(packages.Add);
        var kernel = root.FindKernelByName(cell.Kernel)?.Name;
        if (kernel is null && cell.Kernel != csharp.Name)
        {
            return new(
                cell,
                collector.Outputs,
                $"This cell is for the kernel \"{cell.Kernel}\"; here run C# and HTML cells."
            );
        }

        var command = new SubmitCode(code, kernel);
        var result = await root.SendAsync(command, cancellation).WaitAsync(cancellation).ConfigureAwait(false);
        await extensions.Load(packages).ConfigureAwait(false);
        var failure = result.Events.OfType<CommandFailed>().FirstOrDefault();
        return new(cell, collector.Outputs, failure is null ? null : Describe(failure, collector));
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        Environment.CurrentDirectory = folderBefore;
        root.Dispose();
    }

    private void Answer(IReadOnlyList<PackagesAtHand.Request> requests, OutputCollector collector)
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

    private static string Describe(CommandFailed failure, OutputCollector collector)
    {
        if (failure.Exception is CodeSubmissionCompilationErrorException && collector.Errors.Count > 0)
        {
            return string.Join('\n', collector.Errors);
        }

        return failure.Exception is { } thrown ? ExceptionText.Of(thrown) : failure.Message;
    }
}
