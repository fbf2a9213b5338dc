using System.Collections.Immutable;

namespace TheoryKit.Cli.Running.Channel;

/// <summary>What a printing process and the process of a notebook tell each other.</summary>
internal abstract record Message;

/// <summary>To the notebook: run this cell.</summary>
/// <param name="Source">Its code.</param>
/// <param name="Kernel">The kernel that runs it.</param>
internal sealed record RunCell(string Source, string Kernel) : Message;

/// <summary>To the notebook: that was all.</summary>
internal sealed record Leave : Message;

/// <summary>From the notebook: cells can be run.</summary>
internal sealed record Ready : Message;

/// <summary>From the notebook: no cell can be run.</summary>
/// <param name="Why">What is in the way.</param>
internal sealed record Unable(string Why) : Message;

/// <summary>From the notebook: text was written to the console.</summary>
internal sealed record Wrote(string Text, bool IsError) : Message;

/// <summary>From the notebook: a value was shown, or what was shown before has changed.</summary>
/// <param name="Id">The name by which it can be changed.</param>
/// <param name="IsUpdate">Whether it changes what is shown under that name.</param>
/// <param name="Forms">MIME type to content.</param>
internal sealed record Showed(string? Id, bool IsUpdate, ImmutableDictionary<string, string> Forms) : Message;

/// <summary>From the notebook: something to be warned of.</summary>
internal sealed record Warned(string Text) : Message;

/// <summary>From the notebook: an output was too long to be sent.</summary>
/// <param name="Characters">How much of it was left out.</param>
/// <param name="Outputs">1 where the whole output was.</param>
internal sealed record LeftOut(long Characters, long Outputs) : Message;

/// <summary>From the notebook: the cell has ended.</summary>
/// <param name="Error">Why it failed, if it did.</param>
internal sealed record CellEnded(string? Error) : Message;
