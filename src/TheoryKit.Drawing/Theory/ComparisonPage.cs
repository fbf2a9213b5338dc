using TheoryKit.Drawing.Necks;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Relations;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Drawing.Theory;

/// <summary>
/// Several chords side by side: on one ladder, in one table, each on the same window of a neck, and two by two. Equal when
/// comparison, neck and what is shown agree.
/// </summary>
/// <param name="Comparison">The chords compared.</param>
public sealed record ComparisonPage(ChordComparison Comparison)
{
    /// <summary>The neck they are drawn on; null for none.</summary>
    public Neck? Neck { get; init; } = Neck.Guitar;

    /// <summary>The labels the necks show at first.</summary>
    public Labels Labels { get; init; }

    /// <summary>The first fret shown.</summary>
    public int FirstFret { get; init; }

    /// <summary>The last fret shown; the neck's last if it has fewer.</summary>
    public int LastFret { get; init; } = 5;

    /// <summary>Whether the necks are mirrored for a left-handed player.</summary>
    public bool IsLeftHanded { get; init; }

    /// <summary>A page of chords.</summary>
    /// <exception cref="ArgumentException">There is no chord.</exception>
    public static ComparisonPage Of(params IEnumerable<Chord> chords) => new(ChordComparison.Of(chords));

    /// <summary>A page of formulas over one root.</summary>
    /// <exception cref="ArgumentException">There is no formula, or one has no degree.</exception>
    public static ComparisonPage Of(NoteName root, params IEnumerable<Formula> formulas) =>
        new(ChordComparison.Of(root, formulas));
}
