using TheoryKit.Fingering.Hands;
using TheoryKit.Values;

namespace TheoryKit.Fingering.Learning;

/// <summary>A hand learned from examples, with what changed and how well it agrees. Equal when all of that is.</summary>
public sealed record LearnedHand
{
    internal LearnedHand(
        Hand start,
        Hand hand,
        IEnumerable<LearnedWeight> weights,
        IEnumerable<HandAgreement> agreement,
        IEnumerable<LineDifference> differences,
        int rounds,
        int unplayable,
        int slips,
        HandLearningOptions options,
        bool isKept,
        bool isSettled
    ) =>
        (Start, Hand, Weights, Agreement, Differences, Rounds, Unplayable, Slips, Options, IsKept, IsSettled) = (
            start,
            hand,
            weights.ToSequence(),
            agreement.ToSequence(),
            differences.ToSequence(),
            rounds,
            unplayable,
            slips,
            options,
            isKept,
            isSettled
        );

    /// <summary>The hand to start with.</summary>
    public Hand Start { get; }

    /// <summary>The hand that was learned, or the one to start with where that is kept; its text (<see cref="Hand.ToString"/>) is what there is to save.</summary>
    public Hand Hand { get; }

    /// <summary>Every weight that the examples say something about, before and after.</summary>
    public IReadOnlyList<LearnedWeight> Weights { get; }

    /// <summary>
    /// On the examples, and on lines held back where there were any: before and after. Where the hand to start with is kept,
    /// after is what the hand would do that was not taken.
    /// </summary>
    public IReadOnlyList<HandAgreement> Agreement { get; }

    /// <summary>The examples that the learned hand still plays otherwise, in their order.</summary>
    public IReadOnlyList<LineDifference> Differences { get; }

    /// <summary>How many rounds it took.</summary>
    public int Rounds { get; }

    /// <summary>How many examples the hand can't play as written, from which nothing was learned.</summary>
    public int Unplayable { get; }

    /// <summary>
    /// How many notes of the examples were taken for slips at the end of learning: <see cref="HandLearningOptions.Slip"/>,
    /// <see cref="HandLearningOptions.MostSlips"/>.
    /// </summary>
    public int Slips { get; }

    /// <summary>
    /// How it was learned: as was asked, or where few examples took turns with the trust in them and the slips with which
    /// each was played best by hands learned from the others.
    /// </summary>
    public HandLearningOptions Options { get; }

    /// <summary>
    /// Whether the hand to start with is kept because the hand learned plays fewer positions as written than it: of the lines
    /// held back, or of the examples where none were.
    /// </summary>
    public bool IsKept { get; }

    /// <summary>
    /// Whether learning came to its end: no way to play an example was left that would change the weights. False where it stopped at
    /// the limit of rounds, <see cref="HandLearningOptions.Rounds"/> or <see cref="HandLearning.MaxRounds"/>: the examples contradict
    /// each other, or there are too many of them for so few.
    /// </summary>
    public bool IsSettled { get; }
}

/// <summary>A weight before and after learning. Equal when all of it is.</summary>
/// <param name="Name">Its name, as in the text of <see cref="EffortWeights"/>.</param>
/// <param name="Before">What it was.</param>
/// <param name="After">What was learned.</param>
public readonly record struct LearnedWeight(string Name, double Before, double After);

/// <summary>How far a hand plays lines as they are written, before and after learning. Equal when all of it is.</summary>
/// <param name="Lines">Which lines: the examples, or those held back.</param>
/// <param name="Before">The hand to start with.</param>
/// <param name="After">The hand, or where the examples took turns the hands, learned without the lines that are counted.</param>
public readonly record struct HandAgreement(TriedLines Lines, LineAgreement Before, LineAgreement After);

/// <summary>Which lines a hand was tried on.</summary>
public enum TriedLines
{
    /// <summary>Those it was learned from.</summary>
    Examples,

    /// <summary>Those that it never saw.</summary>
    HeldBack,
}

/// <summary>How many notes of lines a hand plays as written. Equal when all counts are.</summary>
/// <param name="Notes">All notes.</param>
/// <param name="Positions">Those that it puts where they are written when only the pitches are given.</param>
/// <param name="Fingered">Notes with a finger written.</param>
/// <param name="Fingers">Those that it plays with that finger when the positions are given.</param>
public readonly record struct LineAgreement(int Notes, int Positions, int Fingered, int Fingers)
{
    /// <summary>The part of the positions, 0 to 1; 1 of none.</summary>
    public double OfPositions => Notes == 0 ? 1 : (double)Positions / Notes;

    /// <summary>The part of the fingers, 0 to 1; null where none is written.</summary>
    public double? OfFingers => Fingered == 0 ? null : (double)Fingers / Fingered;

    /// <summary>Both counted together.</summary>
    public static LineAgreement operator +(LineAgreement one, LineAgreement other) =>
        new(
            one.Notes + other.Notes,
            one.Positions + other.Positions,
            one.Fingered + other.Fingered,
            one.Fingers + other.Fingers
        );

    /// <summary>Both counted together.</summary>
    public static LineAgreement Add(LineAgreement left, LineAgreement right) => left + right;

    /// <summary>How far a hand plays lines as they are written. A line that it can't play counts as not as written.</summary>
    public static LineAgreement Of(IEnumerable<PlayedLine> lines, Hand hand)
    {
        ArgumentNullException.ThrowIfNull(hand);
        var sum = default(LineAgreement);
        foreach (var onNeck in Check.Items(lines).GroupBy(static line => line.Neck))
        {
            var reader = new LineReader(onNeck.Key, hand);
            sum = onNeck.Aggregate(sum, (sofar, line) => sofar + Of(line, reader));
        }

        return sum;
    }

    private static LineAgreement Of(PlayedLine line, LineReader reader)
    {
        var placed = reader.Placed(line);
        var fingered = line.Notes.Any(static note => note.Finger is not null) ? reader.Fingered(line) : null;
        return new(
            line.Notes.Count,
            line.Notes.Where((note, index) => placed?[index].Position == note.Position).Count(),
            line.Notes.Count(static note => note.Finger is not null),
            line.Notes.Where((note, index) => note.Finger is { } finger && fingered?[index].Finger == finger).Count()
        );
    }
}
