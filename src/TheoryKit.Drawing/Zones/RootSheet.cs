using TheoryKit.Drawing.Necks;
using TheoryKit.Fingering.Zones;

namespace TheoryKit.Drawing.Zones;

/// <summary>In which order the twelve roots come.</summary>
public enum RootOrder
{
    /// <summary>Each a fourth up from the one before: C, F, B♭ and on.</summary>
    Fourths,

    /// <summary>Each a semitone up from the one before.</summary>
    Semitones,
}

/// <summary>
/// All twelve roots in the window of one zone, beginning with the zone's own: a small neck for each. Equal when the zone and
/// what is shown agree.
/// </summary>
/// <param name="Zone">The zone; its chord gives the formula.</param>
public sealed record RootSheet(Zone Zone)
{
    /// <summary>The order of the roots.</summary>
    public RootOrder Order { get; init; }

    /// <summary>What is written on the marks at first.</summary>
    public Labels Labels { get; init; }

    /// <summary>Whether the necks are mirrored for a left-handed player.</summary>
    public bool IsLeftHanded { get; init; }
}
