using TheoryKit.Values;

namespace TheoryKit.Fingering.Hands;

/// <summary>
/// A fretting hand: how far each pair of fingers reaches in mm, what it can hold flat, and what everything costs it.
/// Equal when all of that is.
/// </summary>
/// <remarks>
/// Reach is measured between fingertips as they press strings, along and across the neck together. The default of each
/// property is the average hand. A hand is only a model: stop when it hurts, and ask a teacher or a physiotherapist.
/// <para>Text: the preset that it is nearest to, <c>small</c>, <c>average</c> or <c>large</c>, then what differs from it:
/// reaches by finger numbers (<c>1-4 140 mm</c>), <c>rest 18 mm</c>, <c>thumb 70 mm</c>, <c>thumb over</c>, how many
/// strings lie under a barre of the index (<c>barre 5</c>) and of another finger (<c>other barre 2</c>); after a semicolon
/// the weights, as <see cref="EffortWeights"/> writes them: <c>small, 1-4 120 mm, thumb over; stretch 4</c>.</para>
/// </remarks>
[ReadAs("a hand")]
public sealed partial record Hand
{
    /// <summary>No hand reaches farther, in mm: 400.</summary>
    public const double MaxReach = 400;

    private readonly double indexToMiddle = 72;
    private readonly double middleToRing = 52;
    private readonly double ringToLittle = 62;
    private readonly double indexToRing = 104;
    private readonly double middleToLittle = 92;
    private readonly double indexToLittle = 136;
    private readonly double rest = 22;
    private readonly double thumbReach = 60;
    private readonly int barreStrings = 6;
    private readonly int otherBarreStrings = 3;

    /// <summary>Farthest from index to middle fingertip, in mm.</summary>
    public double IndexToMiddle
    {
        get => indexToMiddle;
        init => indexToMiddle = Length(value, nameof(IndexToMiddle));
    }

    /// <summary>Farthest from middle to ring fingertip, in mm: the pair that spreads least.</summary>
    public double MiddleToRing
    {
        get => middleToRing;
        init => middleToRing = Length(value, nameof(MiddleToRing));
    }

    /// <summary>Farthest from ring to little fingertip, in mm.</summary>
    public double RingToLittle
    {
        get => ringToLittle;
        init => ringToLittle = Length(value, nameof(RingToLittle));
    }

    /// <summary>Farthest from index to ring fingertip, in mm.</summary>
    public double IndexToRing
    {
        get => indexToRing;
        init => indexToRing = Length(value, nameof(IndexToRing));
    }

    /// <summary>Farthest from middle to little fingertip, in mm.</summary>
    public double MiddleToLittle
    {
        get => middleToLittle;
        init => middleToLittle = Length(value, nameof(MiddleToLittle));
    }

    /// <summary>Farthest from index to little fingertip, in mm: the widest window the hand covers.</summary>
    public double IndexToLittle
    {
        get => indexToLittle;
        init => indexToLittle = Length(value, nameof(IndexToLittle));
    }

    /// <summary>Between neighbouring fingertips at rest on the strings, in mm: about the width of a finger.</summary>
    public double Rest
    {
        get => rest;
        init => rest = Length(value, nameof(Rest));
    }

    /// <summary>Whether the thumb comes over the neck to fret the highest-numbered string.</summary>
    public bool ThumbOver { get; init; }

    /// <summary>Farthest from the thumb over the neck to the index fingertip along the neck, in mm, either way.</summary>
    public double ThumbReach
    {
        get => thumbReach;
        init => thumbReach = Length(value, nameof(ThumbReach));
    }

    /// <summary>How many neighbouring strings the index finger holds flat; 1 or 0 for a hand that holds no barre.</summary>
    public int BarreStrings
    {
        get => barreStrings;
        init => barreStrings = Strings(value, nameof(BarreStrings));
    }

