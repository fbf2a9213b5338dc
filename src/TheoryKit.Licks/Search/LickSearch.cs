using System.Collections.Immutable;

namespace TheoryKit.Licks.Search;

/// <summary>Finds licks.</summary>
internal static class LickSearch
{
    /// <summary>Those that answer a query, the best first, then in the given order.</summary>
    public static IReadOnlyList<FoundLick> Find(
        ImmutableArray<KeptLick> licks,
        LickFacts[] facts,
        LickQuery query,
        Func<string, Lick?> named
    )
    {
        LickCriterion[] criteria = [.. query.Criteria.Select(each => Known(each, named))];
        var scores = new double[licks.Length];
        Parallel.For(0, licks.Length, index => scores[index] = Score(facts[index], criteria));
        return
        [
            .. Enumerable
                .Range(0, licks.Length)
                .Where(index => scores[index] >= 0)
                .OrderByDescending(index => scores[index])
                .ThenBy(static index => index)
                .Select(index => new FoundLick
                {
                    Kept = licks[index],
                    Score = scores[index],
                    Why = () => criteria.Select(each => each.Reason(facts[index])),
                }),
        ];
    }

    /// <summary>The mean over the criteria; less than 0 where one is not met.</summary>
    private static double Score(LickFacts facts, LickCriterion[] criteria)
    {
        var sum = 0.0;
        foreach (var criterion in criteria)
        {
            if (criterion.Score(facts) is not { } score)
            {
                return -1;
            }

            sum += score;
        }

        return criteria.Length == 0 ? 1 : sum / criteria.Length;
    }

    /// <summary>With the line of the lick in the place of its name.</summary>
    private static LickCriterion Known(LickCriterion criterion, Func<string, Lick?> named) =>
        criterion switch
        {
            LickCriterion.Not not => new LickCriterion.Not(Known(not.Inner, named)),
            LickCriterion.Like like => new LickCriterion.AlikeTo(
                LickLine.Of(
                    named(like.Name)
                        ?? throw new ArgumentException(
                            $"There is no lick \"{like.Name}\" in the folder to be like.",
                            nameof(criterion)
                        )
                ),
                like.Least
            ),
            _ => criterion,
        };
}
