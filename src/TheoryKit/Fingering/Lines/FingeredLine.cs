using System.Collections;
using System.Collections.Immutable;
using TheoryKit.Fingering.Hands;
using TheoryKit.Values;

namespace TheoryKit.Fingering.Lines;

/// <summary>A line of notes with position, finger and place of the hand, and what it costs. Equal when the notes are.</summary>
[EqualBy(nameof(notes))]
public sealed partial class FingeredLine : IReadOnlyList<FingeredNote>, IEquatable<FingeredLine>
{
    private readonly ImmutableArray<FingeredNote> notes;

    internal FingeredLine(ImmutableArray<FingeredNote> notes, double effort)
    {
        this.notes = notes;
        Effort = effort;
    }

    /// <summary>The sum of effort; see <see cref="EffortWeights"/>.</summary>
    public double Effort { get; }

    /// <inheritdoc/>
    public int Count => notes.Length;

    /// <inheritdoc/>
    public FingeredNote this[int index] => notes[Check.Index(index, Count)];

    /// <summary>The indexes of the notes before which the hand shifts.</summary>
    public IEnumerable<int> Shifts =>
        Enumerable.Range(1, Math.Max(0, notes.Length - 1)).Where(index => notes[index].Place != notes[index - 1].Place);

    /// <inheritdoc/>
    public IEnumerator<FingeredNote> GetEnumerator() => ((IEnumerable<FingeredNote>)notes).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}
