namespace TheoryKit.Cli.Notebooks;

/// <summary>A notebook as read from its file.</summary>
/// <param name="Path">The file's full path.</param>
/// <param name="Title">Its first heading, else the file's name.</param>
/// <param name="Cells">The cells in order.</param>
internal sealed record Notebook(string Path, string Title, IReadOnlyList<Cell> Cells)
{
    /// <summary>The file's name without its ending.</summary>
    public string Name => System.IO.Path.GetFileNameWithoutExtension(Path);

    /// <summary>The cells that run.</summary>
    public IEnumerable<CodeCell> CodeCells => Cells.OfType<CodeCell>();
}
