using System.Text.Json;
using TheoryKit.Cli.Answers;

namespace TheoryKit.Cli;

[Collection("one notebook at a time")]
public sealed class NewCommandTests : IDisposable
{
    private readonly CommandLine program = new();

    public void Dispose() => program.Dispose();

    [Fact]
    public async Task A_new_study_runs_as_it_is_and_shows_a_chord_on_a_neck()
    {
        Assert.Equal(0, await program.Run("new", "Copper Weather", "--out", program.At("notebooks")));
        Assert.Equal(0, await program.Print());
        var page = program.Page("copper-weather");
        Assert.Contains("<h1 id=\"copper-weather\">Copper Weather</h1>", page, StringComparison.Ordinal);
        Assert.Contains("<svg", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_new_study_is_for_the_csharp_kernel_of_jupyter()
    {
        Assert.Equal(0, await program.Run("new", "04-kestrel-stairs", "--out", program.At("notebooks")));
        using var notebook = JsonDocument.Parse(File.ReadAllText(program.At("notebooks", "04-kestrel-stairs.ipynb")));
        var root = notebook.RootElement;
        Assert.Equal(
            ".net-csharp",
            root.GetProperty("metadata").GetProperty("kernelspec").GetProperty("name").GetString()
        );
        var code = root.GetProperty("cells")
            .EnumerateArray()
            .First(static cell => cell.GetProperty("cell_type").GetString() == "code");
        Assert.Equal(
            $"#r \"nuget:TheoryKit.Interactive, {ThisProgram.Version}\"",
            code.GetProperty("source")[0].GetString()
        );
        Assert.StartsWith(
            "# Kestrel Stairs",
            root.GetProperty("cells")[0].GetProperty("source")[0].GetString(),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task A_study_that_is_there_is_not_written_over()
    {
        var file = program.WriteText("copper-weather.ipynb", "mine");
        Assert.Equal(2, await program.Run("new", "copper-weather", "--out", program.At("notebooks")));
        Assert.Contains("exists already", program.Errors, StringComparison.Ordinal);
        Assert.Equal("mine", File.ReadAllText(file));
    }

    [Fact]
    public async Task A_name_without_a_letter_makes_no_file()
    {
        Assert.Equal(2, await program.Run("new", "../..", "--out", program.At("notebooks")));
        Assert.Contains("makes no file name", program.Errors, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("notebooks/my-study.ipynb", "notebooks/my-study.ipynb", "My Study")]
    [InlineData("notebooks/bars/My Study.ipynb", "notebooks/bars/My Study.ipynb", "My Study")]
    [InlineData("notebooks/Copper Weather", "notebooks/copper-weather.ipynb", "Copper Weather")]
    [InlineData("./my-study", "my-study.ipynb", "My Study")]
    public async Task A_path_is_kept_and_titled_by_its_last_part(string name, string file, string title)
    {
        Assert.Equal(0, await program.Run("new", name, "--out", program.At()));
        using var notebook = JsonDocument.Parse(File.ReadAllText(program.At(file)));
        Assert.Equal($"# {title}\n", notebook.RootElement.GetProperty("cells")[0].GetProperty("source")[0].GetString());
    }

    [Fact]
    public async Task The_version_is_the_packages()
    {
        Assert.Equal(0, await program.Run("--version"));
        Assert.Equal(ThisProgram.Version, program.Output.Trim());
    }

    [Fact]
    public async Task Help_names_the_commands()
    {
        Assert.Equal(0, await program.Run("--help"));
        Assert.Contains("print", program.Output, StringComparison.Ordinal);
        Assert.Contains("new", program.Output, StringComparison.Ordinal);
    }
}
