using TheoryKit.Drawing.Necks;
using TheoryKit.Drawing.Rendering;

namespace TheoryKit.Drawing.Tab;

/// <summary>A tab in a figure whose labels can be switched, with no script.</summary>
/// <param name="naming">How notes are named where the drawing does not say; null for English.</param>
internal sealed class TabDrawingRenderer(IFormatProvider? naming = null) : IRenderer<TabDrawing>
{
    // On paper a tab may go on over the page between two of its lines; its heading keeps with the first.
    internal const string Css =
        ".tk-tab svg{display:block}@media print{.tk-neck.tk-tab{display:block;break-inside:auto}.tk-tab figcaption{break-after:avoid}.tk-tab svg{break-inside:avoid}}";

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
            {
                html.Open("div", "tk-scroll").Attribute("tabindex", "0").Attribute("role", "group");
                html.Attribute("aria-label", $"{drawing.Title}, as tab");
                foreach (var picture in TabPicture.Lines(drawing, context))
                {
                    html.Raw(picture);
                }

                html.Close();
            },
            "tk-tab",
            Css
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
