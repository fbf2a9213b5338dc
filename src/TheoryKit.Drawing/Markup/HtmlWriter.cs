using System.Collections.Frozen;

namespace TheoryKit.Drawing.Markup;

/// <summary>Writes a fragment of HTML.</summary>
public sealed class HtmlWriter(int capacity = 1024) : MarkupWriter<HtmlWriter>(capacity)
{
    // HTML Living Standard, 13.1.2: the void elements.
    private static readonly FrozenSet<string> Voids = FrozenSet.ToFrozenSet([
        "area",
        "base",
        "br",
        "col",
        "embed",
        "hr",
        "img",
        "input",
        "link",
        "meta",
        "source",
        "track",
        "wbr",
    ]);

    /// <summary>A boolean attribute (<c>checked</c>) of the element just begun, if it is set.</summary>
    /// <exception cref="InvalidOperationException">Content has been written already.</exception>
    public HtmlWriter Flag(string name, bool isSet = true) => Attribute(name, isSet ? "" : null);

    /// <summary>A style sheet; <paramref name="css"/> is the library's own text.</summary>
    public HtmlWriter Style(string css) => Open("style").Raw(css).Close();

    private protected override bool IsVoid(string name) => Voids.Contains(name);

    private protected override string VoidEnd => ">";
}
