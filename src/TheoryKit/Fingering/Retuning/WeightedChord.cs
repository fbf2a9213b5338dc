using System.Globalization;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Progressions;
using TheoryKit.Values;

namespace TheoryKit.Fingering.Retuning;

/// <summary>A chord and how much it counts, as often as it is played or as long as it lasts. Equal when both agree.</summary>
public sealed record WeightedChord
{
    /// <summary>No chord, and no line, counts more: a billion.</summary>
    public const double MaxWeight = 1e9;

    /// <summary>A chord with its weight.</summary>
    /// <param name="chord">The chord.</param>
    /// <param name="weight">How much it counts: more than 0, at most <see cref="MaxWeight"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">The weight is not.</exception>
    public WeightedChord(Chord chord, double weight = 1)
    {
        ArgumentNullException.ThrowIfNull(chord);
        if (!(weight > 0 && weight <= MaxWeight))
        {
            throw new ArgumentOutOfRangeException(
                nameof(weight),
                weight,
                FormattableString.Invariant($"A chord's weight is more than 0 and at most {MaxWeight:N0}.")
            );
        }

        (Chord, Weight) = (chord, weight);
    }

    /// <summary>The chord.</summary>
    public Chord Chord { get; }

    /// <summary>How much it counts.</summary>
    public double Weight { get; }

    /// <summary>The chords of a tune, each once, in the order in which they first sound, weighed by how many beats they last.</summary>
    public static IReadOnlyList<WeightedChord> Of(Changes changes)
    {
        ArgumentNullException.ThrowIfNull(changes);
        return
        [
            .. changes
                .Chords.Where(static span => span.Chord is not null)
                .GroupBy(static span => span.Chord!)
                .Select(static group => new WeightedChord(group.Key, group.Sum(static span => (double)span.Length))),
        ];
    }

    /// <summary>The chords each once, in the order in which they first come, weighed by how often they come.</summary>
    public static IReadOnlyList<WeightedChord> Of(IEnumerable<Chord> chords)
    {
        return
        [
            .. Check
                .Items(chords)
                .GroupBy(static chord => chord)
                .Select(static group => new WeightedChord(group.Key, group.Count())),
        ];
    }

    /// <summary>The chord, and its weight where that is not 1.</summary>
    public override string ToString() =>
        Weight.Equals(1) ? $"{Chord}" : string.Create(CultureInfo.InvariantCulture, $"{Chord} x {Weight:R}");
}
