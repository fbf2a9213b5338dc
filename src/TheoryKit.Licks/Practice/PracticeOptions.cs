namespace TheoryKit.Licks.Practice;

/// <summary>How much is put on one day. Chosen: what is put there unless told, by teaching practice.</summary>
public sealed record PracticeOptions
{
    private readonly int most = 6;
    private readonly int newADay = 1;
    private readonly int newAWeek = 3;

    /// <summary>The most licks on one day; 6 unless told. What is due beyond waits for the next day.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Less than 1.</exception>
    public int Most
    {
        get => most;
        init
        {
            ArgumentOutOfRangeException.ThrowIfLessThan(value, 1);
            most = value;
        }
    }

    /// <summary>The most licks begun on one day; 1 unless told.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative.</exception>
    public int NewADay
    {
        get => newADay;
        init
        {
            ArgumentOutOfRangeException.ThrowIfNegative(value);
            newADay = value;
        }
    }

    /// <summary>The most licks begun in any seven days; 3 unless told.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative.</exception>
    public int NewAWeek
    {
        get => newAWeek;
        init
        {
            ArgumentOutOfRangeException.ThrowIfNegative(value);
            newAWeek = value;
        }
    }
}
