using System.Net;
using System.Text;
using TheoryKit.Cli.Answers;
using TheoryKit.Cli.Notebooks;
using TheoryKit.Cli.Running;

namespace TheoryKit.Cli.Pages;

/// <summary>The list of printed notebooks.</summary>
internal static class IndexPage
{
    /// <summary>The page's text.</summary>
    /// <param name="title">What the notebooks have in common.</param>
    /// <param name="entries">Each notebook; where it stopped early, the cell it stopped at; whether its page was printed.</param>
    public static string Html(string title, IEnumerable<(Notebook Notebook, CellRun? Last, bool IsPrinted)> entries)
    {
        var list = new StringBuilder($"<h1>{WebUtility.HtmlEncode(title)}</h1>\n<ol class=\"studies\">\n");
        foreach (var (notebook, last, isPrinted) in entries)
        {
            var about = notebook
                .Cells.OfType<MarkdownCell>()
                .Select(static cell => MarkdownText.FirstParagraph(cell.Source))
                .FirstOrDefault(static text => text is not null);
            var name = WebUtility.HtmlEncode(notebook.Title);
            list.Append("<li>")
                .Append(
                    isPrinted ? $"<a href=\"{Uri.EscapeDataString(notebook.Name)}.html\">{name}</a>" : $"<b>{name}</b>"
                );
            list.Append(about is null ? "" : $"<p>{WebUtility.HtmlEncode(about)}</p>");
            list.Append(last is null ? "" : $"<p class=\"stop\">Code {last.Cell.Number} {last.Fate}.</p>")
                .Append(isPrinted ? "" : "<p class=\"stop\">Not printed this time.</p>")
                .Append("</li>\n");
        }

        return Page.Html(
            title,
            "index",
            list.Append("</ol>\n").ToString(),
            $"Printed by TheoryKit {ThisProgram.Version}"
        );
    }
}
