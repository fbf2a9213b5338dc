namespace TheoryKit.Cli.Notebooks;

/// <summary>One cell of a notebook.</summary>
/// <param name="Source">Its text, lines ended by <c>\n</c>.</param>
internal abstract record Cell(string Source);

/// <summary>A cell of text.</summary>
/// <param name="Source">Markdown.</param>
/// <param name="Attachments">Pictures pasted into the cell: name to data URI.</param>
internal sealed record MarkdownCell(string Source, IReadOnlyDictionary<string, string> Attachments) : Cell(Source);

/// <summary>A cell that runs.</summary>
/// <param name="Source">The code.</param>
/// <param name="Number">1 for the first code cell: the number a fresh run of the notebook shows beside it.</param>
/// <param name="Kernel">The name of the kernel that runs it, <c>csharp</c> where the notebook doesn't say.</param>
internal sealed record CodeCell(string Source, int Number, string Kernel) : Cell(Source);
