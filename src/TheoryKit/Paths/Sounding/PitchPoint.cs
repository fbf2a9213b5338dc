namespace TheoryKit.Paths.Sounding;

/// <summary>A point of the curve that a sounding note's pitch follows; between two points it goes straight.</summary>
/// <param name="At">Where, as a part of the time that the note sounds, 0 to 1.</param>
/// <param name="Cents">How far the pitch is from <see cref="SoundingNote.Pitch"/> there, in cents.</param>
public readonly record struct PitchPoint(double At, double Cents);
