using System.Globalization;
using TheoryKit.Drawing.Markup;
using TheoryKit.Drawing.Sheets;
using TheoryKit.Fingering.Retuning;

namespace TheoryKit.Drawing.Tunings;

/// <summary>A bar that fills as a search goes on.</summary>
internal static class SearchBar
{
    private const int TextWidth = 40;

    private const string Css = """
        .tk.tk-sheet{
        .tk-progress{box-sizing:border-box;width:26em;max-width:100%;height:.9em;margin:.5em 0;border:1px solid var(--tk-line);border-radius:.45em;overflow:hidden;background:var(--tk-board)}
        .tk-progress>span{display:block;height:100%;background:var(--tk-chord);print-color-adjust:exact;-webkit-print-color-adjust:exact}
        }
        """;

    public static Block.Picture Of(TuningProgress progress) => new((_, _) => Html(progress), _ => Text(progress));

    /// <summary>The whole percents; not 100 before the end.</summary>
    public static int Percent(TuningProgress progress) => (int)Math.Floor(Math.Clamp(progress.Part, 0, 1) * 100);

    private static string Html(TuningProgress progress)
    {
        var percent = Percent(progress).ToString(CultureInfo.InvariantCulture);
        return new HtmlWriter(512)
            .Style(Css)
            .Open("div", "tk-progress")
            .Attribute("role", "progressbar")
            .Attribute("aria-label", "tunings decided")
            .Attribute("aria-valuemin", "0")
            .Attribute("aria-valuemax", "100")
            .Attribute("aria-valuenow", percent)
            .Attribute("aria-valuetext", $"{percent} %")
            .Open("span")
            .Attribute("style", $"width:{percent}%")
            .Close()
            .Close()
            .ToString();
    }

    private static string Text(TuningProgress progress)
    {
        var percent = Percent(progress);
        var filled = percent * TextWidth / 100;
        return $"[{new string('#', filled)}{new string('-', TextWidth - filled)}] {percent} %";
    }
}
