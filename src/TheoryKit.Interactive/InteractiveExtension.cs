using System.Runtime.CompilerServices;
using Microsoft.DotNet.Interactive;
using Microsoft.DotNet.Interactive.Commands;
using Microsoft.DotNet.Interactive.CSharp;
using TheoryKit.Charts;
using TheoryKit.Drawing;
using TheoryKit.Drawing.Rendering;
using TheoryKit.Interactive.Cells;

namespace TheoryKit.Interactive;

/// <summary>What a notebook gets when it loads this package: formatters for every value shown, the namespaces, and cells of other languages.</summary>
public static class InteractiveExtension
{
    /// <summary>Every renderer that this package's formatters use.</summary>
    public static RendererSet Renderers => DrawingRenderers.All.Add(ChartRenderers.All);

    /// <summary>
    /// Makes <paramref name="kernel"/> show this library's values and charts, with C# <c>using</c>s in place from the
    /// next cell on.
    /// </summary>
    /// <param name="kernel">The notebook's root kernel, or a C# kernel alone.</param>
    public static Task Load(Kernel kernel) => Load(kernel, new InteractiveOptions());

    /// <inheritdoc cref="Load(Kernel)"/>
    /// <param name="kernel">The notebook's root kernel, or a C# kernel alone.</param>
    /// <param name="options">What differs between hosts.</param>
    public static Task Load(Kernel kernel, InteractiveOptions options)
    {
        ArgumentNullException.ThrowIfNull(kernel);
        ArgumentNullException.ThrowIfNull(options);

        // Nothing before this line may touch a type of Plotly.NET.
        FSharpCoreBridge.Build();
        LoadBridged(kernel, options);
        return Task.CompletedTask;
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static void LoadBridged(Kernel kernel, InteractiveOptions options)
    {
        new ValueFormatters(Renderers, options).Register();
        CellLanguages.AddTo(kernel);
        foreach (var csharp in kernel.FindKernels(static found => found is CSharpKernel))
        {
            // Not at once: an extension loads inside a cell, whose end takes the script back to where it began.
            csharp.DeferCommand(new SubmitCode(Namespaces.Usings));
        }
    }
}
