using TheoryKit.Theory.Notes;

namespace TheoryKit.Tunings.Necks;

/// <summary>A tone where it lies on a neck.</summary>
/// <param name="Position">String and fret.</param>
/// <param name="Pitch">What sounds there, spelled as the tone of its chord.</param>
/// <param name="Function">The tone's degree over the root.</param>
public readonly record struct Place(Position Position, Pitch Pitch, Degree Function);
