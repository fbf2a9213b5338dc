namespace TheoryKit.Cli.Running;

/// <summary>What the exit status of a notebook's process tells.</summary>
internal static class ExitText
{
    /// <summary>On Unix a status above this one is a signal's number added to it.</summary>
    private const int Signals = 128;

    private const int Longest = 64;

    public static string Of(int status) =>
        OperatingSystem.IsWindows() || status is <= Signals or > Signals + Longest
            ? $"It ended with status {status}, as when code calls Environment.Exit. A cell that is done needs no exit."
            : (status - Signals) switch
            {
                6 =>
                    "It was aborted (signal 6), as when the stack is full or an exception on another thread is not caught.",
                9 => "It was killed (signal 9), by a program or for want of memory.",
                11 => "It crashed (signal 11): native or unsafe code reached for memory that is not its own.",
                var signal => $"It was ended by signal {signal}.",
            };
}
