using TheoryKit.Drawing.Markup;
using TheoryKit.Drawing.Rendering;

namespace TheoryKit.Drawing.Sheets;

/// <summary>Writes a sheet as a fragment of HTML that brings its own style.</summary>
internal static class SheetHtml
{
    /// <summary>From so many columns on, a table may be wider than a phone and gets a frame that scrolls.</summary>
    private const int ColumnsThatFit = 3;

    /// <summary>A text of more characters than this keeps a width at which it can be read.</summary>
    private const int LongText = 40;

    /// <summary>And one of more characters than this in a table that scrolls: it doesn't stand a word to a line.</summary>
    private const int SeveralWords = 10;

    // Every rule begins with two classes, so that a notebook's own rules for tables, which have one, don't win.
    private static readonly string Css = """
        .tk.tk-sheet{background:var(--tk-paper);color:var(--tk-ink);font:14px/1.5 SANS;text-align:left;border-radius:10px;padding:1.3em 1.5em;margin:1.2em 0;width:fit-content;max-width:100%;box-sizing:border-box;
        >style+*{margin-top:0!important}
        >:last-child{margin-bottom:0!important}
        .tk-long{min-width:15em;overflow-wrap:anywhere}
        .tk-name{font:600 1.75em/1.25 SERIF;margin:0 0 .5em;color:inherit;overflow-wrap:anywhere}
        .tk-sub{font:400 14px/1.5 SANS;color:var(--tk-quiet);margin-left:.7em}
        .tk-heading{font:600 1.15em/1.3 SERIF;margin:1.7em 0 .5em;color:inherit}
        .tk-prose{margin:.5em 0;max-width:40em;color:inherit;white-space:pre-line;overflow-wrap:anywhere}
        .tk-facts{display:grid;grid-template-columns:max-content 1fr;gap:.3em 1.5em;margin:.5em 0}
        .tk-facts div{display:contents}
        .tk-facts dt{color:var(--tk-quiet);font-weight:400;margin:0;padding:0;float:none;width:auto}
        .tk-facts dd{margin:0;padding:0;min-width:0;overflow-wrap:anywhere}
        .tk-table{border-collapse:collapse;border:0;margin:.5em 0;font-size:1em;width:auto;color:inherit;background:none}
        .tk-table caption{caption-side:top;text-align:left;font:600 1.15em/1.3 SERIF;color:inherit;padding:0 0 .5em}
        .tk-table caption.tk-unseen{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%);padding:0}
        .tk-table tr{background:none}
        .tk-table :is(th,td){padding:.36em 1.6em .36em 0;text-align:left;vertical-align:baseline;border:0;border-bottom:1px solid var(--tk-inlay);background:none;color:inherit;font-weight:400;line-height:1.4;white-space:normal;max-width:34em}
        .tk-table :is(th,td):last-child{padding-right:0}
        .tk-table thead th{color:var(--tk-quiet);font-size:.86em;border-bottom-color:var(--tk-line);vertical-align:bottom}
        .tk-table tbody th{font-weight:600;white-space:nowrap}
        .tk-table tbody th.tk-long{white-space:normal;overflow-wrap:anywhere}
        .tk-table .tk-n{text-align:right;font-variant-numeric:tabular-nums}
        .tk-beside{display:flex;flex-wrap:wrap;gap:1em 3.5em;align-items:flex-start}
        .tk-beside>*{min-width:0;margin-top:0}
        .tk-wide,.tk-group,.tk-beside{margin:1.4em 0}
        .tk-wide>.tk-table{margin:0}
        .tk-beside :is(.tk-wide,.tk-group),.tk-group>:first-child{margin-top:0}
        .tk-beside :is(.tk-wide,.tk-group){margin-bottom:0}
        .tk-strong{font-weight:600}
        .tk-dot{display:inline-block;box-sizing:border-box;width:.78em;height:.78em;margin-right:.55em;vertical-align:-.06em;border-radius:50%;print-color-adjust:exact;-webkit-print-color-adjust:exact}
        .tk-dot-Root{background:var(--tk-root);border-radius:.22em}
        .tk-dot-ChordTone{background:var(--tk-chord)}
        .tk-dot-ColourTone{border:.19em solid var(--tk-colour)}
        .tk-dot-Other{background:var(--tk-other);width:.44em;height:.44em;margin:0 .72em 0 .17em;vertical-align:.1em}
        .tk-wide{overflow-x:auto;max-width:100%}
        .tk-wide:focus-visible{outline:2px solid var(--tk-chord);outline-offset:2px}
        figure.tk-neck{margin:0 -1em;max-width:calc(100% + 2em)}
        figure.tk-necks{max-width:none}
        figure:is(.tk-tab,.tk-lick){width:fit-content}
        .tk-beside figure.tk-neck{margin-top:0}
        :is(.tk-prose+.tk-table,.tk-table+.tk-prose){margin-top:1.4em}
        }
        .tk.tk-sheet:has(.tk-necks){width:100%;max-width:62rem}
        @media(min-width:561px){.tk.tk-sheet .tk-table caption{white-space:nowrap}}
        @media(max-width:560px){.tk.tk-sheet{padding:1em .9em;.tk-table :is(th,td){padding-right:1em}.tk-table tbody th{white-space:normal}.tk-sub{display:block;margin:.1em 0 0}.tk-facts{gap:.3em 1em}figure.tk-neck{margin:0 -.6em;max-width:calc(100% + 1.2em)}.tk-wide td:has(.tk-dot){white-space:nowrap}.tk-wide tbody th:not(.tk-long,.tk-words){min-width:5.5em}.tk-wide :is(th,td).tk-words{min-width:8em}.tk-wide .tk-long{min-width:12em}}}
        @media print{.tk.tk-sheet{padding:0;figure.tk-neck{margin:.6em 0;max-width:100%}
        .tk-wide{overflow:visible}
        .tk-wide .tk-table{font-size:.84em;max-width:100%;:is(th,td){padding-right:.9em}:is(th,td):last-child{padding-right:0}tbody th{white-space:normal}.tk-long{min-width:0;overflow-wrap:break-word}}
        :is(tr,.tk-facts){break-inside:avoid}
        .tk-table:not(:has(tbody tr:nth-child(10))){break-inside:avoid}
        tbody tr:nth-child(-n+2){break-after:avoid}
        tbody tr:nth-last-child(-n+2){break-before:avoid}
        :is(.tk-heading,.tk-name,.tk-facts,caption,thead){break-after:avoid}
        figure:has(+.tk-facts){break-after:avoid}}
        .tk.tk-sheet:not(:has(.tk-necks,.tk-tab,.tk-parts,.tk-heading,tbody tr:nth-child(10))){break-inside:avoid}}
        """.Replace("SANS", Look.Sans, StringComparison.Ordinal).Replace("SERIF", Look.Serif, StringComparison.Ordinal);

