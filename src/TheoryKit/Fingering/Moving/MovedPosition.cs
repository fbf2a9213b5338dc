using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Fingering.Moving;

/// <summary>A position of a grip, and what it gives in another tuning.</summary>
/// <param name="Position">String and fret.</param>
/// <param name="Before">What sounds there in the old tuning.</param>
/// <param name="After">What sounds there in the new one; a tone of the chord in the chord's spelling.</param>
/// <param name="Function">What the new tone is in the chord; null if it is no tone of it, and no bass of it either: the position must move.</param>
public readonly record struct MovedPosition(Position Position, Pitch Before, Pitch After, Degree? Function)
{
    /// <summary>Whether the same pitch sounds.</summary>
    public bool Stays => Before.MidiNumber == After.MidiNumber;

    /// <summary>Whether what sounds is no tone of the chord.</summary>
    public bool MustMove => Function is null;
}
