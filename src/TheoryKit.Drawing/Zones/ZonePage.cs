using TheoryKit.Drawing.Necks;
using TheoryKit.Fingering.Zones;

namespace TheoryKit.Drawing.Zones;

/// <summary>
/// The page of one zone: its grip, its shape with fingers, functions and names, other places for its tones. Equal when the
/// zone and what is shown agree.
/// </summary>
/// <param name="Zone">The zone.</param>
public sealed record ZonePage(Zone Zone)
{
    /// <summary>What is written on the marks at first.</summary>
    public Labels Labels { get; init; } = Labels.Fingers;

    /// <summary>Whether it is mirrored for a left-handed player.</summary>
    public bool IsLeftHanded { get; init; }

    /// <summary>Whether a table lists every tone with its other places.</summary>
    public bool ShowsTable { get; init; } = true;
}
