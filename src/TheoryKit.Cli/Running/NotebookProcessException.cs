namespace TheoryKit.Cli.Running;

/// <summary>There is no process that could run the cells of a notebook; the text says why.</summary>
internal sealed class NotebookProcessException(string message) : Exception(message);
