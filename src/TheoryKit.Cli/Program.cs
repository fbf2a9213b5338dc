using System.Reflection;
using System.Runtime.InteropServices;
using System.Text;
using Spectre.Console;
using Spectre.Console.Cli;
using TheoryKit.Cli.Commands;
using TheoryKit.Cli.Notebooks;
using TheoryKit.Cli.Running.Inside;
using TheoryKit.Cli.Running.Processes;

namespace TheoryKit.Cli;

/// <summary>The command line.</summary>
internal static class Program
{
    /// <summary>The exit code when a cell failed.</summary>
    public const int CellFailed = 1;

    /// <summary>The exit code when the command asked for something that isn't there or can't be done.</summary>
    public const int BadRequest = 2;

    /// <summary>The exit code after Ctrl+C; 143 after SIGTERM and 129 after SIGHUP, as the shell counts.</summary>
    public const int Interrupted = 130;

    /// <summary>This program's version, without the commit it was built from.</summary>
    public static string Version { get; } =
        typeof(Program)
            .Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()!
            .InformationalVersion.Split('+')[0];

    /// <summary>What to start for another process of this program, and the arguments that come first.</summary>
    internal static (string File, string[] Before) Executable
    {
        get
        {
            var library = typeof(Program).Assembly.Location;
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

    /// <summary>Runs the command that <paramref name="args"/> name.</summary>
    /// <returns>0, or one of this class's exit codes.</returns>
    public static async Task<int> Main(string[] args)
    {
        if (args is [NotebookHost.Command, var pipe, var folder])
        {
            return await NotebookHost.RunAsync(pipe, folder).ConfigureAwait(false);
        }

        if (!Console.IsOutputRedirected)
        {
            Console.OutputEncoding = Encoding.UTF8;
        }

        Offspring.Adopt();
        using var signals = new StopSignals();
        var code = await RunAsync(args, AnsiConsole.Console, Console.Error, signals.Stop).ConfigureAwait(false);
        return code == Interrupted ? signals.Status : code;
    }

    /// <summary>Runs the command that <paramref name="args"/> name, on a console of the caller's.</summary>
    /// <param name="args">The command and its options.</param>
    /// <param name="console">Where results and progress go.</param>
    /// <param name="errors">Where errors go.</param>
    /// <param name="cancellation">Stops the command.</param>
    public static async Task<int> RunAsync(
        IEnumerable<string> args,
        IAnsiConsole console,
        TextWriter errors,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(errors);
        var app = new CommandApp();
        app.Configure(settings =>
        {
            settings
                .SetApplicationName("theorykit")
                .SetApplicationVersion(Version)
                .ConfigureConsole(console)
                .PropagateExceptions();
            settings.Settings.StrictParsing = true;
            settings.Settings.Registrar.RegisterInstance(errors);
            settings
                .AddCommand<PrintCommand>("print")
                .WithDescription("Runs notebooks and prints each as a page that needs nothing else.")
                .WithExample("print", "notebooks")
                .WithExample("print", "notebooks/01-chord-formulas.ipynb", "--out", "handouts", "--code", "hide");
            settings
                .AddCommand<NewCommand>("new")
                .WithDescription("Writes a study notebook that is ready to run.")
                .WithExample("new", "copper-weather");
            settings
                .AddCommand<RetuneCommand>("retune")
                .WithDescription("Searches for the tunings in which the chords of a tune are easiest to hold.")
                .WithExample("retune", "\"Gm9 C13 Fmaj9 Dm7\"")
                .WithExample("retune", "\"Gm9 | C13 | Fmaj9 | Dm7\"", "--within", "3", "--drone", "D", "--rising");
        });
        try
        {
            return await app.RunAsync(args, cancellation).ConfigureAwait(false);
        }
        catch (NotebookException e)
        {
            await errors.WriteLineAsync(e.Message).ConfigureAwait(false);
            return BadRequest;
        }
        catch (CommandAppException e)
        {
            await errors.WriteLineAsync(WrongNumber.Said(e.Message, [.. args]) ?? e.Message).ConfigureAwait(false);
            return BadRequest;
        }
        catch (OperationCanceledException)
        {
            await errors.WriteLineAsync("Stopped.").ConfigureAwait(false);
            return Interrupted;
        }
    }
}
