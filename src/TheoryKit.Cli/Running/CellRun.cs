using System.Collections.Immutable;
using TheoryKit.Cli.Notebooks;

namespace TheoryKit.Cli.Running;

/// <summary>A code cell that was run.</summary>
/// <param name="Cell">The cell.</param>
/// <param name="Outputs">What it showed, in order.</param>
/// <param name="End">How it ended.</param>
/// <param name="Error">Why it did not end well, where there is more to say: the compiler's errors, the exception.</param>
internal sealed record CellRun(CodeCell Cell, ImmutableList<CellOutput> Outputs, CellEnd End, string? Error)
{
    /// <summary>What became of the cell, in a few words.</summary>
    public string Fate =>
        End switch
        {
            CellEnd.Ran => "ran",
            CellEnd.Stopped => "was stopped",
            CellEnd.PastLimit => "took too long",
            CellEnd.ProcessEnded => "ended the notebook's process",
            CellEnd.NotBegun => "could not be run",
            _ => "failed",
        };

    /// <summary>Whether the cell ran to its end.</summary>
    public bool Succeeded => End == CellEnd.Ran;
}
