using Markdig;
using Markdig.Extensions.AutoIdentifiers;
using Markdig.Renderers;
using Markdig.Renderers.Html;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;

namespace TheoryKit.Cli.Pages;

/// <summary>Markdown cells as HTML, with the pictures they name put inside.</summary>
internal static class Markdown
{
    private static readonly MarkdownPipeline Pipeline = new MarkdownPipelineBuilder()
        .UsePipeTables()
        .UseEmphasisExtras()
        .UseTaskLists()
        .UseDefinitionLists()
        .UseFootnotes()
        .UseAutoLinks()
        .UseAutoIdentifiers(AutoIdentifierOptions.GitHub)
        .Build();

    /// <summary>The text of the first heading of the first level, if there is one.</summary>
    public static string? Title(string source) =>
        Markdig.Markdown.Parse(source, Pipeline).OfType<HeadingBlock>().FirstOrDefault(static h => h.Level == 1)
            is { } heading
            ? Text(heading)
            : null;

    /// <summary>The text of the first paragraph, if there is one.</summary>
    public static string? FirstParagraph(string source) =>
        Markdig.Markdown.Parse(source, Pipeline).OfType<ParagraphBlock>().FirstOrDefault() is { } paragraph
            ? Text(paragraph)
            : null;

    /// <summary><paramref name="source"/> as HTML.</summary>
    /// <param name="source">Markdown.</param>
    /// <param name="pictures">Finds the pictures that the text names.</param>
    /// <param name="ids">The ids of headings that the page has already; those of this text are added.</param>
    public static string Html(string source, PictureSource pictures, ISet<string> ids)
    {
        var document = Markdig.Markdown.Parse(source, Pipeline);
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

        using var writer = new StringWriter { NewLine = "\n" };
        var renderer = new HtmlRenderer(writer);
        Pipeline.Setup(renderer);
        renderer.ObjectRenderers.Replace<CodeBlockRenderer>(new CodeRenderer());
        renderer.Render(document);
        return writer.ToString();
    }

    private static string Text(LeafBlock block)
    {
        using var writer = new StringWriter { NewLine = "\n" };
        var renderer = new HtmlRenderer(writer)
        {
            EnableHtmlForInline = false,
            EnableHtmlForBlock = false,
            EnableHtmlEscape = false,
        };
        renderer.WriteLeafInline(block);
        return writer.ToString().ReplaceLineEndings(" ").Trim();
    }

    private sealed class CodeRenderer : HtmlObjectRenderer<CodeBlock>
    {
        protected override void Write(HtmlRenderer renderer, CodeBlock obj) =>
            renderer.Write(Code.Html(obj.Lines.ToString(), (obj as FencedCodeBlock)?.Info ?? ""));
    }
}
