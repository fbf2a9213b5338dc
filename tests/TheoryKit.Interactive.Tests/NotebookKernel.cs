using Microsoft.DotNet.Interactive;
using Microsoft.DotNet.Interactive.Commands;
using Microsoft.DotNet.Interactive.CSharp;
using Microsoft.DotNet.Interactive.Events;
using Microsoft.DotNet.Interactive.Formatting;

namespace TheoryKit.Interactive;

/// <summary>The kernel of a notebook, with the extension loaded the way the package loads it.</summary>
internal sealed class NotebookKernel : IDisposable
{
    private readonly CSharpKernel csharp = new();
    private readonly CompositeKernel root;

    private NotebookKernel()
    {
        Formatter.ResetToDefault();
        csharp.UseKernelHelpers();
        root = [csharp];
        csharp.AddAssemblyReferences(
            Directory
                .GetFiles(AppContext.BaseDirectory, "*.dll")
                .Where(static file =>
                    Path.GetFileName(file) is var name
                        && (
                            name.StartsWith("TheoryKit", StringComparison.Ordinal)
                            || name.StartsWith("Plotly", StringComparison.Ordinal)
                        )
                    || Path.GetFileName(file) is "FSharp.Core.dll" or "DynamicObj.dll" or "Fractions.dll"
                )
        );
    }

    /// <summary>Runs the package's own script in a cell.</summary>
    public static async Task<NotebookKernel> Start()
    {
        var kernel = new NotebookKernel();
        var script = await File.ReadAllTextAsync(
            Path.Combine(Repository.Root, "src", "TheoryKit.Interactive", "extension.dib")
        );
        await kernel.Run(script);
        return kernel;
    }

    public CompositeKernel Root => root;

    /// <summary>Runs a cell.</summary>
    /// <returns>What it returned, by MIME type; empty for nothing.</returns>
    public async Task<IReadOnlyDictionary<string, string>> Run(string code)
    {
        var result = await root.SendAsync(new SubmitCode(code));
        Assert.Empty(result.Events.OfType<CommandFailed>().Select(static failure => failure.Message));
        return result
                .Events.OfType<ReturnValueProduced>()
                .LastOrDefault()
                ?.FormattedValues.ToDictionary(static value => value.MimeType, static value => value.Value)
            ?? [];
    }

    public void Dispose() => root.Dispose();
}
