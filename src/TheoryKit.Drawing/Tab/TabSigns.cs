using TheoryKit.Drawing.Markup;
using TheoryKit.Drawing.Necks;
using TheoryKit.Drawing.Rendering;
using TheoryKit.Paths;

namespace TheoryKit.Drawing.Tab;

/// <summary>A note with what its signs need to know, in px.</summary>
/// <param name="Note">The note.</param>
/// <param name="X">Its middle.</param>
/// <param name="Y">Its string.</param>
/// <param name="Half">Half the width of its number.</param>
internal readonly record struct PlacedNote(PathNote Note, double X, double Y, double Half)
{
    /// <summary>The middle of the row above the staff in which the sign stands.</summary>
    public double Row { get; init; }

    /// <summary>Where the number before it on its string ends, or the line begins; null where there is none.</summary>
    public double? Before { get; init; }

    /// <summary>Whether it is higher than that one.</summary>
    public bool Rises { get; init; }

    /// <summary>Where the next note is, or the line ends.</summary>
    public double Next { get; init; }

    /// <summary>Where a sign goes up beside its number, to its left; null where nothing above it is in the way.</summary>
    public double? Beside { get; init; }

    /// <summary>Where its own bend ends.</summary>
    public (double X, double Y) Tip { get; init; }

    /// <summary>Where the bend that it releases is held.</summary>
    public (double X, double Y) Held { get; init; }
}

/// <summary>How each technique is drawn: an entry for each; one without gets its sign above the staff.</summary>
/// <remarks>
/// Some belong to several notes at once and are drawn along the line: the slur over hammer-ons and pull-offs
/// (<see cref="Slur"/>), and what a palm mute goes over (<see cref="PalmMute"/>).
/// </remarks>
internal static class TabSigns
{
    private const double SlideLength = 9;
    private const double BendLength = 13;
    private const double AmountWidth = 9; // half of it
    private const double TrillDigit = 5.6;

    /// <param name="Write">Draws it at a note.</param>
    private sealed record Entry(Action<SvgWriter, PlacedNote> Write)
    {
        /// <summary>What it takes to the left and to the right of the number.</summary>
        public Func<PathNote, double> Left { get; init; } = static _ => 0;

        /// <inheritdoc cref="Left"/>
        public Func<PathNote, double> Right { get; init; } = static _ => 0;

        /// <summary>Whether it stands in the row of signs above its note, over others that do.</summary>
        public bool IsAbove { get; init; }

        /// <summary>Whether it stands in the row of signs before its note.</summary>
        public bool IsBetween { get; init; }
    }

    private static readonly Entry InNumber = new(static (_, _) => { });

    private static readonly Dictionary<Technique, Entry> Known = new()
    {
        [Technique.HammerOn] = new(static (svg, note) => Between(svg, note, Technique.HammerOn)) { IsBetween = true },
        [Technique.PullOff] = new(static (svg, note) => Between(svg, note, Technique.PullOff)) { IsBetween = true },
        [Technique.Slide] = new(
            static (svg, note) => SlideLine(svg, From(note), note.X - note.Half - 1.5, note.Y, note.Rises)
        )
        {
            Left = static _ => SlideLength,
        },
        [Technique.Vibrato] = new(static (svg, note) => Wave(svg, note, note.X - 4)) { IsAbove = true },
        [Technique.Accent] = new(
            static (svg, note) =>
                svg.Path(
                        PenMove.To(note.X - 5, note.Row - 3.5),
                        PenMove.Line(note.X + 5, note.Row),
                        PenMove.Line(note.X - 5, note.Row + 3.5)
                    )
                    .Stroke(Look.Ink, 1.4)
                    .Close()
        )
        {
            IsAbove = true,
        },
        [Technique.Staccato] = new(static (svg, note) => svg.Circle(note.X, note.Row + 5, 1.7).Fill(Look.Ink).Close())
        {
            IsAbove = true,
        },
        [Technique.Dead] = InNumber,
        [Technique.Ghost] = InNumber,
        [Technique.NaturalHarmonic] = InNumber,
        [Technique.Bend] = new(Bend) { Right = static _ => BendLength + AmountWidth },
        [Technique.PreBend] = new(PreBend) { Left = static _ => AmountWidth - 3, Right = static _ => AmountWidth - 3 },
        [Technique.Release] = new(Release) { Right = static note => note.Bend > 0 ? 12 : 0 },
        [Technique.SlideInFromBelow] = new(static (svg, note) => SlideIn(svg, note, rises: true))
        {
            Left = static _ => SlideLength,
        },
        [Technique.SlideInFromAbove] = new(static (svg, note) => SlideIn(svg, note, rises: false))
        {
            Left = static _ => SlideLength,
        },
        [Technique.SlideOutDown] = new(static (svg, note) => SlideOut(svg, note, rises: false))
        {
            Right = static _ => SlideLength,
        },
        [Technique.SlideOutUp] = new(static (svg, note) => SlideOut(svg, note, rises: true))
        {
            Right = static _ => SlideLength,
        },
        [Technique.ArtificialHarmonic] = new(static (svg, note) => Letter(svg, note.X, note.Row + 4, "A.H."))
        {
            IsAbove = true,
        },
        [Technique.Trill] = new(Trill) { IsAbove = true, Right = static note => TrillWidth(note) },
        [Technique.Tap] = new(static (svg, note) => Letter(svg, note.X, note.Row + 4, "T")) { IsAbove = true },
        [Technique.PalmMute] = InNumber,
    };

