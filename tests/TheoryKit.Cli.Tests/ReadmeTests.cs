using System.Text.RegularExpressions;

namespace TheoryKit.Cli;

[Collection("one notebook at a time")]
public sealed partial class ReadmeTests : IDisposable
{
    private const string Start = "    dotnet run --project src/TheoryKit.Cli -- ";

    private readonly CommandLine program = new();
    private readonly string folderBefore = Environment.CurrentDirectory;

    public void Dispose()
    {
        Environment.CurrentDirectory = folderBefore;
        program.Dispose();
    }

    /// <summary>The words of a command line; what is quoted is one.</summary>
    [GeneratedRegex("\"[^\"]*\"|[^ ]+")]
    private static partial Regex Words();

    [Fact]
    public async Task Its_commands_do_what_they_say_one_after_the_other()
    {
        var lines = File.ReadLines(Path.Combine(Repository.Root, "README.md"))
            .Where(static line => line.StartsWith(Start, StringComparison.Ordinal))
            .Select(static line =>
                Words().Matches(line[Start.Length..]).Select(static word => word.Value.Trim('"')).ToArray()
            )
            .ToList();
        Assert.Contains(lines, static line => line[0] == "print");
        Assert.Contains(lines, static line => line[0] == "new");
        program.Write("copper-weather.ipynb", "# Copper Weather");
        Environment.CurrentDirectory = program.At();
        foreach (var line in lines)
        {
            var code = await program.Run(line);
            Assert.True(code == 0, $"{string.Join(' ', line)}: {program.Errors}");
            Assert.True(line[0] == "retune" || File.Exists(program.Output.TrimEnd().Split('\n')[^1]), program.Output);
        }

        Assert.True(File.Exists(program.At("artifacts", "print", "index.html")));
    }
}
