using System.Text.Json;
using Microsoft.DotNet.Interactive.Documents;
using Ipynb = Microsoft.DotNet.Interactive.Documents.Jupyter.Notebook;

namespace TheoryKit.Cli.Notebooks;

/// <summary>Finds notebooks and reads them.</summary>
internal static class NotebookReader
{
    private const string Ending = ".ipynb";

    private static readonly KernelInfoCollection Kernels = new()
    {
        new KernelInfo("csharp", "C#", ["c#", "C#"]),
        new KernelInfo("html", "HTML", []),
        new KernelInfo("markdown", "Markdown", []),
    };

    static NotebookReader() => Kernels.DefaultKernelName = "csharp";

    /// <summary>The notebooks that <paramref name="path"/> names: one file, or all of a folder in order of their names.</summary>
    /// <exception cref="NotebookException">There is no such file or folder, it is no notebook, or the folder has none.</exception>
    public static IReadOnlyList<string> Find(string path)
    {
        if (Directory.Exists(path))
        {
            string[] found = [.. Directory.GetFiles(path, "*" + Ending).Order(StringComparer.Ordinal)];
            return found.Length > 0
                ? found
                : throw new NotebookException(
                    $"The folder {path} holds no notebook (*{Ending}); \"new NAME --out {path}\" writes one."
                );
        }

        if (!File.Exists(path))
        {
            throw new NotebookException(
                $"There is no file or folder {path}; name a notebook or a folder of notebooks."
            );
        }

        return path.EndsWith(Ending, StringComparison.OrdinalIgnoreCase)
            ? [path]
            : throw new NotebookException($"{path} is no notebook: its name would end in {Ending}.");
    }

    /// <summary>Reads the notebook at <paramref name="path"/>.</summary>
    /// <exception cref="NotebookException">It can't be read, or isn't a notebook of format 4.</exception>
    public static Notebook Read(string path)
    {
        try
        {
            return Parse(File.ReadAllText(path), Path.GetFullPath(path));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new NotebookException($"{path} can't be read: {e.Message}", e);
        }
    }

    /// <summary>Reads a notebook from its text.</summary>
    /// <exception cref="NotebookException">It isn't a notebook of format 4.</exception>
    public static Notebook Parse(string json, string path)
    {
        ArgumentNullException.ThrowIfNull(json);
        try
        {
            using var document = JsonDocument.Parse(json);
            var raw = RawCells(document.RootElement, path);
            var read = Ipynb.Parse(json, Kernels).Elements;
            var cells = Cells(raw, read).ToList();
            var title = cells.OfType<MarkdownCell>().Select(static cell => MarkdownText.Title(cell.Source));
            return new(
                path,
                title.FirstOrDefault(static t => t is not null) ?? Path.GetFileNameWithoutExtension(path),
                cells
            );
        }
        catch (JsonException e)
        {
            throw new NotebookException(
                $"{path} is no notebook: its text is not JSON (line {e.LineNumber + 1}: {e.Message})",
                e
            );
        }
    }

    private static List<JsonElement> RawCells(JsonElement root, string path)
    {
        if (root.ValueKind != JsonValueKind.Object || !root.TryGetProperty("nbformat", out var format))
        {
            throw new NotebookException($"{path} is no notebook: it says no \"nbformat\".");
        }

        if (format.ValueKind != JsonValueKind.Number || !format.TryGetInt32(out var version) || version != 4)
        {
            throw new NotebookException(
                $"{path} is in notebook format {format}; only format 4 is read. Opening and saving it in Jupyter converts it."
            );
        }

        return root.TryGetProperty("cells", out var cells) && cells.ValueKind == JsonValueKind.Array
            ? [.. cells.EnumerateArray()]
            : throw new NotebookException($"{path} is no notebook: it has no \"cells\".");
    }

    private static IEnumerable<Cell> Cells(List<JsonElement> raw, IList<InteractiveDocumentElement> read)
    {
        var number = 0;
        foreach (var (json, element) in raw.Zip(read))
        {
            var source = element.Contents.ReplaceLineEndings("\n");
            switch (Text(json, "cell_type"))
            {
                case "markdown":
                    yield return new MarkdownCell(source, Attachments(json));
                    break;
                case "code":
                    yield return new CodeCell(source, ++number, element.KernelName ?? "csharp");
                    break;
            }
        }
    }

    private static Dictionary<string, string> Attachments(JsonElement cell)
    {
        var found = new Dictionary<string, string>(StringComparer.Ordinal);
        if (cell.TryGetProperty("attachments", out var files) && files.ValueKind == JsonValueKind.Object)
        {
            foreach (var file in files.EnumerateObject())
            {
                foreach (
                    var form in file
                        .Value.EnumerateObject()
                        .Where(static f => f.Value.ValueKind == JsonValueKind.String)
                )
                {
                    found[file.Name] = $"data:{form.Name};base64,{form.Value.GetString()}";
                }
            }
        }

        return found;
    }

    private static string? Text(JsonElement json, string property) =>
        json.TryGetProperty(property, out var value) && value.ValueKind == JsonValueKind.String
            ? value.GetString()
            : null;
}
