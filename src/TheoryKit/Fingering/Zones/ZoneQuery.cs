using TheoryKit.Fingering.Hands;
using TheoryKit.Theory.Chords;
using TheoryKit.Tunings.Necks;
using TheoryKit.Values;

namespace TheoryKit.Fingering.Zones;

/// <summary>The zones that are asked for. Equal when all that is asked is.</summary>
public sealed record ZoneQuery
{
    /// <summary>The chord.</summary>
    public required Chord Chord
    {
        get;
        init => field = Check.NotNull(value, nameof(Chord));
    }

    /// <summary>Where.</summary>
    public required Neck Neck
    {
        get;
        init => field = Check.NotNull(value, nameof(Neck));
    }

    /// <summary>By which hand; the average one unless told.</summary>
    public Hand Hand
    {
        get;
        init => field = Check.NotNull(value, nameof(Hand));
    } = Hand.Average;
}
