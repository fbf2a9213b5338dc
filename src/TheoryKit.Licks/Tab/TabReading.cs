using TheoryKit.Licks.Tab.Remarks;
using TheoryKit.Values;

namespace TheoryKit.Licks.Tab;

/// <summary>What a tab says.</summary>
public sealed record TabReading
{
    private readonly Sequence<TabRemark> remarks = new([]);

    /// <summary>The notes, with their neck, time and changes.</summary>
    public required Path Path
    {
        get;
        init => field = Check.NotNull(value, nameof(Path));
    }

    /// <summary>What was ambiguous or passed over, in the order of the lines.</summary>
    public IReadOnlyList<TabRemark> Remarks
    {
        get => remarks;
        init => remarks = Check.Items(value, nameof(Remarks));
    }

    /// <summary>The lines that are no tab, as they stand, those that begin with # without it; empty for none.</summary>
    public string Words
    {
        get;
        init => field = Check.NotNull(value, nameof(Words));
    } = "";
}
