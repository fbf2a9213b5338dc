using System.Net;
using System.Text;
using TheoryKit.Charts.Figures;
using TheoryKit.Cli.Answers;
using TheoryKit.Cli.Notebooks;
using TheoryKit.Cli.Running;

namespace TheoryKit.Cli.Pages;

/// <summary>A notebook that was run, as one page that stands alone.</summary>
/// <param name="notebook">The notebook.</param>
/// <param name="runs">Its code cells as far as they were run; the page ends with the last of them if that is not all.</param>
/// <param name="code">What becomes of the cells' code.</param>
internal sealed class NotebookPage(Notebook notebook, IReadOnlyList<CellRun> runs, CodeOnPage code)
{
    private readonly string folder = Path.GetDirectoryName(notebook.Path) ?? "";
    private readonly HashSet<string> ids = new(StringComparer.Ordinal);

    /// <summary>The page's text.</summary>
    public string Html()
    {
        ids.Clear();
        var body = new StringBuilder();
        var isWhole = AppendCells(body);
        if (!HasTitle())
        {
            body.Insert(0, $"<h1>{WebUtility.HtmlEncode(notebook.Title)}</h1>\n");
        }

        if (!isWhole)
        {
            body.Append("<p class=\"stop\">The run stopped here.</p>\n");
        }

        var cells = body.ToString();
        return Page.Html(
            notebook.Title,
            $"code-{code.ToString().ToLowerInvariant()}",
            cells,
            $"From {WebUtility.HtmlEncode(Path.GetFileName(notebook.Path))}, printed by TheoryKit {ThisProgram.Version}",
            PlotlyScript.IsNeededBy(cells) ? PlotlyScript.Html : ""
        );
    }

    private bool HasTitle() =>
        notebook.Cells.OfType<MarkdownCell>().Any(static cell => MarkdownText.Title(cell.Source) is not null);

    private bool AppendCells(StringBuilder body)
    {
        var next = 0;
        foreach (var cell in notebook.Cells)
        {
            switch (cell)
            {
                case MarkdownCell text:
                    body.Append(
                        $"<div class=\"text\">\n{Markdown.Html(text.Source, new(folder, text.Attachments), ids)}</div>\n"
                    );
                    break;
                case CodeCell when next == runs.Count:
                    return false;
                case CodeCell:
                    var run = runs[next++];
                    Append(body, run);
                    if (!run.Succeeded)
                    {
                        return false;
                    }

                    break;
            }
        }

        return true;
    }

    private void Append(StringBuilder body, CellRun run)
    {
        body.Append("<div class=\"cell\">\n");
        if (code != CodeOnPage.Hide || !run.Succeeded)
        {
            var open = code == CodeOnPage.Show || !run.Succeeded ? " open" : "";
            body.Append($"<details class=\"source\"{open}><summary>Code {run.Cell.Number}</summary>");
            body.Append(Code.Html(run.Cell.Source.TrimEnd(), run.Cell.Kernel)).Append("</details>\n");
        }

        foreach (var output in run.Outputs)
        {
            body.Append(
                $"<div class=\"output\" tabindex=\"0\" role=\"group\" aria-label=\"Output of code {run.Cell.Number}\">\n"
            );
            body.Append(Outputs.Html(output, folder, ids)).Append("\n</div>\n");
        }

        if (!run.Succeeded)
        {
            body.Append($"<div class=\"failure\" role=\"alert\"><p>Code {run.Cell.Number} {run.Fate}.</p>");
            body.Append(run.Error is null ? "" : $"<pre tabindex=\"0\">{WebUtility.HtmlEncode(run.Error)}</pre>");
            body.Append("</div>\n");
        }

        body.Append("</div>\n");
    }
}
