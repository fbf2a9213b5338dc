using TheoryKit.Values;

namespace TheoryKit.Licks.Practice;

/// <summary>A lick to practise on a day.</summary>
/// <param name="Lick">The lick.</param>
/// <param name="History">What was practised of it so far; null for a new one.</param>
/// <param name="DaysLate">How many days it has been due, 0 for a new one.</param>
/// <param name="Tempo">The tempo to try, in beats a minute, by <see cref="TempoAdvice"/>; null where there is nothing to go by.</param>
[Checked]
public sealed partial record DueLick(Lick Lick, LickHistory? History, int DaysLate, double? Tempo)
{
    /// <summary>The lick.</summary>
    public Lick Lick
    {
        get;
        init => field = Check.NotNull(value, nameof(Lick));
    } = Check.NotNull(Lick);

    /// <summary>Whether it has not been practised before.</summary>
    public bool IsNew => History is null;

    /// <summary>The lick's name.</summary>
    public string Name => Lick.Name;

    /// <summary>The lick's name.</summary>
    public override string ToString() => Name;
}
