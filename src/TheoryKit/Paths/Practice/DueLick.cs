namespace TheoryKit.Paths;

/// <summary>A lick to practise on a day.</summary>
/// <param name="Lick">The lick.</param>
/// <param name="History">What was practised of it so far; null for a new one.</param>
/// <param name="DaysLate">How many days it has been due, 0 for a new one.</param>
/// <param name="Tempo">The tempo to try, in beats a minute, by <see cref="TempoAdvice"/>; null where there is nothing to go by.</param>
public sealed record DueLick(Lick Lick, LickHistory? History, int DaysLate, double? Tempo)
{
    /// <summary>Whether it has not been practised before.</summary>
    public bool IsNew => History is null;

    /// <summary>The lick's name.</summary>
    public string Name => Lick.Name;

    /// <summary>The name and the tempo to try.</summary>
    public override string ToString() =>
        string.Create(
            System.Globalization.CultureInfo.InvariantCulture,
            $"{Name}{(Tempo is null ? "" : " at ")}{Tempo:0.##}{(IsNew ? ", new" : "")}"
        );
}
