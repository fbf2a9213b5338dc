using Fractions;
using Path = TheoryKit.Paths.Path;

namespace TheoryKit.Drawing;

/// <summary>A bar on its line: its number from 0, where it begins, and how wide it is, in px.</summary>
internal readonly record struct TabBar(int Number, double X, double Width);

/// <summary>A line of bars.</summary>
/// <param name="Bars">Its bars.</param>
/// <param name="Top">Where it begins, in px.</param>
/// <param name="Height">How high it is, in px.</param>
/// <param name="Width">Where its last bar ends, in px.</param>
internal sealed record TabLine(IReadOnlyList<TabBar> Bars, double Top, double Height, double Width);

/// <summary>Where everything of a tab lies, in px.</summary>
internal sealed class TabLayout
{
    public const double StringGap = 14;
    public const double StemTop = 9; // below the staff
    public const double StemEnd = 33;
    public const double LabelHeight = 21;

    private const double Side = 12;
    public const double Above = 8;
    private const double LineGap = 16;
    private const double CapoRow = 13;
    private const double BarStart = 16; // before the first note
    private const double BarEnd = 6;
    private const double ChordRow = 21;
    private const double SignRow = 17;
    private const double Narrowest = 23; // of a note
    private const double OfQuarter = 40;
    private const double MostStretched = 1.6;
    private const double PxPerMm = 96 / 25.4;

    private readonly Path path;
    private readonly Dictionary<Fraction, double> places = []; // natural, from the beginning of the bar
    private readonly Dictionary<Fraction, double> xs = [];
    private readonly List<double> widths = [];

    public TabLayout(TabDrawing drawing)
    {
        path = drawing.Path;
        Beats = WholeBeats(path);
        Parts = WrittenRhythm.Of(WrittenRhythm.Events(path), Beats, path.Time);
        Chords = [.. ChordsOf(path)];
        var bars = Math.Max(1, path.BarCount);
        for (var bar = 0; bar < bars; bar++)
        {
            widths.Add(Space(drawing, bar));
        }

        var names = path.Neck.Tuning.Strings.Max(each => each.Open.Name.ToString("P", drawing.Naming).Length);
        Left = Side + (names * 7.6) + 6;
        var room = (drawing.Width * PxPerMm) - Left - Side;
        HasSigns = path.Notes.Any(static note =>
            note.Techniques.Any(static each => each != Paths.Technique.Dead && each != Paths.Technique.Ghost)
        );
        HasTuplets = Parts.Any(static part => part.Value is { Tuplet: > 1 });
        StaffTop = (Chords.Count > 0 || bars > 1 ? ChordRow : 0) + (HasSigns ? SignRow : 0) + 8;
        var stackFrom = StaffBottom + 16;
        if (drawing.ShowsRhythm)
        {
            stackFrom = StaffBottom + StemEnd + (HasTuplets ? 14 : 0) + 10;
        }

        LabelTop = stackFrom;
        Lines = Break(drawing, room);
        Width = Math.Ceiling(Lines.Max(static line => line.Width) + Side);
        Height = Math.Ceiling(Lines[^1].Top + Lines[^1].Height + 8);
    }

    /// <summary>The parts of the rhythm.</summary>
    public IReadOnlyList<RhythmPart> Parts { get; }

    /// <summary>The chords where they begin.</summary>
    public IReadOnlyList<(Fraction Start, Theory.Chord? Chord)> Chords { get; }

    /// <summary>Up to the end of the last bar.</summary>
    public Fraction Beats { get; }

    public IReadOnlyList<TabLine> Lines { get; }

    public double Width { get; }

    public double Height { get; }

    /// <summary>Where the lines of the staff begin.</summary>
    public double Left { get; }

    public bool HasSigns { get; }

    public bool HasTuplets { get; }

    /// <summary>Where string 1 lies, below the top of its line.</summary>
    public double StaffTop { get; }

    /// <summary>Where the numbers of bars stand, above the row of signs, below the top of its line.</summary>
    public double NumberY => StaffTop - 6 - (HasSigns ? SignRow : 0);

    /// <summary>Where the last string lies, below the top of its line.</summary>
    public double StaffBottom => StaffTop + ((path.Neck.StringCount - 1) * StringGap);

    /// <summary>The middle of the first row of labels, below the top of its line.</summary>
    public double LabelTop { get; }

    /// <summary>The x of a moment at which something starts.</summary>
    public double X(Fraction start) => xs[start.Reduce()];

    /// <summary>Where a string lies, below the top of its line.</summary>
    public double StringY(int number) => StaffTop + ((number - 1) * StringGap);

