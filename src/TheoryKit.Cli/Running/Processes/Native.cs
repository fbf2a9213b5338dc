using System.Runtime.InteropServices;
using System.Runtime.Versioning;

namespace TheoryKit.Cli.Running.Processes;

/// <summary>Calls of the operating system that .NET has no name for. Each answers -1 where it fails.</summary>
[UnsupportedOSPlatform("windows")]
internal static class Native
{
    public const int Kill = 9;

    /// <summary>PR_SET_PDEATHSIG of prctl(2).</summary>
    public const int SignalAtParentsDeath = 1;

    /// <summary>PR_SET_CHILD_SUBREAPER of prctl(2).</summary>
    public const int Adopt = 36;

    /// <summary>POSIX kill(2); a negative id is a process group.</summary>
    [DllImport("libc", EntryPoint = "kill")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    public static extern int SendSignal(int id, int signal);

    /// <summary>POSIX setsid(2): a session and a process group of its own.</summary>
    [DllImport("libc", EntryPoint = "setsid")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    public static extern int FoundSession();

    /// <summary>POSIX dup2(2).</summary>
    [DllImport("libc", EntryPoint = "dup2")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    public static extern int Duplicate(SafeHandle from, int to);

    /// <summary>Linux prctl(2).</summary>
    [SupportedOSPlatform("linux")]
    [DllImport("libc", EntryPoint = "prctl")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    public static extern int Control(int option, nuint argument, nuint second = 0, nuint third = 0, nuint fourth = 0);
}
