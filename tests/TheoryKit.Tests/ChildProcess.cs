using System.Diagnostics;
using System.Globalization;

namespace TheoryKit.Tests
{
    /// <summary>
    /// Work in a real process of its own: this assembly is started again, and the runtime calls <c>StartupHook.Initialize</c> in it, which
    /// runs the work of a name. For tests of what two programs do to one file, and of being killed.
    /// </summary>
    internal static class ChildProcess
    {
        private const string Name = "THEORYKIT_TEST_WORK";
        private const string Arguments = "THEORYKIT_TEST_ARGUMENTS";

        /// <summary>What can be run: by name, from a list of arguments.</summary>
        private static readonly Dictionary<string, Action<string[]>> Works = new(StringComparer.Ordinal)
        {
            [nameof(Paths.Practice.PracticeLogTests.AppendMany)] = static arguments =>
                Paths.Practice.PracticeLogTests.AppendMany(
                    arguments[0],
                    arguments[1],
                    int.Parse(arguments[2], CultureInfo.InvariantCulture)
                ),
        };

        public static Process Start(string work, params IEnumerable<string> arguments)
        {
            var assembly = typeof(ChildProcess).Assembly.Location;
            var start = new ProcessStartInfo(Environment.ProcessPath is { } path && IsDotnet(path) ? path : "dotnet")
            {
                ArgumentList = { "exec", assembly },
                Environment =
                {
                    ["DOTNET_STARTUP_HOOKS"] = assembly,
                    [Name] = work,
                    [Arguments] = string.Join('\n', arguments),
                },
                RedirectStandardError = true,
            };
            return Process.Start(start)!;
        }

        public static void RunAsked()
        {
            if (Environment.GetEnvironmentVariable(Name) is { } work)
            {
                Works[work]((Environment.GetEnvironmentVariable(Arguments) ?? "").Split('\n'));
            }
        }

        private static bool IsDotnet(string path) => System.IO.Path.GetFileNameWithoutExtension(path) == "dotnet";
    }
}

/// <summary>What the runtime calls where DOTNET_STARTUP_HOOKS names this assembly: its name and place are the runtime's choice.</summary>
#pragma warning disable CA1050
internal static class StartupHook
#pragma warning restore CA1050
{
    public static void Initialize() => TheoryKit.Tests.ChildProcess.RunAsked();
}
