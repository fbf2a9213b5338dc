using System.Globalization;
using TheoryKit.Drawing.Rendering;

namespace TheoryKit.Charts.Figures;

/// <summary>How a chart names the colours of the <see cref="Look"/>.</summary>
internal sealed class Palette
{
    private readonly Func<LookColour, double, string> name;

    private Palette(Func<LookColour, double, string> name) => this.name = name;

    /// <summary>For any page: the colours as they are on a light one.</summary>
    public static Palette Light { get; } =
        new(
            static (colour, cover) =>
            {
                var rgb = Convert.FromHexString(colour.Light.AsSpan(1));
                return cover < 1
                    ? string.Create(CultureInfo.InvariantCulture, $"rgba({rgb[0]},{rgb[1]},{rgb[2]},{cover:0.###})")
                    : colour.Light;
            }
        );

    /// <summary>For our own pages: by name. The script that draws looks up what the name means, also again in the dark and on paper.</summary>
    public static Palette Page { get; } =
        new(
            static (colour, cover) =>
                cover < 1 ? string.Create(CultureInfo.InvariantCulture, $"{colour.Css}/{cover:0.###}") : colour.Css
        );

    /// <summary>A colour as it is.</summary>
    public string this[LookColour colour] => name(colour, 1);

    /// <summary>A colour that the page shows through.</summary>
    /// <param name="colour">The colour.</param>
    /// <param name="cover">How much of the ground it covers, 0 to 1.</param>
    public string this[LookColour colour, double cover] => name(colour, cover);
}
