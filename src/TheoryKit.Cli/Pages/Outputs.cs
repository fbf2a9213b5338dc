using System.Net;
using TheoryKit.Cli.Running;

namespace TheoryKit.Cli.Pages;

/// <summary>What a cell showed, as HTML. A value's own HTML is trusted as the notebook is; text is escaped.</summary>
internal static class Outputs
{
    /// <summary>Markdown that code has made may be such that its reader takes hours; what is longer is shown as it is.</summary>
    private const int LongestMarkdown = 50_000;

    private static readonly string[] Preferred =
    [
        "text/html",
        "image/svg+xml",
        "image/png",
        "image/jpeg",
        "image/gif",
        "text/markdown",
        "text/plain",
    ];

    /// <summary>The output as HTML; the page takes up the ids of headings in it.</summary>
    public static string Html(CellOutput output, string folder, ISet<string> ids) =>
        output switch
        {
            ValueOutput value => Value(value, folder, ids),
            ConsoleOutput console => Text(
                console.Text.TrimEnd('\n', '\r'),
                console.IsError ? "console error" : "console"
            ),
            WarningOutput warning => Text(warning.Text, "warning"),
            _ => throw new NotSupportedException($"A page can't show a {output.GetType().Name}."),
        };

    private static string Value(ValueOutput value, string folder, ISet<string> ids)
    {
        var type =
            Preferred.FirstOrDefault(value.Forms.ContainsKey) ?? value.Forms.Keys.Order(StringComparer.Ordinal).First();
        var content = value.Forms[type];
        return type switch
        {
            "text/html" or "image/svg+xml" => content,
            "text/markdown" when content.Length <= LongestMarkdown => Markdown.Html(
                content,
                new(folder, new Dictionary<string, string>()),
                ids
            ),
            _ when type.StartsWith("image/", StringComparison.Ordinal) =>
                $"<img alt=\"Picture\" src=\"data:{type};base64,{WebUtility.HtmlEncode(content.Trim())}\">",
            _ => Text(content, "value"),
        };
    }

    /// <summary>Text of no more lines than that goes over to the next page whole: the tab in it is not torn.</summary>
    private const int ShortText = 40;

    private static string Text(string text, string kind)
    {
        var length = text.AsSpan().Count('\n') < ShortText ? " short" : "";
        return $"<pre class=\"{kind}{length}\">{WebUtility.HtmlEncode(text)}</pre>";
    }
}
