using System.Collections.Immutable;

namespace TheoryKit.Cli.Running;

/// <summary>Something a cell showed.</summary>
internal abstract record CellOutput;

/// <summary>A value, in the forms its formatters gave.</summary>
/// <param name="Forms">MIME type to content.</param>
internal sealed record ValueOutput(ImmutableDictionary<string, string> Forms) : CellOutput;

/// <summary>Text written to a stream of the console.</summary>
/// <param name="Text">What was written.</param>
/// <param name="IsError">Whether it went to the error stream.</param>
internal sealed record ConsoleOutput(string Text, bool IsError) : CellOutput;

/// <summary>Something the compiler warned of.</summary>
/// <param name="Text">The warning, with its place.</param>
internal sealed record WarningOutput(string Text) : CellOutput;
