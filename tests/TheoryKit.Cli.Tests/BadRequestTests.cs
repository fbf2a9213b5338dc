namespace TheoryKit.Cli;

[Collection("one notebook at a time")]
public sealed class BadRequestTests : IDisposable
{
    private readonly CommandLine program = new();

    public void Dispose() => program.Dispose();

    [Fact]
    public async Task A_path_that_is_not_there()
    {
        Assert.Equal(2, await program.Print());
        Assert.Contains(
            $"There is no file or folder {program.At("notebooks")}",
            program.Errors,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task A_folder_without_notebooks()
    {
        Directory.CreateDirectory(program.At("notebooks"));
        Assert.Equal(2, await program.Print());
        Assert.Contains("holds no notebook", program.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_file_that_is_no_notebook_by_its_name()
    {
        var file = program.WriteText("licks.txt", "");
        Assert.Equal(2, await program.Run("print", file));
        Assert.Contains("its name would end in .ipynb", program.Errors, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("", "not JSON")]
    [InlineData("{\n  \"cells\": [", "not JSON")]
    [InlineData("[]", "nbformat")]
    [InlineData("{\"nbformat\": 3, \"worksheets\": []}", "format 3")]
    [InlineData("{\"nbformat\": 4}", "no \"cells\"")]
    public async Task A_file_that_is_no_notebook_inside(string text, string why)
    {
        program.WriteText("copper-weather.ipynb", text);
        Assert.Equal(2, await program.Print());
        Assert.Contains("copper-weather.ipynb", program.Errors, StringComparison.Ordinal);
        Assert.Contains(why, program.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_place_that_cannot_be_written_to()
    {
        var file = program.Write("copper-weather.ipynb", "1");
        Assert.Equal(2, await program.Run("print", file, "--out", Path.Combine(file, "inside")));
        Assert.Contains("can't be made", program.Errors, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("print", "--colour")]
    [InlineData("perform")]
    [InlineData("print", ".", "--code", "sideways")]
    [InlineData("new")]
    [InlineData("print", ".", "--ouy", "pages")]
    [InlineData("print", ".", "--bogus")]
    [InlineData("new", "copper-weather", "--outt=here")]
    public async Task A_command_that_is_not_understood(params string[] command)
    {
        Assert.Equal(2, await program.Run(command));
        Assert.NotEmpty(program.Errors);
    }

    [Fact]
    public async Task Any_text_is_a_notebook_or_a_clear_error()
    {
        string[] parts =
        [
            "{",
            "}",
            "[",
            "]",
            "\"cells\"",
            ":",
            ",",
            "\"nbformat\"",
            "4",
            "\"cell_type\"",
            "\"code\"",
            "\"source\"",
            "null",
            "\"x\"",
            "\"metadata\"",
            "\"attachments\"",
        ];
        Gen.Const(parts)
            .SelectMany(static words => Gen.Int[0, words.Length - 1].Select(i => words[i]).Array[0, 24])
            .Sample(static words =>
            {
                try
                {
                    Notebooks.NotebookReader.Parse(string.Concat(words), "a.ipynb");
                }
                catch (Notebooks.NotebookException e)
                {
                    Assert.StartsWith("a.ipynb is", e.Message, StringComparison.Ordinal);
                }
            });
        Gen.Const(
                "{\"nbformat\":4,\"cells\":[{\"cell_type\":\"code\",\"metadata\":{},\"source\":[\"a\",\"b\"],\"outputs\":[]}]}"
            )
            .SelectMany(static text =>
                Gen.Select(Gen.Int[0, text.Length - 1], Gen.Int[0, 12], Gen.String[0, 6])
                    .Select(edit =>
                        text.Remove(edit.Item1, Math.Min(edit.Item2, text.Length - edit.Item1))
                            .Insert(edit.Item1, edit.Item3)
                    )
            )
            .Sample(static text =>
            {
                try
                {
                    Notebooks.NotebookReader.Parse(text, "a.ipynb");
                }
                catch (Notebooks.NotebookException) { }
            });
        await Task.CompletedTask;
    }
}
