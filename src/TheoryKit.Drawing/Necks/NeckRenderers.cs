using TheoryKit.Tunings;

namespace TheoryKit.Drawing;

/// <summary>Shows necks: drawings, necks and tunings.</summary>
public static class NeckRenderers
{
    /// <summary>The renderers of this part.</summary>
    public static RendererSet All { get; } =
        RendererSet.Empty.Add(new NeckDrawingRenderer()).Add(new NeckRenderer()).Add(new TuningRenderer());
}

/// <summary>A drawing in a figure whose labels can be switched, with no script.</summary>
public sealed class NeckDrawingRenderer : IRenderer<NeckDrawing>
{
    /// <inheritdoc/>
    public string Html(NeckDrawing value, RenderContext context)
    {
        ArgumentNullException.ThrowIfNull(value);
        ArgumentNullException.ThrowIfNull(context);
        return NeckFigure.Write(value, context);
    }

    /// <inheritdoc/>
    public string Text(NeckDrawing value)
    {
        ArgumentNullException.ThrowIfNull(value);
        return value.ToString();
    }
}
