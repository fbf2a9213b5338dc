using Fractions;
using TheoryKit.Paths;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Progressions;
using TheoryKit.Values;

namespace TheoryKit.Licks.Analysis;

/// <summary>What a note does: over its chord, in its line and in its bar. Equal when all of that agrees.</summary>
public sealed record AnalysedNote
{
    /// <summary>Its place among the notes of the path, from 0.</summary>
    public required int Index { get; init; }

    /// <summary>The note.</summary>
    public required PathNote Note
    {
        get;
        init => field = Check.NotNull(value, nameof(Note));
    }

    /// <summary>The pitch at which it is read: <see cref="Path.SoundingPitch"/>, and for a <see cref="NotePart.Grace"/> that of the note it slides to.</summary>
    public required Pitch Sounding { get; init; }

    /// <summary>The chord that it starts with; null for none.</summary>
    public Chord? Chord { get; init; }

    /// <summary>What it does over that chord; null over no chord and for a dead note.</summary>
    public Degree? Function { get; init; }

    /// <summary>The role of that function, see <see cref="ToneRoles.Over"/>; other where there is none.</summary>
    public ToneRole Role { get; init; }

    /// <summary>The part it plays.</summary>
    public NotePart Part { get; init; }

    /// <summary>
    /// The note that it leads to, as <see cref="Index"/>: for parts that lead, for a <see cref="NotePart.Grace"/>, for an anticipation that is struck
    /// again with its chord, and for a chord tone that is a side of an enclosure over the next chord; else null.
    /// </summary>
    public int? Target { get; init; }

    /// <summary>Semitones up (positive) or down to the target, as both sound; 0 where there is none.</summary>
    public int Step { get; init; }

    /// <summary>Whether it leads and is foreign: to the key, raised sixth and seventh of a minor key granted, where the changes have one, else to its chord.</summary>
    public bool IsChromatic { get; init; }

    /// <summary>The chord that it anticipates; null for none.</summary>
    public Chord? Anticipates { get; init; }

    /// <summary>What it does over the chord that it anticipates; null for none.</summary>
    public Degree? AnticipatedFunction { get; init; }

    /// <summary>How many beats before that chord it is struck; null for none.</summary>
    public Fraction? Ahead { get; init; }

    /// <summary>Its bar, from 0.</summary>
    public int Bar { get; init; }

    /// <summary>Where in its bar it starts, in beats from the bar's beginning.</summary>
    public Fraction Beat => (Note.Start - BarStart).Reduce();

    /// <summary>When it is heard to begin, in beats from the beginning of the path: with the note that it is slid into from, where there is one.</summary>
    public Fraction Onset => SlidFrom ?? Note.Start;

    /// <summary>When the note starts that this one is slid into from; null for none.</summary>
    internal Fraction? SlidFrom { get; init; }

    /// <summary>When its bar begins, in beats from the beginning of the path.</summary>
    internal int BarStart { get; init; }

    /// <summary>Whether it starts on a strong beat, see <see cref="TimeSignature.StrongBeats"/>, or is slid into from a note that does.</summary>
    public bool IsStrong { get; init; }

    /// <summary>Whether it counts as a note of the line: neither dead nor slid from.</summary>
    public bool Counts => Part is not (NotePart.Dead or NotePart.Grace);

    /// <summary>Pitch, function, chord and part: <c>D#4 #9 C13 Approach</c>; of a dead note no more than that it is one.</summary>
    public override string ToString() =>
        Part == NotePart.Dead ? $"{Part}"
        : Function is { } function ? $"{Sounding} {function} {Chord} {Part}"
        : $"{Sounding} {Part}";
}
