using System.Globalization;
using TheoryKit.Drawing.Rendering;
using TheoryKit.Drawing.Sheets;

namespace TheoryKit.Drawing.Tests;

public class LookTests
{
    public static TheoryData<string, string> Texts =>
        new()
        {
            { "ink", "paper" },
            { "ink", "board" },
            { "quiet", "paper" },
            { "on-root", "root" },
            { "on-chord", "chord" },
        };

    public static TheoryData<string, string> Graphics
    {
        get
        {
            var pairs = new TheoryData<string, string>();
            foreach (var mark in new[] { "root", "chord", "colour", "other", "line", "ink" })
            {
                pairs.Add(mark, "board");
                pairs.Add(mark, "paper");
            }

            return pairs;
        }
    }

    [Theory]
    [MemberData(nameof(Texts))]
    public void Text_has_a_contrast_of_4_5_light_dark_and_printed(string front, string back) =>
        AssertContrast(front, back, 4.5);

    [Theory]
    [MemberData(nameof(Graphics))]
    public void Marks_and_lines_have_a_contrast_of_3_light_dark_and_printed(string front, string back) =>
        AssertContrast(front, back, 3);

    [Fact]
    public void Print_is_without_hue() =>
        Assert.All(Look.Colours, static colour => Assert.Equal(colour.Print[1..3], colour.Print[3..5]));

    // Tol 2021, figure 4: the "muted" scheme.
    [Fact]
    public void Hues_are_of_the_published_scheme()
    {
        string[] muted =
        [
            "#CC6677",
            "#332288",
            "#DDCC77",
            "#117733",
            "#88CCEE",
            "#882255",
            "#44AA99",
            "#999933",
            "#AA4499",
        ];
        foreach (var colour in new[] { Look.Root, Look.Chord, Look.Colour })
        {
            Assert.Contains(colour.Light, muted, StringComparer.OrdinalIgnoreCase);
            Assert.Contains(colour.Dark, muted, StringComparer.OrdinalIgnoreCase);
        }
    }

    [Fact]
    public void Every_class_that_pictures_fill_or_stroke_with_has_a_rule()
    {
        Assert.All(
            Look.Colours,
            static colour => Assert.Contains($".{colour.FillClass}{{", Look.Css, StringComparison.Ordinal)
        );
        Assert.DoesNotContain('<', Look.Css);
        Assert.DoesNotContain("url(", Look.Css, StringComparison.Ordinal);
    }

    [Fact]
    public void The_contrast_of_black_on_white_is_21() => Assert.Equal(21, Contrast("#000000", "#ffffff"), 6);

    private static void AssertContrast(string front, string back, double least)
    {
        var (f, b) = (Find(front), Find(back));
        Assert.InRange(Contrast(f.Light, b.Light), least, 21);
        Assert.InRange(Contrast(f.Dark, b.Dark), least, 21);
        Assert.InRange(Contrast(f.Print, b.Print), least, 21);
    }

    private static LookColour Find(string name) => Look.Colours.Single(colour => colour.Name == name);

    // WCAG 2.2, "contrast ratio" and "relative luminance".
    private static double Contrast(string one, string other)
    {
        var (a, b) = (Luminance(one), Luminance(other));
        return (Math.Max(a, b) + 0.05) / (Math.Min(a, b) + 0.05);
    }

    private static double Luminance(string colour)
    {
        double Part(int start)
        {
            var value =
                int.Parse(colour.AsSpan(start, 2), NumberStyles.HexNumber, CultureInfo.InvariantCulture) / 255.0;
            return value <= 0.04045 ? value / 12.92 : Math.Pow((value + 0.055) / 1.055, 2.4);
        }

        return (0.2126 * Part(1)) + (0.7152 * Part(3)) + (0.0722 * Part(5));
    }
}
