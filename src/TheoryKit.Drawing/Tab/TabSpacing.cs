using Fractions;
using TheoryKit.Drawing.Necks;
using TheoryKit.Paths;
using TheoryKit.Theory.Progressions;
using Path = TheoryKit.Paths.Path;

namespace TheoryKit.Drawing.Tab;

/// <summary>A bar on its line: its number from 0, where it begins, and how wide it is, in px.</summary>
internal readonly record struct TabBar(int Number, double X, double Width);

/// <summary>
/// Where every moment lies along the lines of a tab, in px: as far apart as it lasts long and as what is written there takes. Several
/// tabs share one, so that the same moment lies at the same place in all of them.
/// </summary>
internal sealed class TabSpacing
{
    private const double Side = 12;
    private const double BarStart = 16; // before the first note
    private const double BarEnd = 6;
    private const double Narrowest = 23; // of a note
    private const double OfQuarter = 40;
    private const double Apart = 3; // between what is written at two moments
    private const double MostStretched = 1.6;
    private const double PxPerMm = 96 / 25.4;

    private readonly IReadOnlyList<TabParts> tabs;
    private readonly TimeSignature time;
    private readonly Dictionary<Fraction, double> places = []; // natural, from the beginning of the bar
    private readonly Dictionary<Fraction, double> xs = [];
    private readonly List<double> widths = [];

    /// <summary>Where the moments of some tabs lie.</summary>
    /// <param name="tabs">The tabs, all in one time.</param>
    /// <param name="width">How wide the lines may get, in mm.</param>
    public TabSpacing(IReadOnlyList<TabParts> tabs, double width)
    {
        this.tabs = tabs;
        time = tabs[0].Path.Time;
        var bars = Math.Max(1, tabs.Max(static tab => tab.Path.BarCount));
        var moments = Moments(bars);
        for (var bar = 0; bar < bars; bar++)
        {
            widths.Add(Space(moments[bar], (Fraction)(bar * time.Beats), (Fraction)((bar + 1) * time.Beats)));
        }

        Left = Side + (tabs.Max(static tab => tab.LongestName) * 7.6) + 6;
        Lines = Break((width * PxPerMm) - Left - Side);
        Width = Math.Ceiling(Lines.Max(static line => line[^1].X + line[^1].Width) + Side);
    }

    /// <summary>Where the lines of the staff begin.</summary>
    public double Left { get; }

    /// <summary>How wide all is.</summary>
    public double Width { get; }

    /// <summary>The bars of each line.</summary>
    public IReadOnlyList<IReadOnlyList<TabBar>> Lines { get; }

    /// <summary>The x of a moment at which something starts.</summary>
    public double X(Fraction start) => xs[start.Reduce()];

    /// <summary>What stands at a moment: how far to its left and right, and how long the name of the chord is.</summary>
    private sealed class Moment
    {
        public double Left { get; set; }
        public double Right { get; set; }
        public double Chord { get; set; }
    }

    private List<SortedDictionary<Fraction, Moment>> Moments(int bars)
    {
        var all = new List<SortedDictionary<Fraction, Moment>>();
        for (var bar = 0; bar < bars; bar++)
        {
            all.Add(new() { [((Fraction)(bar * time.Beats)).Reduce()] = new() });
        }

        Moment At(Fraction start)
        {
            var bar = all[(int)WrittenRhythm.Whole(start / time.Beats)];
            return bar.TryGetValue(start.Reduce(), out var moment) ? moment : bar[start.Reduce()] = new();
        }

        foreach (var tab in tabs)
        {
            foreach (var part in tab.Parts)
            {
                At(part.Start);
            }

            foreach (var (start, chord) in tab.Chords)
            {
                var moment = At(start);
                moment.Chord = Math.Max(moment.Chord, (tab.Named(chord).Length * 8.2) + 10);
            }

            foreach (var note in tab.Path.Notes)
            {
                var moment = At(note.Start);
                var half = TabNote.HalfWidth(tab.Path.Neck, note);
                moment.Left = Math.Max(moment.Left, half + TabSigns.Left(note));
                moment.Right = Math.Max(moment.Right, half + TabSigns.Right(note));
            }

            foreach (var together in tab.Path.Notes.GroupBy(static note => note.Start))
            {
                if (together.Any(note => TabSigns.GoesBeside(note, together)))
                {
                    var half = together.Max(note => TabNote.HalfWidth(tab.Path.Neck, note));
                    At(together.Key).Left = Math.Max(At(together.Key).Left, half + TabSigns.BesideRoom);
                }
            }
        }

        return all;
    }

