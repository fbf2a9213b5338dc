using TheoryKit.Fingering.Hands;
using TheoryKit.Values;

namespace TheoryKit.Fingering.Learning;

/// <summary>How a hand is learned. Equal when everything is.</summary>
public sealed record HandLearningOptions
{
    private readonly Sequence<PlayedLine> heldBack = new([]);

    /// <summary>The usual way.</summary>
    public static HandLearningOptions Default { get; } = new();

    /// <summary>
    /// Lines that are kept from the learning and only tried afterwards. Where there are none, the examples take turns:
    /// see <see cref="Folds"/>.
    /// </summary>
    public IReadOnlyList<PlayedLine> HeldBack
    {
        get => heldBack;
        init => heldBack = Check.Items(value, nameof(HeldBack));
    }

    /// <summary>
    /// Where no lines are held back: into how many parts the examples are divided, each of which is held back once while a
    /// hand is learned from the others; less than 2 for none of that. Example n is in part n modulo this.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative.</exception>
    public int Folds
    {
        get;
        init
        {
            ArgumentOutOfRangeException.ThrowIfNegative(value, nameof(Folds));
            field = value;
        }
    } = 5;

    /// <summary>By how much effort a way to play an example has to be harder than the example for each note in which it differs; more than 0.</summary>
    /// <exception cref="ArgumentOutOfRangeException">0 or less.</exception>
    public double Margin
    {
        get;
        init => field = MoreThanZero(value, nameof(Margin));
    } = 0.2;

    /// <summary>
    /// How much the examples count against the hand to start with; more than 0. With much trust the examples are followed
    /// wherever that is possible; with little, a few examples change the hand little. Of few examples that take turns
    /// (<see cref="Folds"/>), up to <see cref="HandLearning.FewLines"/>, less than this may be found to be better:
    /// <see cref="LearnedHand.Options"/>.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">0 or less.</exception>
    public double Trust
    {
        get;
        init => field = MoreThanZero(value, nameof(Trust));
    } = 1;

    /// <summary>
    /// From how much effort for a note on, compared with another way to play the line, that note of an example is taken for
    /// a slip and not learned from; more than 0, infinite for examples without slips. It is more where otherwise more than
    /// <see cref="MostSlips"/> of the notes would be slips.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">0 or less.</exception>
    public double Slip
    {
        get;
        init => field = MoreThanZero(value, nameof(Slip));
    } = 0.5;

    /// <summary>
    /// Which part of the notes of all examples may be taken for slips, those that cost most; 0 to 1, 0 for examples without
    /// slips. What a player does more often than that is a habit. Of few examples that take turns, none may be found to be
    /// better: <see cref="LearnedHand.Options"/>.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Less than 0 or more than 1.</exception>
    public double MostSlips
    {
        get;
        init =>
            field = value is >= 0 and <= 1
                ? value
                : throw new ArgumentOutOfRangeException(nameof(MostSlips), value, "MostSlips is a part, 0 to 1.");
    } = 0.2;

    /// <summary>
    /// How many times as much, or as little, a weight may become as it was for the hand to start with; at least 1, infinite
    /// for no such limit. A weight that was less than a tenth of the usual one (<see cref="EffortWeights.Default"/>) may
    /// become so many times a tenth of that, so that a weight of 0 can be learned too.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Less than 1, or no number.</exception>
    public double MostChange
    {
        get;
        init =>
            field =
                value >= 1
                    ? value
                    : throw new ArgumentOutOfRangeException(nameof(MostChange), value, "MostChange is at least 1.");
    } = 20;

    /// <summary>The most rounds of learning between two readings of the examples; 1 to <see cref="HandLearning.MaxRounds"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is not.</exception>
    public int Rounds
    {
        get;
        init => field = Check.Range(value, 1, HandLearning.MaxRounds, nameof(Rounds));
    } = 40;

    private static double MoreThanZero(double value, string name) =>
        value > 0 ? value : throw new ArgumentOutOfRangeException(name, value, $"{name} is more than 0.");
}
