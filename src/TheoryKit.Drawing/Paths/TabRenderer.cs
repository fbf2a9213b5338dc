using TheoryKit.Theory;
using Path = TheoryKit.Paths.Path;

namespace TheoryKit.Drawing;

/// <summary>A tab in a figure whose labels can be switched, with no script.</summary>
/// <param name="naming">How notes are named where the drawing does not say; null for English.</param>
public sealed class TabDrawingRenderer(IFormatProvider? naming = null) : IRenderer<TabDrawing>
{
    /// <inheritdoc/>
    public string Html(TabDrawing value, RenderContext context)
    {
        ArgumentNullException.ThrowIfNull(value);
        ArgumentNullException.ThrowIfNull(context);
        var drawing = Named(value);
        var neck = drawing.Path.Neck;
        return NeckFigure.Write(
            drawing.Title,
            $"{NeckFigure.Detail(neck, false, drawing.Naming)} · {drawing.Path.Time}",
            drawing.Offered,
            drawing.Shown,
            context,
            html =>
                html.Open("div", "tk-scroll")
                    .Attribute("tabindex", "0")
                    .Attribute("role", "group")
                    .Attribute("aria-label", $"{drawing.Title}, as tab")
                    .Raw(drawing.Svg(context))
                    .Close()
        );
    }

    /// <inheritdoc/>
    public string Text(TabDrawing value)
    {
        ArgumentNullException.ThrowIfNull(value);
        return Named(value).ToString();
    }

    private TabDrawing Named(TabDrawing drawing) => drawing.Naming is null ? drawing with { Naming = naming } : drawing;
}

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
