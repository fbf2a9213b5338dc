using System.Text.Json;
using System.Text.Json.Nodes;

namespace TheoryKit.Cli.Notebooks;

/// <summary>The notebook that a new study begins as.</summary>
internal static class StudyTemplate
{
    private static readonly JsonSerializerOptions Layout = new()
    {
        WriteIndented = true,
        IndentSize = 1,
        NewLine = "\n",
        Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>Writes a new study.</summary>
    /// <param name="name">A title or a file name.</param>
    /// <param name="folder">Where it goes; made if missing.</param>
    /// <returns>The path of the file.</returns>
    /// <exception cref="NotebookException">The name makes no file name, the file exists, or it can't be written.</exception>
    public static string Write(string name, string folder)
    {
        var stem = FileName(name);
        var file = Path.Combine(folder, stem + ".ipynb");
        try
        {
            Directory.CreateDirectory(folder);
            using var stream = new FileStream(file, FileMode.CreateNew, FileAccess.Write);
            using var writer = new StreamWriter(stream);
            writer.Write(Text(Title(name)));
        }
        catch (IOException) when (File.Exists(file))
        {
            throw new NotebookException($"{file} exists already; choose another name, or delete it first.");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new NotebookException($"{file} can't be written: {e.Message}", e);
        }

        return file;
    }

    /// <summary>The notebook's text.</summary>
    public static string Text(string title)
    {
        using var reader = new StreamReader(
            typeof(StudyTemplate).Assembly.GetManifestResourceStream(typeof(StudyTemplate), "study.md")!
        );
        var cells = new JsonArray();
        foreach (var cell in Cells(reader.ReadToEnd().ReplaceLineEndings("\n")))
        {
            cell["id"] = $"cell-{cells.Count + 1}";
            cells.Add((JsonNode)cell);
        }

        var notebook = new JsonObject
        {
            ["cells"] = cells,
            ["metadata"] = new JsonObject
            {
                ["kernelspec"] = new JsonObject
                {
                    ["display_name"] = ".NET (C#)",
                    ["language"] = "C#",
                    ["name"] = ".net-csharp",
                },
                ["language_info"] = new JsonObject
                {
                    ["file_extension"] = ".cs",
                    ["mimetype"] = "text/x-csharp",
                    ["name"] = "C#",
                    ["pygments_lexer"] = "csharp",
                },
            },
            ["nbformat"] = 4,
            ["nbformat_minor"] = 5,
        };
        return notebook
                .ToJsonString(Layout)
                .Replace("{title}", JsonEncodedText.Encode(title, Layout.Encoder).ToString(), StringComparison.Ordinal)
                .Replace("{version}", Program.Version, StringComparison.Ordinal) + "\n";
    }

    /// <summary>The template is Markdown: its C# fences are the code cells, what lies between them the text cells.</summary>
    private static IEnumerable<JsonObject> Cells(string template)
    {
        const string Fence = "```";
        var parts = template.Split(Fence);
        for (var i = 0; i < parts.Length; i++)
        {
            var isCode = i % 2 == 1;
            var source = (isCode ? parts[i][(parts[i].IndexOf('\n') + 1)..] : parts[i]).Trim('\n');
            if (source.Length == 0)
            {
                continue;
            }

            var lines = new JsonArray([.. source.Split('\n').Select(static line => (JsonNode)(line + "\n"))]);
            lines[^1] = ((string)lines[^1]!).TrimEnd('\n');
            var cell = new JsonObject
            {
                ["cell_type"] = isCode ? "code" : "markdown",
                ["metadata"] = new JsonObject(),
                ["source"] = lines,
            };
            if (isCode)
            {
                cell["execution_count"] = null;
                cell["outputs"] = new JsonArray();
            }

            yield return cell;
        }
    }

    private static string FileName(string name)
    {
        var stem = name.EndsWith(".ipynb", StringComparison.OrdinalIgnoreCase) ? name[..^6] : name;
        var letters = string.Concat(
            stem.Trim().ToLowerInvariant().Select(static c => char.IsLetterOrDigit(c) ? c : '-')
        );
        var joined = string.Join('-', letters.Split('-', StringSplitOptions.RemoveEmptyEntries));
        return joined.Length > 0
            ? joined
            : throw new NotebookException(
                $"\"{name}\" makes no file name: it takes a letter or a digit, as in copper-weather."
            );
    }

    private static string Title(string name)
    {
        var stem = name.EndsWith(".ipynb", StringComparison.OrdinalIgnoreCase) ? name[..^6] : name.Trim();
        if (stem.Contains(' '))
        {
            return stem;
        }

        var words = stem.Split('-', '_').Where(static word => word.Length > 0 && !word.All(char.IsDigit)).ToList();
        return words.Count > 0
            ? string.Join(' ', words.Select(static word => char.ToUpperInvariant(word[0]) + word[1..]))
            : stem;
    }
}
