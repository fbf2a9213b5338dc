using TheoryKit.Theory;

namespace TheoryKit.Drawing;

/// <summary>A path on its neck, in a figure whose labels can be switched.</summary>
/// <param name="naming">How notes are named; null for English.</param>
public sealed class PathNeckRenderer(IFormatProvider? naming = null) : IRenderer<PathNeck>
{
    private readonly NeckDrawingRenderer neck = new(naming);

    /// <inheritdoc/>
    public string Html(PathNeck value, RenderContext context) => neck.Html(Of(value, "P"), context);

    /// <inheritdoc/>
    public string Text(PathNeck value) => neck.Text(Of(value, "G"));

    private NeckDrawing Of(PathNeck value, string format)
    {
        ArgumentNullException.ThrowIfNull(value);
        return value.Drawing.WithTitle(TabWords.Title(value.Path, format, naming));
    }
}
