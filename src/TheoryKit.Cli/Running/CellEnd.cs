namespace TheoryKit.Cli.Running;

/// <summary>How a cell ended.</summary>
internal enum CellEnd
{
    /// <summary>It ran to its end.</summary>
    Ran,

    /// <summary>It didn't compile, or threw an exception.</summary>
    Failed,

    /// <summary>The user stopped the run.</summary>
    Stopped,

    /// <summary>It did not end within the limit.</summary>
    PastLimit,

    /// <summary>The process that ran it was gone before it ended.</summary>
    ProcessEnded,

    /// <summary>There was no process to run it.</summary>
    NotBegun,
}
