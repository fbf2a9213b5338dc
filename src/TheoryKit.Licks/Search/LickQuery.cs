using TheoryKit.Values;

namespace TheoryKit.Licks.Search;

/// <summary>
/// What to look for among licks: criteria, all of which a lick has to meet. Equal when they are, in their order.
/// </summary>
/// <remarks>How a query is written is said on <see cref="Parse(string, IFormatProvider?)"/>.</remarks>
[ReadAs("a search for licks")]
public sealed partial record LickQuery
{
    private readonly Sequence<LickCriterion> criteria = new([]);

    /// <summary>A query.</summary>
    /// <param name="criteria">What a lick must have; none for every lick.</param>
    public LickQuery(params IReadOnlyList<LickCriterion> criteria) => Criteria = criteria;

    /// <summary>Every lick.</summary>
    public static LickQuery All { get; } = new();

    /// <summary>What a lick must have.</summary>
    public IReadOnlyList<LickCriterion> Criteria
    {
        get => criteria;
        init
        {
            ArgumentNullException.ThrowIfNull(value);
            criteria = value.ToSequence();
        }
    }

    /// <summary>The same and one more.</summary>
    public LickQuery And(LickCriterion criterion)
    {
        ArgumentNullException.ThrowIfNull(criterion);
        return new([.. criteria, criterion]);
    }

    /// <summary>The same, and alike to a lick whatever the key and register.</summary>
    /// <param name="lick">The lick.</param>
    /// <param name="least">How alike at least, 0 to 1; see <see cref="Likeness"/>.</param>
    public LickQuery AlikeTo(Lick lick, double least = LickCriterion.UsualLeast) =>
        And(new LickCriterion.AlikeTo(LickLine.Of(lick), least));
}
