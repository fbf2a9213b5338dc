using TheoryKit.Theory;

namespace TheoryKit.Drawing;

/// <summary>Shows necks: drawings, necks and tunings.</summary>
public static class NeckRenderers
{
    /// <summary>The renderers of this part, with English note names.</summary>
    public static RendererSet All { get; } = Named(null);

    /// <summary>The renderers of this part, with notes named in the reader's way.</summary>
    /// <param name="naming">A <see cref="NoteNaming"/>; null for English. A drawing's own naming comes first.</param>
    public static RendererSet Named(IFormatProvider? naming) =>
        RendererSet
            .Empty.Add(new NeckDrawingRenderer(naming))
            .Add(new NeckRenderer(naming))
            .Add(new TuningRenderer(naming));
}

/// <summary>A drawing in a figure whose labels can be switched, with no script.</summary>
/// <param name="naming">How notes are named where the drawing does not say; null for English.</param>
public sealed class NeckDrawingRenderer(IFormatProvider? naming = null) : IRenderer<NeckDrawing>
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
