using TheoryKit.Drawing;

namespace TheoryKit.Charts;

/// <summary>Shows a chart with its description as its name for screen readers, and its numbers as a table that unfolds.</summary>
public sealed class StudyChartRenderer : IRenderer<StudyChart>
{
    private const string Css =
        ".tk-study{margin:1em 0;max-width:44rem;overflow-x:auto;background:var(--tk-paper);color:var(--tk-ink)}"
        + $".tk-study{{font-family:{Look.Sans}}}"
        + ".tk-study .tk-chart{min-width:36rem}"
        + ".tk-study details{font-size:.875em;padding:0 .75em .5em}"
        + ".tk-study summary{cursor:pointer;color:var(--tk-quiet)}"
        + ".tk-study-table{overflow-x:auto}"
        + ".tk-study table{border-collapse:collapse;margin:.5em 0;color:inherit}"
        + ".tk-study caption{text-align:left;padding:.25em 0}"
        + ".tk-study th,.tk-study td{padding:.2em .6em;text-align:left;border-bottom:1px solid var(--tk-inlay)}"
        + ".tk-study thead th{vertical-align:bottom;border-color:var(--tk-line)}"
        + ".tk-study .tk-number{text-align:right;font-variant-numeric:tabular-nums}"
        + "@media print{.tk-study{break-inside:avoid}.tk-study details:not([open]){display:none}}";

    /// <inheritdoc/>
    public string Html(StudyChart value, RenderContext context)
    {
        ArgumentNullException.ThrowIfNull(value);
        ArgumentNullException.ThrowIfNull(context);
        var html = new HtmlWriter(8192)
            .Open("figure", "tk tk-study")
            .Style(Look.Css + Css)
            .Raw(GenericChartRenderer.Html(value.Draw(Palette.Page), context, $"{value.Title}. {value.Description}"))
            .Open("details")
            .Element("summary", null, "The numbers");
        WriteTable(html, value);
        return html.Close().Close().ToString();
    }

    /// <inheritdoc/>
    public string Text(StudyChart value)
    {
        ArgumentNullException.ThrowIfNull(value);
        return value.ToString();
    }

    private static void WriteTable(HtmlWriter html, StudyChart value)
    {
        var table = value.Tabulate("P");
        html.Open("div", "tk-study-table")
            .Attribute("tabindex", "0")
            .Attribute("role", "region")
            .Attribute("aria-label", $"{value.Title}: the numbers");
        html.Open("table").Element("caption", null, value.Description).Open("thead").Open("tr");
        for (var column = 0; column < table.Columns.Length; column++)
        {
            html.Open("th")
                .Attribute("class", Class(column))
                .Attribute("scope", "col")
                .Text(table.Columns[column])
                .Close();
        }

        html.Close().Close().Open("tbody");
        foreach (var row in table.Rows)
        {
            html.Open("tr").Open("th").Attribute("scope", "row").Text(row[0]).Close();
            for (var column = 1; column < row.Length; column++)
            {
                html.Open("td").Attribute("class", Class(column)).Text(row[column]).Close();
            }

            html.Close();
        }

        html.Close().Close().Close();

        string? Class(int column) => table.IsNumeric(column) ? "tk-number" : null;
    }
}
