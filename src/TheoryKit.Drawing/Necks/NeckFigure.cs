using System.Text;
using TheoryKit.Drawing.Markup;
using TheoryKit.Drawing.Rendering;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Drawing.Necks;

/// <summary>
/// Writes the figure around necks and grip boxes: its caption, one switch for the labels of all, the pictures, wide ones in
/// a frame that scrolls.
/// </summary>
internal static class NeckFigure
{
    // The picture inside brings the colours. The first rule with :has hides every kind of label, the next shows one again.
    private static readonly string Css = """
        .tk-neck{display:grid;grid-template-columns:1fr auto;align-items:baseline;gap:.2em 1.5em;margin:1.2em 0;padding:.9em 1em .6em;border-radius:10px;max-width:max-content;box-sizing:border-box;background:var(--tk-paper);color:var(--tk-ink);font:14px/1.4 SANS}
        .tk-neck .tk-title{font:600 1.2em SERIF;margin-right:.5em}
        .tk-neck .tk-detail{color:var(--tk-quiet);font-size:.86em;display:inline-block}
        .tk-scroll{grid-column:1/-1;overflow-x:auto;min-width:0;border-radius:8px}
        .tk-labels{display:flex;flex-wrap:wrap;border:0;margin:0;padding:0;min-width:0;font-size:.86em}
        .tk-labels legend{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%)}
        .tk-labels label{position:relative;cursor:pointer;padding:.15em .1em}
        .tk-labels input{position:absolute;inset:0;width:100%;height:100%;margin:0;opacity:0;cursor:pointer}
        .tk-labels span{display:inline-block;padding:.2em .6em;color:var(--tk-quiet);border-bottom:2px solid var(--tk-inlay)}
        .tk-labels :checked+span{color:var(--tk-ink);font-weight:600;border-color:var(--tk-root)}
        .tk-labels :focus-visible+span,.tk-scroll:focus-visible{outline:2px solid var(--tk-chord);outline-offset:1px;border-radius:3px}
        .tk-neck:has(.tk-labels :checked) .tk-l{display:none}
        .tk-neck:has(.tk-labels [value=f]:checked) .tk-lf,.tk-neck:has(.tk-labels [value=n]:checked) .tk-ln,.tk-neck:has(.tk-labels [value=g]:checked) .tk-lg,.tk-neck:has(.tk-labels [value=r]:checked) .tk-lr{display:inline}
        @media(max-width:560px){.tk-neck{grid-template-columns:1fr;padding:.7em .6em .4em}}
        @media print{.tk-labels{display:none}.tk-scroll{overflow:visible}.tk-neck{break-inside:avoid;padding:0}}
        """.Replace("SANS", Look.Sans, StringComparison.Ordinal).Replace("SERIF", Look.Serif, StringComparison.Ordinal);

    private static readonly string PartsCss = """
        .tk-parts{grid-column:1/-1;display:grid;gap:.9em 1.6em;margin-top:.5em}
        .tk-part{break-inside:avoid}
        @media print{.tk-parts{grid-template-columns:1fr 1fr!important}.tk-parts.tk-many{grid-template-columns:1fr 1fr 1fr!important}}
        .tk-part p{margin:0 0 .1em;font:600 1.1em SERIF}
        """.Replace("SERIF", Look.Serif, StringComparison.Ordinal);

    public static string Write(NeckDrawing drawing, RenderContext context) =>
        Write(
            drawing.Title,
            Detail(drawing),
            drawing.Offered,
            drawing.Labels,
            context,
            html => WritePicture(html, drawing, context)
        );

    /// <summary>Several drawings side by side where there is room, with one switch for the labels of all.</summary>
    public static string Write(IReadOnlyList<NeckDrawing> drawings, string title, RenderContext context) =>
        Write(
            title,
            Detail(drawings[0]),
            OfferedBy(drawings),
            drawings[0].Labels,
            context,
            html => WriteParts(html, drawings, context),
            "tk-necks"
        );

