using TheoryKit.Theory.Chords;
using TheoryKit.Values;

namespace TheoryKit.Theory.Naming;

/// <summary>
/// One way to name a set of notes, with the reason. Equal when chord and terms are. The cost is the sum of the terms; the
/// rules are on <see cref="ChordNaming"/>.
/// </summary>
[EqualBy(nameof(Chord), nameof(Terms))]
public sealed partial class ChordReading : IEquatable<ChordReading>
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

    /// <summary>The chord and the cost: <c>C6: 0</c>.</summary>
    public override string ToString() => $"{Chord}: {Cost}";
}
