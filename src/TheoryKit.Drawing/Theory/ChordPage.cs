using TheoryKit.Drawing.Necks;
using TheoryKit.Theory.Chords;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Drawing.Theory;

/// <summary>
/// A chord's page: its formula on the chromatic ladder, its tones and their functions, its places on a neck, its relations.
/// Equal when chord, neck and what is shown agree.
/// </summary>
/// <param name="Chord">The chord.</param>
public sealed record ChordPage(Chord Chord)
{
    /// <summary>The neck it is drawn on; null for none.</summary>
    public Neck? Neck { get; init; } = Neck.Guitar;

    /// <summary>The labels the neck shows at first.</summary>
    public Labels Labels { get; init; }

    /// <summary>The first fret shown.</summary>
    public int FirstFret { get; init; }

    /// <summary>The last fret shown; the neck's last if it has fewer.</summary>
    public int LastFret { get; init; } = 15;

    /// <summary>Whether the neck is mirrored for a left-handed player.</summary>
    public bool IsLeftHanded { get; init; }

    /// <summary>Whether the page tells what is inside the chord, around it and next to it.</summary>
    public bool ShowsRelations { get; init; } = true;
}
