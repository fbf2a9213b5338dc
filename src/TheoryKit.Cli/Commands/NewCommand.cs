using System.ComponentModel;
using Spectre.Console;
using Spectre.Console.Cli;
using TheoryKit.Cli.Notebooks;

namespace TheoryKit.Cli.Commands;

/// <summary>Writes a study notebook that is ready to run.</summary>
internal sealed class NewCommand(IAnsiConsole console) : Command<NewCommand.Settings>
{
    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var folder = settings.Out ?? (Directory.Exists("notebooks") ? "notebooks" : ".");
        var file = StudyTemplate.Write(settings.Name, folder);
        console.WriteLine(Path.GetRelativePath(Environment.CurrentDirectory, file));
        return 0;
    }

    /// <summary>The options of <c>new</c>.</summary>
    internal sealed class Settings : CommandSettings
    {
        [CommandArgument(0, "<NAME>")]
        [Description("What the study is called, such as [bold]copper-weather[/] or [bold]\"Copper Weather\"[/].")]
        public required string Name { get; init; }

        [CommandOption("-o|--out <FOLDER>")]
        [Description("Where it goes; by default [bold]notebooks[/] if there is such a folder, else here.")]
        public string? Out { get; init; }
    }
}
