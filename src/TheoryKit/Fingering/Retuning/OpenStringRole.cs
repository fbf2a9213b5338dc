using TheoryKit.Theory.Notes;

namespace TheoryKit.Fingering.Retuning;

/// <summary>What one open string gives.</summary>
/// <param name="Number">The string.</param>
/// <param name="Pitch">What it sounds.</param>
/// <param name="Function">What it is in the chord of the open strings; null for a bass that is no tone of it.</param>
/// <param name="Degree">Its degree over the key, in the key's spelling.</param>
/// <param name="IsInKey">Whether the key's scale has it.</param>
public readonly record struct OpenStringRole(int Number, Pitch Pitch, Degree? Function, Degree Degree, bool IsInKey);
