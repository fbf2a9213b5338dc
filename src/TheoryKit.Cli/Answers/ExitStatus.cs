namespace TheoryKit.Cli.Answers;

/// <summary>What the program ends with, beside 0.</summary>
internal static class ExitStatus
{
    /// <summary>When a cell failed.</summary>
    public const int CellFailed = 1;

    /// <summary>When the command asked for something that isn't there or can't be done.</summary>
    public const int BadRequest = 2;

    /// <summary>After Ctrl+C; 143 after SIGTERM and 129 after SIGHUP, as the shell counts.</summary>
    public const int Interrupted = 130;
}