    public static void Write(SvgWriter svg, Technique technique, PlacedNote note)
    {
        if (Known.TryGetValue(technique, out var entry))
        {
            entry.Write(svg, note);
        }
        else
        {
            Letter(svg, note.X, note.Row + 4, technique.Sign);
        }
    }

    /// <summary>Whether a technique has a sign in the row above the staff at its note.</summary>
    public static bool StandsAbove(Technique technique) =>
        !Known.TryGetValue(technique, out var entry) || entry.IsAbove;

    /// <summary>Whether a technique has a sign in the row above the staff, at its note or before it.</summary>
    public static bool IsInRow(Technique technique) =>
        !Known.TryGetValue(technique, out var entry) || entry.IsAbove || entry.IsBetween;

    /// <summary>What the signs of a note take to the left of its number.</summary>
    public static double Left(PathNote note) => Room(note, static entry => entry.Left);

    /// <summary>What the signs of a note take to the right of its number.</summary>
    public static double Right(PathNote note) => Room(note, static entry => entry.Right);

    /// <summary>How high above string 1 a bend ends.</summary>
    public static double BendRise(int cents) => 10 + (0.08 * Math.Min(cents, 300)) + (0.03 * Math.Max(0, cents - 300));

    /// <summary>How far to the left of the widest of the numbers that start together a sign goes up beside them.</summary>
    public const double ToBeside = 6;

    /// <summary>What a sign that goes up beside the numbers that start together takes to the left of the widest.</summary>
    public const double BesideRoom = ToBeside + AmountWidth;

    /// <summary>Whether a note has an arrow of its own up to where it is bent.</summary>
    public static bool IsBentUp(PathNote note) => note.Has(Technique.Bend) || note.Has(Technique.PreBend);

    /// <summary>Whether a sign goes up beside its number, since a number or another sign is in the way above it.</summary>
    /// <param name="note">The note.</param>
    /// <param name="together">All that start with it.</param>
    public static bool GoesBeside(PathNote note, IEnumerable<PathNote> together) =>
        note.Has(Technique.PreBend)
            ? together.Any(other => other.Position.String < note.Position.String || (other != note && IsBentUp(other)))
            : note.Has(Technique.Release) && together.Any(other => other.Position.String < note.Position.String);

    /// <summary>How far bends that end at one place go: one amount above all, each smaller one beside the head of its arrow.</summary>
    public static void WriteAmounts(SvgWriter svg, IEnumerable<PlacedNote> bends)
    {
        var above = double.NegativeInfinity;
        foreach (
            var (index, (x, y, bend)) in bends
                .Select(static each => (each.Tip.X, each.Tip.Y, each.Note.Bend))
                .Distinct()
                .OrderBy(static each => each.Y)
                .Index()
        )
        {
            if (index == 0)
            {
                WriteAmount(svg, x, y - 3, bend);
                above = y - 3;
                continue;
            }

            above = Math.Max(y + 5, above + 9.5);
            WriteAmount(svg, x - 5, above, bend, "end");
        }
    }

