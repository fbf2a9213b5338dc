using System.Xml.Linq;

namespace TheoryKit.Hosts;

/// <summary>
/// A Jupyter of its own: packages packed from what was built, the kernel installed, and home, settings and package cache
/// apart from the machine's.
/// </summary>
public sealed class Jupyter : IAsyncLifetime
{
    private static readonly string[] MayFail = ["raises-exception"];

    private readonly Dictionary<string, string> environment = new(StringComparer.Ordinal);

    private string root = "";

    /// <summary>Where notebooks lie, beside the NuGet.config of the repository's own.</summary>
    public string Folder { get; private set; } = "";

    public async Task InitializeAsync()
    {
        if (HostTools.ReasonToSkip([HostTools.Jupyter, HostTools.Kernel]) is not null)
        {
            return;
        }

        // Not inside the repository: the kernel's own projects, in its home, would take on the repository's settings.
        root = Directory.CreateTempSubdirectory("theorykit-jupyter-").FullName;
        var userHome = Environment.GetFolderPath(Environment.SpecialFolder.UserProfile);
        Folder = Path.Combine(root, "notebooks");
        Repository.CopyNotebooks(Folder);
        Repository.CopyFolder(Path.Combine(Repository.Root, ".config"), Path.Combine(root, ".config"));
        await Pack(Path.Combine(root, "artifacts", "package", "release"));

        var home = Directory.CreateDirectory(Path.Combine(root, "home")).FullName;
        var kernels = Directory.CreateDirectory(Path.Combine(root, "jupyter", "kernels")).FullName;
        environment["HOME"] = home;
        environment["JUPYTER_DATA_DIR"] = Path.Combine(root, "jupyter");
        environment["JUPYTER_CONFIG_DIR"] = Path.Combine(root, "jupyter", "config");
        environment["JUPYTER_RUNTIME_DIR"] = Path.Combine(root, "jupyter", "runtime");
        environment["IPYTHONDIR"] = Path.Combine(root, "jupyter", "ipython");
        environment["DOTNET_CLI_HOME"] = Environment.GetEnvironmentVariable("DOTNET_CLI_HOME") ?? userHome;
        environment["DOTNET_INTERACTIVE_CLI_TELEMETRY_OPTOUT"] = "1";
        environment["DOTNET_NOLOGO"] = "1";
        environment["NUGET_PACKAGES"] = HostTools.PackageCache;
        await Command.Run(root, environment, "dotnet", "tool", "restore");
        await Command.Run(
            root,
            environment,
            "dotnet",
            "tool",
            "run",
            "dotnet-interactive",
            "jupyter",
            "install",
            "--path",
            kernels
        );

        // From here on the notebooks' packages: other people's may stay from run to run, ours may not, because NuGet
        // keeps what it has once seen of a version.
        var packages = Directory
            .CreateDirectory(Path.Combine(Repository.Root, "artifacts", "hosts", "packages"))
            .FullName;
        foreach (var own in Directory.GetDirectories(packages, "theorykit*"))
        {
            Directory.Delete(own, recursive: true);
        }

        environment["NUGET_PACKAGES"] = packages;
    }

    public Task DisposeAsync()
    {
        if (root.Length > 0)
        {
            Directory.Delete(root, recursive: true);
        }

        return Task.CompletedTask;
    }

    /// <summary>Runs all cells of a notebook in <see cref="Folder"/>.</summary>
    /// <returns>The path of the notebook with its outputs.</returns>
    public async Task<string> Execute(string name)
    {
        await Nbconvert(
            "notebook",
            name + ".ipynb",
            "--execute",
            "--ExecutePreprocessor.timeout=240",
            "--output",
            name + ".run.ipynb"
        );
        return Path.Combine(Folder, name + ".run.ipynb");
    }

    /// <summary>Makes a page of a notebook with outputs.</summary>
    public async Task<string> ToHtml(string notebook)
    {
        await Nbconvert("html", notebook);
        return Path.ChangeExtension(notebook, ".html");
    }

    /// <summary>Adds a notebook of a test's own to <see cref="Folder"/>.</summary>
    public void Add(string file) => File.Copy(file, Path.Combine(Folder, Path.GetFileName(file)), overwrite: true);

    /// <summary>Writes a notebook of code cells into <see cref="Folder"/>; a cell that fails does not stop it.</summary>
    public void Write(string name, params IEnumerable<string> cells)
    {
        var notebook = new
        {
            cells = cells.Select(static source => new
            {
                cell_type = "code",
                execution_count = (int?)null,
                metadata = new { tags = MayFail },
                outputs = Array.Empty<string>(),
                source = new[] { source },
            }),
            metadata = new
            {
                kernelspec = new
                {
                    display_name = ".NET (C#)",
                    language = "C#",
                    name = ".net-csharp",
                },
            },
            nbformat = 4,
            nbformat_minor = 4,
        };
        File.WriteAllText(Path.Combine(Folder, name + ".ipynb"), System.Text.Json.JsonSerializer.Serialize(notebook));
    }

    private Task<string> Nbconvert(string to, string notebook, params IEnumerable<string> options) =>
        Command.Run(Folder, environment, "jupyter", ["nbconvert", "--to", to, notebook, .. options]);

    private static async Task Pack(string feed)
    {
        foreach (
            var project in WithReferences(Path.Combine(Repository.Root, "src", "TheoryKit.Interactive")).Distinct()
        )
        {
            string[] options =
            [
                "--no-build",
                "--no-restore",
                "-c",
                Repository.Configuration,
                "-o",
                feed,
                "-nodeReuse:false",
            ];
            await Command.Run(
                Repository.Root,
                new Dictionary<string, string>(),
                "dotnet",
                ["pack", project, .. options]
            );
        }
    }

    private static IEnumerable<string> WithReferences(string folder)
    {
        var project = Directory.GetFiles(folder, "*.csproj").Single();
        return XDocument
            .Load(project)
            .Descendants("ProjectReference")
            .Select(reference =>
                Path.GetDirectoryName(Path.GetFullPath(Path.Combine(folder, reference.Attribute("Include")!.Value)))!
            )
            .SelectMany(WithReferences)
            .Prepend(project);
    }
}
