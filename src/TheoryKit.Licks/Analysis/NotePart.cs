namespace TheoryKit.Licks.Analysis;

/// <summary>
/// What part a note plays in its line. Every note has exactly one; which of two that would fit it has is said at
/// <see cref="LickAnalysis"/>.
/// </summary>
public enum NotePart
{
    /// <summary>Root, third, fifth or seventh of its chord, or what stands for one: the fourth of a sus chord, the sixth of a sixth chord.</summary>
    ChordTone,

    /// <summary>
    /// A tone that colours its chord: one that the symbol names besides the chord tones, the bass after a slash, or one that the chord
    /// takes well (<see cref="TheoryKit.Theory.Chords.ToneRoles.Over"/>) and that does not merely lead on.
    /// </summary>
    ColourTone,

    /// <summary>A note that goes by a half or whole step to its target, and came by a leap or after a rest.</summary>
    Approach,

    /// <summary>A step between two different targets, coming and going in one direction.</summary>
    Passing,

    /// <summary>A step away from a note and back to it.</summary>
    Neighbour,

    /// <summary>One of two or more notes on both sides of their target, a half or whole step away, just before it.</summary>
    Enclosure,

    /// <summary>A tone of the chord that comes next, struck up to one pulse before it.</summary>
    Anticipation,

    /// <summary>A short note from which a slide leaves at once: heard as the beginning of the note it leads to.</summary>
    Grace,

    /// <summary>A note that none of the others explains.</summary>
    Outside,

    /// <summary>A note over no chord.</summary>
    NoChord,

    /// <summary>A dead note: a click with no function.</summary>
    Dead,
}

/// <summary>What holds of parts.</summary>
public static class NoteParts
{
    /// <summary>Whether it leads to another note by step: an approach, a passing or neighbour note, a side of an enclosure.</summary>
    public static bool Leads(this NotePart part) =>
        part is NotePart.Approach or NotePart.Passing or NotePart.Neighbour or NotePart.Enclosure;
}