    /// <summary>The path's beats with the last bar filled up.</summary>
    public static Fraction WholeBeats(Path path) => (Fraction)(path.BarCount * path.Time.Beats);

    /// <summary>The chords of a path where they begin; a chord that goes on over a bar line is not said again.</summary>
    public static IEnumerable<(Fraction Start, Theory.Chord? Chord)> ChordsOf(Path path)
    {
        if (path.Changes is not { } changes)
        {
            yield break;
        }

        var (isFirst, last) = (true, (Theory.Chord?)null);
        for (var round = Fraction.Zero; round < WholeBeats(path); round += changes.Beats)
        {
            foreach (var span in changes.Chords)
            {
                var start = (round + span.Start).Reduce();
                if (start < WholeBeats(path) && (isFirst || span.Chord != last))
                {
                    yield return (start, span.Chord);
                    (isFirst, last) = (false, span.Chord);
                }
            }
        }
    }

    /// <summary>Places what starts in a bar, as far apart as it lasts long; gives the width of the bar.</summary>
    private double Space(TabDrawing drawing, int bar)
    {
        var (from, to) = ((Fraction)(bar * path.Time.Beats), (Fraction)((bar + 1) * path.Time.Beats));
        var chords = Chords.Where(each => each.Start >= from && each.Start < to).ToList();
        var starts = Parts
            .Select(static part => part.Start)
            .Concat(chords.Select(static chord => chord.Start))
            .Where(start => start >= from && start < to)
            .Append(from)
            .Distinct()
            .Order()
            .ToList();
        var x = BarStart;
        (double X, double Width)? chordBefore = null;
        for (var index = 0; index < starts.Count; index++)
        {
            var start = starts[index];
            if (chords.Find(chord => chord.Start == start) is { } chord && chords.Exists(each => each.Start == start))
            {
                x = Math.Max(x, chordBefore is { } before ? before.X + before.Width : x);
                chordBefore = (x, ChordWidth(drawing, chord.Chord));
            }

            places[start] = x;
            var next = index + 1 < starts.Count ? starts[index + 1] : to;
            var quarters = ((next - start) * path.Time.BeatLength * 4).ToDouble();
            x += Math.Max(Narrowest, OfQuarter * Math.Pow(quarters, 0.55));
        }

        return Math.Max(x, chordBefore is { } last ? last.X + last.Width : 0) + BarEnd;
    }

    private List<TabLine> Break(TabDrawing drawing, double room)
    {
        var lines = new List<TabLine>();
        var (first, top) = (0, Above + (path.Neck.Capo > 0 ? CapoRow : 0));
        var stretch = 1.0;
        while (first < widths.Count)
        {
            var (count, natural) = (1, widths[first]);
            while (first + count < widths.Count && natural + widths[first + count] <= room)
            {
                natural += widths[first + count];
                count++;
            }

            // All lines but the last are stretched to one width.
            var isLast = first + count == widths.Count;
            stretch = isLast
                ? Math.Clamp(room / natural, 1, first == 0 ? 1 : stretch)
                : Math.Clamp(room / natural, 1, MostStretched);
            var bars = new List<TabBar>();
            var x = Left;
            for (var bar = first; bar < first + count; bar++)
            {
                bars.Add(new(bar, x, widths[bar] * stretch));
                foreach (var (start, place) in places.Where(each => IsIn(each.Key, bar)))
                {
                    xs[start] = NeckLayout.Rounded(x + BarStart + ((place - BarStart) * stretch));
                }

                x += widths[bar] * stretch;
            }

            var height = LabelTop - 8 + (drawing.ShowsFunctions ? (Stack(first, count) * LabelHeight) + 4 : 0);
            lines.Add(new(bars, top, height, x));
            top += height + LineGap;
            first += count;
        }

        return lines;
    }

    /// <summary>How many notes start at once at most.</summary>
    private int Stack(int firstBar, int bars) =>
        path
            .Notes.Where(note =>
                note.Start >= firstBar * path.Time.Beats && note.Start < (firstBar + bars) * path.Time.Beats
            )
            .GroupBy(static note => note.Start)
            .Select(static group => group.Count())
            .DefaultIfEmpty()
            .Max();

    private bool IsIn(Fraction start, int bar) => start >= bar * path.Time.Beats && start < (bar + 1) * path.Time.Beats;

    private static double ChordWidth(TabDrawing drawing, Theory.Chord? chord) =>
        ((chord?.ToString("P", drawing.Naming) ?? "N.C.").Length * 8.2) + 10;
}
