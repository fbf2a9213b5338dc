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
        var file = StudyTemplate.Write(settings.Name, settings.Out ?? DefaultFolder(settings.Name));
        console.WriteLine(Path.GetRelativePath(Environment.CurrentDirectory, file));
        return 0;
    }

    private static string DefaultFolder(string name) =>
        !StudyTemplate.NamesFolder(name) && Directory.Exists("notebooks") ? "notebooks" : ".";

    /// <summary>The options of <c>new</c>.</summary>
    internal sealed class Settings : CommandSettings
    {
        [CommandArgument(0, "<NAME>")]
        [Description(
            "What the study is called, such as [bold]copper-weather[/] or [bold]\"Copper Weather\"[/], "
                + "or where it goes, such as [bold]notebooks/copper-weather.ipynb[/]."
        )]
        public required string Name { get; init; }

        [CommandOption("-o|--out <FOLDER>")]
        [Description(
            "Where it goes; by default [bold]notebooks[/] if there is such a folder, else here. A folder in the name counts from there."
        )]
        public string? Out { get; init; }
    }
}
