using TheoryKit.Drawing.Rendering;
using TheoryKit.Values;

namespace TheoryKit.Drawing.Markup;

/// <summary>Writes one SVG picture, valid as a file of its own and inside HTML.</summary>
public sealed class SvgWriter(int capacity = 8192) : MarkupWriter<SvgWriter>(capacity)
{
    /// <summary>
    /// Begins a picture that has a name and a description for those who don't see it, its own paper and the library's
    /// look. <see cref="MarkupWriter{TSelf}.Close"/> ends it.
    /// </summary>
    /// <param name="context">Gives the ids.</param>
    /// <param name="width">Natural width in px.</param>
    /// <param name="height">Natural height in px.</param>
    /// <param name="title">What it is, in a few words.</param>
    /// <param name="description">All that it says, in words.</param>
    /// <param name="css">Rules besides those of <see cref="Look.Css"/>; the library's own text.</param>
    /// <param name="leastScale">It shrinks with the page down to this part of its width, then scrolls; 0 for any.</param>
    public SvgWriter Picture(
        RenderContext context,
        double width,
        double height,
        string title,
        string description,
        string css = "",
        double leastScale = 0
    )
    {
        ArgumentNullException.ThrowIfNull(context);
        var (titleId, descriptionId) = (context.NextId(), context.NextId());
        OpenPicture(width, height, leastScale, $"{titleId} {descriptionId}");
        Open("title").Attribute("id", titleId).Text(title).Close();
        Open("desc").Attribute("id", descriptionId).Text(description).Close();
        Open("style").Raw(Look.Css).Raw(css).Close();
        return Paper(width, height);
    }

    /// <summary>
    /// Begins a picture that goes on from one above on the same page, as the next line of a tab does: the first one has the look and
    /// says in words what all of them show.
    /// </summary>
    /// <inheritdoc cref="Picture"/>
    public SvgWriter PictureGoingOn(double width, double height, double leastScale = 0)
    {
        OpenPicture(width, height, leastScale, null);
        return Paper(width, height);
    }

    private void OpenPicture(double width, double height, double leastScale, string? labelledBy)
    {
        Open("svg", "tk tk-svg").Attribute("xmlns", "http://www.w3.org/2000/svg");
        BeginAttribute("viewBox");
        Append('0');
        Append(' ');
        Append('0');
        Append(' ');
        Append(width);
        Append(' ');
        Append(height);
        Append('"');
        Number("width", width).Number("height", height);
        Attribute("role", labelledBy is null ? null : "img").Attribute("aria-labelledby", labelledBy);
        Attribute("aria-hidden", labelledBy is null ? "true" : null);
        var least = leastScale > 0 ? $"min-width:{(int)(width * leastScale)}px;" : "";
        Attribute("style", $"{least}max-width:{(int)Math.Ceiling(width)}px");
        Attribute("font-family", Look.Sans);
    }

    private SvgWriter Paper(double width, double height)
    {
        Open("rect").Number("width", width).Number("height", height).Attribute("rx", 8);
        return Fill(Look.Paper).Close();
    }

    /// <summary>Begins a group filled with a colour.</summary>
    public SvgWriter Group(LookColour fill) => Open("g").Fill(Check.NotNull(fill));

    /// <summary>Fills the element just begun; elsewhere than in a browser, with the colour for light pages.</summary>
    /// <exception cref="InvalidOperationException">Content has been written already.</exception>
    public SvgWriter Fill(LookColour colour)
    {
        ArgumentNullException.ThrowIfNull(colour);
        return Attribute("fill", colour.Light).Attribute("class", colour.FillClass);
    }

    /// <summary>Draws the outline of the element just begun; elsewhere than in a browser, in the colour for light pages.</summary>
    /// <exception cref="InvalidOperationException">Content has been written already.</exception>
    public SvgWriter Stroke(LookColour colour, double width)
    {
        ArgumentNullException.ThrowIfNull(colour);
        return Attribute("fill", "none")
            .Attribute("stroke", colour.Light)
            .Attribute("class", colour.StrokeClass)
            .Number("stroke-width", width);
    }

    /// <summary>Begins a rectangle, its corners rounded by <paramref name="round"/> px.</summary>
    public SvgWriter Rectangle(double x, double y, double width, double height, double round = 0)
    {
        Open("rect").Number("x", x).Number("y", y).Number("width", width).Number("height", height);
        return round > 0 ? Number("rx", round) : this;
    }

    /// <summary>Begins a circle.</summary>
    public SvgWriter Circle(double x, double y, double radius) =>
        Open("circle").Number("cx", x).Number("cy", y).Number("r", radius);

    /// <summary>Begins a line.</summary>
    public SvgWriter Line(double x1, double y1, double x2, double y2) =>
        Open("line").Number("x1", x1).Number("y1", y1).Number("x2", x2).Number("y2", y2);

    /// <summary>Begins a text at its baseline.</summary>
    public SvgWriter Label(double x, double y) => Open("text").Number("x", x).Number("y", y);

    /// <summary>Begins a path whose outline is given as pen moves: M, L, V, H, C, Q, Z and the numbers each takes.</summary>
    public SvgWriter Path(params ReadOnlySpan<PenMove> moves)
    {
        Open("path");
        BeginAttribute("d");
        foreach (var move in moves)
        {
            Append(move.Command);
            for (var i = 0; i < move.Count; i++)
            {
                if (i > 0)
                {
                    Append(' ');
                }

                Append(move[i]);
            }
        }

        Append('"');
        return this;
    }

    // Inside HTML, <title/> or <g/> is fine: foreign elements may close themselves.
    private protected override bool IsVoid(string name) => true;

    private protected override string VoidEnd => "/>";
}

/// <summary>One move of the pen along an SVG path: its command letter and up to two points.</summary>
public readonly record struct PenMove
{
    private readonly double a;
    private readonly double b;
    private readonly double c;
    private readonly double d;

    private PenMove(char command, int count, double a = 0, double b = 0, double c = 0, double d = 0) =>
        (Command, Count, this.a, this.b, this.c, this.d) = (command, count, a, b, c, d);

    internal char Command { get; }

    internal int Count { get; }

    internal double this[int index] =>
        index switch
        {
            0 => a,
            1 => b,
            2 => c,
            _ => d,
        };

    /// <summary>To a point without drawing.</summary>
    public static PenMove To(double x, double y) => new('M', 2, x, y);

    /// <summary>A straight line to a point.</summary>
    public static PenMove Line(double x, double y) => new('L', 2, x, y);

    /// <summary>A straight line up or down.</summary>
    public static PenMove Vertical(double y) => new('V', 1, y);

    /// <summary>A straight line left or right.</summary>
    public static PenMove Horizontal(double x) => new('H', 1, x);

    /// <summary>A curve to a point, pulled towards another.</summary>
    public static PenMove Curve(double pullX, double pullY, double x, double y) => new('Q', 4, pullX, pullY, x, y);

    /// <summary>Back to the last <see cref="To"/>.</summary>
    public static PenMove Back => new('Z', 0);
}
