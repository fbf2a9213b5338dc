using TheoryKit.Tunings;

namespace TheoryKit.Drawing;

/// <summary>Shows necks: drawings, necks and tunings.</summary>
public static class NeckRenderers
{
    /// <summary>The renderers of this part.</summary>
    public static RendererSet All { get; } = RendererSet.Empty.Add(new NeckDrawingRenderer()).Add(new NeckRenderer());
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

/// <summary>A neck by itself: its open strings, its frets true to scale, its measures.</summary>
public sealed class NeckRenderer : IRenderer<Neck>
{
    /// <inheritdoc/>
    public string Html(Neck value, RenderContext context) => NeckFigure.Write(NeckDrawing.Of(value), context);

    /// <inheritdoc/>
    public string Text(Neck value) => NeckDrawing.Of(value).ToString();
}
