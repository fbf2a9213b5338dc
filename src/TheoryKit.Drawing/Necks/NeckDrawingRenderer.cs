using TheoryKit.Drawing.Rendering;

namespace TheoryKit.Drawing.Necks;

/// <summary>A drawing in a figure whose labels can be switched, with no script.</summary>
/// <param name="naming">How notes are named where the drawing does not say; null for English.</param>
internal sealed class NeckDrawingRenderer(IFormatProvider? naming = null) : IRenderer<NeckDrawing>
{
    /// <inheritdoc/>
    public string Html(NeckDrawing value, RenderContext context)
    {
        ArgumentNullException.ThrowIfNull(value);
        ArgumentNullException.ThrowIfNull(context);
        return NeckFigure.Write(Named(value), context);
    }

    /// <inheritdoc/>
    public string Text(NeckDrawing value)
    {
        ArgumentNullException.ThrowIfNull(value);
        return Named(value).ToString();
    }

    private NeckDrawing Named(NeckDrawing drawing) => drawing.Naming is null ? drawing.WithNaming(naming) : drawing;
}
