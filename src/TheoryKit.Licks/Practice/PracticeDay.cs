using TheoryKit.Values;

namespace TheoryKit.Licks.Practice;

/// <summary>What to practise on a day. Equal when all that it says agrees.</summary>
/// <remarks>
/// Due is a lick of the folder whose last gap has passed (<see cref="SpacedDay"/>). First stands what is latest, measured by its gap: a
/// day late after a gap of two is later than five after one of sixty; then what went worse the last time, then the names in order. New licks
/// come last, in the order of the folder, as many as <see cref="PracticeOptions"/> let in and only where there is room. Entries after the
/// day are not looked at.
/// </remarks>
public sealed record PracticeDay
{
    private readonly Sequence<DueLick> licks = new([]);
    private readonly Sequence<string> done = new([]);
    private readonly Sequence<string> gone = new([]);

    /// <summary>The day.</summary>
    public required DateOnly Date { get; init; }

    /// <summary>What to practise, in order; those that are due, then new ones.</summary>
    public IReadOnlyList<DueLick> Licks
    {
        get => licks;
        init => licks = Check.Items(value, nameof(Licks));
    }

    /// <summary>How many licks are due that find no room on this day.</summary>
    public int Waiting { get; init; }

    /// <summary>How many licks of the folder have not been begun, those of this day left out.</summary>
    public int NotBegun { get; init; }

    /// <summary>Licks of the folder that were practised on this day already, in order.</summary>
    public IReadOnlyList<string> Done
    {
        get => done;
        init => done = Check.Items(value, nameof(Done));
    }

    /// <summary>Names in the log that no lick of the folder has, deleted or renamed without the log being told. Their past is kept.</summary>
    public IReadOnlyList<string> Gone
    {
        get => gone;
        init => gone = Check.Items(value, nameof(Gone));
    }

    /// <summary>The next day on which something becomes due; null for none.</summary>
    public DateOnly? Next { get; init; }

    /// <summary>On how many days there was practice.</summary>
    public required PracticeCount Count
    {
        get;
        init => field = Check.NotNull(value, nameof(Count));
    }

    /// <summary>The day and the licks.</summary>
    public override string ToString() =>
        string.Create(
            System.Globalization.CultureInfo.InvariantCulture,
            $"{Date:yyyy-MM-dd}: {string.Join("; ", Licks)}"
        );
}
