using TheoryKit.Drawing.Markup;
using TheoryKit.Drawing.Rendering;

namespace TheoryKit.Charts.Figures;

/// <summary>Shows the numbers of a chart as a table.</summary>
internal sealed class ChartTableRenderer : IRenderer<ChartTable>
{
    internal const string Css =
        ".tk-numbers{overflow-x:auto;background:var(--tk-paper);color:var(--tk-ink)}"
        + $".tk-numbers{{font-family:{Look.Sans}}}"
        + ".tk-numbers table{border-collapse:collapse;margin:.5em 0;color:inherit}"
        + ".tk-numbers caption{text-align:left;padding:.25em 0}"
        + ".tk-numbers th,.tk-numbers td{padding:.2em .6em;text-align:left;border-bottom:1px solid var(--tk-inlay)}"
        + ".tk-numbers thead th{vertical-align:bottom;border-color:var(--tk-line)}"
        + ".tk-numbers .tk-number{text-align:right;font-variant-numeric:tabular-nums}";

    /// <inheritdoc/>
    public string Html(ChartTable value, RenderContext context)
    {
        ArgumentNullException.ThrowIfNull(value);
        var html = new HtmlWriter(4096).Open("div", "tk").Style(Look.Css + Css);
        Write(html, value, value.Columns[0], null);
        return html.Close().ToString();
    }

    /// <inheritdoc/>
    public string Text(ChartTable value)
    {
        ArgumentNullException.ThrowIfNull(value);
        return value.ToString();
    }

    /// <summary>Writes a table that scrolls sideways, by keyboard too, where it is wider than the page.</summary>
    internal static void Write(HtmlWriter html, ChartTable table, string name, string? caption)
    {
        html.Open("div", "tk-numbers")
            .Attribute("tabindex", "0")
            .Attribute("role", "region")
            .Attribute("aria-label", $"{name}: the numbers");
        html.Open("table");
        if (caption is not null)
        {
            html.Element("caption", null, caption);
        }

        html.Open("thead").Open("tr");
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
