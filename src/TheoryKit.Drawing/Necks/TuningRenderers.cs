using System.Globalization;
using System.Text;
using TheoryKit.Tunings;

namespace TheoryKit.Drawing;

/// <summary>A neck by itself: its open strings, its frets true to scale, its measures.</summary>
/// <param name="naming">How notes are named; null for English.</param>
public sealed class NeckRenderer(IFormatProvider? naming = null) : IRenderer<Neck>
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

    private NeckDrawing Drawing(Neck neck) =>
        NeckDrawing
            .Of(neck)
            .WithNaming(naming)
            .WithTitle(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"Neck of {Printed.Number(neck.StringCount)} strings, {neck.ScaleLength:0.#} mm, {neck.Frets} frets"
                )
            );
}

/// <summary>A tuning: its strings with their pitches, frequencies and the step up from the string below.</summary>
/// <param name="naming">How notes are named; null for English.</param>
public sealed class TuningRenderer(IFormatProvider? naming = null) : IRenderer<Tuning>
{
    private static readonly string Css = """
        .tk-tuning{margin:1.2em 0;padding:.9em 1em;border-radius:10px;max-width:max-content;box-sizing:border-box;background:var(--tk-paper);color:var(--tk-ink);font:14px/1.4 SANS;}
        .tk-tuning table{border-collapse:collapse;background:none;color:inherit;font-size:1em;font-variant-numeric:tabular-nums;margin:0}
        .tk-tuning caption{font:600 1.2em SERIF;text-align:start;padding:0 0 .4em;color:inherit}
        .tk-tuning th,.tk-tuning td{padding:.25em 1.2em .25em 0;text-align:start;border:0;background:none;color:inherit;font-weight:400}
        .tk-tuning thead th{color:var(--tk-quiet);font-size:.86em}
        .tk-tuning tbody tr{border-top:1px solid var(--tk-inlay);background:none}
        @media print{.tk-tuning{padding:0}}
        """.Replace("SANS", Look.Sans, StringComparison.Ordinal).Replace("SERIF", Look.Serif, StringComparison.Ordinal);

    private static readonly string[] Columns = ["String", "Pitch", "Hz", "Above the one before", "Begins at fret"];

    /// <inheritdoc/>
    public string Html(Tuning value, RenderContext context)
    {
        ArgumentNullException.ThrowIfNull(value);
        ArgumentNullException.ThrowIfNull(context);
        var html = new HtmlWriter();
        html.Open("div", "tk tk-tuning").Style(Look.Css + Css);
        html.Open("table").Element("caption", null, Title(value, Printed.Of(value, naming)));
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
        var text = new StringBuilder(Title(value, $"{value}"));
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

    // "Standard: E2 A2 D3 G3 B3 E4", where the tuning has a name.
    private static string Title(Tuning tuning, string strings) =>
        tuning.Name is { } name ? $"{Printed.Capital(name)}: {strings}" : strings;

    private static int ColumnCount(Tuning tuning) =>
        tuning.Strings.Any(static each => each.Start > 0) ? Columns.Length : Columns.Length - 1;

    // From the last string down to string 1, the way a tuning is said.
    private IEnumerable<string[]> Rows(Tuning tuning, string format)
    {
        for (var number = tuning.StringCount; number >= 1; number--)
        {
            var open = tuning[number].Open;
            string[] row =
            [
                $"{number}",
                open.ToString(format, naming),
                open.Frequency().ToString("0.00", CultureInfo.InvariantCulture),
                number == tuning.StringCount ? "" : (open - tuning[number + 1].Open).ToString(),
                tuning[number].Start is > 0 and var start ? $"{start}" : "",
            ];
            yield return row[..ColumnCount(tuning)];
        }
    }
}
