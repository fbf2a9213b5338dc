using TheoryKit.Drawing.Necks;
using TheoryKit.Drawing.Paths;
using TheoryKit.Drawing.Sheets;
using TheoryKit.Drawing.Tab;
using TheoryKit.Licks;
using TheoryKit.Values;

namespace TheoryKit.Drawing.Licks;

/// <summary>
/// A lick as a page of a notebook has it: what it is called and what the player noted, its tab with rhythm, chords and functions, and
/// beside it, where there is room, the neck with the way through it. Equal when the lick and what is shown agree.
/// </summary>
/// <param name="Lick">The lick.</param>
public sealed record LickDrawing(Lick Lick)
{
    /// <summary>The lick.</summary>
    public Lick Lick
    {
        get;
        init => field = Check.NotNull(value, nameof(Lick));
    } = Check.NotNull(Lick);

    private readonly double width = 190;
    private readonly int columns = 100;

    /// <summary>How wide the tab may get, in mm: lines are broken before bars that would go beyond. From <see cref="TabDrawing.MinWidth"/> to <see cref="TabDrawing.MaxWidth"/>; 190 unless told.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is not.</exception>
    public double Width
    {
        get => width;
        init => width = TabDrawing.CheckedWidth(value, nameof(Width));
    }

    /// <summary>How many characters wide the tab in plain text may get. From <see cref="TabDrawing.MinColumns"/> to <see cref="TabDrawing.MaxColumns"/>; 100 unless told.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is not.</exception>
    public int Columns
    {
        get => columns;
        init => columns = Check.Range(value, TabDrawing.MinColumns, TabDrawing.MaxColumns, nameof(Columns));
    }

    /// <summary>What is written below the notes, and on the marks of the neck, at first.</summary>
    public Labels Labels { get; init; }

    /// <summary>Whether the neck is shown.</summary>
    public bool ShowsNeck { get; init; } = true;

    /// <summary>Whether the rhythm is shown.</summary>
    public bool ShowsRhythm { get; init; } = true;

    /// <summary>Whether the marks that tell functions are shown below the notes.</summary>
    public bool ShowsFunctions { get; init; } = true;

    /// <summary>Whether the neck is mirrored for a left-handed player.</summary>
    public bool IsLeftHanded { get; init; }

    /// <summary>How notes are named; null for English.</summary>
    public IFormatProvider? Naming { get; init; }

    /// <summary>The tab.</summary>
    public TabDrawing Tab =>
        new(Lick.Path)
        {
            Width = Width,
            Columns = Columns,
            Labels = Labels,
            ShowsRhythm = ShowsRhythm,
            ShowsFunctions = ShowsFunctions,
            Naming = Naming,
        };

    /// <summary>The neck.</summary>
    public PathNeck Neck => new(Lick.Path) { Labels = Labels, IsLeftHanded = IsLeftHanded };

    /// <summary>All of it in plain text, for a terminal.</summary>
    public override string ToString() => SheetText.Write(LickSheets.Drawing(this), Naming);
}