    /// <summary>Where the arrow of a note's own bend ends, across.</summary>
    public static double TipX(PathNote note, double x, double half) =>
        note.Has(Technique.Bend) ? x + half + TrillWidth(note) + BendLength : x;

    /// <summary>How far, in the trade's way: ½, full, 1½, 2.</summary>
    public static string Amount(int cents) =>
        cents == 200
            ? "full"
            : $"{(cents >= 200 ? $"{cents / 200}" : "")}{(cents % 200) switch { 50 => "¼", 100 => "½", 150 => "¾", _ => "" }}";

    /// <summary>The beginning of a sign whose end is on the next line.</summary>
    public static void WriteLeading(SvgWriter svg, PathNote next, PlacedNote before, double end)
    {
        var from = before.X + before.Half + 1.5;
        if (next.Has(Technique.Slide))
        {
            SlideLine(svg, from, end - 4, before.Y, next.Position.Fret > before.Note.Position.Fret);
        }
        else if (next.Has(Technique.Release))
        {
            Dashed(svg, before.Tip.X, end - 3, before.Tip.Y);
        }
        else
        {
            Slur(svg, from - 3, end - 2, before.Y);
        }
    }

    /// <summary>A letter in the row of signs.</summary>
    public static void Letter(SvgWriter svg, double x, double y, string letter) =>
        svg.Label(NeckLayout.Rounded(x), NeckLayout.Rounded(y))
            .Fill(Look.Ink)
            .Attribute("font-size", 10)
            .Attribute("font-style", "italic")
            .Attribute("text-anchor", "middle")
            .Text(letter)
            .Close();

    /// <summary>One slur over a run of hammer-ons and pull-offs, from number to number over the top of all.</summary>
    public static void Slur(SvgWriter svg, double from, double to, double y) =>
        svg.Path(PenMove.To(from, y - 5.5), PenMove.Curve((from + to) / 2, y - (to - from > 60 ? 15 : 13), to, y - 5.5))
            .Stroke(Look.Ink, 1.2)
            .Close();

    /// <summary>What a palm mute goes over: its letters, and a line up to a hook over the last note.</summary>
    public static void PalmMute(SvgWriter svg, double from, double to, double y)
    {
        Letter(svg, from + 8, y + 3.5, "P.M.");
        if (to > from + 24)
        {
            Dashed(svg, from + 22, to, y);
        }

        var end = Math.Max(to, from + 22);
        svg.Line(end, y, end, y + 4).Stroke(Look.Ink, 1.1).Close();
    }

    private static double Room(PathNote note, Func<Entry, Func<PathNote, double>> side) =>
        note
            .Techniques.Select(technique => Known.TryGetValue(technique, out var entry) ? side(entry)(note) : 0)
            .DefaultIfEmpty()
            .Sum();

    private static double From(PlacedNote note) => (note.Before ?? (note.X - note.Half - 14)) + 1.5;

    private static void Between(SvgWriter svg, PlacedNote note, Technique technique) =>
        Letter(svg, (From(note) + note.X - note.Half - 1) / 2, note.Row + 4, technique.Sign);

    private static void SlideLine(SvgWriter svg, double from, double to, double y, bool rises)
    {
        var lift = rises ? 3.5 : -3.5;
        svg.Path(PenMove.To(from, y + lift), PenMove.Line(to, y - lift)).Stroke(Look.Ink, 1.4).Close();
    }

    private static void SlideIn(SvgWriter svg, PlacedNote note, bool rises) =>
        SlideLine(svg, note.X - note.Half - SlideLength, note.X - note.Half - 1.5, note.Y, rises);

    private static void SlideOut(SvgWriter svg, PlacedNote note, bool rises) =>
        SlideLine(svg, note.X + note.Half + 1.5, note.X + note.Half + SlideLength, note.Y, rises);

