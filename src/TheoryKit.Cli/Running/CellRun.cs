using System.Collections.Immutable;
using TheoryKit.Cli.Notebooks;

namespace TheoryKit.Cli.Running;

/// <summary>A code cell that was run.</summary>
/// <param name="Cell">The cell.</param>
/// <param name="Outputs">What it showed, in order.</param>
/// <param name="Error">Why it failed, if it did: the compiler's errors, or the exception.</param>
/// <param name="WasStopped">Whether it didn't come to its end because the run was stopped.</param>
public sealed record CellRun(CodeCell Cell, ImmutableList<CellOutput> Outputs, string? Error, bool WasStopped = false)
{
    /// <summary>What became of the cell, in a word or two.</summary>
    public string Fate =>
        WasStopped ? "was stopped"
        : Succeeded ? "ran"
        : "failed";

    /// <summary>Whether the cell ran to its end.</summary>
    public bool Succeeded => Error is null && !WasStopped;
}
