using System.Reflection;

namespace TheoryKit;

/// <summary>Where things lie in the repository that the tests were built from.</summary>
internal static class Repository
{
    public static string Root { get; } = FindRoot();

    /// <summary>The configuration the tests were built in.</summary>
    public static string Configuration { get; } =
        typeof(Repository).Assembly.GetCustomAttribute<AssemblyConfigurationAttribute>()!.Configuration;

    /// <summary>The notebooks that the project ships.</summary>
    public static IEnumerable<string> Notebooks =>
        Directory.GetFiles(Path.Combine(Root, "notebooks"), "*.ipynb").Order(StringComparer.Ordinal);

    /// <summary>Copies the notebooks that the project ships, and all that lies beside them.</summary>
    public static void CopyNotebooks(string to) => CopyFolder(Path.Combine(Root, "notebooks"), to);

    public static void CopyFolder(string from, string to)
    {
        Directory.CreateDirectory(to);
        foreach (var file in Directory.GetFiles(from, "*", SearchOption.AllDirectories))
        {
            var copy = Path.Combine(to, Path.GetRelativePath(from, file));
            Directory.CreateDirectory(Path.GetDirectoryName(copy)!);
            File.Copy(file, copy);
        }
    }

    /// <summary>An empty folder for a test's files, under the ignored output.</summary>
    public static string EmptyFolder(string name)
    {
        var folder = Path.Combine(Root, "artifacts", "hosts", name);
        if (Directory.Exists(folder))
        {
            Directory.Delete(folder, recursive: true);
        }

        return Directory.CreateDirectory(folder).FullName;
    }

    private static string FindRoot()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "TheoryKit.sln")))
            {
                return folder.FullName;
            }
        }

        throw new InvalidOperationException($"No TheoryKit.sln above {AppContext.BaseDirectory}.");
    }
}
