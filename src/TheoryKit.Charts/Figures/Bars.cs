using TheoryKit.Drawing.Rendering;

namespace TheoryKit.Charts.Figures;

/// <summary>Bars side by side. One hue: a bar is told from its neighbour by its pattern, on paper as on the screen.</summary>
internal static class Bars
{
    /// <summary>The most bars beside each other that can still be told apart.</summary>
    public const int Most = 4;

    private static readonly string[] Patterns = ["", "/", ".", "x"];

    /// <summary>The look of a group's bar.</summary>
    /// <param name="palette">The colours.</param>
    /// <param name="place">The bar's place in each group, from 0, less than <see cref="Most"/>.</param>
    public static object Marker(Palette palette, int place)
    {
        var (color, shape) = (palette[Look.Chord], Patterns[place]);
        return new
        {
            color,
            line = new { color, width = 1.5 },
            pattern = new
            {
                shape,
                size = 7,
                solidity = 0.35,
            },
        };
    }
}
