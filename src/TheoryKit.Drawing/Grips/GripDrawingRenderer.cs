using TheoryKit.Drawing.Rendering;

namespace TheoryKit.Drawing.Grips;

/// <summary>A grip box in a figure whose labels can be switched, with no script.</summary>
/// <param name="naming">How notes are named where the drawing does not say; null for English.</param>
internal sealed class GripDrawingRenderer(IFormatProvider? naming = null) : IRenderer<GripDrawing>
{
    /// <inheritdoc/>
    public string Html(GripDrawing value, RenderContext context)
    {
        ArgumentNullException.ThrowIfNull(value);
        ArgumentNullException.ThrowIfNull(context);
        return GripBoxes.Of("", [new GripBox(value)]).Html(context, naming);
    }

    /// <inheritdoc/>
    public string Text(GripDrawing value)
    {
        ArgumentNullException.ThrowIfNull(value);
        return (value.Naming is null ? value with { Naming = naming } : value).ToString();
    }
}
