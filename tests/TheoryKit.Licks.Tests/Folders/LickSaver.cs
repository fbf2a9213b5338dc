using System.Globalization;
using TheoryKit.Licks.Folders;

namespace TheoryKit.Licks.Tests.Folders;

/// <summary>
/// What the tests run as a process of its own, to kill it: saves licks, over and over, and says on its standard output which it has
/// saved.
/// </summary>
internal static class LickSaver
{
    /// <summary>How many licks a process keeps writing anew.</summary>
    public const int Licks = 6;

    /// <summary>The highest version of one.</summary>
    public const int Versions = 900;

    /// <summary>Saves licks of a name in a folder, so many times.</summary>
    public static void Save(string[] arguments)
    {
        var (path, name) = (arguments[0], arguments[1]);
        var folder = LickFolder.Open(path);
        using var output = new StreamWriter(Console.OpenStandardOutput()) { AutoFlush = true, NewLine = "\n" };
        var first = folder
            .Licks.Where(kept => kept.Lick.Name.StartsWith(name, StringComparison.Ordinal))
            .Select(static kept => VersionOf(kept.Lick))
            .DefaultIfEmpty()
            .Max();
        for (
            var (version, count) = (first + 1, int.Parse(arguments[2], CultureInfo.InvariantCulture));
            count > 0;
            version++, count--
        )
        {
            folder.Save(Make(name, version));
            output.WriteLine(version);
        }
    }

    /// <summary>A version of one of a process's licks; the next one is of the next lick.</summary>
    public static Lick Make(string name, int version) =>
        FolderGens.Make(version, NameOf(name, version)) with
        {
            Tempo = null,
            Headers =
            [
                new("version", version.ToString(CultureInfo.InvariantCulture)),
                new("padding", new string('x', 37 * (version % 200))),
            ],
        };

    public static string NameOf(string name, int version) => $"{name} {version % Licks}";

    public static int VersionOf(Lick lick) => int.Parse(lick.Headers[0].Value, CultureInfo.InvariantCulture);
}
