using TheoryKit.Theory;

namespace TheoryKit.Fingering;

/// <summary>One chord of changes moved to another tuning: its grip before and after. Equal when all of it is.</summary>
/// <param name="Chord">The chord.</param>
/// <param name="Before">Its grip in the old tuning; null if the changes have none there.</param>
/// <param name="Same">The same frets as a grip of the same chord in the new tuning; null if they are none there: the grip can't stay.</param>
/// <param name="Easiest">Its grip in the easiest version; null if the changes have none in the new tuning.</param>
/// <param name="Kept">Its grip in the version that keeps what can stay; null likewise.</param>
/// <param name="Reason">Why the grip can't stay; empty where it can, or where there is none.</param>
public sealed record MovedGrip(
    Chord Chord,
    ChordGrip? Before,
    ChordGrip? Same,
    ChordGrip? Easiest,
    ChordGrip? Kept,
    string Reason
)
{
    private readonly Sequence<MovedPosition> positions = new([]);

    /// <summary>Whether the grip can stay: the same frets sound a grip of the same chord under the same limits.</summary>
    public bool CanStay => Same is not null;

    /// <summary>The positions of the old grip, string 1 first, and what each gives in the new tuning.</summary>
    public IReadOnlyList<MovedPosition> Positions
    {
        get => positions;
        init => positions = value.ToSequence();
    }
}
