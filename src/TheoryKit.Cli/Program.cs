using System.Text;
using Spectre.Console;
using Spectre.Console.Cli;
using TheoryKit.Cli.Answers;
using TheoryKit.Cli.Commands;
using TheoryKit.Cli.Notebooks;
using TheoryKit.Cli.Running.Inside;
using TheoryKit.Cli.Running.Processes;

namespace TheoryKit.Cli;

/// <summary>The command line.</summary>
internal static class Program
{
    /// <summary>Runs the command that <paramref name="args"/> name.</summary>
    /// <returns>0, or an <see cref="ExitStatus"/>.</returns>
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
        return code == ExitStatus.Interrupted ? signals.Status : code;
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
                .SetApplicationVersion(ThisProgram.Version)
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
            return ExitStatus.BadRequest;
        }
        catch (CommandAppException e)
        {
            await errors.WriteLineAsync(WrongNumber.Said(e.Message, [.. args]) ?? e.Message).ConfigureAwait(false);
            return ExitStatus.BadRequest;
        }
        catch (OperationCanceledException)
        {
            await errors.WriteLineAsync("Stopped.").ConfigureAwait(false);
            return ExitStatus.Interrupted;
        }
    }
}
