using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Values;

namespace TheoryKit.Theory.Relations;

/// <summary>
/// Several chords, or several formulas over one root, beside each other: which sounds each has, what all share, what one has
/// alone, and how far any two lie apart. Equal when the chords are, in order.
/// </summary>
[EqualBy(nameof(Chords))]
public sealed partial class ChordComparison : IEquatable<ChordComparison>
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
        Chord[] all = [.. Check.Items(chords)];
        return all.Length > 0
            ? new(all)
            : throw new ArgumentException("There is nothing to compare: give one chord or more.", nameof(chords));
    }

    /// <summary>A comparison of formulas over one root.</summary>
    /// <exception cref="ArgumentException">There is no formula, or one has no degree.</exception>
    /// <exception cref="OverflowException">A tone would need more accidentals than a note name has.</exception>
    public static ChordComparison Of(NoteName root, params IEnumerable<Formula> formulas)
    {
        var all = Check.Items(formulas);
        return all.Count > 0 && all.All(static formula => formula.Count > 0)
            ? Of(all.Select(formula => new Chord(root, formula)))
            : throw new ArgumentException(
                "There is nothing to compare: give one formula or more, none of them without a degree.",
                nameof(formulas)
            );
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
