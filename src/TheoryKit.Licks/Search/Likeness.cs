using TheoryKit.Values;

namespace TheoryKit.Licks.Search;

/// <summary>How alike two licks are, whatever their key and register, and what differs. Equal when the two lines are.</summary>
/// <remarks>
/// The measure is an edit distance between the two lines (<see cref="LickLine"/>), made to lie between 0 and 1. A note too many or
/// too few costs 1. A note for another costs <see cref="PitchWeight"/> times how far apart the steps into them are, a minor third or more
/// being 1, plus <see cref="LengthWeight"/> times how far apart their lengths are, four times as long or more being 1; a dead note and
/// one with a pitch are 1 apart, and so are a note struck together with the next and one that is not.
/// With D as the least cost of making one line the other, and m and n notes, the two are 2D / (m + n + D) apart, and the likeness is 1 less
/// that. Since the costs are those of a metric, so is this distance: it is symmetric, 0 only for equal lines, and keeps to
/// the triangle inequality (looked up: Li Yujian and Liu Bo, "A Normalized Levenshtein Distance Metric", IEEE Transactions on Pattern
/// Analysis and Machine Intelligence 29(6), 2007, 1091-1095). Chosen: the weights, and what counts as far; fitted to nothing.
/// </remarks>
[EqualBy(nameof(First), nameof(Second))]
public sealed partial class Likeness : IEquatable<Likeness>
{
    /// <summary>What part of the cost of another note is that of its step: 0.7.</summary>
    public const double PitchWeight = 0.7;

    /// <summary>What part of the cost of another note is that of its length: 0.3.</summary>
    public const double LengthWeight = 0.3;

    // Costs are whole numbers, so that sums are exact: a note too many costs One, a cent in a step or a part of a length so much.
    private const int FarStep = 300;
    private const int FarLength = 2 * LickLine.LengthParts;
    private const long One = 10L * FarStep * FarLength;
    private const long PerCent = One * 7 / 10 / FarStep;
    private const long PerLength = One * 3 / 10 / FarLength;

    private Likeness(LickLine first, LickLine second)
    {
        (First, Second) = (first, second);
        var (cost, differences) = Align(first, second);
        Value = ValueOf(first, second, cost);
        Differences = differences;
    }

    /// <summary>One line.</summary>
    public LickLine First { get; }

    /// <summary>The other line.</summary>
    public LickLine Second { get; }

    /// <summary>0 for nothing in common, 1 exactly for the same line.</summary>
    public double Value { get; }

    /// <summary>What differs, in the order of the notes.</summary>
    public IReadOnlyList<LickDifference> Differences { get; }

    /// <summary>How alike two licks are.</summary>
    public static Likeness Of(Lick first, Lick second) =>
        Of(LickLine.Of(Check.NotNull(first)), LickLine.Of(Check.NotNull(second)));

