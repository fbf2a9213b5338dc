using TheoryKit.Drawing.Necks;
using TheoryKit.Drawing.Rendering;
using TheoryKit.Values;
using Path = TheoryKit.Paths.Path;

namespace TheoryKit.Drawing.Tab;

/// <summary>
/// A path as tab: fret numbers on as many lines as the neck has strings, the thickest at the bottom, with bars, chords,
/// rhythm, techniques, and below the notes what each does over its chord. Equal when the path and what is shown agree.
/// </summary>
/// <remarks>
/// The rhythm is written in one row: what starts together is one event, which lasts until the next one starts or the last of
/// its notes ends. The last bar is filled up with rests. In plain text a note stands as far into its bar as its start is, exactly:
/// with c characters between the bar line's dash and the next bar line, a note k characters after that dash starts k/c of the bar in.
/// Only a bar so fine that this takes more than <see cref="Columns"/> is drawn together: its notes stand in order, as near to their places
/// as they can.
/// </remarks>
/// <param name="Path">The path.</param>
public sealed record TabDrawing(Path Path)
{
    /// <summary>The path.</summary>
    public Path Path
    {
        get;
        init => field = Check.NotNull(value, nameof(Path));
    } = Check.NotNull(Path);

    /// <summary>The narrowest tab, in mm: 60.</summary>
    public const double MinWidth = 60;

    /// <summary>The narrowest tab, in characters: 30.</summary>
    public const int MinColumns = 30;

    /// <summary>The widest tab, in mm: 10,000.</summary>
    public const double MaxWidth = 10_000;

    /// <summary>The widest tab, in characters: 10,000.</summary>
    public const int MaxColumns = 10_000;

    private readonly double width = 190;
    private readonly int columns = 100;
    private readonly string? title;

    /// <summary>What it is, in a few words.</summary>
    public string Title
    {
        get => Named("P");
        init => title = value;
    }

    /// <summary>How wide the picture may get, in mm: lines are broken before bars that would go beyond. From <see cref="MinWidth"/> to <see cref="MaxWidth"/>; 190 unless told.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is not.</exception>
    public double Width
    {
        get => width;
        init => width = CheckedWidth(value, nameof(Width));
    }

    /// <summary>How many characters wide the plain text may get, as <see cref="Width"/>. From <see cref="MinColumns"/> to <see cref="MaxColumns"/>; 100 unless told.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is not.</exception>
    public int Columns
    {
        get => columns;
        init => columns = Check.Range(value, MinColumns, MaxColumns, nameof(Columns));
    }

    /// <summary>What is written below the notes at first.</summary>
    public Labels Labels { get; init; }

    /// <summary>Whether the rhythm is shown.</summary>
    public bool ShowsRhythm { get; init; } = true;

    /// <summary>Whether the marks that tell functions are shown below the notes, with the labels on them.</summary>
    public bool ShowsFunctions { get; init; } = true;

    /// <summary>How notes are named; null for English.</summary>
    public IFormatProvider? Naming { get; init; }

    /// <summary>Whether this is the beginning of something longer: it does not end with a double bar line.</summary>
    internal bool IsBeginning { get; init; }

    /// <summary>All that the picture says, in words.</summary>
    public string Description => TabWords.Describe(this);

    /// <summary>The tab in plain text, for a terminal.</summary>
    public override string ToString() => TabText.Write(this);

    /// <summary>The picture as SVG, a file of its own or part of a page.</summary>
    /// <param name="context">The page it goes into; null for a file of its own.</param>
    public string Svg(RenderContext? context = null) => TabPicture.Write(this, context ?? new RenderContext());

    /// <inheritdoc/>
    public bool Equals(TabDrawing? other) =>
        other is not null
        && Path.Equals(other.Path)
        && Title == other.Title
        && (Width, Columns, Labels, ShowsRhythm, ShowsFunctions, IsBeginning)
            == (other.Width, other.Columns, other.Labels, other.ShowsRhythm, other.ShowsFunctions, other.IsBeginning)
        && Equals(Naming, other.Naming);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Path, Width, Columns, Labels, ShowsRhythm, ShowsFunctions);

    /// <summary>The kinds of label that some note has, and none.</summary>
    internal IEnumerable<Labels> Offered =>
        !ShowsFunctions || Path.Notes.All(static note => note.IsDead)
            ? []
            :
            [
                .. Path.Notes.Any(note => Path.FunctionOf(note) is not null)
                    ? [Labels.Functions]
                    : Array.Empty<Labels>(),
                Labels.NoteNames,
                .. Path.Notes.Any(static note => note.Finger is not null) ? [Labels.Fingers] : Array.Empty<Labels>(),
                Labels.None,
            ];

    internal static double CheckedWidth(double width, string name) => Check.Range(width, MinWidth, MaxWidth, name);

    /// <summary>The title with plain ("G") or printed ("P") signs.</summary>
    internal string Named(string format) => title ?? TabWords.Title(Path, format, Naming);

    /// <summary>The kind shown at first that the notes have.</summary>
    internal Labels Shown => Offered.Contains(Labels) ? Labels : Offered.FirstOrDefault(Labels.None);
}
