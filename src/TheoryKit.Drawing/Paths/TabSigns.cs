using TheoryKit.Paths;

namespace TheoryKit.Drawing;

/// <summary>A note with what its signs need to know, in px.</summary>
/// <param name="X">Its middle.</param>
/// <param name="Y">Its string.</param>
/// <param name="Half">Half the width of its number.</param>
/// <param name="HasSign">Whether something else stands above it in the row of signs.</param>
/// <param name="Before">Where the number before it on its string ends, or the line begins; null where there is none.</param>
/// <param name="Rises">Whether it is higher than that one.</param>
/// <param name="Next">Where the next note is, or the line ends.</param>
/// <param name="Row">The middle of the row of signs above the staff.</param>
internal readonly record struct PlacedNote(
    double X,
    double Y,
    double Half,
    bool HasSign,
    double? Before,
    bool Rises,
    double Next,
    double Row
);

/// <summary>How each technique is drawn: an entry for each; one without gets its sign above the staff.</summary>
internal static class TabSigns
{
    private static readonly Dictionary<Technique, Action<SvgWriter, PlacedNote>> Known = new()
    {
        [Technique.HammerOn] = static (svg, note) => Slur(svg, note, Technique.HammerOn),
        [Technique.PullOff] = static (svg, note) => Slur(svg, note, Technique.PullOff),
        [Technique.Slide] = static (svg, note) =>
            SlideLine(svg, From(note), note.X - note.Half - 1.5, note.Y, note.Rises),
        [Technique.Vibrato] = Wave,
        [Technique.Accent] = static (svg, note) =>
            svg.Path(
                    PenMove.To(note.X - 5, note.Row - 3.5),
                    PenMove.Line(note.X + 5, note.Row),
                    PenMove.Line(note.X - 5, note.Row + 3.5)
                )
                .Stroke(Look.Ink, 1.4)
                .Close(),
        [Technique.Staccato] = static (svg, note) => svg.Circle(note.X, note.Row + 5, 1.7).Fill(Look.Ink).Close(),
        // The number itself says these.
        [Technique.Dead] = static (_, _) => { },
        [Technique.Ghost] = static (_, _) => { },
    };

    public static void Write(SvgWriter svg, Technique technique, PlacedNote note)
    {
        if (Known.TryGetValue(technique, out var write))
        {
            write(svg, note);
        }
        else
        {
            Letter(svg, note.X, note.Row + 4, technique.Sign);
        }
    }

    /// <summary>Whether a technique has a sign in the row above the staff that stands at its note, besides the wave.</summary>
    public static bool IsAbove(Technique technique) =>
        !technique.IsJoined
        && technique != Technique.Vibrato
        && technique != Technique.Dead
        && technique != Technique.Ghost;

    /// <summary>The beginning of a sign whose end is on the next line.</summary>
    public static void WriteLeading(SvgWriter svg, Technique technique, PlacedNote before, bool rises, double end)
    {
        var from = before.X + before.Half + 1.5;
        if (technique == Technique.Slide)
        {
            SlideLine(svg, from, end - 4, before.Y, rises);
        }
        else
        {
            Arc(svg, from, end - 2, before.Y);
        }
    }

    /// <summary>A letter in the row of signs.</summary>
    public static void Letter(SvgWriter svg, double x, double y, string letter) =>
        svg.Label(NeckLayout.Rounded(x), y)
            .Fill(Look.Ink)
            .Attribute("font-size", 10)
            .Attribute("font-style", "italic")
            .Attribute("text-anchor", "middle")
            .Text(letter)
            .Close();

    private static double From(PlacedNote note) => (note.Before ?? (note.X - note.Half - 14)) + 1.5;

    private static void Slur(SvgWriter svg, PlacedNote note, Technique technique)
    {
        var (from, to) = (From(note), note.X - note.Half - 1);
        // From number to number over the top of both.
        Arc(svg, from - 3, to + 3, note.Y);
        Letter(svg, (from + to) / 2, note.Row + 4, technique.Sign);
    }

    private static void Arc(SvgWriter svg, double from, double to, double y) =>
        svg.Path(PenMove.To(from, y - 5.5), PenMove.Curve((from + to) / 2, y - 13, to, y - 5.5))
            .Stroke(Look.Ink, 1.2)
            .Close();

    private static void SlideLine(SvgWriter svg, double from, double to, double y, bool rises)
    {
        var lift = rises ? 3.5 : -3.5;
        svg.Path(PenMove.To(from, y + lift), PenMove.Line(to, y - lift)).Stroke(Look.Ink, 1.4).Close();
    }

    private static void Wave(SvgWriter svg, PlacedNote note)
    {
        // Another sign stands at the note; the wave follows it.
        var (from, least) = note.HasSign ? (note.X + 8, 3) : (note.X - 4, 4);
        var moves = new List<PenMove> { PenMove.To(from, note.Row) };
        var up = true;
        for (var x = from; x + 5 <= Math.Min(note.Next - 6, note.X + 34) || moves.Count < least; x += 5)
        {
            moves.Add(PenMove.Curve(x + 2.5, note.Row + (up ? -5 : 5), x + 5, note.Row));
            up = !up;
        }

        svg.Path([.. moves]).Stroke(Look.Ink, 1.3).Close();
    }
}
