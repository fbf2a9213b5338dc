using System.Collections.Immutable;
using TheoryKit.Fingering.Hands;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Necks;
using TheoryKit.Values;

namespace TheoryKit.Fingering.Zones;

/// <summary>One tone of a shape: where it lies and the finger that plays it, null for an open string.</summary>
public readonly record struct ShapeNote(Place Place, Finger? Finger);

/// <summary>
/// What a formula makes of a zone: one position for every tone in it, each pitch once, from the lowest to the highest.
/// Equal when the window and the notes are.
/// </summary>
[EqualBy(nameof(Root), nameof(Formula), nameof(Window), nameof(notes))]
public sealed partial class Shape : IEquatable<Shape>
{
    private readonly ImmutableArray<ShapeNote> notes;

    internal Shape(
        NoteName root,
        Formula formula,
        Window window,
        ImmutableArray<ShapeNote> notes,
        IReadOnlyList<Pitch> missing,
        double effort
    )
    {
        Root = root;
        Formula = formula;
        Window = window;
        this.notes = notes;
        Missing = missing;
        Effort = effort;
    }

    /// <summary>The root.</summary>
    public NoteName Root { get; }

    /// <summary>The formula.</summary>
    public Formula Formula { get; }

    /// <summary>The frets it lies in.</summary>
    public Window Window { get; }

    /// <summary>The tones from the lowest pitch up.</summary>
    public IReadOnlyList<ShapeNote> Notes => notes;

    /// <summary>The tones' places from the lowest pitch up.</summary>
    public IReadOnlyList<Place> Places => [.. notes.Select(static note => note.Place)];

    /// <summary>The tones between its lowest and highest pitch that its window does not have.</summary>
    public IReadOnlyList<Pitch> Missing { get; }

    /// <summary>Whether no tone between its lowest and highest pitch is missing.</summary>
    public bool IsComplete => Missing.Count == 0;

    /// <summary>What playing it once upwards costs the hand, the hand staying in its place; see <see cref="EffortWeights"/>.</summary>
    public double Effort { get; }

    /// <summary>The effort of one note on the average, by which shapes of different sizes compare.</summary>
    public double EffortPerNote => notes.Length == 0 ? 0 : Effort / notes.Length;

    /// <summary>The positions and functions in text.</summary>
    public override string ToString() =>
        string.Join(' ', notes.Select(static note => $"{note.Place.Position}={note.Place.Function}"));
}
