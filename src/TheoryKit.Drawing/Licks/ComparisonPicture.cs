using System.Text;
using TheoryKit.Drawing.Markup;
using TheoryKit.Drawing.Necks;
using TheoryKit.Drawing.Rendering;
using TheoryKit.Drawing.Tab;
using TheoryKit.Values;

namespace TheoryKit.Drawing.Licks;

/// <summary>Writes the SVG of licks compared: a picture for each line, in which the licks stand one below the other.</summary>
internal static class ComparisonPicture
{
    private const double LeastScale = 0.72;
    private const double NameHeight = 24;
    private const double Gap = 10; // between two licks
    private const double LineGap = 14;
    private const double Character = 6.6; // of a name

    /// <summary>The whole comparison as one picture.</summary>
    public static string Write(LickComparison comparison, RenderContext context)
    {
        var layouts = Layouts(comparison);
        var heights = Enumerable.Range(0, Lines(layouts)).Select(line => Height(layouts, line)).ToList();
        var svg = new SvgWriter(32 * 1024);
        Open(svg, comparison, layouts, heights.Sum() + ((heights.Count - 1) * LineGap), context);
        var top = 0.0;
        for (var line = 0; line < heights.Count; line++)
        {
            WriteLine(svg, comparison, layouts, line, top);
            top += heights[line] + LineGap;
        }

        return svg.Close().ToString();
    }

    /// <summary>
    /// The pictures of each line, one for each lick that it has, so that none is cut through by the end of a page; the first one says what all
    /// show.
    /// </summary>
    public static IEnumerable<IEnumerable<string>> Pictures(LickComparison comparison, RenderContext context)
    {
        var layouts = Layouts(comparison);
        return Enumerable.Range(0, Lines(layouts)).Select(line => Pictures(comparison, layouts, line, context));
    }

    /// <summary>How wide the picture is, in px.</summary>
    public static double Width(LickComparison comparison) => Layouts(comparison)[0].Width;

    public static string Describe(LickComparison comparison)
    {
        var words = new StringBuilder(2048);
        foreach (var (index, (lick, tab)) in comparison.Licks.Zip(comparison.Tabs).Index())
        {
            words.Append($"{(index == 0 ? "" : " ")}Lick {index + 1}, {UserText.Of(lick.Name)}: {tab.Description}");
        }

        var moments = comparison.Differences;
        if (comparison.Licks.Length > 1)
        {
            var time = comparison.Licks[0].Path.Time;
            var places = moments.Select(moment =>
                $"bar {WrittenRhythm.Whole(moment / time.Beats) + 1} {TabWords.Beat((moment % time.Beats).Reduce())}"
            );
            words.Append($" {comparison.Differing([.. places])}");
        }

        return words.ToString();
    }

    private static List<TabLayout> Layouts(LickComparison comparison)
    {
        var tabs = comparison.Tabs.Select(static tab => new TabParts(tab)).ToList();
        var spacing = new TabSpacing(tabs, comparison.Width);
        return [.. tabs.Select(tab => new TabLayout(tab, spacing))];
    }

    /// <summary>The height of the name, and of the words about a capo below it.</summary>
    private static double NameRow(TabLayout layout, int line) => NameHeight + (line == 0 ? layout.CapoHeight : 0);

    private static int Lines(List<TabLayout> layouts) => layouts.Max(static layout => layout.Lines.Count);

    private static double Height(List<TabLayout> layouts, int line)
    {
        var here = layouts.Where(layout => line < layout.Lines.Count).ToList();
        return Math.Ceiling(
            here.Sum(layout => NameRow(layout, line) + layout.Lines[line].Height)
                + ((here.Count - 1) * Gap)
                + TabLayout.Above
        );
    }

    private static IEnumerable<string> Pictures(
        LickComparison comparison,
        List<TabLayout> layouts,
        int line,
        RenderContext context
    )
    {
        foreach (var (index, layout) in layouts.Index().Where(each => line < each.Item.Lines.Count))
        {
            var svg = new SvgWriter(16 * 1024);
            var height = Math.Ceiling(NameRow(layout, line) + layout.Lines[line].Height + Gap);
            if ((line, index) == (0, 0))
            {
                Open(svg, comparison, layouts, height, context);
            }
            else
            {
                svg.PictureGoingOn(layouts[0].Width, height, LeastScale);
            }

            WriteLick(svg, comparison, layout, index, line, 0);
            yield return svg.Close().ToString();
        }
    }

    private static void Open(
        SvgWriter svg,
        LickComparison comparison,
        List<TabLayout> layouts,
        double height,
        RenderContext context
    ) =>
        svg.Picture(
            context,
            layouts[0].Width,
            height,
            $"{English.Count(comparison.Licks.Length, "lick")} compared",
            comparison.Description,
            MarkPicture.Css,
            LeastScale
        );

    private static void WriteLine(
        SvgWriter svg,
        LickComparison comparison,
        List<TabLayout> layouts,
        int line,
        double top
    )
    {
        foreach (var (index, layout) in layouts.Index().Where(each => line < each.Item.Lines.Count))
        {
            WriteLick(svg, comparison, layout, index, line, top);
            top += NameRow(layout, line) + layout.Lines[line].Height + Gap;
        }
    }

    private static void WriteLick(
        SvgWriter svg,
        LickComparison comparison,
        TabLayout layout,
        int index,
        int line,
        double top
    )
    {
        svg.Label(12, NeckLayout.Rounded(top + 16)).Attribute("font-size", 11.5);
        svg.Open("tspan").Fill(Look.Ink).Attribute("font-weight", "700").Text($"{index + 1}").Close();
        var columns = (int)((layout.Width - 40) / Character);
        svg.Open("tspan").Fill(Look.Quiet).Attribute("dx", 8);
        svg.Text(UserText.Short(comparison.Licks[index].Name, columns)).Close().Close();
        TabPicture.WriteLine(
            layout,
            layout.Lines[line] with
            {
                Top = top + NameRow(layout, line),
            },
            svg,
            note => comparison.Differs(index, note)
        );
    }
}
