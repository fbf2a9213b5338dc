using System.Text.Json;
using System.Text.RegularExpressions;

namespace TheoryKit.Cli.Running.Inside;

/// <summary>
/// The packages that this program runs with: the library's own and those it stands on. A cell that asks for one of them
/// gets the assembly already here, since a process can't hold a second version of it.
/// </summary>
internal sealed partial class PackagesAtHand
{
    private readonly Dictionary<string, Package> packages = new(StringComparer.OrdinalIgnoreCase);

    private PackagesAtHand() { }

    /// <summary>As told by the file of dependencies that the program was started with.</summary>
    public static PackagesAtHand Load()
    {
        var found = new PackagesAtHand();
        var files = ((string?)AppContext.GetData("APP_CONTEXT_DEPS_FILES") ?? "").Split(
            ';',
            StringSplitOptions.RemoveEmptyEntries
        );
        foreach (var file in files.Where(static f => f.StartsWith(AppContext.BaseDirectory, StringComparison.Ordinal)))
        {
            using var json = JsonDocument.Parse(File.ReadAllBytes(file));
            found.Add(json.RootElement);
        }

        return found;
    }

    /// <summary>
    /// Takes the <c>#r "nuget:..."</c> lines out of <paramref name="code"/> that ask for packages at hand, and leaves
    /// their lines blank, so that the others keep their numbers.
    /// </summary>
    public string TakeFrom(string code, out IReadOnlyList<Request> requests)
    {
        var taken = new List<Request>();
        var rest = PackageLine()
            .Replace(
                code,
                line =>
                {
                    var name = line.Groups["name"].Value.Trim();
                    if (!IsOwn(name) || !packages.TryGetValue(name, out var package))
                    {
                        return line.Value;
                    }

                    taken.Add(
                        new(package.Name, line.Groups["version"].Value.Trim(), package.Version, Assemblies(package))
                    );
                    return "";
                }
            );
        requests = taken;
        return rest;
    }

    private static bool IsOwn(string name) => !name.StartsWith("Microsoft.", StringComparison.OrdinalIgnoreCase);

    private List<string> Assemblies(Package asked)
    {
        var seen = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        var open = new Stack<Package>([asked]);
        var paths = new List<string>();
        while (open.TryPop(out var package))
        {
            paths.AddRange(
                package.Assemblies.Select(static f => Path.Combine(AppContext.BaseDirectory, f)).Where(File.Exists)
            );
            foreach (var name in package.Dependencies.Where(IsOwn).Where(seen.Add))
            {
                if (packages.TryGetValue(name, out var next))
                {
                    open.Push(next);
                }
            }
        }

        return paths;
    }

    private void Add(JsonElement root)
    {
        foreach (var target in root.GetProperty("targets").EnumerateObject())
        {
            foreach (var library in target.Value.EnumerateObject())
            {
                if (library.Name.Split('/') is [var name, var version])
                {
                    packages[name] = new(
                        name,
                        version,
                        [.. Keys(library.Value, "dependencies")],
                        [.. Keys(library.Value, "runtime").Select(static path => Path.GetFileName(path))]
                    );
                }
            }
        }
    }

    private static IEnumerable<string> Keys(JsonElement json, string property) =>
        json.TryGetProperty(property, out var found) ? found.EnumerateObject().Select(static p => p.Name) : [];

    [GeneratedRegex(
        """^[ \t]*#r[ \t]+"nuget:(?<name>[^",\n]+)(,(?<version>[^"\n]*))?"[ \t]*$""",
        RegexOptions.Multiline
    )]
    private static partial Regex PackageLine();

    private sealed record Package(string Name, string Version, string[] Dependencies, string[] Assemblies);

    /// <summary>A package that a cell asked for.</summary>
    /// <param name="Name">The package.</param>
    /// <param name="Asked">The version the cell wants; empty for any.</param>
    /// <param name="Version">The version it gets.</param>
    /// <param name="Assemblies">Paths of its assembly and of those it depends on.</param>
    internal sealed record Request(string Name, string Asked, string Version, IReadOnlyList<string> Assemblies)
    {
        /// <summary>Whether the cell gets another version than the one it names.</summary>
        public bool IsOtherVersion => Asked.Length > 0 && !Asked.Contains('*') && Asked != Version;
    }
}