    public static string Write(Sheet sheet, RenderContext context, IFormatProvider? naming)
    {
        if (sheet.Blocks is [Block.Picture alone])
        {
            return alone.Html(context, naming); // a figure has a frame of its own
        }

        var html = new HtmlWriter(8 * 1024);
        var title = sheet.Blocks.OfType<Block.Title>().FirstOrDefault();
        var id = title is null ? null : context.NextId();
        html.Open("div", "tk tk-sheet")
            .Attribute("role", title is null ? null : "group")
            .Attribute("aria-labelledby", id);
        html.Style(Look.Css + Css);
        new Writer(html, context, naming, id).WriteAll(sheet.Blocks);
        return html.Close().ToString();
    }

    private sealed class Writer(HtmlWriter html, RenderContext context, IFormatProvider? naming, string? titleId)
    {
        private string? titleId = titleId;

        public void WriteAll(IReadOnlyList<Block> blocks)
        {
            foreach (var block in blocks)
            {
                Write(block);
            }
        }

        private void Write(Block block)
        {
            switch (block)
            {
                case Block.Title title:
                    html.Open("p", "tk-name").Attribute("id", titleId).Text(Printed(title.Main));
                    titleId = null;
                    if (title.Sub is { IsEmpty: false } sub)
                    {
                        html.Text(" ").Element("span", "tk-sub", Printed(sub));
                    }

                    html.Close();
                    break;
                case Block.Heading(var words):
                    html.Element("p", "tk-heading", Printed(words));
                    break;
                case Block.Prose(var words):
                    html.Element("p", "tk-prose", Printed(words));
                    break;
                case Block.Facts(var facts):
                    WriteFacts(facts);
                    break;
                case Block.Table table:
                    WriteTable(table);
                    break;
                case Block.Picture picture:
                    html.Raw(picture.Html(context, naming));
                    break;
                case Block.Beside(var list):
                    html.Open("div", "tk-beside");
                    WriteAll(list);
                    html.Close();
                    break;
                case Block.Group(var list):
                    html.Open("div", "tk-group");
                    WriteAll(list);
                    html.Close();
                    break;
            }
        }

        private void WriteFacts(IReadOnlyList<Fact> facts)
        {
            html.Open("dl", "tk-facts");
            foreach (var (name, value) in facts)
            {
                html.Open("div").Element("dt", null, Printed(name)).Open("dd");
                WriteContent(value);
                html.Close().Close();
            }

            html.Close();
        }

        private void WriteTable(Block.Table table)
        {
            var caption = Printed(table.Caption);
            var isWide = table.Columns.Count > ColumnsThatFit;
            if (isWide)
            {
                html.Open("div", "tk-wide").Attribute("tabindex", "0").Attribute("role", "group");
                html.Attribute("aria-label", caption);
            }

            html.Open("table", "tk-table").Element("caption", table.HasQuietCaption ? "tk-unseen" : null, caption);
            html.Open("thead").Open("tr");
            foreach (var column in table.Columns)
            {
                html.Open("th").Attribute("class", column.IsNumber ? "tk-n" : null).Attribute("scope", "col");
                html.Text(Printed(column.Head)).Close();
            }

            html.Close().Close().Open("tbody");
            foreach (var row in table.Rows)
            {
                html.Open("tr");
                for (var i = 0; i < row.Count; i++)
                {
                    html.Open(i == 0 ? "th" : "td").Attribute("class", ClassOf(row[i], table.Columns[i], isWide));
                    html.Attribute("scope", i == 0 ? "row" : null);
                    WriteContent(row[i]);
                    html.Close();
                }

                html.Close();
            }

            html.Close().Close();
            if (isWide)
            {
                html.Close();
            }
        }

        private string? ClassOf(Cell cell, Column column, bool isWide) =>
            column.IsNumber ? "tk-n"
            : Printed(cell.Words).Length is var length && length > LongText ? "tk-long"
            : isWide && length > SeveralWords ? "tk-words"
            : null;

        private void WriteContent(Cell cell)
        {
            if (cell.Role is { } role)
            {
                html.Open("span", $"tk-dot tk-dot-{role}").Attribute("aria-hidden", "true").Close();
            }

            if (cell.IsStrong)
            {
                html.Element("span", "tk-strong", Printed(cell.Words));
            }
            else
            {
                html.Text(Printed(cell.Words));
            }
        }

        private string Printed(Words words) => words.Printed(naming);
    }
}
