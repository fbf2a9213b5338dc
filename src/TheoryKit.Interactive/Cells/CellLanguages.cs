using Microsoft.DotNet.Interactive;

namespace TheoryKit.Interactive.Cells;

/// <summary>The languages that cells of a notebook may be written in besides C#: a cell that begins with <c>#!</c> and the name.</summary>
public static class CellLanguages
{
    /// <summary>Their names.</summary>
    public static IReadOnlyList<string> Names { get; } = [TabCells.Language, ChangesCells.Language];

    /// <summary>Adds those to a notebook's kernel that it has not got.</summary>
    internal static void AddTo(Kernel kernel)
    {
        if (kernel.RootKernel is not CompositeKernel root)
        {
            return; // a C# kernel alone has no cells of another language
        }

        if (root.ChildKernels.Count == 1)
        {
            // A cell without a language of its own went to it because it was alone.
            root.DefaultKernelName = root.ChildKernels.Single().Name;
        }

        foreach (var language in new CellLanguage[] { new TabCells(), new ChangesCells() })
        {
            if (root.FindKernelByName(language.Name) is null)
            {
                root.Add(language);
            }
        }
    }
}