    /// <summary>A figure of any pictures that have labels to switch.</summary>
    /// <param name="title">What it is; empty for nothing.</param>
    /// <param name="detail">More about it, quietly.</param>
    /// <param name="offered">The kinds of labels that the pictures have.</param>
    /// <param name="labels">The kind that is shown at first.</param>
    /// <param name="context">The page.</param>
    /// <param name="write">Writes the pictures.</param>
    /// <param name="cssClass">A class besides its own.</param>
    /// <param name="css">The rules of that class; those of parts side by side if null.</param>
    public static string Write(
        string title,
        string detail,
        IEnumerable<Labels> offered,
        Labels labels,
        RenderContext context,
        Action<HtmlWriter> write,
        string? cssClass = null,
        string? css = null
    )
    {
        var id = context.NextId();
        var html = new HtmlWriter(20 * 1024);
        html.Open("figure", cssClass is null ? "tk tk-neck" : $"tk tk-neck {cssClass}").Attribute("id", id);
        html.Style(cssClass is null ? Css : Css + (css ?? PartsCss)).Open("figcaption");
        if (title.Length > 0)
        {
            html.Element("span", "tk-title", title).Text(" ");
        }

        html.Element("span", "tk-detail", detail).Close();
        WriteSwitch(html, [.. offered], labels, id);
        write(html);
        return html.Close().ToString();
    }

    /// <summary>Necks side by side where there is room.</summary>
    public static void WriteParts(HtmlWriter html, IReadOnlyList<NeckDrawing> drawings, RenderContext context)
    {
        // Many necks are a sheet to look over: drawn a little smaller, three fit side by side on a page.
        var isSheet = drawings.Count > 6;
        var width = (int)drawings.Max(static drawing => new NeckLayout(drawing).Width);
        html.Open("div", isSheet ? "tk-parts tk-many" : "tk-parts");
        html.Attribute(
            "style",
            isSheet
                ? $"grid-template-columns:repeat(auto-fill,minmax(min(100%,{(int)(width * NeckPicture.LeastScale)}px),1fr))"
                : $"grid-template-columns:repeat(auto-fill,min(100%,{width}px))"
        );
        foreach (var drawing in drawings)
        {
            html.Open("div", "tk-part").Element("p", null, drawing.Title);
            WritePicture(html, drawing, context);
            html.Close();
        }

        html.Close();
    }

    /// <summary>A neck in a frame that scrolls where the page is narrower.</summary>
    public static void WritePicture(HtmlWriter html, NeckDrawing drawing, RenderContext context) =>
        html.Open("div", "tk-scroll")
            .Attribute("tabindex", "0")
            .Attribute("role", "group")
            .Attribute("aria-label", $"{drawing.Title}, along the neck")
            .Raw(drawing.Svg(context))
            .Close();

    /// <summary>The kinds of labels that some drawing has.</summary>
    public static IEnumerable<Labels> OfferedBy(IEnumerable<NeckDrawing> drawings) =>
        drawings.SelectMany(static drawing => drawing.Offered).Distinct().Order();

    /// <summary>The tuning as players say it, and what is unusual about the neck.</summary>
    public static string Detail(NeckDrawing drawing) => Detail(drawing.Neck, drawing.IsLeftHanded, drawing.Naming);

    /// <inheritdoc cref="Detail(NeckDrawing)"/>
    public static string Detail(Neck neck, bool isLeftHanded, IFormatProvider? naming)
    {
        var words = new StringBuilder(Printed.Of(neck.Tuning, naming));
        words.Append(neck.Capo > 0 ? $" · capo {neck.Capo}" : "");
        words.Append(isLeftHanded ? " · left-handed" : "");
        return words.ToString();
    }

    private static void WriteSwitch(HtmlWriter html, List<Labels> offered, Labels labels, string id)
    {
        if (offered.Count < 2)
        {
            return;
        }

        var shown = offered.Contains(labels) ? labels : Labels.None;
        html.Open("fieldset", "tk-labels").Element("legend", null, "Labels");
        foreach (var each in offered)
        {
            html.Open("label")
                .Open("input")
                .Attribute("type", "radio")
                .Attribute("name", $"{id}-labels")
                .Attribute("value", Value(each))
                .Flag("checked", each == shown)
                .Close()
                .Element("span", null, Words(each))
                .Close();
        }

        html.Close();
    }

    private static string Words(Labels labels) =>
        labels switch
        {
            Labels.Functions => "Functions",
            Labels.NoteNames => "Notes",
            Labels.Fingers => "Fingers",
            Labels.Order => "Order",
            _ => "None",
        };

    private static string Value(Labels labels) =>
        labels switch
        {
            Labels.Functions => "f",
            Labels.NoteNames => "n",
            Labels.Fingers => "g",
            Labels.Order => "r",
            _ => "0",
        };
}
