using System.Collections;
using System.Collections.Immutable;

namespace TheoryKit.Fingering;

/// <summary>A line of notes with position, finger and place of the hand, and what it costs. Equal when the notes are.</summary>
public sealed class FingeredLine : IReadOnlyList<FingeredNote>, IEquatable<FingeredLine>
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
    public FingeredNote this[int index] => notes[index];

    /// <summary>The indexes of the notes before which the hand shifts.</summary>
    public IEnumerable<int> Shifts =>
        Enumerable.Range(1, Math.Max(0, notes.Length - 1)).Where(index => notes[index].Place != notes[index - 1].Place);

    /// <inheritdoc/>
    public IEnumerator<FingeredNote> GetEnumerator() => ((IEnumerable<FingeredNote>)notes).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    /// <inheritdoc/>
    public bool Equals(FingeredLine? other) => other is not null && notes.AsSpan().SequenceEqual(other.notes.AsSpan());

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as FingeredLine);

    /// <inheritdoc/>
    public override int GetHashCode() => notes.Length == 0 ? 0 : HashCode.Combine(notes.Length, notes[0], notes[^1]);
}
