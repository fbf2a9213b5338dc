using TheoryKit.Hosts;

namespace TheoryKit.Cli;

/// <summary>Every notebook of the project, and those of these tests, printed once.</summary>
public sealed class PrintedPages : IAsyncLifetime
{
    private readonly string folder = Repository.EmptyFolder("print");

    /// <summary>The notebooks that can be printed whole.</summary>
    public static IEnumerable<string> Notebooks =>
        Repository.Notebooks.Concat(
            Directory
                .GetFiles(Path.Combine(AppContext.BaseDirectory, "Notebooks"), "*.ipynb")
                .Order(StringComparer.Ordinal)
        );

    public static IEnumerable<string> Names => Notebooks.Select(static file => Path.GetFileNameWithoutExtension(file));

    public string File(string name) => Path.Combine(folder, name + ".html");

    public async Task InitializeAsync()
    {
        if (HostTools.Chromium is null)
        {
            return;
        }

        var all = Path.Combine(folder, "notebooks");
        Repository.CopyNotebooks(all);
        foreach (var notebook in Notebooks.Except(Repository.Notebooks))
        {
            System.IO.File.Copy(notebook, Path.Combine(all, Path.GetFileName(notebook)));
        }

        using var program = new CommandLine();
        var code = await program.Run("print", all, "--out", folder);
        Assert.True(code == 0, program.Errors);
    }

    public Task DisposeAsync() => Task.CompletedTask;
}
