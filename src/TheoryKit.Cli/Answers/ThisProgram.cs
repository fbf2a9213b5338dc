using System.Reflection;
using System.Runtime.InteropServices;

namespace TheoryKit.Cli.Answers;

/// <summary>This program itself.</summary>
internal static class ThisProgram
{
    /// <summary>This program's version, without the commit it was built from.</summary>
    public static string Version { get; } =
        typeof(ThisProgram)
            .Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()!
            .InformationalVersion.Split('+')[0];

    /// <summary>What to start for another process of this program, and the arguments that come first.</summary>
    public static (string File, string[] Before) Executable
    {
        get
        {
            var library = typeof(ThisProgram).Assembly.Location;
            if (library.Length == 0)
            {
                return (Environment.ProcessPath!, []);
            }

            var own = Path.ChangeExtension(library, OperatingSystem.IsWindows() ? ".exe" : null);
            if (Environment.ProcessPath == own)
            {
                return (own, []);
            }

            var host = Path.GetFullPath(
                Path.Combine(RuntimeEnvironment.GetRuntimeDirectory(), "..", "..", "..", DotnetName)
            );
            return (File.Exists(host) ? host : "dotnet", ["exec", library]);
        }
    }

    private static string DotnetName => OperatingSystem.IsWindows() ? "dotnet.exe" : "dotnet";
}
