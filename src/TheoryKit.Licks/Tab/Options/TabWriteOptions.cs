using TheoryKit.Paths;

namespace TheoryKit.Licks.Tab.Options;

/// <summary>How tab is laid out.</summary>
public sealed record TabWriteOptions
{
    /// <summary>The narrowest tab, in characters: 30.</summary>
    public const int MinColumns = 30;

    private readonly int columns = 100;

    /// <summary>How many characters wide it may get: lines are broken before bars that would go beyond. From 30; 100 unless told.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Less.</exception>
    public int Columns
    {
        get => columns;
        init
        {
            ArgumentOutOfRangeException.ThrowIfLessThan(value, MinColumns);
            columns = value;
        }
    }

    /// <summary>How strings and chords are named, a <see cref="TheoryKit.Theory.Notes.NoteNaming"/>; null for English, which is what is read.</summary>
    public IFormatProvider? Naming { get; init; }

    /// <summary>Whether the count or the rhythm is written below the strings.</summary>
    public bool ShowsTime { get; init; } = true;

    /// <summary>What is written below a note, as its function; null for nothing.</summary>
    public Func<PathNote, string?>? Label { get; init; }

    /// <summary>
    /// Whether all is said that does not show in the numbers: fingers, spellings that are not the usual ones, the fret of a dead note, where
    /// within its last bar the path ends.
    /// </summary>
    public bool SaysAll { get; init; } = true;
}
