using TheoryKit.Fingering.Hands;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Fingering.Lines;

/// <summary>One note of a fingered line.</summary>
/// <param name="Position">Where it is played.</param>
/// <param name="Finger">The finger that holds it; null for an open string.</param>
/// <param name="Place">The fret at which the index finger is at home while it sounds: the place of the hand.</param>
public readonly record struct FingeredNote(Position Position, Finger? Finger, int Place);
