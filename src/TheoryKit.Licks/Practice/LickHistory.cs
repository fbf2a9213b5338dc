using TheoryKit.Values;

namespace TheoryKit.Licks.Practice;

/// <summary>What was practised of one lick, under its present name and those that it had before. Equal when name and entries agree.</summary>
[EqualBy(nameof(Name), nameof(entries))]
public sealed partial record LickHistory
{
    private readonly Sequence<Practised> entries;
    private readonly Sequence<SpacedDay> days;

    internal LickHistory(string name, IEnumerable<Practised> entries)
    {
        Name = name;
        this.entries = entries.ToSequence();
        var spaced = new List<SpacedDay>();
        foreach (var entry in this.entries)
        {
            if (spaced.Count == 0)
            {
                spaced.Add(SpacedDay.First(entry.Date, entry.Outcome));
            }
            else if (entry.Date > spaced[^1].Date)
            {
                spaced.Add(spaced[^1].Then(entry.Date, entry.Outcome));
            }
        }

        days = spaced.ToSequence();
    }

    /// <summary>What the lick is called now.</summary>
    public string Name { get; }

    /// <summary>The entries in order of time, at least one; they name the lick as it was called then.</summary>
    public IReadOnlyList<Practised> Entries => entries;

    /// <summary>The days, each once, with the gap that follows.</summary>
    public IReadOnlyList<SpacedDay> Days => days;

    /// <summary>The last day, and when the lick is due after it.</summary>
    public SpacedDay Last => days[^1];

    /// <summary>The fastest tempo that was played without a slip so far, in beats a minute; null for none.</summary>
    public double? FastestClean => entries.Where(static each => each.Outcome.IsClean).Max(static each => each.Tempo);

    /// <summary>The name, on how many days it was practised and when it is due.</summary>
    public override string ToString() =>
        string.Create(
            System.Globalization.CultureInfo.InvariantCulture,
            $"{Name}: {Days.Count}, {Last.Next:yyyy-MM-dd}"
        );
}
