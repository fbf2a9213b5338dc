using System.Runtime.Loader;
using Microsoft.DotNet.Interactive;
using Microsoft.DotNet.Interactive.Commands;
using Microsoft.DotNet.Interactive.Events;

namespace TheoryKit.Cli.Running.Inside;

/// <summary>Loads the notebook extensions that packages from NuGet bring, as the notebook kernels do.</summary>
internal sealed class PackageExtensions(CompositeKernel root)
{
    private readonly HashSet<string> loaded = new(StringComparer.Ordinal);

    public async Task Load(IEnumerable<PackageAdded> added)
    {
        foreach (var package in added)
        {
            var folder = Path.Combine(package.PackageReference.PackageRoot ?? "", "interactive-extensions", "dotnet");
            if (package.PackageReference.PackageRoot is not null && Directory.Exists(folder) && loaded.Add(folder))
            {
                await LoadFrom(folder).ConfigureAwait(false);
            }
        }
    }

    private async Task LoadFrom(string folder)
    {
        foreach (var file in Directory.GetFiles(folder, "*.dll"))
        {
            var types = AssemblyLoadContext.Default.LoadFromAssemblyPath(file).ExportedTypes;
            foreach (
                var type in types.Where(static t =>
                    t is { IsAbstract: false } && typeof(IKernelExtension).IsAssignableFrom(t)
                )
            )
            {
                await ((IKernelExtension)Activator.CreateInstance(type)!).OnLoadAsync(root).ConfigureAwait(false);
            }
        }

        var script = Path.Combine(folder, "extension.dib");
        if (File.Exists(script))
        {
            await root.SendAsync(new SubmitCode(await File.ReadAllTextAsync(script).ConfigureAwait(false)))
                .ConfigureAwait(false);
        }
    }
}