    /// <summary>How alike two lines are.</summary>
    public static Likeness Of(LickLine first, LickLine second)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        return new(first, second);
    }

    /// <summary>How alike two lines are, if at least so much; null if less.</summary>
    internal static double? AtLeast(double least, LickLine first, LickLine second)
    {
        var limit = (long)Math.Ceiling((1 - least) * Notes(first, second) / (1 + least)) + 1;
        if (Cost(first, second, limit) is not { } cost)
        {
            return null;
        }

        var value = ValueOf(first, second, cost);
        return value >= least ? value : null;
    }

    /// <summary>How many notes too many or too few the likeness leaves room for, at most.</summary>
    internal static int Room(double least, int first, int second) =>
        (int)Math.Floor(((1 - least) * (first + second) / (1 + least)) + 1e-9);

    /// <summary>The likeness in whole percent, rounded down so that only what is equal is 100.</summary>
    public int Percent => PercentOf(Value);

    /// <summary>The likeness in whole percent: <c>85 %</c>.</summary>
    public override string ToString() => $"{Percent} %";

    /// <summary>Whole percent, rounded down so that only what is equal is 100.</summary>
    internal static int PercentOf(double value) => (int)Math.Floor((value * 100) + 1e-9);

    private static long Notes(LickLine first, LickLine second) => One * (first.Steps.Count + second.Steps.Count);

    private static double ValueOf(LickLine first, LickLine second, long cost) =>
        cost > 0 ? 1 - (2.0 * cost / (Notes(first, second) + cost))
        : first.Equals(second) ? 1
        // Lengths nearer to each other than costs can tell.
        : Math.BitDecrement(1.0);

    private static long CostOf(int centsA, int lengthA, int centsB, int lengthB) =>
        (PerCent * Apart(centsA, centsB, FarStep)) + (PerLength * Apart(lengthA, lengthB, FarLength));

    private static long Apart(int a, int b, int far) =>
        a == b ? 0
        : a == LickLine.Apart || b == LickLine.Apart ? far
        : Math.Min(Math.Abs((long)a - b), far);

    /// <summary>The least cost if it is within the limit. Only what the limit leaves room for is looked at, so that most pairs take little.</summary>
    private static long? Cost(LickLine first, LickLine second, long limit)
    {
        var (m, n) = (first.Steps.Count, second.Steps.Count);
        var band = (int)Math.Min(limit / One, Math.Max(m, n));
        if (Math.Abs(m - n) > band)
        {
            return null;
        }

        Span<long> before = n < 256 ? stackalloc long[n + 1] : new long[n + 1];
        Span<long> row = n < 256 ? stackalloc long[n + 1] : new long[n + 1];
        const long Far = long.MaxValue / 2;
        for (var j = 0; j <= n; j++)
        {
            before[j] = j <= band ? j * One : Far;
        }

        for (var i = 1; i <= m; i++)
        {
            var (from, to) = (Math.Max(1, i - band), Math.Min(n, i + band));
            row.Fill(Far);
            row[0] = i <= band ? i * One : Far;
            var least = row[0];
            var (cents, length) = (first.Cents[i - 1], first.Lengths[i - 1]);
            for (var j = from; j <= to; j++)
            {
                var cost = before[j - 1] + CostOf(cents, length, second.Cents[j - 1], second.Lengths[j - 1]);
                cost = Math.Min(cost, Math.Min(before[j], row[j - 1]) + One);
                row[j] = cost;
                least = Math.Min(least, cost);
            }

            if (least > limit)
            {
                return null;
            }

            var spare = before;
            before = row;
            row = spare;
        }

        return before[n] <= limit ? before[n] : null;
    }

    private static (long Cost, IReadOnlyList<LickDifference> Differences) Align(LickLine first, LickLine second)
    {
        var (m, n) = (first.Steps.Count, second.Steps.Count);
        var costs = new long[m + 1, n + 1];
        for (var i = 0; i <= m; i++)
        {
            for (var j = 0; j <= n; j++)
            {
                costs[i, j] =
                    i == 0 ? j * One
                    : j == 0 ? i * One
                    : Math.Min(Replaced(i, j), Math.Min(costs[i - 1, j], costs[i, j - 1]) + One);
            }
        }

        var differences = new List<LickDifference>();
        for (var (i, j) = (m, n); i > 0 || j > 0; )
        {
            if (i > 0 && j > 0 && costs[i, j] == Replaced(i, j))
            {
                i--;
                j--;
                if (first.Steps[i] != second.Steps[j])
                {
                    differences.Add(new(i + 1, j + 1, first.Steps[i], second.Steps[j]));
                }
            }
            else if (i > 0 && costs[i, j] == costs[i - 1, j] + One)
            {
                differences.Add(new(i--, null, first.Steps[i], null));
            }
            else
            {
                differences.Add(new(null, j--, null, second.Steps[j]));
            }
        }

        differences.Reverse();
        return (costs[m, n], differences.ToSequence());

        long Replaced(int i, int j) =>
            costs[i - 1, j - 1]
            + CostOf(first.Cents[i - 1], first.Lengths[i - 1], second.Cents[j - 1], second.Lengths[j - 1]);
    }
}

/// <summary>A note in which two licks differ. Equal when all of that agrees.</summary>
/// <param name="First">The number of the note in the first, from 1; null where it has none for it.</param>
/// <param name="Second">The number of the note in the second, from 1; null where it has none for it.</param>
/// <param name="InFirst">The step into the note and its length in the first; null where it has none.</param>
/// <param name="InSecond">The step into the note and its length in the second; null where it has none.</param>
public sealed record LickDifference(int? First, int? Second, LickLine.Step? InFirst, LickLine.Step? InSecond)
{
    /// <summary>The number of the note and both steps: <c>3: +3:1/2 +4:1/2</c>.</summary>
    public override string ToString() =>
        $"{First ?? Second}: {InFirst?.ToString() ?? "-"} {InSecond?.ToString() ?? "-"}";
}
