using System.Globalization;
using System.Text;
using TheoryKit.Drawing.Markup;
using TheoryKit.Drawing.Rendering;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Progressions;

namespace TheoryKit.Drawing.Sheets;

/// <summary>Changes as on a lead sheet: bars in rows of four, of two or one where there is less room, every chord at its beat.</summary>
internal static class BarChart
{
    private const int BarsPerRow = 4;
    private const int WidestBeat = 14; // in characters; past that a bar is written without its beats
    private const double LeastBar = 8.2; // in em, as all that follow
    private const double WidestMeasured = 15; // past that the chords of a bar stand as near as they can
    private const double Character = 0.74; // of a chord, or 0.86 / 1.25 of that in a numeral
    private const double Space = 0.5; // after a chord
    private const double Edge = 0.8; // from the bar line to the first chord

    private static readonly string Css = """
        .tk.tk-sheet{
        .tk-bars{--two:calc((4*var(--bar) - 100%)*999);--one:calc((2*var(--bar) - 100%)*999);list-style:none;margin:.8em 0 .4em;padding:0 1.5px 0 0;box-sizing:border-box;width:calc(4*var(--bar) + 4px);max-width:100%;display:grid;grid-template-columns:repeat(auto-fill,minmax(max(25%,min(50%,var(--two)),min(100%,var(--one))),1fr));row-gap:1.5em}
        .tk-bars>li{display:flex;flex-direction:column;justify-content:space-between;min-width:0;margin:0 -1.5px 0 0;padding:.1em 0 .1em .7em;border:solid var(--tk-line);border-width:0 1.5px;break-inside:avoid}
        .tk-bars>li:last-child{border-right:4px double var(--tk-ink)}
        .tk-bar{display:flex;flex-wrap:wrap}
        .tk-bar>span{min-width:min-content;padding-right:.4em}
        .tk-chord{display:block;font:600 1.25em/1.3 SERIF;white-space:nowrap}
        .tk-numeral{display:block;color:var(--tk-quiet);font-size:.86em;line-height:1.3;white-space:nowrap}
        .tk-beats{display:flex;color:var(--tk-line);line-height:1.2}
        .tk-beats>i{flex:1;font-style:normal}
        .tk-unseen{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%)}
        }
        """.Replace("SERIF", Look.Serif, StringComparison.Ordinal);

    public static Block Of(Changes changes) =>
        new Block.Picture((_, naming) => Html(changes, naming), naming => Text(changes, naming));

    private static string Html(Changes changes, IFormatProvider? naming)
    {
        var html = new HtmlWriter(4 * 1024);
        html.Open("div", "tk-changes").Style(Css).Open("ol", "tk-bars");
        html.Attribute("style", $"--bar:{Em(changes, naming).ToString("0.#", CultureInfo.InvariantCulture)}em");
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

    /// <summary>How wide a bar has to be for the chords of each.</summary>
    private static double Em(Changes changes, IFormatProvider? naming) =>
        changes
            .Bars.Select(bar =>
            {
                var widths = bar.Chords.Select(span => Em(changes, span.Chord, naming)).ToList();
                var measured = bar.Chords.Zip(widths).Max(each => each.Second / (double)each.First.Length);
                return Math.Max(widths.Sum(), Math.Min(WidestMeasured, measured * changes.Time.Beats)) + Edge;
            })
            .Append(LeastBar)
            .Max();

    private static double Em(Changes changes, Chord? chord, IFormatProvider? naming)
    {
        var numeral =
            changes.Key is { } key && chord is not null ? RomanNumeral.For(chord, key).ToString("P", naming) : "";
        var length = Math.Max(Written(chord, "P", naming).Length, numeral.Length * 0.86 / 1.25);
        return (length * Character) + Space;
    }

    private static void WriteBar(HtmlWriter html, Changes changes, Bar bar, IFormatProvider? naming)
    {
        html.Open("div", "tk-bar");
        foreach (var span in bar.Chords)
        {
            var share = ((double)span.Length).ToString("0.###", CultureInfo.InvariantCulture);
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
