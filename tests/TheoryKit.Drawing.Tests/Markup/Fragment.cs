using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace TheoryKit.Drawing.Tests.Markup;

/// <summary>A fragment of HTML as a tree. Strict: what is not well formed fails.</summary>
internal static partial class Fragment
{
    public static XElement Parse(string html) =>
        XElement.Parse(
            $"<body>{VoidElement().Replace(html, static found => found.Value[..^1] + "/>")}</body>",
            LoadOptions.PreserveWhitespace
        );

    /// <summary>What a reader of the page gets: all text but style sheets and what is hidden from screen readers; spaces are spaces.</summary>
    public static string TextOf(XElement element) =>
        string.Concat(
            element
                .DescendantNodes()
                .OfType<XText>()
                .Where(static text =>
                    text.Ancestors()
                        .All(static each =>
                            each.Name.LocalName != "style" && each.Attribute("aria-hidden")?.Value != "true"
                        )
                )
                .Select(static text => text.Value.Replace('\u00a0', ' ') + "\n")
        );

    public static IEnumerable<string> Ids(XElement element) =>
        element.DescendantsAndSelf().Attributes("id").Select(static id => id.Value);

    /// <summary>The same with its style sheets emptied, so that an expectation holds what is said and not how it looks.</summary>
    public static string WithoutStyle(string html) => StyleSheet().Replace(html, "<style></style>");

    [GeneratedRegex("<style>.*?</style>", RegexOptions.Singleline)]
    private static partial Regex StyleSheet();

    [GeneratedRegex("<(br|input|img|hr|wbr)(\\s[^>]*)?>")]
    private static partial Regex VoidElement();
}
