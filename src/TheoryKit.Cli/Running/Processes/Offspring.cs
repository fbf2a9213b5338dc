using System.Diagnostics;
using System.Globalization;
using System.Runtime.Versioning;
using System.Text;

namespace TheoryKit.Cli.Running.Processes;

/// <summary>
/// The processes that a notebook's process has left behind. On Linux they are told by the mark in their environment, by the
/// session, or, for those that have shed both, by having this process for a parent after their own is gone. Out of reach
/// are work that was handed to another program of the machine, such as a scheduler, and processes of another user; and, if
/// this process is itself killed by SIGKILL, those that have left the group. On macOS the group is all that is reached, on
/// Windows the tree of processes.
/// </summary>
internal static class Offspring
{
    /// <summary>The environment variable that marks a notebook's process and all that it starts.</summary>
    public const string Mark = "THEORYKIT_NOTEBOOK";

    /// <summary>A process that starts others without end is given up after so many rounds.</summary>
    private const int Rounds = 50;

    private static bool adopts;

    /// <summary>
    /// Processes whose parent ends become children of this one, and <see cref="EndAdopted"/> ends them. For a program that
    /// starts no other processes.
    /// </summary>
    public static void Adopt() => adopts = OperatingSystem.IsLinux() && Native.Control(Native.Adopt, 1) == 0;

    /// <summary>Ends what is left of a notebook: its group, its session, and what bears its mark.</summary>
    /// <param name="group">The id of the notebook's process, which is that of its group and session.</param>
    /// <param name="mark">The value of <see cref="Mark"/>.</param>
    public static void End(int group, string mark)
    {
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        _ = Native.SendSignal(-group, Native.Kill);
        if (OperatingSystem.IsLinux())
        {
            var marked = Encoding.UTF8.GetBytes($"{Mark}={mark}\0");
            EndAll(() => All().Where(each => each.Session == group || Environ(each.Id).IndexOf(marked) >= 0));
        }
    }

    /// <summary>Ends all that this process has adopted.</summary>
    public static void EndAdopted()
    {
        if (adopts && OperatingSystem.IsLinux())
        {
            EndAll(static () =>
            {
                var all = All().ToList();
                var ours = new HashSet<int> { Environment.ProcessId };
                while (all.RemoveAll(each => ours.Contains(each.Parent) && ours.Add(each.Id)) > 0) { }

                return ours.Where(static id => id != Environment.ProcessId).Select(static id => new Entry(id, 0, 0));
            });
        }
    }

    [SupportedOSPlatform("linux")]
    private static void EndAll(Func<IEnumerable<Entry>> find)
    {
        for (var round = 0; round < Rounds; round++)
        {
            var found = find().ToList();
            if (found.Count == 0)
            {
                return;
            }

            foreach (var each in found)
            {
                _ = Native.SendSignal(each.Id, Native.Kill);
            }

            Thread.Sleep(round);
        }
    }

    /// <summary>The processes of the machine that are not dead yet.</summary>
    private static IEnumerable<Entry> All()
    {
        foreach (var folder in Directory.EnumerateDirectories("/proc"))
        {
            if (
                int.TryParse(Path.GetFileName(folder), NumberStyles.None, CultureInfo.InvariantCulture, out var id)
                && id != Environment.ProcessId
                && Read(id) is { } entry
            )
            {
                yield return entry;
            }
        }
    }

    /// <summary>proc(5): the id, the name in parentheses, which may hold any character, the state, the parent, the group, the session.</summary>
    private static Entry? Read(int id)
    {
        var stat = Encoding.Latin1.GetString(Bytes($"/proc/{id}/stat"));
        var parts = stat[(stat.LastIndexOf(')') + 1)..].Split(' ', 6);
        return
            parts.Length == 6
            && parts[1] is not ("Z" or "X")
            && int.TryParse(parts[2], CultureInfo.InvariantCulture, out var parent)
            && int.TryParse(parts[4], CultureInfo.InvariantCulture, out var session)
            ? new Entry(id, parent, session)
            : null;
    }

    private static ReadOnlySpan<byte> Environ(int id) => Bytes($"/proc/{id}/environ");

    private static byte[] Bytes(string file)
    {
        try
        {
            return File.ReadAllBytes(file);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // It ended meanwhile, or is another user's.
            Debug.WriteLine(e.Message);
            return [];
        }
    }

    private sealed record Entry(int Id, int Parent, int Session);
}
