using System.Diagnostics;
using System.Text;

namespace TheoryKit.Hosts;

/// <summary>Runs a program of the machine to its end.</summary>
internal static class Command
{
    /// <summary>What the program wrote, both streams together; a failure of the test if its exit code is not 0.</summary>
    public static async Task<string> Run(
        string folder,
        IReadOnlyDictionary<string, string> environment,
        string program,
        params IEnumerable<string> arguments
    )
    {
        var start = new ProcessStartInfo(program, arguments)
        {
            WorkingDirectory = folder,
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        foreach (var (name, value) in environment)
        {
            start.Environment[name] = value;
        }

        // What a test runner sets for itself would reach the kernel otherwise.
        start.Environment.Remove("MSBUILD_EXE_PATH");
        start.Environment.Remove("MSBuildSDKsPath");
        start.Environment.Remove("MSBuildExtensionsPath");
        var output = new StringBuilder();
        using var process = new Process { StartInfo = start };
        DataReceivedEventHandler gather = (_, line) =>
        {
            lock (output)
            {
                output.AppendLine(line.Data);
            }
        };
        process.OutputDataReceived += gather;
        process.ErrorDataReceived += gather;
        process.Start();
        process.StandardInput.Close();
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
        using var limit = new CancellationTokenSource(TimeSpan.FromMinutes(6));
        try
        {
            await process.WaitForExitAsync(limit.Token);
        }
        catch (OperationCanceledException)
        {
            process.Kill(entireProcessTree: true);
            Assert.Fail($"{program} {string.Join(' ', start.ArgumentList)} did not end:\n{output}");
        }

        Assert.True(process.ExitCode == 0, $"{program} {string.Join(' ', start.ArgumentList)} failed:\n{output}");
        return output.ToString();
    }
}