    private static void Wave(SvgWriter svg, PlacedNote note, double from)
    {
        var moves = new List<PenMove> { PenMove.To(from, note.Row) };
        var up = true;
        for (var x = from; x + 5 <= Math.Min(note.Next - 6, note.X + 34) || moves.Count < 3; x += 5)
        {
            moves.Add(PenMove.Curve(x + 2.5, note.Row + (up ? -5 : 5), x + 5, note.Row));
            up = !up;
        }

        svg.Path([.. moves]).Stroke(Look.Ink, 1.3).Close();
    }

    private static double TrillWidth(PathNote note) =>
        note.Has(Technique.Trill) ? 3 + (TrillSign(note).Length * TrillDigit) : 0;

    private static string TrillSign(PathNote note) => $"({note.TrillFret})";

    private static void Trill(SvgWriter svg, PlacedNote note)
    {
        Letter(svg, note.X, note.Row + 4, "tr");
        Wave(svg, note, note.X + 8);
        svg.Label(NeckLayout.Rounded(note.X + note.Half + 1.5), note.Y + 3.4)
            .Fill(Look.Ink)
            .Attribute("font-size", 9.5)
            .Attribute("style", $"stroke:{Look.Paper.Css};stroke-width:4px;paint-order:stroke")
            .Text(TrillSign(note.Note))
            .Close();
    }

    private static void Bend(SvgWriter svg, PlacedNote note)
    {
        var (x, y) = note.Tip;
        svg.Path(PenMove.To(note.X + note.Half + TrillWidth(note.Note) + 1, note.Y), PenMove.Curve(x, note.Y, x, y + 4))
            .Stroke(Look.Ink, 1.3)
            .Close();
        Head(svg, x, y, 5);
    }

    private static void PreBend(SvgWriter svg, PlacedNote note)
    {
        var (x, y) = note.Tip;
        if (note.Beside is not null)
        {
            svg.Path(PenMove.To(note.X - note.Half - 1, note.Y), PenMove.Horizontal(x), PenMove.Vertical(y + 4))
                .Stroke(Look.Ink, 1.3)
                .Close();
        }
        else
        {
            svg.Line(x, note.Y - 6.5, x, y + 4).Stroke(Look.Ink, 1.3).Close();
        }

        Head(svg, x, y, 5);
    }

    private static void Release(SvgWriter svg, PlacedNote note)
    {
        var (heldX, heldY) = note.Held;
        var x = note.Beside ?? note.X;
        var from = Math.Max(heldX, x - 13);
        if (from - heldX > 3)
        {
            Dashed(svg, heldX, from, heldY);
        }

        var end =
            note.Note.Bend > 0 ? note.Tip.Y
            : note.Beside is null ? note.Y - 6.5
            : note.Y;
        svg.Path(PenMove.To(from, heldY), PenMove.Curve(x, heldY, x, end - 4)).Stroke(Look.Ink, 1.3).Close();
        Head(svg, x, end, -5);
        if (note.Note.Bend > 0)
        {
            WriteAmount(svg, x + 10, end + 9, note.Note.Bend);
        }
    }

    /// <summary>The head of an arrow that points up, or down if its length is negative.</summary>
    private static void Head(SvgWriter svg, double x, double y, double length) =>
        svg.Path(PenMove.To(x, y), PenMove.Line(x + 3, y + length), PenMove.Horizontal(x - 3), PenMove.Back)
            .Fill(Look.Ink)
            .Close();

    private static void Dashed(SvgWriter svg, double from, double to, double y) =>
        svg.Line(from, y, to, y).Stroke(Look.Ink, 1.1).Attribute("stroke-dasharray", "3 2.5").Close();

    private static void WriteAmount(SvgWriter svg, double x, double y, int cents, string anchor = "middle") =>
        svg.Label(NeckLayout.Rounded(x), NeckLayout.Rounded(y))
            .Fill(Look.Ink)
            .Attribute("font-size", 10)
            .Attribute("text-anchor", anchor)
            .Text(Amount(cents))
            .Close();
}
