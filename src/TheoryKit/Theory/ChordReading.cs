namespace TheoryKit.Theory;

/// <summary>One thing that speaks for or against a reading: what it is, in words, and what it costs (0 if nothing).</summary>
/// <param name="Words">What it is: <c>root in the bass</c>, <c>flat nine</c>.</param>
/// <param name="Cost">What it adds to the cost of the reading; never negative.</param>
public readonly record struct ReadingTerm(string Words, int Cost);

/// <summary>
/// One way to name a set of notes, with the reason. Equal when chord and terms are. The cost is the sum of the terms; the
/// rules are on <see cref="ChordNaming"/>.
/// </summary>
public sealed class ChordReading : IEquatable<ChordReading>
{
    internal ChordReading(Chord chord, IReadOnlyList<ReadingTerm> terms)
    {
        Chord = chord;
        Terms = terms;
    }

    /// <summary>The chord it reads the notes as.</summary>
    public Chord Chord { get; }

    /// <summary>What the cost is made of, and what is good about the reading at no cost.</summary>
    public IReadOnlyList<ReadingTerm> Terms { get; }

    /// <summary>How far the reading is from a plain chord with its root in the bass; 0 is that.</summary>
    public int Cost => Terms.Sum(term => term.Cost);

    /// <summary>The terms in words: <c>root in the bass, all four tones, nothing missing</c>.</summary>
    public string Reason => string.Join(", ", Terms.Select(term => term.Words));

    /// <inheritdoc/>
    public bool Equals(ChordReading? other) =>
        other is not null && Chord == other.Chord && Terms.SequenceEqual(other.Terms);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as ChordReading);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Chord, Cost);

    /// <summary>The chord and the reason: <c>C6: root in the bass, all four tones, nothing missing</c>.</summary>
    public override string ToString() => $"{Chord}: {Reason}";
}
