using System.Globalization;
using System.Text;
using Fractions;
using TheoryKit.Drawing.Markup;
using TheoryKit.Drawing.Rendering;
using TheoryKit.Drawing.Sheets;
using TheoryKit.Drawing.Tab;
using TheoryKit.Licks;
using TheoryKit.Licks.Search;
using TheoryKit.Values;

namespace TheoryKit.Drawing.Licks;

/// <summary>Writes the sheet of what a search has found, in two columns on one page.</summary>
/// <param name="naming">How notes are named; null for English.</param>
internal sealed class LickResultsRenderer(IFormatProvider? naming = null) : IRenderer<LickResults>
{
    /// <summary>How much of a lick is shown: so many bars, and no more than fit on a line.</summary>
    private const int Bars = 2;

    private const double Width = 88;
    private const int Columns = 46;
    private const int MostChords = 6;
    private const int MostNamed = 40;

    private static readonly string Css = """
        .tk.tk-licks{background:var(--tk-paper);color:var(--tk-ink);font:13px/1.4 SANS;text-align:left;border-radius:10px;padding:1.3em 1.5em;margin:1.2em 0;max-width:62rem;box-sizing:border-box;
        .tk-name{font:600 1.75em/1.25 SERIF;margin:0 0 .6em;color:inherit;overflow-wrap:anywhere}
        .tk-sub{font:400 13px/1.5 SANS;color:var(--tk-quiet);margin-left:.7em}
        .tk-of{display:grid;grid-template-columns:repeat(2,minmax(0,1fr));gap:1.1em 2em;list-style:none;margin:0;padding:0}
        .tk-of>li{break-inside:avoid;border-top:1px solid var(--tk-inlay);padding:.5em 0 0;margin:0;min-width:0}
        .tk-of p{margin:0;color:inherit;overflow:hidden;text-overflow:ellipsis;white-space:nowrap}
        .tk-of .tk-title{font:600 1.15em/1.3 SERIF}
        .tk-of .tk-quiet{color:var(--tk-quiet);font-size:.92em}
        .tk-of svg{display:block;max-width:100%;height:auto;margin-top:.3em}
        .tk-rest{margin:1em 0 0;color:var(--tk-quiet);overflow-wrap:anywhere}
        }
        @media(max-width:560px){.tk.tk-licks{padding:1em .9em;.tk-of{grid-template-columns:minmax(0,1fr)}}}
        @media print{.tk.tk-licks{padding:0;margin:0;font-size:11px;.tk-of{gap:.7em 1.6em;grid-template-columns:repeat(2,minmax(0,1fr))}.tk-of svg{max-height:32mm;width:auto}.tk-name{font-size:1.5em;margin:0 0 .4em;break-after:avoid}}}
        """.Replace("SANS", Look.Sans, StringComparison.Ordinal).Replace("SERIF", Look.Serif, StringComparison.Ordinal);

    /// <inheritdoc/>
    public string Html(LickResults value, RenderContext context)
    {
        ArgumentNullException.ThrowIfNull(value);
        ArgumentNullException.ThrowIfNull(context);
        var html = new HtmlWriter(16 * 1024);
        var id = context.NextId();
        html.Open("div", "tk tk-licks").Attribute("role", "group").Attribute("aria-labelledby", id);
        html.Style(Look.Css + Css);
        html.Open("p", "tk-name").Attribute("id", id).Text(UserText.Of(value.Title)).Text(" ");
        html.Element("span", "tk-sub", Count(value)).Close();
        if (value.Found.Count > 0)
        {
            html.Open("ol", "tk-of");
            foreach (var found in value.Found.Take(LickResults.MostOnSheet))
            {
                Write(html, found, context);
            }

            html.Close();
        }

        if (Rest(value) is { } rest)
        {
            html.Element("p", "tk-rest", rest);
        }

        return html.Close().ToString();
    }

