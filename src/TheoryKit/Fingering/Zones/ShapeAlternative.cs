using TheoryKit.Fingering.Hands;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Fingering.Zones;

/// <summary>Another position for a tone of a shape.</summary>
/// <param name="Note">The tone as the shape has it.</param>
/// <param name="Position">Where the same pitch lies too.</param>
/// <param name="Finger">The finger that plays it there; null for an open string.</param>
/// <param name="Shift">How far the hand shifts for it, in mm, up the neck if positive; 0 for a stretch from its place.</param>
public readonly record struct ShapeAlternative(ShapeNote Note, Position Position, Finger? Finger, double Shift);
