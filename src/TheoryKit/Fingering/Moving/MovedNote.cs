using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Fingering.Moving;

/// <summary>One note of a line moved to another tuning.</summary>
/// <param name="Pitch">What sounds, before and after.</param>
/// <param name="Before">Where it is played in the old tuning.</param>
/// <param name="Stays">Whether the same string and fret sound it in the new one.</param>
/// <param name="Easiest">Where the easiest version plays it; null if there is none.</param>
/// <param name="Kept">Where the version plays it that keeps what can stay; null if there is none.</param>
public readonly record struct MovedNote(Pitch Pitch, Position Before, bool Stays, Position? Easiest, Position? Kept);
