using Fractions;
using TheoryKit.Fingering.Hands;
using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Necks;
using TheoryKit.Values;

namespace TheoryKit.Paths;

/// <summary>
/// A note of a path: what sounds, where it is played, when and how. Equal when all of that agrees.
/// </summary>
public sealed record PathNote
{
    private readonly Sequence<Technique> techniques = new([]);
    private readonly Fraction start;
    private readonly Fraction length = Fraction.One;
    private readonly int bend;

    /// <summary>The farthest bend in cents: 600.</summary>
    public const int MaxBend = 600;

    /// <summary>What a bend is a multiple of, in cents: a quarter tone, 50.</summary>
    public const int BendStep = 50;

    /// <summary>The pitch that the position sounds, as it is spelled.</summary>
    public required Pitch Pitch { get; init; }

    /// <summary>String and fret.</summary>
    public required Position Position { get; init; }

    /// <summary>When it starts, in beats from the beginning of the path; not negative.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative.</exception>
    public Fraction Start
    {
        get => start;
        init =>
            start =
                value >= Fraction.Zero
                    ? value.Reduce()
                    : throw new ArgumentOutOfRangeException(
                        nameof(Start),
                        $"{value}",
                        "A note starts at beat 0 or later."
                    );
    }

    /// <summary>How long it lasts, in beats; more than 0.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Zero or negative.</exception>
    public Fraction Length
    {
        get => length;
        init =>
            length =
                value > Fraction.Zero
                    ? value.Reduce()
                    : throw new ArgumentOutOfRangeException(
                        nameof(Length),
                        $"{value}",
                        "A note lasts longer than 0 beats."
                    );
    }

    /// <summary>Whether it is a dead note: a click of the string, with no pitch and no function.</summary>
    public bool IsDead => Has(Technique.Dead);

    /// <summary>When it ends, in beats.</summary>
    public Fraction End => (Start + Length).Reduce();

    /// <summary>The finger that holds it; null for an open string, or where no finger is chosen.</summary>
    public Finger? Finger { get; init; }

    /// <summary>The fret at which the index finger is at home while it sounds; null where no place is chosen.</summary>
    public int? Place { get; init; }

    /// <summary>How it is played beyond plucking it.</summary>
    public IReadOnlyList<Technique> Techniques
    {
        get => techniques;
        init => techniques = Check.Items(value, nameof(Techniques));
    }

    /// <summary>
    /// How far the string is bent, in cents above the fret's pitch, a multiple of <see cref="BendStep"/> up to <see cref="MaxBend"/>: to
    /// where a bend leads, where a pre-bend is, what a release leaves; 0 for a note that is not bent or wholly released.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Not such a number.</exception>
    public int Bend
    {
        get => bend;
        init =>
            bend =
                value is >= 0 and <= MaxBend && value % BendStep == 0
                    ? value
                    : throw new ArgumentOutOfRangeException(
                        nameof(Bend),
                        value,
                        $"A bend is a multiple of {BendStep} cents up to {MaxBend}."
                    );
    }

    /// <summary>The fret that a trill takes turns with, on the same string; null for a note that is not trilled.</summary>
    public int? TrillFret { get; init; }

    /// <summary>Why it is there; null where there is nothing to say.</summary>
    public NoteReason? Why { get; init; }

    /// <summary>Whether it is played so.</summary>
    public bool Has(Technique technique)
    {
        for (var index = 0; index < techniques.Count; index++)
        {
            if (techniques[index] == technique)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Pitch, position, start and length: <c>G3 at 3:0, beat 1/2 for 1/2</c>.</summary>
    public override string ToString() => $"{Pitch} at {Position}, beat {Start} for {Length}";
}
