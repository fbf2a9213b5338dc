using TheoryKit.Drawing.Necks;
using TheoryKit.Drawing.Sheets;
using TheoryKit.Theory.Chords;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Drawing.Theory;

/// <summary>Necks as parts of a page.</summary>
internal static class NeckBlocks
{
    /// <summary>A chord on a neck.</summary>
    public static Block Of(Neck neck, Chord chord, int first, int last, Labels labels, bool isLeftHanded)
    {
        var drawing = Drawing(neck, chord, first, last, labels, isLeftHanded);
        return new Block.Picture(
            (context, naming) => NeckFigure.Write(Titled(drawing, chord, naming, "P"), context),
            naming => Titled(drawing, chord, naming, "G").ToString()
        );
    }

    /// <summary>Chords each on the same window of a neck, side by side where there is room, with one switch for all labels.</summary>
    public static Block Of(
        Neck neck,
        IReadOnlyList<Chord> chords,
        int first,
        int last,
        Labels labels,
        bool isLeftHanded
    )
    {
        var drawings = chords
            .Select(chord => (Chord: chord, Drawing: Drawing(neck, chord, first, last, labels, isLeftHanded)))
            .ToList();
        return new Block.Picture(
            (context, naming) =>
                NeckFigure.Write(
                    [.. drawings.Select(each => Titled(each.Drawing, each.Chord, naming, "P", ""))],
                    "On the neck",
                    context
                ),
            naming =>
                string.Join("\n\n", drawings.Select(each => Titled(each.Drawing, each.Chord, naming, "G").ToString()))
        );
    }

    private static NeckDrawing Drawing(Neck neck, Chord chord, int first, int last, Labels labels, bool isLeftHanded)
    {
        last = Math.Clamp(last, 1, neck.Frets);
        return NeckDrawing
            .Of(neck, chord)
            .WithFrets(Math.Clamp(first, 0, last), last)
            .WithLabels(labels)
            .WithLeftHand(isLeftHanded);
    }

    private static NeckDrawing Titled(
        NeckDrawing drawing,
        Chord chord,
        IFormatProvider? naming,
        string format,
        string rest = " on the neck"
    ) => drawing.WithNaming(naming).WithTitle(chord.ToString(format, naming) + rest);
}
