using Markdig.Renderers;
using Markdig.Renderers.Html;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;
using TheoryKit.Cli.Notebooks;

namespace TheoryKit.Cli.Pages;

/// <summary>
/// Markdown cells as HTML, with the pictures they name put inside. A page is handed on, so the text can't bring in
/// anything that runs: HTML in it is shown as it is written, and only harmless links lead anywhere.
/// </summary>
internal static class Markdown
{
    private static readonly string[] Schemes = ["http", "https", "mailto"];

    /// <summary><paramref name="source"/> as HTML.</summary>
    /// <param name="source">Markdown.</param>
    /// <param name="pictures">Finds the pictures that the text names.</param>
    /// <param name="ids">The ids of headings that the page has already; those of this text are added.</param>
    public static string Html(string source, PictureSource pictures, ISet<string> ids)
    {
        var document = MarkdownText.Parse(source);
        foreach (var heading in document.Descendants<HeadingBlock>())
        {
            var attributes = heading.GetAttributes();
            var id = attributes.Id ?? "part";
            for (var copy = 2; !ids.Add(attributes.Id ??= id); copy++)
            {
                attributes.Id = $"{id}-{copy}";
            }
        }

        foreach (var picture in document.Descendants<LinkInline>().Where(static link => link.IsImage).ToList())
        {
            if (pictures.Find(picture.Url ?? "") is { } data)
            {
                picture.Url = data;
            }
            else
            {
                // A picture from elsewhere stays a link: the page fetches nothing by itself.
                picture.IsImage = false;
            }
        }

        Disarm(document);
        using var writer = new StringWriter { NewLine = "\n" };
        var renderer = new HtmlRenderer(writer);
        MarkdownText.Pipeline.Setup(renderer);
        renderer.ObjectRenderers.Replace<CodeBlockRenderer>(new CodeRenderer());
        renderer.Render(document);
        return writer.ToString();
    }

    /// <summary>Leaves of a link that may do harm only its words.</summary>
    private static void Disarm(MarkdownDocument document)
    {
        foreach (
            var link in document.Descendants<LinkInline>().Where(static l => !l.IsImage && !IsHarmless(l.Url)).ToList()
        )
        {
            var words = new ContainerInline();
            link.MoveChildrenAfter(words);
            link.ReplaceBy(words, copyChildren: false);
        }

        foreach (
            var link in document
                .Descendants<AutolinkInline>()
                .Where(static l => !l.IsEmail && !IsHarmless(l.Url))
                .ToList()
        )
        {
            link.ReplaceBy(new LiteralInline(link.Url));
        }
    }

    /// <summary>
    /// Whether a link leads to the web, to a mail address, or to another place beside or in the page. A browser leaves out
    /// blanks and control characters before it looks for the scheme.
    /// </summary>
    private static bool IsHarmless(string? url)
    {
        var seen = string.Concat((url ?? "").Where(static c => c > ' ' && !char.IsControl(c)));
        var colon = seen.IndexOf(':', StringComparison.Ordinal);
        return colon < 0
            || seen.IndexOfAny(['/', '?', '#']) is >= 0 and var mark && mark < colon
            || Schemes.Contains(seen[..colon], StringComparer.OrdinalIgnoreCase);
    }

    private sealed class CodeRenderer : HtmlObjectRenderer<CodeBlock>
    {
        protected override void Write(HtmlRenderer renderer, CodeBlock obj) =>
            renderer.Write(Code.Html(obj.Lines.ToString(), (obj as FencedCodeBlock)?.Info ?? ""));
    }
}
