using TheoryKit.Fingering.Hands;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Fingering.Lines;

/// <summary>How much of one term there is in the effort of a line. Equal when all of it is.</summary>
/// <param name="Name">The name of the weight, as in the text of <see cref="EffortWeights"/>.</param>
/// <param name="Amount">How much of it: fingers set, shifts, metres, strings crossed. Zero or more.</param>
/// <param name="Weight">What one of it costs.</param>
public readonly record struct EffortTerm(string Name, double Amount, double Weight)
{
    /// <summary>What it costs.</summary>
    public double Effort => Amount * Weight;
}

/// <summary>
/// The effort of lines taken apart. Effort is linear in the weights, so the amount of a term is what the line costs a hand
/// to which that term weighs 1 and every other 0: it is the solver itself that is asked, once for each weight, and what it
/// charges is said in one place only.
/// </summary>
internal sealed class EffortTerms
{
    private static readonly EffortWeights None = EffortWeights.Entries.Aggregate(
        EffortWeights.Default,
        static (weights, entry) => entry.With(weights, 0)
    );

    private readonly LineSolver[] solvers;

    public EffortTerms(Neck neck, Hand hand, int? preferredPlace = null) =>
        solvers = [
            .. EffortWeights.Entries.Select(entry => new LineSolver(
                new(neck, hand with { Weights = entry.With(None, 1) }),
                preferred: preferredPlace
            )),
        ];

    /// <summary>By entry of <see cref="EffortWeights.Entries"/> how much of it there is in a line that the hand can play.</summary>
    public double[] AmountsIn(IReadOnlyList<FingeredNote> line) => [.. solvers.Select(solver => solver.CostOf(line))];

    /// <summary>The weights in the order of the amounts.</summary>
    public static double[] Of(EffortWeights weights) => [.. EffortWeights.Entries.Select(entry => entry.Get(weights))];

    /// <summary>The terms that there are any of, in the order of the weights' text.</summary>
    public static IReadOnlyList<EffortTerm> Named(IReadOnlyList<double> amounts, EffortWeights weights) =>
        [
            .. EffortWeights
                .Entries.Select((entry, at) => new EffortTerm(entry.Name, amounts[at], entry.Get(weights)))
                .Where(static term => term.Amount != 0),
        ];
}
