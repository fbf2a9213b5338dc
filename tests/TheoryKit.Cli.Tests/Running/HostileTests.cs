using System.Globalization;

namespace TheoryKit.Cli.Running;

/// <summary>
/// Whatever a notebook does, its page is there with what it showed before, the program ends and says how, and nothing that
/// the notebook started is left. All 200 and more with THEORYKIT_LONG_TESTS=1, else one of each of some kinds.
/// </summary>
[Collection("one notebook at a time")]
public sealed class HostileTests : IDisposable
{
    private const string Limit = "15s";

    /// <summary>1 GB: a cell that takes all memory takes it soon, and the program itself may not need more.</summary>
    private static readonly (string, string) Memory = ("DOTNET_GCHeapHardLimit", "0x40000000");

    /// <summary>Most of them wait for the limit, so three run side by side; what six show at once is more than the memory above.</summary>
    private static readonly (string, string) Jobs = ("DOTNET_PROCESSOR_COUNT", "3");

    /// <summary>How long a process sleeps that a notebook leaves: no other process of the machine sleeps as long.</summary>
    private static readonly string Sleep = string.Create(CultureInfo.InvariantCulture, $"7001.{Environment.ProcessId}");

    private readonly CommandLine files = new();

    public void Dispose() => files.Dispose();

    [LinuxFact]
    public async Task Always_a_page_a_status_and_no_process_left()
    {
        var isLong = Environment.GetEnvironmentVariable("THEORYKIT_LONG_TESTS") == "1";
        var pages = files.At("alone");
        var all = (isLong ? HostileNotebook.All(pages) : HostileNotebook.Few(pages)).ToList();
        Assert.True(all.Count >= (isLong ? 200 : 12), $"{all.Count} notebooks");
        var wrong = new List<string>();
        foreach (var group in all.Where(static each => !each.IsAlone).Chunk(isLong ? 40 : all.Count))
        {
            wrong.AddRange(await Print(group, files.At("pages")));
        }

        foreach (var each in all.Where(static each => each.IsAlone))
        {
            wrong.AddRange(await Print([each], pages));
        }

        Assert.True(wrong.Count == 0, $"{wrong.Count} of {all.Count}:\n" + string.Join('\n', wrong));
    }

    private async Task<List<string>> Print(HostileNotebook[] group, string pages)
    {
        var folder = $"group-{Guid.NewGuid():N}";
        foreach (var notebook in group)
        {
            files.Write(
                Path.Combine(folder, notebook.Name + ".ipynb"),
                [
                    "using System.IO; using System.Threading; Console.Write(\"begun\");",
                    .. notebook.Cells.Select(static cell => cell.Replace("7001", Sleep, StringComparison.Ordinal)),
                ]
            );
        }

        string[] command = ["print", files.At("notebooks", folder), "--out", pages, "--cell-limit", Limit];
        using var program = await CliProcess.Run(command, Memory, Jobs);
        var wrong = group.SelectMany(each => Judge(each, pages)).ToList();
        var status = group.All(static each => each.Fates.Length == 0) ? 0 : 1;
        if (program.Status != status)
        {
            wrong.Add(string.Create(CultureInfo.InvariantCulture, $"status {program.Status}: {program.Errors}"));
        }

        var left = CliProcess.All().Where(static line => line.Contains($"sleep {Sleep}", StringComparison.Ordinal));
        wrong.AddRange(program.Left().Concat(left).Select(static each => $"left: {each}"));
        return wrong;
    }

    private static IEnumerable<string> Judge(HostileNotebook notebook, string pages)
    {
        var file = Path.Combine(pages, notebook.Name + ".html");
        if (!File.Exists(file))
        {
            yield return $"{notebook.Name}: no page";
            yield break;
        }

        var page = File.ReadAllText(file);
        if (!page.Contains("begun</pre>", StringComparison.Ordinal))
        {
            yield return $"{notebook.Name}: not what came before: {Failure(page)}";
        }

        if (!page.EndsWith("</body>\n</html>\n", StringComparison.Ordinal))
        {
            yield return $"{notebook.Name}: not a whole page";
        }

        var isWhole = !page.Contains("class=\"failure\"", StringComparison.Ordinal);
        if (
            notebook.Fates.Length == 0
                ? !isWhole
                : !notebook.Fates.Any(fate =>
                    fate.Length == 0 ? isWhole : page.Contains(fate, StringComparison.Ordinal)
                )
        )
        {
            yield return $"{notebook.Name}: {Failure(page)}";
        }
    }

    private static string Failure(string page)
    {
        var start = page.IndexOf("class=\"failure\"", StringComparison.Ordinal);
        return start < 0 ? "whole" : page.Substring(start, Math.Min(400, page.Length - start));
    }
}
