using TheoryKit.Tunings.Necks;

namespace TheoryKit.Fingering.Hands;

/// <summary>One hand on one neck: every distance in mm and what it costs, computed once and looked up by the solvers.</summary>
internal sealed class HandOnNeck
{
    /// <summary>
    /// Between neighbouring strings, in mm. From memory: a guitar has about 7 at the nut and 10 at the saddle. Chosen: one figure for the whole
    /// neck keeps reach a question of frets: going up the neck never makes a stretch longer.
    /// </summary>
    public const double StringSpacing = 8;

    /// <summary>How far behind its fret a fingertip sits, in mm, where the frets are wide enough; else half way. Chosen.</summary>
    public const double BehindFret = 8;

    public const int Fingers = 5;

    private readonly double[] tip;
    private readonly double[] reach = new double[Fingers * Fingers];

    public HandOnNeck(Neck neck, Hand hand)
    {
        ArgumentNullException.ThrowIfNull(neck);
        ArgumentNullException.ThrowIfNull(hand);
        Neck = neck;
        Hand = hand;
        tip = new double[neck.Frets + 1];
        for (var fret = 1; fret <= neck.Frets; fret++)
        {
            var (here, before) = (neck.FretDistance(fret), neck.FretDistance(fret - 1));
            tip[fret] = here - Math.Min(BehindFret, (here - before) / 2);
        }

        for (var low = Finger.Thumb; low < Finger.Little; low++)
        {
            for (var high = low + 1; high <= Finger.Little; high++)
            {
                reach[((int)low * Fingers) + (int)high] = hand.Reach(low, high);
            }
        }

        OpenFrets = new int[neck.StringCount + 1];
        for (var number = 1; number <= neck.StringCount; number++)
        {
            OpenFrets[number] = neck.OpenFret(number);
        }
    }

    public Neck Neck { get; }

    public Hand Hand { get; }

    /// <summary>By string number the fret at which it sounds open.</summary>
    public int[] OpenFrets { get; }

    /// <summary>The lowest fret that the hand holds: the first one before the nut or the capo.</summary>
    public int LowestFret => Neck.Capo + 1;

    /// <summary>Where the index finger is at home in a window: its first fret, or the first that can be held.</summary>
    public int Home(Window window) => Math.Max(LowestFret, window.First);

    /// <summary>Where the fingertip sits for a fret, in mm from the nut.</summary>
    public double Tip(int fret) => tip[fret];

    /// <summary>
    /// How far the hand at a place is from the first place before the nut or the capo, or before where a short string begins,
    /// in mm; zero if it is there or nearer the nut.
    /// </summary>
    public double FromStart(int number, int place) =>
        Math.Max(0, tip[place] - tip[Math.Min(OpenFrets[number] + 1, Neck.Frets)]);

    public double Reach(Finger low, Finger high) => reach[((int)low * Fingers) + (int)high];

    /// <summary>Whether two fingertips are within their reach: <see cref="Excess"/> without a root, for what is asked most.</summary>
    public bool IsWithin(Finger low, Finger high, double along, int strings)
    {
        var limit = reach[((int)low * Fingers) + (int)high];
        var across = low == Finger.Thumb ? 0 : strings * StringSpacing;
        return (along * along) + (across * across) <= limit * limit;
    }

    /// <summary>Whether the hand reaches both positions at once: an open string needs none of it.</summary>
    public bool Holds(Position one, Position other) =>
        one.Fret == OpenFrets[one.String]
        || other.Fret == OpenFrets[other.String]
        || IsWithin(
            Finger.Index,
            Finger.Little,
            Math.Abs(Tip(one.Fret) - Tip(other.Fret)),
            Math.Abs(one.String - other.String)
        );

    /// <summary>How many mm two fingertips are beyond their reach; zero or less if the hand can do it.</summary>
    public double Excess(Finger low, Finger high, double along, int strings) =>
        Distance(low, along, strings) - Reach(low, high);

    /// <summary>What a spread or squeeze of two fingertips costs; infinite beyond their reach.</summary>
    /// <param name="low">The lower-numbered finger.</param>
    /// <param name="high">The higher-numbered finger.</param>
    /// <param name="along">Along the neck, in mm.</param>
    /// <param name="strings">Strings across.</param>
    public double Spread(Finger low, Finger high, double along, int strings)
    {
        var distance = Distance(low, along, strings);
        var limit = Reach(low, high);
        if (distance > limit)
        {
            return double.PositiveInfinity;
        }

        if (low == Finger.Thumb)
        {
            return 0;
        }

        var rest = Hand.Rest * (high - low);
        if (distance >= rest)
        {
            // A hand whose limit is its rest has no room to spread: it is at its limit.
            var part = limit > rest ? (distance - rest) / (limit - rest) : 1;
            return Hand.Weights.Stretch * part * part * part;
        }

        var lacking = (rest - distance) / rest;
        return Hand.Weights.Crowding * lacking * lacking;
    }

    /// <summary>What setting a finger at a fret costs by itself.</summary>
    public double Setting(Finger finger, int fret) =>
        Hand.Weights.Of(finger) + (Hand.Weights.Upper * Math.Max(0, fret - EffortWeights.UpperFret));

    /// <summary>How many strings two fingers are apart, each lying from its thickest to its thinnest string.</summary>
    public static int Across(int thick, int thin, int otherThick, int otherThin) =>
        thin > otherThick ? thin - otherThick
        : otherThin > thick ? otherThin - thick
        : 0;

    private static double Distance(Finger low, double along, int strings)
    {
        if (low == Finger.Thumb)
        {
            return Math.Abs(along);
        }

        var across = strings * StringSpacing;
        return Math.Sqrt((along * along) + (across * across));
    }
}
