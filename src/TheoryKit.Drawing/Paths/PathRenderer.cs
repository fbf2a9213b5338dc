using TheoryKit.Theory;
using Path = TheoryKit.Paths.Path;

namespace TheoryKit.Drawing;

/// <summary>A path is shown as its tab.</summary>
/// <param name="naming">How notes are named; null for English.</param>
public sealed class PathRenderer(IFormatProvider? naming = null) : IRenderer<Path>
{
    private readonly TabDrawingRenderer tab = new(naming);

    /// <inheritdoc/>
    public string Html(Path value, RenderContext context) => tab.Html(value.Tab(), context);

    /// <inheritdoc/>
    public string Text(Path value) => tab.Text(value.Tab());
}