    /// <summary>Places what starts in a bar; gives the width of the bar.</summary>
    private double Space(SortedDictionary<Fraction, Moment> moments, Fraction from, Fraction to)
    {
        var (x, last, chordEnd) = (BarStart, from, 0.0);
        Moment? before = null;
        foreach (var (start, moment) in moments)
        {
            if (before is not null)
            {
                x += Math.Max(Gap(last, start), before.Right + moment.Left + Apart);
            }
            else
            {
                x = Math.Max(x, moment.Left + Apart + 2);
            }

            if (moment.Chord > 0)
            {
                x = Math.Max(x, chordEnd);
                chordEnd = x + moment.Chord;
            }

            places[start] = x;
            (last, before) = (start, moment);
        }

        return Math.Max(x + Math.Max(Gap(last, to), before!.Right + Apart), chordEnd) + BarEnd;
    }

    private double Gap(Fraction from, Fraction to) =>
        Math.Max(Narrowest, OfQuarter * Math.Pow(((to - from) * time.BeatLength * 4).ToDouble(), 0.55));

    private List<IReadOnlyList<TabBar>> Break(double room)
    {
        var byBar = places
            .GroupBy(each => (int)WrittenRhythm.Whole(each.Key / time.Beats))
            .ToDictionary(static group => group.Key, static group => group.ToList());
        var lines = new List<IReadOnlyList<TabBar>>();
        var stretch = 1.0;
        for (var first = 0; first < widths.Count; )
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
                foreach (var (start, place) in byBar[bar])
                {
                    xs[start] = NeckLayout.Rounded(x + BarStart + ((place - BarStart) * stretch));
                }

                x += widths[bar] * stretch;
            }

            lines.Add(bars);
            first += count;
        }

        return lines;
    }
}

/// <summary>What a tab is written from: its rhythm, its chords, and which note follows which.</summary>
internal sealed class TabParts
{
    private readonly Dictionary<PathNote, PathNote> before = [];
    private readonly Dictionary<PathNote, PathNote> after = [];

    public TabParts(TabDrawing drawing)
    {
        Drawing = drawing;
        Beats = WholeBeats(Path);
        Parts = WrittenRhythm.Of(WrittenRhythm.Events(Path), Beats, Path.Time);
        Chords = [.. ChordsOf(Path)];
        var last = new PathNote?[Path.Neck.StringCount + 1];
        foreach (var note in Path.Notes)
        {
            if (last[note.Position.String] is { } previous && previous.End == note.Start)
            {
                before[note] = previous;
                after[previous] = note;
            }

            last[note.Position.String] = note;
        }
    }

    public TabDrawing Drawing { get; }

    public Path Path => Drawing.Path;

    /// <summary>The parts of the rhythm.</summary>
    public IReadOnlyList<RhythmPart> Parts { get; }

    /// <summary>The chords where they begin.</summary>
    public IReadOnlyList<(Fraction Start, TheoryKit.Theory.Chords.Chord? Chord)> Chords { get; }

    /// <summary>Up to the end of the last bar.</summary>
    public Fraction Beats { get; }

    /// <summary>How many letters the longest name of a string has.</summary>
    public int LongestName => Path.Neck.Tuning.Strings.Max(each => each.Open.Name.ToString("P", Drawing.Naming).Length);

    /// <summary>The note that sounds on the string of a note up to its start; null if there is none.</summary>
    public PathNote? Before(PathNote note) => before.GetValueOrDefault(note);

    /// <summary>The note that starts on the string of a note at its end; null if there is none.</summary>
    public PathNote? After(PathNote note) => after.GetValueOrDefault(note);

    /// <summary>A chord as it stands above the staff.</summary>
    public string Named(TheoryKit.Theory.Chords.Chord? chord) => chord?.ToString("P", Drawing.Naming) ?? "N.C.";

    /// <summary>The path's beats with the last bar filled up.</summary>
    public static Fraction WholeBeats(Path path) => (Fraction)(path.BarCount * path.Time.Beats);

    /// <summary>The chords of a path where they begin; a chord that goes on over a bar line is not said again.</summary>
    public static IEnumerable<(Fraction Start, TheoryKit.Theory.Chords.Chord? Chord)> ChordsOf(Path path)
    {
        if (path.Changes is not { } changes)
        {
            yield break;
        }

        var (isFirst, last) = (true, (TheoryKit.Theory.Chords.Chord?)null);
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
}
