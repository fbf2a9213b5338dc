using System.Text.Json;
using System.Text.Json.Nodes;
using Spectre.Console;

namespace TheoryKit.Cli;

/// <summary>The program run in this process, in a folder of its own.</summary>
internal sealed class CommandLine : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("theorykit-cli-");

    public string Output { get; private set; } = "";

    public string Errors { get; private set; } = "";

    public string At(params string[] path) => Path.Combine([folder.FullName, .. path]);

    /// <summary>The text of a page that was printed.</summary>
    public string Page(string name) => File.ReadAllText(At("out", name + ".html"));

    /// <summary>Runs a command; every path in it is the test's own.</summary>
    /// <returns>The exit code.</returns>
    public Task<int> Run(params string[] arguments) => Run(CancellationToken.None, arguments);

    /// <inheritdoc cref="Run(string[])"/>
    public async Task<int> Run(CancellationToken cancellation, params string[] arguments)
    {
        using var output = new StringWriter();
        using var errors = new StringWriter();
        var console = AnsiConsole.Create(
            new()
            {
                Ansi = AnsiSupport.No,
                Interactive = InteractionSupport.No,
                Out = new AnsiConsoleOutput(output),
            }
        );
        console.Profile.Width = 200;
        var code = await Program.RunAsync(arguments, console, errors, cancellation);
        (Output, Errors) = (output.ToString(), errors.ToString());
        return code;
    }

    /// <summary>Prints the test's notebooks into <c>out</c>.</summary>
    public Task<int> Print(params string[] more) => Run(["print", At("notebooks"), "--out", At("out"), .. more]);

    /// <summary>Writes a notebook of code cells, and of text cells where a source begins with <c>#</c> and a blank.</summary>
    public string Write(string name, params string[] sources)
    {
        var cells = sources.Select(static source => Cell(source.StartsWith("# ", StringComparison.Ordinal), source));
        return WriteCells(name, [.. cells]);
    }

    public string WriteCells(string name, params JsonNode[] cells) =>
        WriteText(
            name,
            new JsonObject
            {
                ["cells"] = new JsonArray(cells),
                ["metadata"] = new JsonObject(),
                ["nbformat"] = 4,
                ["nbformat_minor"] = 5,
            }.ToJsonString(JsonSerializerOptions.Web)
        );

    public string WriteText(string name, string text)
    {
        var file = At("notebooks", name);
        Directory.CreateDirectory(Path.GetDirectoryName(file)!);
        File.WriteAllText(file, text);
        return file;
    }

    public static JsonObject Cell(bool isText, string source)
    {
        var cell = new JsonObject
        {
            ["cell_type"] = isText ? "markdown" : "code",
            ["metadata"] = new JsonObject(),
            ["source"] = source,
        };
        if (!isText)
        {
            cell["execution_count"] = null;
            cell["outputs"] = new JsonArray();
        }

        return cell;
    }

    public void Dispose() => folder.Delete(recursive: true);
}
