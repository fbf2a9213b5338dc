namespace TheoryKit.Drawing.Rendering;

/// <summary>Shows values of one type as HTML and as plain text. One renderer per value type, without state.</summary>
/// <typeparam name="T">The type of value shown.</typeparam>
public interface IRenderer<in T>
{
    /// <summary>An HTML fragment (flow content, no <c>html</c> or <c>body</c> element) that shows <paramref name="value"/>.</summary>
    /// <param name="value">What to show.</param>
    /// <param name="context">Where the fragment goes: it hands out the ids the fragment may use.</param>
    string Html(T value, RenderContext context);

    /// <summary>The same told in plain text, for a terminal or a reader without pictures.</summary>
    /// <param name="value">What to show.</param>
    string Text(T value);
}
