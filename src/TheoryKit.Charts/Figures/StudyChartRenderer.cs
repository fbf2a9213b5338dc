using TheoryKit.Drawing.Markup;
using TheoryKit.Drawing.Rendering;

namespace TheoryKit.Charts.Figures;

/// <summary>Shows a chart with its description as its name for screen readers, and its numbers as a table that unfolds.</summary>
internal sealed class StudyChartRenderer : IRenderer<StudyChart>
{
    private const string Css =
        ".tk-study{margin:1em 0;max-width:44rem;overflow-x:auto;background:var(--tk-paper);color:var(--tk-ink)}"
        + $".tk-study{{font-family:{Look.Sans}}}"
        + ".tk-study .tk-chart{min-width:36rem}"
        + ".tk-study details{font-size:.875em;padding:0 .75em .5em}"
        + ".tk-study summary{cursor:pointer;color:var(--tk-quiet)}"
        + "@media print{.tk-study{break-inside:avoid}.tk-study details:not([open]){display:none}}";

    /// <inheritdoc/>
    public string Html(StudyChart value, RenderContext context)
    {
        ArgumentNullException.ThrowIfNull(value);
        ArgumentNullException.ThrowIfNull(context);
        var html = new HtmlWriter(8192)
            .Open("figure", "tk tk-study")
            .Style(Look.Css + ChartTableRenderer.Css + Css)
            .Raw(GenericChartRenderer.Html(value.Draw(Palette.Page), context, $"{value.Title}. {value.Description}"))
            .Open("details")
            .Element("summary", null, "The numbers");
        ChartTableRenderer.Write(html, value.Tabulate("P"), value.Title, value.Description);
        return html.Close().Close().ToString();
    }

    /// <inheritdoc/>
    public string Text(StudyChart value)
    {
        ArgumentNullException.ThrowIfNull(value);
        return value.ToString();
    }
}
