using TheoryKit.Drawing.Rendering;
using TheoryKit.Drawing.Tab;
using TheoryKit.Values;
using Path = TheoryKit.Paths.Path;

namespace TheoryKit.Drawing.Paths;

/// <summary>A path is shown as its tab.</summary>
/// <param name="naming">How notes are named; null for English.</param>
internal sealed class PathRenderer(IFormatProvider? naming = null) : IRenderer<Path>
{
    private readonly TabDrawingRenderer tab = new(naming);

    /// <inheritdoc/>
    public string Html(Path value, RenderContext context) => tab.Html(Check.NotNull(value).Tab(), context);

    /// <inheritdoc/>
    public string Text(Path value) => tab.Text(Check.NotNull(value).Tab());
}
