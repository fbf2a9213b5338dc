namespace TheoryKit.Theory;

/// <summary>One sound among the chords compared: which of them have it, and as what.</summary>
public sealed record ComparedTone
{
    internal ComparedTone(int pitchClass, int semitones, IEnumerable<ChordTone?> tones)
    {
        PitchClass = pitchClass;
        Semitones = semitones;
        Tones = tones.ToSequence();
        var holders = Tones.Select(static (tone, index) => tone is null ? -1 : index).Where(static index => index >= 0);
        Holders = holders.ToSequence();
    }

    /// <summary>The pitch class, 0 (C) to 11 (B).</summary>
    public int PitchClass { get; }

    /// <summary>Semitones above the first chord's root, 0 to 11.</summary>
    public int Semitones { get; }

    /// <summary>For each chord the tone as it has it, or null if it has it not.</summary>
    public IReadOnlyList<ChordTone?> Tones { get; }

    /// <summary>The places (from 0) of the chords that have it, ascending; at least one.</summary>
    public IReadOnlyList<int> Holders { get; }

    /// <summary>Whether every chord has it.</summary>
    public bool IsShared => Holders.Count == Tones.Count;

    /// <summary>The place of the only chord that has it; null if several have.</summary>
    public int? OnlyIn => Holders.Count == 1 && Tones.Count > 1 ? Holders[0] : null;

    /// <summary>Whether the chords that have it spell it differently.</summary>
    public bool IsRespelled => Holders.Select(index => Tones[index]!.Value.Name).Distinct().Skip(1).Any();

    /// <summary>Whether it has a different function in some of the chords.</summary>
    public bool ChangesFunction => Holders.Select(index => Tones[index]!.Value.Function).Distinct().Skip(1).Any();
}

/// <summary>
/// Several chords, or several formulas over one root, beside each other: which sounds each has, what all share, what one has
/// alone, and how far any two lie apart. Equal when the chords are, in order.
/// </summary>
public sealed class ChordComparison : IEquatable<ChordComparison>
{
    private ChordComparison(IEnumerable<Chord> chords)
    {
        Chords = chords.ToSequence();
        var root = Chords[0].Root.PitchClass;
        var tones = Chords.Select(ChordTone.Of).ToList();
        Tones = (
            from semitones in Enumerable.Range(0, Diatonic.SemitonesPerOctave)
            let pitchClass = (root + semitones) % Diatonic.SemitonesPerOctave
            where Chords.Any(chord => chord.PitchClasses.Contains(pitchClass))
            select new ComparedTone(pitchClass, semitones, tones.Select(each => Find(each, pitchClass)))
        ).ToSequence();
        Pairs = (
            from first in Enumerable.Range(0, Chords.Count)
            from second in Enumerable.Range(first + 1, Chords.Count - first - 1)
            select ChordPair.Of(Chords[first], Chords[second])
        ).ToSequence();
    }

    /// <summary>The chords compared, one or more, in the order given.</summary>
    public IReadOnlyList<Chord> Chords { get; }

    /// <summary>The root that all of them stand on, spelled alike; null if they have several.</summary>
    public NoteName? CommonRoot => Chords.All(chord => chord.Root == Chords[0].Root) ? Chords[0].Root : null;

    /// <summary>Every sound that some chord has, going up from the first chord's root.</summary>
    public IReadOnlyList<ComparedTone> Tones { get; }

    /// <summary>The sounds that every chord has.</summary>
    public IReadOnlyList<ComparedTone> Shared => Tones.Where(static tone => tone.IsShared).ToSequence();

    /// <summary>Every two of the chords, each pair once, in order.</summary>
    public IReadOnlyList<ChordPair> Pairs { get; }

    /// <summary>A comparison of chords.</summary>
    /// <exception cref="ArgumentException">There is no chord.</exception>
    /// <exception cref="OverflowException">A tone would need more accidentals than a note name has.</exception>
    public static ChordComparison Of(params IEnumerable<Chord> chords)
    {
        ArgumentNullException.ThrowIfNull(chords);
        Chord[] all = [.. chords];
        return all.Length > 0
            ? new(all)
            : throw new ArgumentException("There is nothing to compare: give one chord or more.", nameof(chords));
    }

    /// <summary>A comparison of formulas over one root.</summary>
    /// <exception cref="ArgumentException">There is no formula, or one has no degree.</exception>
    /// <exception cref="OverflowException">A tone would need more accidentals than a note name has.</exception>
    public static ChordComparison Of(NoteName root, params IEnumerable<Formula> formulas)
    {
        ArgumentNullException.ThrowIfNull(formulas);
        return Of(formulas.Select(formula => new Chord(root, formula)));
    }

    /// <summary>The sounds that one chord has alone.</summary>
    /// <param name="index">The chord's place, from 0.</param>
    public IReadOnlyList<ComparedTone> OnlyIn(int index)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(index);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(index, Chords.Count);
        return Tones.Where(tone => tone.OnlyIn == index).ToSequence();
    }

    /// <summary>The pair of two chords by their places, from 0, in any order.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is no such chord, or both places are the same.</exception>
    public ChordPair Pair(int first, int second)
    {
        var (low, high) = (Math.Min(first, second), Math.Max(first, second));
        ArgumentOutOfRangeException.ThrowIfNegative(low, nameof(first));
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(high, Chords.Count, nameof(second));
        ArgumentOutOfRangeException.ThrowIfEqual(second, first);
        return Pairs[(low * Chords.Count) - (low * (low + 1) / 2) + high - low - 1];
    }

    /// <inheritdoc/>
    public bool Equals(ChordComparison? other) => other is not null && Chords.Equals(other.Chords);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as ChordComparison);

    /// <inheritdoc/>
    public override int GetHashCode() => Chords.GetHashCode();

    /// <summary>The chords, separated by commas.</summary>
    public override string ToString() => string.Join(", ", Chords);

    private static ChordTone? Find(IReadOnlyList<ChordTone> tones, int pitchClass)
    {
        foreach (var tone in tones)
        {
            if (tone.PitchClass == pitchClass)
            {
                return tone;
            }
        }

        return null;
    }
}
