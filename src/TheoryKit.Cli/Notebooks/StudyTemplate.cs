using System.Text.Json;
using System.Text.Json.Nodes;
using TheoryKit.Cli.Answers;

namespace TheoryKit.Cli.Notebooks;

/// <summary>The notebook that a new study begins as.</summary>
internal static class StudyTemplate
{
    private const string Ending = ".ipynb";

    private static readonly JsonSerializerOptions Layout = new()
    {
        WriteIndented = true,
        IndentSize = 1,
        NewLine = "\n",
        Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>Whether <paramref name="name"/> says which folder the study goes to.</summary>
    public static bool NamesFolder(string name) => !string.IsNullOrEmpty(Path.GetDirectoryName(name));

    /// <summary>Writes a new study.</summary>
    /// <param name="name">A title, which is made a file name, or a file name, which is kept; either with folders before it.</param>
    /// <param name="folder">Where the name counts from; folders are made if missing.</param>
    /// <returns>The path of the file.</returns>
    /// <exception cref="NotebookException">The name makes no file name, the file exists, or it can't be written.</exception>
    public static string Write(string name, string folder)
    {
        var last = Path.GetFileName(name);
        var file = Path.Combine(folder, Path.GetDirectoryName(name) ?? "", FileName(last));
        try
        {
            Directory.CreateDirectory(Path.GetDirectoryName(Path.GetFullPath(file))!);
            using var stream = new FileStream(file, FileMode.CreateNew, FileAccess.Write);
            using var writer = new StreamWriter(stream);
            writer.Write(Text(Title(last)));
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
                .Replace("{version}", ThisProgram.Version, StringComparison.Ordinal) + "\n";
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
        if (!Stem(name).Any(char.IsLetterOrDigit))
        {
            throw new NotebookException(
                $"\"{name}\" makes no file name: it takes a letter or a digit, as in copper-weather."
            );
        }

        if (IsFile(name))
        {
            return name;
        }

        var letters = name.ToLowerInvariant().Select(static c => char.IsLetterOrDigit(c) ? c : '-');
        return string.Join('-', string.Concat(letters).Split('-', StringSplitOptions.RemoveEmptyEntries)) + Ending;
    }

    private static bool IsFile(string name) => name.EndsWith(Ending, StringComparison.OrdinalIgnoreCase);

    private static string Stem(string name) => IsFile(name) ? name[..^Ending.Length] : name;

    private static string Title(string name)
    {
        var stem = Stem(name).Trim();
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
