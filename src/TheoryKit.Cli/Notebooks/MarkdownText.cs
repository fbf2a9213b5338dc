using Markdig;
using Markdig.Extensions.AutoIdentifiers;
using Markdig.Renderers;
using Markdig.Syntax;

namespace TheoryKit.Cli.Notebooks;

/// <summary>What the text of a markdown cell says.</summary>
internal static class MarkdownText
{
    /// <summary>The markdown that cells may use; HTML in it is text.</summary>
    public static MarkdownPipeline Pipeline { get; } =
        new MarkdownPipelineBuilder()
            .DisableHtml()
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
        Parse(source).OfType<HeadingBlock>().FirstOrDefault(static h => h.Level == 1) is { } heading
            ? Text(heading)
            : null;

    /// <summary>The text of the first paragraph, if there is one.</summary>
    public static string? FirstParagraph(string source) =>
        Parse(source).OfType<ParagraphBlock>().FirstOrDefault() is { } paragraph ? Text(paragraph) : null;

    /// <summary>The parsed text. Text that is nested more deeply than the parser goes is shown as it is written.</summary>
    public static MarkdownDocument Parse(string source)
    {
        try
        {
            return Markdown.Parse(source, Pipeline);
        }
        catch (ArgumentException)
        {
            const string CodeBlock = "    ";
            return Markdown.Parse(CodeBlock + source.Replace("\n", "\n" + CodeBlock, StringComparison.Ordinal));
        }
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
}
