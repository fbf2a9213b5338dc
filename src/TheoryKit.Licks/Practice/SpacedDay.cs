using TheoryKit.Values;

namespace TheoryKit.Licks.Practice;

/// <summary>A day on which a lick was practised, and when it comes back after it.</summary>
/// <remarks>
/// The rule, <b>spaced repetition</b>: what goes well comes back after longer and longer gaps, what does not comes back soon.
/// <list type="number">
/// <item>A day counts once, by its <i>first</i> entry: that tells what was kept since the last time; the rest of the day is practice.</item>
/// <item>After its first day a lick comes back in <see cref="Outcome.FirstGap"/> days: 1 after it fell apart or stumbled, 2 when it was
/// clean, 4 when it was at ease.</item>
/// <item>Played without a slip, the next gap is the days that passed since the day before, taken 2 times (clean) or 3 times (at ease). Days
/// beyond twice the gap do not count, and the gap never gets shorter by it: to practise early is no harm.</item>
/// <item>Where it stumbled the next gap is half the last one, where it fell apart a quarter, rounded down and at least 1 day.</item>
/// <item>No gap is longer than <see cref="MaxGap"/> days.</item>
/// </list>
/// Looked up: that learning in spaced sessions lasts longer than in one, and that the best gap grows with the time it has to last: Cepeda,
/// Pashler, Vul, Wixted and Rohrer, "Distributed practice in verbal recall tasks", Psychological Bulletin 132 (2006), 354–380, of 317
/// experiments with words. For hands at an instrument there is less to go by: a day between sessions helped accuracy (nine notes on a
/// keyboard) in Simmons,
/// "Distributed practice and procedural memory consolidation in musicians' skill learning", Journal of Research in Music Education 59(4)
/// (2012; some indexes have December 2011), 357–368; gaps of up to 15 minutes did not in Wiseheart, D'Souza and Chae, "Lack of spacing
/// effects during piano learning", PLOS ONE 12
/// (2017), e0182986. Chosen: the factors, plain and whole; nothing measured says that they are the best ones.
/// </remarks>
/// <param name="Date">The day.</param>
/// <param name="Outcome">How it went, the first time on that day.</param>
/// <param name="Gap">Days to the next time, 1 to <see cref="MaxGap"/>.</param>
[Checked]
public sealed partial record SpacedDay(DateOnly Date, Outcome Outcome, int Gap)
{
    /// <summary>Days to the next time, 1 to <see cref="MaxGap"/>.</summary>
    public int Gap
    {
        get;
        init => field = Check.Range(value, 1, MaxGap, nameof(Gap));
    } = Check.Range(Gap, 1, MaxGap);

    /// <summary>The longest gap: 120 days. Chosen.</summary>
    public const int MaxGap = 120;

    /// <summary>The day from which on it is due again.</summary>
    public DateOnly Next =>
        DateOnly.FromDayNumber((int)Math.Min((long)Date.DayNumber + Gap, DateOnly.MaxValue.DayNumber));

    /// <summary>The next day of practice after this one.</summary>
    /// <param name="date">A later day.</param>
    /// <param name="outcome">How it went, the first time on that day.</param>
    /// <exception cref="ArgumentOutOfRangeException">The day is not later.</exception>
    public SpacedDay Then(DateOnly date, Outcome outcome)
    {
        ArgumentNullException.ThrowIfNull(outcome);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(date, Date);
        var passed = Math.Min(date.DayNumber - Date.DayNumber, 2 * Gap);
        var gap = outcome.IsClean ? Math.Max(Gap, outcome.Gap * passed) : Math.Max(1, Math.Floor(outcome.Gap * Gap));
        return new(date, outcome, (int)Math.Min(gap, MaxGap));
    }

    /// <summary>The first day of practice of a lick.</summary>
    public static SpacedDay First(DateOnly date, Outcome outcome)
    {
        ArgumentNullException.ThrowIfNull(outcome);
        return new(date, outcome, outcome.FirstGap);
    }
}
