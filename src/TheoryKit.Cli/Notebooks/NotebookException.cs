namespace TheoryKit.Cli.Notebooks;

/// <summary>A notebook that can't be found, read or written; the message says which, and what would have worked.</summary>
internal sealed class NotebookException(string message, Exception? inner = null) : Exception(message, inner);