    /// <summary>How many neighbouring strings another finger holds flat; 1 or 0 for none.</summary>
    public int OtherBarreStrings
    {
        get => otherBarreStrings;
        init => otherBarreStrings = Strings(value, nameof(OtherBarreStrings));
    }

    /// <summary>What each term of effort weighs.</summary>
    /// <exception cref="ArgumentNullException">Null.</exception>
    public EffortWeights Weights
    {
        get;
        init
        {
            ArgumentNullException.ThrowIfNull(value);
            field = value;
        }
    } = EffortWeights.Default;

    /// <summary>The farthest that two fingertips reach, in mm. For the thumb along the neck only.</summary>
    /// <exception cref="ArgumentException">Both fingers are the same.</exception>
    public double Reach(Finger one, Finger other)
    {
        if (one == other)
        {
            throw new ArgumentException("Reach is between two fingers.", nameof(other));
        }

        var (low, high) = one < other ? (one, other) : (other, one);
        return (low, high) switch
        {
            (Finger.Thumb, _) => ThumbReach + (high == Finger.Index ? 0 : Reach(Finger.Index, high)),
            (Finger.Index, Finger.Middle) => IndexToMiddle,
            (Finger.Index, Finger.Ring) => IndexToRing,
            (Finger.Index, Finger.Little) => IndexToLittle,
            (Finger.Middle, Finger.Ring) => MiddleToRing,
            (Finger.Middle, Finger.Little) => MiddleToLittle,
            _ => RingToLittle,
        };
    }

    /// <summary>How many neighbouring strings a finger holds flat, at least 1.</summary>
    public int Flat(Finger finger) =>
        finger switch
        {
            Finger.Thumb => 1,
            Finger.Index => Math.Max(1, BarreStrings),
            _ => Math.Max(1, OtherBarreStrings),
        };

    /// <summary>This hand with every reach multiplied; the fingers stay as thick as they are (<see cref="Rest"/>).</summary>
    /// <param name="factor">More than 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">A reach would be more than <see cref="MaxReach"/> or none at all.</exception>
    public Hand Scale(double factor)
    {
        double[] reaches =
        [
            IndexToMiddle,
            MiddleToRing,
            RingToLittle,
            IndexToRing,
            MiddleToLittle,
            IndexToLittle,
            ThumbReach,
        ];
        Check.Range(factor, 0.01, MaxReach / reaches.Max());
        return this with
        {
            IndexToMiddle = IndexToMiddle * factor,
            MiddleToRing = MiddleToRing * factor,
            RingToLittle = RingToLittle * factor,
            IndexToRing = IndexToRing * factor,
            MiddleToLittle = MiddleToLittle * factor,
            IndexToLittle = IndexToLittle * factor,
            ThumbReach = ThumbReach * factor,
        };
    }

    /// <summary>This hand with so many mm added to every reach.</summary>
    internal Hand Reaching(double further)
    {
        double More(double reach) => Math.Min(reach + further, MaxReach);
        return this with
        {
            IndexToMiddle = More(IndexToMiddle),
            MiddleToRing = More(MiddleToRing),
            RingToLittle = More(RingToLittle),
            IndexToRing = More(IndexToRing),
            MiddleToLittle = More(MiddleToLittle),
            IndexToLittle = More(IndexToLittle),
            ThumbReach = More(ThumbReach),
        };
    }

    private static double Length(double value, string name) =>
        value is > 0 and <= MaxReach
            ? value
            : throw new ArgumentOutOfRangeException(
                name,
                value,
                $"{name} is a length in mm, more than 0 and at most {MaxReach}."
            );

    private static int Strings(int value, string name) =>
        value is >= 0 and <= TheoryKit.Tunings.Necks.Position.MaxString
            ? value
            : throw new ArgumentOutOfRangeException(
                name,
                value,
                $"{name} is a count of strings, 0 to {TheoryKit.Tunings.Necks.Position.MaxString}."
            );
}
