using TheoryKit.Charts.Figures;
using TheoryKit.Drawing.Rendering;

namespace TheoryKit.Charts.Tests;

public class ShadesTests
{
    /// <summary>WCAG 2.2, success criterion 1.4.3: 4.5:1 between a text and what lies behind it.</summary>
    [Fact]
    public void The_text_in_a_cell_stands_out_on_every_page() =>
        Gen.Select(
                Gen.OneOf(
                    Gen.Double[0, 1],
                    Gen.OneOf(Gen.Const(0d), Gen.Const(Shades.LastTint), Gen.Const(JustFull), Gen.Const(1d))
                ),
                Gen.Int[0, 2]
            )
            .Sample(
                static (strength, index) =>
                {
                    var page = Pages[index];
                    var cover = Shades.Cover(strength);
                    var (cell, paper) = (Rgb(page(Shades.Cell)), Rgb(page(Look.Paper)));
                    var behind = cell.Zip(paper, (front, back) => (cover * front) + ((1 - cover) * back)).ToArray();
                    Assert.InRange(Contrast(Rgb(page(Shades.Text(strength))), behind), 4.5, 21);
                }
            );

    [Fact]
    public void Stronger_cells_are_covered_more() =>
        Gen.Select(Gen.Double[0, 1], Gen.Double[0, 1])
            .Sample(
                static (one, other) =>
                    Assert.True(Shades.Cover(Math.Min(one, other)) <= Shades.Cover(Math.Max(one, other)))
            );

    private static readonly double JustFull = Math.BitIncrement(Shades.LastTint);

    private static readonly Func<LookColour, string>[] Pages = [Light, Dark, Print];

    private static string Light(LookColour colour) => colour.Light;

    private static string Dark(LookColour colour) => colour.Dark;

    private static string Print(LookColour colour) => colour.Print;

    private static double[] Rgb(string hex) =>
        [.. Convert.FromHexString(hex.AsSpan(1)).Select(static part => part / 255.0)];

    // WCAG 2.2, definitions of contrast ratio and relative luminance.
    private static double Contrast(double[] one, double[] other)
    {
        var (a, b) = (Luminance(one), Luminance(other));
        return (Math.Max(a, b) + 0.05) / (Math.Min(a, b) + 0.05);
    }

    private static double Luminance(double[] rgb)
    {
        var linear = rgb.Select(static part => part <= 0.04045 ? part / 12.92 : Math.Pow((part + 0.055) / 1.055, 2.4))
            .ToArray();
        return (0.2126 * linear[0]) + (0.7152 * linear[1]) + (0.0722 * linear[2]);
    }
}
