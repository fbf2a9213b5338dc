using TheoryKit.Drawing.Rendering;
using TheoryKit.Drawing.Sheets;

namespace TheoryKit.Drawing.Ladders;

/// <summary>Shows ladders.</summary>
/// <param name="naming">How notes are named; null for English.</param>
internal sealed class LadderRenderer(IFormatProvider? naming = null) : IRenderer<LadderDrawing>
{
    /// <inheritdoc/>
    public string Html(LadderDrawing value, RenderContext context)
    {
        ArgumentNullException.ThrowIfNull(value);
        ArgumentNullException.ThrowIfNull(context);
        return LadderPicture.Write(value, context, naming);
    }

    /// <inheritdoc/>
    public string Text(LadderDrawing value)
    {
        ArgumentNullException.ThrowIfNull(value);
        return LadderText.Write(value, naming).TrimEnd('\n');
    }

    /// <summary>The ladder as a block of a sheet.</summary>
    internal static Block Picture(LadderDrawing ladder) =>
        new Block.Picture(
            (context, naming) => LadderPicture.Write(ladder, context, naming),
            naming => LadderText.Write(ladder, naming)
        );
}
