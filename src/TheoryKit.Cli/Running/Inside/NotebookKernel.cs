using System.Reactive.Linq;
using Microsoft.DotNet.Interactive;
using Microsoft.DotNet.Interactive.Commands;
using Microsoft.DotNet.Interactive.CSharp;
using Microsoft.DotNet.Interactive.Events;
using Microsoft.DotNet.Interactive.Formatting;
using Microsoft.DotNet.Interactive.PackageManagement;
using TheoryKit.Cli.Running.Channel;
using TheoryKit.Drawing.Rendering;
using TheoryKit.Interactive;

namespace TheoryKit.Cli.Running.Inside;

/// <summary>
/// Runs the cells of one notebook with the real C# kernel. One in a process: formatters, console and current folder belong
/// to the process.
/// </summary>
internal sealed class NotebookKernel : IDisposable
{
    private readonly PackagesAtHand atHand = PackagesAtHand.Load();
    private readonly CSharpKernel csharp = new();
    private readonly CompositeKernel root;
    private readonly PackageExtensions extensions;
    private readonly RenderContext context = new();
    private readonly KernelEvents events;
    private readonly IDisposable watching;
    private bool isLoaded;

    /// <summary>Starts the kernel.</summary>
    /// <param name="send">Takes what cells show.</param>
    public NotebookKernel(Action<Message> send)
    {
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
        events = new(send);
        watching = root.KernelEvents.Subscribe(events.Receive);
        Formatter.ResetToDefault();
        Formatter.DefaultMimeType = HtmlFormatter.MimeType;
        Formatter.SetPreferredMimeTypesFor(typeof(string), PlainTextFormatter.MimeType);
    }

    /// <summary>Runs the next cell.</summary>
    /// <returns>Why it failed, or null where it ran to its end.</returns>
    public async Task<string?> RunAsync(RunCell cell)
    {
        events.BeginCell();
        var code = atHand.TakeFrom(cell.Source, out var requests);
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
        var result = await root.SendAsync(new SubmitCode(code, kernel)).ConfigureAwait(false);
        await extensions.Load(packages).ConfigureAwait(false);
        var failure = result.Events.OfType<CommandFailed>().FirstOrDefault();
        return failure is null ? null : Describe(failure);
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        watching.Dispose();
        root.Dispose();
    }

    private void Answer(IReadOnlyList<PackagesAtHand.Request> requests)
    {
        csharp.AddAssemblyReferences(requests.SelectMany(static request => request.Assemblies).Distinct());
        foreach (var request in requests.Where(static request => request.IsOtherVersion))
        {
            events.Warn($"This page was made with {request.Name} {request.Version}, not with {request.Asked}.");
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
        if (failure.Exception is CodeSubmissionCompilationErrorException && events.Errors.Count > 0)
        {
            return string.Join('\n', events.Errors);
        }

        return failure.Exception is { } thrown ? ExceptionText.Of(thrown) : failure.Message;
    }
}
