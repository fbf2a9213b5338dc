using TheoryKit.Drawing.Markup;
using TheoryKit.Drawing.Rendering;
using TheoryKit.Theory.Chords;

namespace TheoryKit.Drawing.Necks;

/// <summary>How marks and what is written on them are drawn, on a neck and in a grip box alike.</summary>
internal static class MarkPicture
{
    private const double DotTypeSize = 10; // above a dot, below the mark of the next string

    /// <summary>The rule that lets the pointer through the labels to the marks.</summary>
    public const string Css = ".tk-l,.tk-lo{pointer-events:none}";

    /// <summary>Shows one kind of label: the figure around the picture says which; by itself, the attribute does.</summary>
    public static string LabelClass(Labels labels) =>
        labels switch
        {
            TheoryKit.Drawing.Necks.Labels.Functions => "tk-l tk-lf",
            TheoryKit.Drawing.Necks.Labels.NoteNames => "tk-l tk-ln",
            TheoryKit.Drawing.Necks.Labels.Fingers => "tk-l tk-lg",
            TheoryKit.Drawing.Necks.Labels.Order => "tk-l tk-lr",
            _ => "tk-lo",
        };

    /// <summary>The role as a part of a class name.</summary>
    public static string Kind(ToneRole role) =>
        role switch
        {
            ToneRole.Root => "root",
            ToneRole.ChordTone => "chord",
            ToneRole.ColourTone => "colour",
            _ => "other",
        };

    /// <summary>Begins a group of marks of one role.</summary>
    public static SvgWriter OpenRole(this SvgWriter svg, ToneRole role)
    {
        svg.Open("g");
        return role == ToneRole.ColourTone
            ? svg.Attribute("fill", Look.Board.Light)
                .Attribute("stroke", Look.Colour.Light)
                .Attribute("class", $"{Look.Board.FillClass} {Look.Colour.StrokeClass}")
                .Attribute("stroke-width", 2.4)
            : svg.Fill(Look.Of(role));
    }

    /// <summary>Begins the mark of a role.</summary>
    public static SvgWriter OpenMark(this SvgWriter svg, ToneRole role, double x, double y, double size)
    {
        var radius = NeckLayout.MarkRadius * size;
        var half = radius - (0.5 * size);
        return role switch
        {
            ToneRole.Root => svg.Rectangle(x - half, y - half, 2 * half, 2 * half, 4.5 * size),
            ToneRole.ChordTone => svg.Circle(x, y, radius),
            ToneRole.ColourTone => svg.Circle(x, y, radius - 1.2),
            _ => svg.Circle(x, y, 4 * size),
        };
    }

    /// <summary>Writes every kind of label offered, of which one is shown at first; labels of a mark's own always are. On marks that stand back they are smaller by <paramref name="paleSize"/>, or none where that is 0.</summary>
    public static void Labels(
        this SvgWriter svg,
        IReadOnlyList<Mark> marks,
        IEnumerable<Labels> offered,
        Labels shown,
        IFormatProvider? naming,
        Func<Mark, (double X, double Y)> place,
        double paleSize = 0
    )
    {
        var own = marks.Where(static mark => mark.Label is not null).ToList();
        if (own.Count > 0)
        {
            Write(TheoryKit.Drawing.Necks.Labels.None, own, isShown: true);
        }

        var rest = marks.Where(static mark => mark.Label is null).ToList();
        foreach (var labels in offered.Where(static labels => labels != TheoryKit.Drawing.Necks.Labels.None))
        {
            Write(labels, rest, labels == shown);
        }

        void Write(Labels labels, List<Mark> marks, bool isShown)
        {
            svg.Open("g", LabelClass(labels)).Attribute("text-anchor", "middle");
            svg.Attribute("font-size", NeckLayout.TypeSize).Attribute("font-weight", "600");
            svg.Attribute("display", isShown ? null : "none");
            foreach (var role in Enum.GetValues<ToneRole>())
            {
                var written = marks
                    .Where(mark => mark.Role == role && (!mark.IsPale || paleSize > 0))
                    .Select(mark => (mark, Text: mark.Written(labels, naming)))
                    .Where(static each => !string.IsNullOrEmpty(each.Text))
                    .ToList();
                if (written.Count > 0)
                {
                    WriteRole(role, written!);
                }
            }

            svg.Close();
        }

        void WriteRole(ToneRole role, List<(Mark Mark, string Text)> written)
        {
            svg.Group(Look.On(role));
            if (role == ToneRole.Other)
            {
                // Above the dot, with a halo that keeps strings away from the letters.
                svg.Attribute("style", $"paint-order:stroke;stroke:{Look.Board.Css};stroke-width:2px");
            }

            foreach (var (mark, text) in written)
            {
                var size = role == ToneRole.Other ? Math.Min(TypeSize(text), DotTypeSize) : TypeSize(text);
                size = mark.IsPale ? NeckLayout.Rounded(size * paleSize) : size;
                var (x, y) = place(mark);
                svg.Label(x, role == ToneRole.Other ? y - 5.4 : y + NeckLayout.Rounded(size * 0.36));
                if (size < NeckLayout.TypeSize)
                {
                    svg.Attribute("font-size", size);
                }

                svg.Text(text).Close();
            }

            svg.Close();
        }
    }

    // A label of four signs still fits on its mark.
    private static double TypeSize(string text) =>
        // Dots that stand for more are as wide as two.
        (text.Length + (text.EndsWith('…') ? 1 : 0)) switch
        {
            <= 2 => NeckLayout.TypeSize,
            3 => 8.6,
            4 => 7.2,
            _ => 6,
        };
}
