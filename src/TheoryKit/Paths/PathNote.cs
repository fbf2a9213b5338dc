using Fractions;
using TheoryKit.Fingering;
using TheoryKit.Theory;
using TheoryKit.Tunings;

namespace TheoryKit.Paths;

/// <summary>
/// A note of a path: what sounds, where it is played, when and how. Equal when all of that agrees.
/// </summary>
public sealed record PathNote
{
    private readonly Sequence<Technique> techniques = new([]);
    private readonly Fraction start;
    private readonly Fraction length = Fraction.One;

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
        init => techniques = value.ToSequence();
    }

    /// <summary>Why it is there, in words; empty where there is nothing to say.</summary>
    public string Why { get; init; } = "";

    /// <summary>Whether it is played so.</summary>
    public bool Has(Technique technique) => techniques.Contains(technique);

    /// <summary>Pitch, position, start and length: <c>G3 at 3:0, beat 1/2 for 1/2</c>.</summary>
    public override string ToString() => $"{Pitch} at {Position}, beat {Start} for {Length}";
}
