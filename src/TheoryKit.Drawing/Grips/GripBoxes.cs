using TheoryKit.Drawing.Markup;
using TheoryKit.Drawing.Necks;
using TheoryKit.Drawing.Rendering;
using TheoryKit.Drawing.Sheets;
using TheoryKit.Fingering.Words;

namespace TheoryKit.Drawing.Grips;

/// <summary>A box and the lines below it.</summary>
internal sealed record GripBox(GripDrawing Drawing, params IReadOnlyList<Words> Under)
{
    /// <summary>How the hand gets here from the box before; empty for nothing.</summary>
    public IReadOnlyList<Words> Motion { get; init; } = [];
}

/// <summary>Grip boxes as parts of a page.</summary>
internal static class GripBoxes
{
    private static readonly string Css = """
        .tk-boxes{grid-column:1/-1;display:flex;flex-wrap:wrap;gap:1.1em .6em;align-items:flex-start;margin:.3em 0 0;min-width:0}
        .tk-box{break-inside:avoid}
        .tk-box p{margin:0;text-align:center;font-size:.86em;line-height:1.45;color:var(--tk-quiet)}
        .tk-box .tk-motion{color:var(--tk-ink)}
        .tk-arrow{align-self:center;width:1em;text-align:center;font-size:1.5em;color:var(--tk-line)}
        @media(max-width:560px){.tk-arrow{display:none}.tk-box{min-width:9.5em;max-width:calc(50% - .3em)}.tk-box .tk-motion::before{content:"→ "}}
        .tk-more{grid-column:1/-1;margin:.9em 0 .3em;color:var(--tk-quiet)}
        """;

    /// <summary>A sheet of boxes.</summary>
    public static Block Of(GripSheet sheet)
    {
        var shown = sheet.Grips.Take(sheet.Most).ToList();
        if (shown.Count == 0)
        {
            return new Block.Prose(sheet.Reason is { } reason ? Words.Said(reason.InWords) : "No grips.");
        }

        var more = sheet.Grips.Count - shown.Count;
        return Of(
            sheet.Title,
            [
                .. shown.Select(grip => new GripBox(
                    GripDrawing.Of(grip) with
                    {
                        Labels = sheet.Labels,
                        IsLeftHanded = sheet.IsLeftHanded,
                    },
                    GripWords.Under(grip)
                )),
            ],
            more > 0 ? $"and {more} more" : ""
        );
    }

    /// <summary>Boxes in a figure with one switch for the labels of all.</summary>
    public static Block.Picture Of(string title, IReadOnlyList<GripBox> boxes, string more = "") =>
        new((context, naming) => Html(title, boxes, more, context, naming), naming => Text(title, boxes, more, naming));

    /// <summary>The boxes alone, inside a figure; the style once is enough for it.</summary>
    public static void WriteBoxes(
        HtmlWriter html,
        IReadOnlyList<GripBox> boxes,
        RenderContext context,
        IFormatProvider? naming,
        bool withStyle = true
    )
    {
        _ = withStyle ? html.Style(Css) : html;
        html.Open("div", "tk-boxes");
        foreach (var box in boxes)
        {
            if (box.Motion.Count > 0)
            {
                html.Open("span", "tk-arrow").Attribute("aria-hidden", "true").Text("→").Close();
            }

            html.Open("div", "tk-box").Attribute("style", $"width:{(int)GripPicture.WidthOf(box.Drawing)}px");
            html.Raw(Named(box.Drawing, naming).Svg(context));
            if (box.Motion.Count > 0)
            {
                html.Element("p", "tk-motion", string.Join(", ", box.Motion.Select(line => line.Printed(naming))));
            }

            foreach (var line in box.Under)
            {
                html.Element("p", null, line.Printed(naming));
            }

            html.Close();
        }

        html.Close();
    }

    /// <summary>The boxes as plain text.</summary>
    public static string Text(IReadOnlyList<GripBox> boxes, IFormatProvider? naming) =>
        GripText.Beside([
            .. boxes.Select(box =>
                GripText.Lines(
                    Named(box.Drawing, naming),
                    [
                        .. box.Motion.Select(line => "> " + line.Plain(naming)),
                        .. box.Under.Select(line => line.Plain(naming)),
                    ]
                )
            ),
        ]);

    private static string Html(
        string title,
        IReadOnlyList<GripBox> boxes,
        string more,
        RenderContext context,
        IFormatProvider? naming
    )
    {
        var first = boxes[0].Drawing;
        return NeckFigure.Write(
            title,
            first.Neck is { } neck ? NeckFigure.Detail(neck, first.IsLeftHanded, naming) : "",
            boxes.SelectMany(static box => box.Drawing.Offered).Distinct().Order(),
            first.Labels,
            context,
            html =>
            {
                WriteBoxes(html, boxes, context, naming);
                _ = more.Length > 0 ? html.Element("p", "tk-more", more) : html;
            }
        );
    }

    private static string Text(string title, IReadOnlyList<GripBox> boxes, string more, IFormatProvider? naming)
    {
        var neck = boxes[0].Drawing.Neck;
        var head = neck is null ? title : $"{title}  ({neck})".TrimStart();
        return (head.Length > 0 ? head + "\n\n" : "") + Text(boxes, naming) + (more.Length > 0 ? $"\n{more}\n" : "");
    }

    private static GripDrawing Named(GripDrawing drawing, IFormatProvider? naming) =>
        drawing.Naming is null ? drawing with { Naming = naming } : drawing;
}
