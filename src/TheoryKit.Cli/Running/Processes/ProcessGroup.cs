using System.ComponentModel;
using System.Diagnostics;

namespace TheoryKit.Cli.Running.Processes;

/// <summary>The process group that a notebook's process and those it starts make up.</summary>
internal static class ProcessGroup
{
    /// <summary>
    /// Makes this process the first of a session and group of its own: Ctrl+C on the terminal is then for the printing
    /// process alone, and the whole group can be ended at once. It ends with the printing process, however that ends.
    /// </summary>
    public static void Found()
    {
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        _ = Native.FoundSession();
        if (OperatingSystem.IsLinux())
        {
            _ = Native.Control(Native.SignalAtParentsDeath, Native.Kill);
            OfferToBeKilledFirst();
        }

        Watch();
        using var nothing = File.OpenHandle("/dev/null");
        _ = Native.Duplicate(nothing, 0);
    }

    /// <summary>Ends this process and its group at once, whatever is going on in it.</summary>
    public static void End()
    {
        if (!OperatingSystem.IsWindows())
        {
            _ = Native.SendSignal(0, Native.Kill);
        }

        using var own = Process.GetCurrentProcess();
        own.Kill();
    }

    /// <summary>
    /// A shell in the group that ends the group when the printing process's end of the standard input closes. Nothing that
    /// cells do to the runtime of this process keeps it from that.
    /// </summary>
    private static void Watch()
    {
        try
        {
            using var shell = Process.Start(
                new ProcessStartInfo("/bin/sh", ["-c", "trap '' HUP INT TERM; read _; kill -KILL 0"])
                {
                    WorkingDirectory = "/",
                }
            );
        }
        catch (Win32Exception)
        {
            // Without a shell, the channel's end and the signal at the parent's death still end this process.
        }
    }

    /// <summary>When memory runs out, the kernel ends this process before the one that writes the pages.</summary>
    private static void OfferToBeKilledFirst()
    {
        try
        {
            File.WriteAllText("/proc/self/oom_score_adj", "1000");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            Debug.WriteLine(e.Message);
        }
    }
}
