using System.Collections.Immutable;
using System.Text;
using TheoryKit.Theory.Chords;

namespace TheoryKit.Drawing.Rendering;

/// <summary>A colour of the look: on a light page, on a dark one, and on paper.</summary>
/// <param name="Name">Its CSS custom property is <c>--tk-</c> and this name.</param>
/// <param name="Light">As <c>#rrggbb</c>, on light pages; also where style sheets are not read.</param>
/// <param name="Dark">As <c>#rrggbb</c>, on pages that declare a dark colour scheme.</param>
/// <param name="Print">As <c>#rrggbb</c>, printed: black, white or grey.</param>
public sealed record LookColour(string Name, string Light, string Dark, string Print)
{
    /// <summary>The colour as a CSS value.</summary>
    public string Css { get; } = $"var(--tk-{Name})";

    /// <summary>The class of SVG elements filled with it.</summary>
    public string FillClass { get; } = $"tk-fill-{Name}";

    /// <summary>The class of SVG elements whose outline is drawn in it.</summary>
    public string StrokeClass { get; } = $"tk-line-{Name}";
}

/// <summary>
/// How everything looks: one place for colours, type and the style sheet that every picture carries.
/// </summary>
/// <remarks>
/// Looked up: the hues are from the "muted" scheme of Paul Tol, <i>Colour Schemes</i>, SRON technical note SRON/EPS/TN/09-002, issue
/// 3.2 (2021; the six are the same in issue 2.2 of 2012), made to be told apart with every common kind of colour blindness: wine,
/// indigo and green on light pages, their lighter neighbours
/// rose, cyan and teal on dark ones. No meaning hangs on hue alone. From memory: contrast follows WCAG 2.2, 4.5:1 for text
/// (1.4.3), 3:1 for marks and lines (1.4.11), in each of the three. Chosen: the other colours, and fitted to that contrast.
/// </remarks>
public static class Look
{
    /// <summary>Behind everything.</summary>
    public static LookColour Paper { get; } = new("paper", "#fcfaf5", "#1c1a18", "#ffffff");

    /// <summary>The fingerboard, and other raised areas.</summary>
    public static LookColour Board { get; } = new("board", "#f4eee2", "#292521", "#ffffff");

    /// <summary>What only decorates: inlays, hairlines.</summary>
    public static LookColour Inlay { get; } = new("inlay", "#e0d6c4", "#443d36", "#dddddd");

    /// <summary>Fret wires, strings and other lines that carry meaning.</summary>
    public static LookColour Line { get; } = new("line", "#857c6f", "#8b8277", "#777777");

    /// <summary>Text of second rank.</summary>
    public static LookColour Quiet { get; } = new("quiet", "#685f53", "#b5aa9b", "#333333");

    /// <summary>Text of first rank, and the nut.</summary>
    public static LookColour Ink { get; } = new("ink", "#29241f", "#efe8dc", "#000000");

    /// <summary>The root: Tol's wine and rose.</summary>
    public static LookColour Root { get; } = new("root", "#882255", "#cc6677", "#000000");

    /// <summary>Text on the root.</summary>
    public static LookColour OnRoot { get; } = new("on-root", "#ffffff", "#161412", "#ffffff");

    /// <summary>Chord tones: Tol's indigo and cyan.</summary>
    public static LookColour Chord { get; } = new("chord", "#332288", "#88ccee", "#444444");

    /// <summary>Text on a chord tone.</summary>
    public static LookColour OnChord { get; } = new("on-chord", "#ffffff", "#161412", "#ffffff");

    /// <summary>Colour tones: Tol's green and teal. Text inside the ring is <see cref="Ink"/>.</summary>
    public static LookColour Colour { get; } = new("colour", "#117733", "#44aa99", "#000000");

    /// <summary>Anything else.</summary>
    public static LookColour Other { get; } = new("other", "#685f53", "#b5aa9b", "#555555");

    /// <summary>Every colour.</summary>
    public static ImmutableArray<LookColour> Colours { get; } =
    [Paper, Board, Inlay, Line, Quiet, Ink, Root, OnRoot, Chord, OnChord, Colour, Other];

    /// <summary>The type of labels and running text: what the reader's system has.</summary>
    public const string Sans = "system-ui,-apple-system,'Segoe UI','Noto Sans','DejaVu Sans',sans-serif";

    /// <summary>The type of titles.</summary>
    public const string Serif = "'Iowan Old Style','Palatino Linotype',Palatino,'URW Palladio L','DejaVu Serif',serif";

    /// <summary>
    /// The style sheet that pictures and fragments carry: the colours for everything inside an element of class <c>tk</c>.
    /// </summary>
    /// <remarks>
    /// Dark applies where the page declares <c>color-scheme: light dark</c> (or <c>dark</c>), by <c>light-dark()</c>; any
    /// other page stays light. Print is black and white.
    /// </remarks>
    public static string Css { get; } = WriteCss();

    /// <summary>The colour of the mark for a role.</summary>
    public static LookColour Of(ToneRole role) =>
        role switch
        {
            ToneRole.Root => Root,
            ToneRole.ChordTone => Chord,
            ToneRole.ColourTone => Colour,
            _ => Other,
        };

    /// <summary>The colour of a text on the mark for a role.</summary>
    public static LookColour On(ToneRole role) =>
        role switch
        {
            ToneRole.Root => OnRoot,
            ToneRole.ChordTone => OnChord,
            _ => Ink,
        };

    private static string WriteCss()
    {
        var css = new StringBuilder(2048);
        WriteColours(css, "", static colour => colour.Light);
        WriteColours(
            css,
            "@supports (color:light-dark(#fff,#000))",
            static colour => $"light-dark({colour.Light},{colour.Dark})"
        );
        WriteColours(css, "@media print", static colour => colour.Print);
        foreach (var colour in Colours)
        {
            css.Append('.').Append(colour.FillClass).Append("{fill:").Append(colour.Css).Append('}');
        }

        foreach (var colour in new[] { Inlay, Line, Ink, Colour, Other })
        {
            css.Append('.').Append(colour.StrokeClass).Append("{stroke:").Append(colour.Css).Append('}');
        }

        return css.Append(".tk-svg{display:block;width:100%;height:auto}")
            .Append("@media print{.tk-svg{min-width:0!important}}")
            .ToString();
    }

    private static void WriteColours(StringBuilder css, string condition, Func<LookColour, string> value)
    {
        if (condition.Length > 0)
        {
            css.Append(condition).Append('{');
        }

        css.Append(".tk{");
        foreach (var colour in Colours)
        {
            css.Append("--tk-").Append(colour.Name).Append(':').Append(value(colour)).Append(';');
        }

        css.Append('}');
        if (condition.Length > 0)
        {
            css.Append('}');
        }
    }
}
