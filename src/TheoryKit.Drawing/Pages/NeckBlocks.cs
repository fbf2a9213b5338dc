using TheoryKit.Theory;
using TheoryKit.Tunings;

namespace TheoryKit.Drawing;

/// <summary>Necks as parts of a page.</summary>
internal static class NeckBlocks
{
    /// <summary>A chord on a neck.</summary>
    public static Block Of(Neck neck, Chord chord, int first, int last, Labels labels, bool isLeftHanded)
    {
        last = Math.Clamp(last, 1, neck.Frets);
        var drawing = NeckDrawing
            .Of(neck, chord)
            .WithFrets(Math.Clamp(first, 0, last), last)
            .WithLabels(labels)
            .WithLeftHand(isLeftHanded);
        return new Block.Picture(
            (context, naming) => NeckFigure.Write(Titled(naming, "P"), context),
            naming => Titled(naming, "G").ToString()
        );

        NeckDrawing Titled(IFormatProvider? naming, string format) =>
            drawing.WithNaming(naming).WithTitle($"{chord.ToString(format, naming)} on the neck");
    }
}
