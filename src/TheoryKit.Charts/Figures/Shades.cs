using TheoryKit.Drawing.Rendering;

namespace TheoryKit.Charts.Figures;

/// <summary>
/// The shades of a heat map that read on any ground: up to <see cref="LastTint"/> of the scale the page shows through and
/// the text is in ink; beyond, the cell is nearly full, growing to full, and its text is made for it. Both keep 4.5:1.
/// </summary>
internal static class Shades
{
    /// <summary>The part of the scale up to which cells are tinted.</summary>
    public const double LastTint = 0.75;

    private const double FaintestTint = 0.04;
    private const double StrongestTint = 0.42;
    private const double FaintestFull = 0.74;

    /// <summary>How much of the ground a cell covers, 0 to 1.</summary>
    public static double Cover(double part) =>
        part > LastTint
            ? FaintestFull + ((1 - FaintestFull) * (part - LastTint) / (1 - LastTint))
            : FaintestTint + ((StrongestTint - FaintestTint) * part / LastTint);

    /// <summary>The colour of cells, whole or thin.</summary>
    public static LookColour Cell => Look.Chord;

    /// <summary>The colour of a text on a cell of that strength.</summary>
    public static LookColour Text(double part) => part > LastTint ? Look.OnChord : Look.Ink;

    /// <summary>The scale as plotly reads it.</summary>
    public static object[][] Scale(Palette palette) =>
        [
            [0, palette[Cell, Cover(0)]],
            [LastTint, palette[Cell, Cover(LastTint)]],
            [Math.BitIncrement(LastTint), palette[Cell, FaintestFull]],
            [1, palette[Cell, 1]],
        ];
}
