using System.Text;
using TheoryKit.Theory;

namespace TheoryKit.Drawing;

/// <summary>Changes as on a lead sheet: bars in rows of four, every chord at its beat.</summary>
internal static class BarChart
{
    private const int BarsPerRow = 4;
    private const int WidestBeat = 14; // in characters; past that a bar is written without its beats

    private static readonly string Css = """
        .tk.tk-sheet{
        .tk-bars{list-style:none;margin:.8em 0 .4em;padding:0;display:grid;grid-template-columns:repeat(4,minmax(8.2em,1fr));row-gap:1.5em}
        .tk-bars>li{display:flex;flex-direction:column;justify-content:space-between;margin:0;padding:.1em 0 .1em .7em;border-left:1.5px solid var(--tk-line);break-inside:avoid}
        .tk-bars>li:is(:last-child,:nth-child(4n)){border-right:1.5px solid var(--tk-line)}
        .tk-bars>li:last-child{border-right:4px double var(--tk-ink)}
        .tk-bar{display:flex}
        .tk-bar>span{min-width:min-content;padding-right:.4em}
        .tk-chord{display:block;font:600 1.25em/1.3 SERIF;white-space:nowrap}
        .tk-numeral{display:block;color:var(--tk-quiet);font-size:.86em;line-height:1.3;white-space:nowrap}
        .tk-beats{display:flex;color:var(--tk-line);line-height:1.2}
        .tk-beats>i{flex:1;font-style:normal}
        .tk-unseen{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%)}
        @media(max-width:640px){.tk-bars{grid-template-columns:repeat(2,minmax(0,1fr))}.tk-bars>li:nth-child(2n){border-right:1.5px solid var(--tk-line)}.tk-bars>li:last-child{border-right:4px double var(--tk-ink)}}
        }
        """.Replace("SERIF", Look.Serif, StringComparison.Ordinal);

    public static Block Of(Changes changes) =>
        new Block.Picture((_, naming) => Html(changes, naming), naming => Text(changes, naming));

    private static string Html(Changes changes, IFormatProvider? naming)
    {
        var html = new HtmlWriter(4 * 1024);
        html.Open("div", "tk-changes").Style(Css).Open("ol", "tk-bars");
        for (var i = 0; i < changes.Bars.Count; i++)
        {
            html.Open("li");
            if (IsRepeat(changes, i))
            {
                html.Open("div", "tk-bar").Open("span");
                html.Open("span", "tk-chord").Attribute("aria-hidden", "true").Text("%").Close();
                html.Element("span", "tk-unseen", "the same again").Close().Close();
            }
            else
            {
                WriteBar(html, changes, changes.Bars[i], naming);
            }

            html.Open("div", "tk-beats").Attribute("aria-hidden", "true");
            for (var beat = 0; beat < changes.Time.Beats; beat++)
            {
                html.Element("i", null, "/");
            }

            html.Close().Close();
        }

        return html.Close().Close().ToString();
    }

    private static void WriteBar(HtmlWriter html, Changes changes, Bar bar, IFormatProvider? naming)
    {
        html.Open("div", "tk-bar");
        foreach (var span in bar.Chords)
        {
            var share = ((double)span.Length).ToString("0.###", System.Globalization.CultureInfo.InvariantCulture);
            html.Open("span").Attribute("style", $"flex:{share} 1 0");
            html.Element("span", "tk-chord", Written(span.Chord, "P", naming));
            if (changes.Key is { } key && span.Chord is { } chord)
            {
                html.Text(" ").Element("span", "tk-numeral", RomanNumeral.For(chord, key).ToString("P", naming));
            }

            html.Close().Text(" ");
        }

        html.Close();
    }

    private static string Text(Changes changes, IFormatProvider? naming)
    {
        var spans = changes.Bars.SelectMany(static bar => bar.Chords).ToList();
        var beat = spans.Max(span =>
            (int)Math.Ceiling((Written(span.Chord, "G", naming).Length + 1) / (double)span.Length)
        );
        var cells = changes
            .Bars.Select(
                (bar, i) =>
                    IsRepeat(changes, i) ? "%"
                    : beat > WidestBeat ? Flat(bar, naming)
                    : Measured(bar, beat, naming)
            )
            .ToList();
        var width = Math.Max(cells.Max(static cell => cell.Length), beat > WidestBeat ? 0 : beat * changes.Time.Beats);
        var text = new StringBuilder();
        for (var i = 0; i < cells.Count; i++)
        {
            text.Append("| ").Append(cells[i].PadRight(width));
            var isLast = i == cells.Count - 1;
            text.Append(
                isLast ? "||"
                : (i + 1) % BarsPerRow == 0 ? "|\n"
                : ""
            );
        }

        return text.ToString();
    }

    private static string Measured(Bar bar, int beat, IFormatProvider? naming)
    {
        var line = new StringBuilder();
        foreach (var span in bar.Chords)
        {
            line.Append(' ', Math.Max(0, (int)((double)span.Start * beat) - line.Length));
            line.Append(Written(span.Chord, "G", naming));
        }

        return line.ToString();
    }

    private static string Flat(Bar bar, IFormatProvider? naming) =>
        string.Join(' ', bar.Chords.Select(span => $"{Written(span.Chord, "G", naming)}:{span.Length}"));

    private static string Written(Chord? chord, string format, IFormatProvider? naming) =>
        chord?.ToString(format, naming) ?? "N.C.";

    /// <summary>Whether a bar has the chords of the one before it in its row.</summary>
    private static bool IsRepeat(Changes changes, int bar) =>
        bar % BarsPerRow != 0 && changes.Bars[bar] == changes.Bars[bar - 1];
}
