using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Scales;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Drawing.Necks;

/// <summary>Short ways from a value to its picture, for notebooks.</summary>
public static class NeckExtensions
{
    /// <summary>Every tone of the chord on a neck.</summary>
    public static NeckDrawing On(this Chord chord, Neck neck) => NeckDrawing.Of(neck, chord);

    /// <summary>Every tone of the scale on a neck.</summary>
    public static NeckDrawing On(this Scale scale, Neck neck) => NeckDrawing.Of(neck, scale);

    /// <summary>Every tone of the formula over a root on a neck.</summary>
    public static NeckDrawing On(this Formula formula, NoteName root, Neck neck) => NeckDrawing.Of(neck, root, formula);

    /// <summary>The places on their neck.</summary>
    /// <exception cref="ArgumentException">A place is not on the neck.</exception>
    public static NeckDrawing On(this IEnumerable<Place> places, Neck neck) => NeckDrawing.Of(neck, places);

    /// <summary>The neck by itself.</summary>
    public static NeckDrawing Draw(this Neck neck) => NeckDrawing.Of(neck);
}
