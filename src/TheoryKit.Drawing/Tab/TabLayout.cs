using Fractions;
using TheoryKit.Paths;
using Path = TheoryKit.Paths.Path;

namespace TheoryKit.Drawing.Tab;

/// <summary>A line of bars.</summary>
/// <param name="Bars">Its bars.</param>
/// <param name="Rows">What stands above the staff.</param>
/// <param name="Top">Where it begins, in px.</param>
/// <param name="Height">How high it is, in px.</param>
/// <param name="Width">Where its last bar ends, in px.</param>
internal sealed record TabLine(IReadOnlyList<TabBar> Bars, TabRows Rows, double Top, double Height, double Width)
{
    /// <summary>Where it begins in beats, in bars of so many.</summary>
    public Fraction From(Path path) => ((Fraction)(Bars[0].Number * path.Time.Beats)).Reduce();

    /// <summary>Where it ends in beats.</summary>
    public Fraction To(Path path) => ((Fraction)((Bars[^1].Number + 1) * path.Time.Beats)).Reduce();
}

/// <summary>The rows above the staff of a line, from the top: chords and numbers of bars, palm mutes, signs, bends. In px below its top; there is room only for what it has.</summary>
/// <param name="Staff">Where string 1 lies.</param>
/// <param name="Signs">The middle of the lowest row of signs; more stand above it.</param>
/// <param name="PalmMute">The middle of the row of palm mutes.</param>
/// <param name="Number">The baseline of the numbers of bars.</param>
internal readonly record struct TabRows(double Staff, double Signs, double PalmMute, double Number)
{
    /// <summary>From one row of signs to the next.</summary>
    public const double SignStep = 13;

    private const double SignRow = 17;
    private const double PalmMuteRow = 14;
    private const double TopSlur = 5; // a slur over string 1, below its letters

    /// <summary>The rows of a line.</summary>
    /// <param name="above">The height of the row of chords.</param>
    /// <param name="signs">How many signs stand over each other at most.</param>
    /// <param name="hasPalmMutes">Whether there are palm mutes.</param>
    /// <param name="isTopSlurred">Whether there is a slur on string 1.</param>
    /// <param name="bend">The farthest bend, in cents; 0 for none.</param>
    public static TabRows Of(double above, int signs, bool hasPalmMutes, bool isTopSlurred, int bend)
    {
        var bends =
            bend > 0 ? TabSigns.BendRise(bend) + 9
            : isTopSlurred ? TopSlur
            : 0;
        var signsHeight = signs == 0 ? 0 : SignRow + ((signs - 1) * SignStep);
        var palm = hasPalmMutes ? PalmMuteRow : 0;
        var staff = above + palm + signsHeight + bends + 8;
        return new(staff, staff - bends - 13, staff - bends - signsHeight - 11, staff - 6 - bends - signsHeight - palm);
    }
}

/// <summary>Where everything of a tab lies, in px.</summary>
internal sealed class TabLayout
{
    public const double StringGap = 14;
    public const double StemTop = 9; // below the staff
    public const double StemEnd = 33;
    public const double LabelHeight = 21;
    public const double Above = 8;

    private const double LineGap = 16;
    private const double CapoRow = 13;
    private const double ChordRow = 21;

    private readonly TabSpacing spacing;
    private readonly double labels; // of their first row, below string 1

    public TabLayout(TabDrawing drawing)
        : this(new TabParts(drawing)) { }

    private TabLayout(TabParts tab)
        : this(tab, new([tab], tab.Drawing.Width)) { }

    /// <summary>A tab that shares its spacing with others.</summary>
    public TabLayout(TabParts tab, TabSpacing spacing)
    {
        (Tab, this.spacing) = (tab, spacing);
        var (drawing, path) = (tab.Drawing, tab.Path);
        StaffHeight = (path.Neck.StringCount - 1) * StringGap;
        var hasTuplets = tab.Parts.Any(static part => part.Value is { Tuplet: > 1 });
        labels = StaffHeight + (drawing.ShowsRhythm ? StemEnd + (hasTuplets ? 14 : 0) + 10 : 16);
        var bars = Math.Max(1, path.BarCount);
        var chordRow = tab.Chords.Count > 0 || bars > 1 ? ChordRow : 0;
        var top = Above + CapoHeight;
        var lines = new List<TabLine>();
        var byLine = spacing.Lines.Select(line => line.Where(bar => bar.Number < bars).ToList());
        foreach (var here in byLine.TakeWhile(static line => line.Count > 0))
        {
            var notes = Notes(here).ToList();
            var rows = TabRows.Of(
                chordRow,
                notes.GroupBy(static note => note.Start).Select(SignsAt).DefaultIfEmpty().Max(),
                notes.Exists(static note => note.Has(Technique.PalmMute)),
                notes.Exists(static note =>
                    note.Position.String == 1 && (note.Has(Technique.HammerOn) || note.Has(Technique.PullOff))
                ),
                notes
                    .Select(note => Math.Max(note.Bend, note.Has(Technique.Release) ? tab.Before(note)!.Bend : 0))
                    .DefaultIfEmpty()
                    .Max()
            );
            var stack = notes
                .Where(static note => !note.IsDead)
                .GroupBy(static note => note.Start)
                .Select(static group => group.Count())
                .DefaultIfEmpty()
                .Max();
            var height = rows.Staff + labels - 8 + (drawing.ShowsFunctions ? (stack * LabelHeight) + 4 : 0);
            lines.Add(new(here, rows, top, height, here[^1].X + here[^1].Width));
            top += height + LineGap;
        }

        Lines = lines;
        Height = Math.Ceiling(Lines[^1].Top + Lines[^1].Height + 8);
    }

    public TabParts Tab { get; }

    public IReadOnlyList<TabLine> Lines { get; }

    public double Width => spacing.Width;

    public double Height { get; }

    /// <summary>What the words about a capo take above the first line; 0 without a capo.</summary>
    public double CapoHeight => Tab.Path.Neck.Capo > 0 ? CapoRow : 0;

    /// <summary>Where the lines of the staff begin.</summary>
    public double Left => spacing.Left;

    /// <summary>From string 1 to the last one.</summary>
    public double StaffHeight { get; }

    /// <summary>The middle of the first row of labels, below string 1.</summary>
    public double Labels => labels;

    /// <summary>The x of a moment at which something starts.</summary>
    public double X(Fraction start) => spacing.X(start);

    /// <summary>The notes that start in the bars of a line.</summary>
    public IEnumerable<PathNote> Notes(IReadOnlyList<TabBar> bars)
    {
        var time = Tab.Path.Time;
        return Tab.Path.Notes.Where(note =>
            note.Start >= bars[0].Number * time.Beats && note.Start < (bars[^1].Number + 1) * time.Beats
        );
    }

    /// <summary>How many rows of signs the notes that start together take.</summary>
    private static int SignsAt(IEnumerable<PathNote> notes)
    {
        var techniques = notes.SelectMany(static note => note.Techniques).Distinct().ToList();
        return Math.Max(techniques.Count(TabSigns.StandsAbove), techniques.Exists(TabSigns.IsInRow) ? 1 : 0);
    }
}