    /// <inheritdoc/>
    public string Text(LickResults value)
    {
        ArgumentNullException.ThrowIfNull(value);
        var text = new StringBuilder(4 * 1024)
            .Append(Clean(UserText.Of(value.Title)))
            .Append("  ")
            .Append(Count(value))
            .Append('\n');
        foreach (var found in value.Found.Take(LickResults.MostOnSheet))
        {
            text.Append('\n').Append(Clean(UserText.Of(found.Lick.Name))).Append('\n');
            string[] about = [About(found).Plain(naming), LickFolderValues.Tags(found.Lick), Why(found).Plain(naming)];
            foreach (var line in about.Where(static line => line.Length > 0))
            {
                text.Append("  ").Append(Clean(line)).Append('\n');
            }

            // The first line of a tab's text is its title.
            foreach (
                var line in Beginning(found.Lick)
                    .ToString()
                    .Split('\n')
                    .Skip(1)
                    .SkipWhile(static line => line.Length == 0)
            )
            {
                text.Append($"  {line}".TrimEnd()).Append('\n');
            }
        }

        if (Rest(value) is { } rest)
        {
            text.Append('\n').Append(Clean(rest)).Append('\n');
        }

        return text.ToString().TrimEnd('\n');
    }

    private void Write(HtmlWriter html, FoundLick found, RenderContext context)
    {
        html.Open("li").Element("p", "tk-title", UserText.Of(found.Lick.Name));
        var (about, tags, why) = (
            About(found).Printed(naming),
            LickFolderValues.Tags(found.Lick),
            Why(found).Printed(naming)
        );
        foreach (var line in new[] { about, tags, why }.Where(static line => line.Length > 0))
        {
            html.Element("p", line == about ? null : "tk-quiet", line);
        }

        html.Raw(Beginning(found.Lick).Svg(context)).Close();
    }

    /// <summary>Chords, tempo, tune.</summary>
    private static Words About(FoundLick found)
    {
        var lick = found.Lick;
        var parts = new List<Words>();
        if (LickFolderValues.Chords(lick, MostChords) is { IsEmpty: false } chords)
        {
            parts.Add(chords);
        }

        if (lick.Tempo is { } tempo)
        {
            parts.Add(string.Create(CultureInfo.InvariantCulture, $"tempo\u00a0{tempo}"));
        }

        if (lick.Tune.Length > 0)
        {
            parts.Add(UserText.Of(lick.Tune));
        }

        return Words.Join(" · ", parts);
    }

    private static Words Why(FoundLick found) => LickFolderValues.Reasons(found);

    /// <summary>The first bars, one of them alone where two do not fit on a line.</summary>
    private TabDrawing Beginning(Lick lick)
    {
        var two = Drawing(Bars);
        return two.Path.BarCount < 2 || TabPicture.Lines(two, new RenderContext()).Count() == 1 ? two : Drawing(1);

        TabDrawing Drawing(int bars)
        {
            var path = lick.Path;
            var end = (Fraction)(bars * path.Time.Beats);
            var cut =
                path.Beats <= end
                    ? path
                    : path.With(
                        path.Notes.Where(note => note.Start < end)
                            .Select(note => note.End > end ? note with { Length = (end - note.Start).Reduce() } : note),
                        beats: end
                    );
            return new(cut)
            {
                Title = "How it begins",
                Width = Width,
                Columns = Columns,
                ShowsFunctions = false,
                IsBeginning = path.Beats > end,
                Naming = naming,
            };
        }
    }

    private static string Count(LickResults value) =>
        value.Found.Count > LickResults.MostOnSheet
            ? $"the first {LickResults.MostOnSheet} of {value.Found.Count}"
            : English.Count(value.Found.Count, "lick");

    /// <summary>The names of those that are not shown.</summary>
    private static string? Rest(LickResults value)
    {
        var rest = value
            .Found.Skip(LickResults.MostOnSheet)
            .Select(static each => UserText.Of(each.Lick.Name))
            .ToList();
        var more = rest.Count - MostNamed;
        return rest.Count == 0
            ? null
            : $"Also: {string.Join(", ", rest.Take(MostNamed))}" + (more > 0 ? $" and {more} more" : "");
    }

    private static string Clean(string text) => text.Replace('\u00a0', ' ');
}
