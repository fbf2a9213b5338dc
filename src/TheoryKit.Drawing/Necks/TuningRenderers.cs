using System.Globalization;
using System.Text;
using TheoryKit.Tunings;

namespace TheoryKit.Drawing;

/// <summary>A neck by itself: its open strings, its frets true to scale, its measures.</summary>
public sealed class NeckRenderer : IRenderer<Neck>
{
    /// <inheritdoc/>
    public string Html(Neck value, RenderContext context)
    {
        ArgumentNullException.ThrowIfNull(value);
        ArgumentNullException.ThrowIfNull(context);
        return NeckFigure.Write(Drawing(value), context);
    }

    /// <inheritdoc/>
    public string Text(Neck value)
    {
        ArgumentNullException.ThrowIfNull(value);
        return Drawing(value).ToString();
    }

    private static NeckDrawing Drawing(Neck neck) =>
        NeckDrawing
            .Of(neck)
            .WithTitle(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"Neck of {Printed.Number(neck.StringCount)} strings, {neck.ScaleLength:0.#} mm, {neck.Frets} frets"
                )
            );
}

/// <summary>A tuning: its strings with their pitches, frequencies and the step up from the string below.</summary>
public sealed class TuningRenderer : IRenderer<Tuning>
{
    private static readonly string[] Columns = ["String", "Pitch", "Hz", "Above the one before", "Begins at fret"];

    /// <inheritdoc/>
    public string Html(Tuning value, RenderContext context)
    {
        ArgumentNullException.ThrowIfNull(value);
        ArgumentNullException.ThrowIfNull(context);
        var html = new HtmlWriter();
        html.Open("div", "tk tk-sheet").Style(Look.Css + Look.SheetCss);
        html.Open("table").Element("caption", null, $"Tuning {Printed.Of(value, null)}");
        html.Open("thead").Open("tr");
        foreach (var column in Columns.Take(ColumnCount(value)))
        {
            html.Open("th").Attribute("scope", "col").Text(column).Close();
        }

        html.Close().Close().Open("tbody");
        foreach (var row in Rows(value, "P"))
        {
            html.Open("tr").Open("th").Attribute("scope", "row").Text(row[0]).Close();
            foreach (var cell in row[1..])
            {
                html.Element("td", null, cell);
            }

            html.Close();
        }

        return html.Close().Close().Close().ToString();
    }

    /// <inheritdoc/>
    public string Text(Tuning value)
    {
        ArgumentNullException.ThrowIfNull(value);
        List<string[]> rows = [Columns[..ColumnCount(value)], .. Rows(value, "G")];
        var widths = Enumerable.Range(0, rows[0].Length).Select(column => rows.Max(row => row[column].Length)).ToList();
        var text = new StringBuilder($"Tuning {value}");
        foreach (var row in rows)
        {
            text.Append('\n').AppendJoin("  ", row.Select((cell, column) => cell.PadRight(widths[column])));
            while (text[^1] == ' ')
            {
                text.Length--;
            }
        }

        return text.ToString();
    }

    private static int ColumnCount(Tuning tuning) =>
        tuning.Strings.Any(static each => each.Start > 0) ? Columns.Length : Columns.Length - 1;

    // From the last string down to string 1, the way a tuning is said.
    private static IEnumerable<string[]> Rows(Tuning tuning, string format)
    {
        for (var number = tuning.StringCount; number >= 1; number--)
        {
            var open = tuning[number].Open;
            string[] row =
            [
                $"{number}",
                open.ToString(format),
                open.Frequency().ToString("0.00", CultureInfo.InvariantCulture),
                number == tuning.StringCount ? "" : (open - tuning[number + 1].Open).ToString(),
                tuning[number].Start is > 0 and var start ? $"{start}" : "",
            ];
            yield return row[..ColumnCount(tuning)];
        }
    }
}
