using TheoryKit.Drawing.Necks;
using TheoryKit.Drawing.Rendering;

namespace TheoryKit.Drawing.Paths;

/// <summary>A path on its neck, in a figure whose labels can be switched.</summary>
/// <param name="naming">How notes are named; null for English.</param>
internal sealed class PathNeckRenderer(IFormatProvider? naming = null) : IRenderer<PathNeck>
{
    private readonly NeckDrawingRenderer neck = new(naming);

    /// <inheritdoc/>
    public string Html(PathNeck value, RenderContext context)
    {
        ArgumentNullException.ThrowIfNull(value);
        return neck.Html(value.Of("P", naming), context);
    }

    /// <inheritdoc/>
    public string Text(PathNeck value)
    {
        ArgumentNullException.ThrowIfNull(value);
        return neck.Text(value.Of("G", naming));
    }
}
