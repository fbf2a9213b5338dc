using TheoryKit.Drawing.Necks;
using TheoryKit.Fingering.Retuning;
using TheoryKit.Theory.Chords;

namespace TheoryKit.Drawing.Tunings;

/// <summary>
/// A page that compares tunings: least effort chord by chord, what each tuning is and holds, its neck with the tones of one
/// chord, its easiest grips, and every number. Equal when the comparison and what is shown agree.
/// </summary>
/// <param name="Comparison">The comparison.</param>
public sealed record ComparisonOfTunings(TuningComparison Comparison)
{
    /// <summary>The chord whose tones the necks show; null for the first of the comparison.</summary>
    public Chord? Chord { get; init; }

    /// <summary>The labels the necks show at first.</summary>
    public Labels Labels { get; init; }

    /// <summary>The first fret shown.</summary>
    public int FirstFret { get; init; }

    /// <summary>The last fret shown; the neck's last if it has fewer.</summary>
    public int LastFret { get; init; } = 5;

    /// <summary>Whether the necks and boxes are mirrored for a left-handed player.</summary>
    public bool IsLeftHanded { get; init; }

    /// <summary>Whether the easiest grip of every chord in every tuning is drawn.</summary>
    public bool ShowsGrips { get; init; } = true;

    /// <summary>Whether a table at the end has every number of every chord in every tuning.</summary>
    public bool ShowsNumbers { get; init; } = true;
}
