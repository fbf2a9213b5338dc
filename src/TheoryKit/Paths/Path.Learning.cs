using TheoryKit.Fingering.Learning;

namespace TheoryKit.Paths;

public sealed partial class Path
{
    /// <summary>Its notes as a line with the fingers that they have: an example to learn a hand from (<see cref="HandLearning"/>).</summary>
    public PlayedLine ToPlayedLine() =>
        new(Neck, notes.Select(static note => new PlayedNote(note.Position, note.Finger)));
}
