using TheoryKit.Values;

namespace TheoryKit.Licks.Practice;

/// <summary>Which tempo to try next.</summary>
/// <remarks>
/// From the last day on which a tempo was noted: the fastest one that was clean there, 4 % faster, or 8 % if it was at ease. If none was,
/// the slowest one of that day, 5 % slower where it stumbled and 15 % where it fell apart. A new lick begins at
/// 60 % of the tempo that it is kept at. Whole beats a minute, at least one more or less than before, and never more than the tempo that
/// the lick is kept at. So a tempo is earned: what goes wrong is slowed down before it is repeated, and no step asks the hand for more than
/// a little. Whoever shows it says <see cref="Cautions.Hands"/>. Chosen: the percentages, by teaching practice; not measured.
/// </remarks>
public static class TempoAdvice
{
    private const double Start = 0.6;

    /// <summary>The tempo to try next, in beats a minute; null where there is nothing to go by.</summary>
    /// <param name="history">What was practised; null for nothing.</param>
    /// <param name="goal">The tempo that the lick is kept at, 0.01 to <see cref="Lick.MaxTempo"/>; null for none.</param>
    /// <exception cref="ArgumentOutOfRangeException">The goal is no such tempo.</exception>
    public static double? Next(LickHistory? history, double? goal)
    {
        if (goal is { } wanted)
        {
            Check.Range(wanted, 0.01, Lick.MaxTempo, nameof(goal));
        }

        if (history is null || history.Entries.LastOrDefault(static each => each.Tempo is not null) is not { } last)
        {
            return goal is { } begun ? Whole(begun * Start) : null;
        }

        var day = history.Entries.Where(each => each.Date == last.Date && each.Tempo is not null).ToList();
        var from =
            day.Where(static each => each.Outcome.IsClean)
                .OrderByDescending(static each => each.Tempo)
                .ThenByDescending(static each => each.Outcome.Rank)
                .FirstOrDefault()
            ?? day.OrderBy(static each => each.Tempo).ThenBy(static each => each.Outcome.Rank).First();
        var tempo = from.Tempo!.Value;
        var next = from.Outcome.IsClean
            ? Math.Max(Whole(tempo * from.Outcome.Tempo), Math.Floor(tempo) + 1)
            : Math.Min(Whole(tempo * from.Outcome.Tempo), Math.Ceiling(tempo) - 1);
        return Math.Clamp(next, Math.Min(Math.Min(1, tempo), goal ?? 1), goal ?? Lick.MaxTempo);
    }

    private static double Whole(double tempo) => Math.Max(1, Math.Round(tempo, MidpointRounding.AwayFromZero));
}
