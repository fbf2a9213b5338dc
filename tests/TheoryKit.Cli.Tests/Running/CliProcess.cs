using System.Diagnostics;
using System.Globalization;
using System.Runtime.InteropServices;
using System.Text;
using TheoryKit.Cli.Answers;

namespace TheoryKit.Cli.Running;

/// <summary>The program in a process of its own, and a mark by which all that comes from it is found.</summary>
internal sealed class CliProcess : IDisposable
{
    /// <summary>Far beyond what any test takes: a machine with much else to do is no failure.</summary>
    private static readonly TimeSpan Longest = TimeSpan.FromMinutes(10);

    private readonly string mark = Guid.NewGuid().ToString("N");
    private readonly Process process;
    private readonly Task<string> output;
    private readonly Task<string> errors;

    public CliProcess(IEnumerable<string> arguments, params (string Name, string Value)[] environment)
    {
        var (file, before) = ThisProgram.Executable;
        var start = new ProcessStartInfo(file, [.. before, .. arguments])
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.Environment["THEORYKIT_TEST"] = mark;
        foreach (var (name, value) in environment)
        {
            start.Environment[name] = value;
        }

        process = Process.Start(start)!;
        output = process.StandardOutput.ReadToEndAsync();
        errors = process.StandardError.ReadToEndAsync();
    }

    public string Output => output.Result;

    public string Errors => errors.Result;

    public void Signal(int signal) => Assert.Equal(0, Send(process.Id, signal));

    /// <summary>The exit status.</summary>
    public async Task<int> Ended()
    {
        await process.WaitForExitAsync().WaitAsync(Longest);
        await Task.WhenAll(output, errors).WaitAsync(Longest);
        return process.ExitCode;
    }

    /// <summary>Runs a command to its end.</summary>
    public static async Task<CliProcess> Run(
        IEnumerable<string> arguments,
        params (string Name, string Value)[] environment
    )
    {
        var program = new CliProcess(arguments, environment);
        await program.Ended();
        return program;
    }

    public int Status => process.ExitCode;

    /// <summary>The command lines of the processes still there that bear the mark, but for the program itself.</summary>
    public IReadOnlyList<string> Left() => [.. Marked().Select(static id => Words(Read(id, "cmdline")))];

    /// <summary>Waits until no marked process is left.</summary>
    public async Task NoneLeft()
    {
        for (var until = Stopwatch.StartNew(); until.Elapsed < Longest && Left().Count > 0; )
        {
            await Task.Delay(100);
        }

        Assert.Empty(Left());
    }

    public void Dispose()
    {
        foreach (var id in Marked().Prepend(process.Id))
        {
            _ = Send(id, 9);
        }

        process.Dispose();
    }

    private IEnumerable<int> Marked()
    {
        var marked = Encoding.UTF8.GetBytes($"THEORYKIT_TEST={mark}\0");
        return Directory
            .GetDirectories("/proc")
            .Select(static folder =>
                int.TryParse(Path.GetFileName(folder), CultureInfo.InvariantCulture, out var id) ? id : 0
            )
            .Where(id => id > 0 && id != process.Id && Read(id, "environ").AsSpan().IndexOf(marked) >= 0);
    }

    /// <summary>The command lines of all processes of the machine.</summary>
    public static IEnumerable<string> All() =>
        Directory
            .GetDirectories("/proc")
            .Where(static folder => int.TryParse(Path.GetFileName(folder), CultureInfo.InvariantCulture, out _))
            .Select(static folder =>
                Words(Read(int.Parse(Path.GetFileName(folder), CultureInfo.InvariantCulture), "cmdline"))
            );

    private static string Words(byte[] line) => Encoding.UTF8.GetString(line).Replace('\0', ' ').Trim();

    private static byte[] Read(int id, string file)
    {
        try
        {
            return File.ReadAllBytes($"/proc/{id}/{file}");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return [];
        }
    }

    [DllImport("libc", EntryPoint = "kill")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Send(int id, int signal);
}

/// <summary>A test of what only Linux tells.</summary>
[AttributeUsage(AttributeTargets.Method)]
public sealed class LinuxFactAttribute : FactAttribute
{
    public LinuxFactAttribute() => Skip = OperatingSystem.IsLinux() ? null : "This is read from Linux's /proc.";
}
