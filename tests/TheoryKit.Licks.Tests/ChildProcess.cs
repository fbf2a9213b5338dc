using System.Diagnostics;
using TheoryKit.Licks.Tests.Folders;
using TheoryKit.Licks.Tests.Practice;

namespace TheoryKit.Licks.Tests;

/// <summary>
/// Work in a real process of its own, by name and from a list of arguments: for tests of what two programs do to one file, and of
/// being killed. It is the assembly's own entry point.
/// </summary>
internal static class ChildProcess
{
    private static readonly Dictionary<string, Action<string[]>> Works = new(StringComparer.Ordinal)
    {
        [nameof(PracticeLogTests.AppendMany)] = PracticeLogTests.AppendMany,
        [nameof(LickSaver)] = LickSaver.Save,
    };

    public static Process Start(string work, params IEnumerable<string> arguments)
    {
        var start = new ProcessStartInfo("dotnet")
        {
            ArgumentList = { "exec", typeof(ChildProcess).Assembly.Location, work },
            Environment = { ["DOTNET_TieredPGO"] = "0" },
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        foreach (var argument in arguments)
        {
            start.ArgumentList.Add(argument);
        }

        return Process.Start(start)!;
    }

    public static int Main(string[] arguments)
    {
        if (arguments is not [var work, ..] || !Works.TryGetValue(work, out var run))
        {
            Console.Error.WriteLine($"The first argument is one of {string.Join(", ", Works.Keys)}.");
            return 2;
        }

        run(arguments[1..]);
        return 0;
    }
}
