using TheoryKit.Licks.Tab.Remarks;
using TheoryKit.Values;

namespace TheoryKit.Licks.Search;

/// <summary>A lick of a folder, and its file.</summary>
public sealed record KeptLick
{
    private readonly Sequence<TabRemark> remarks = new([]);

    /// <summary>The lick.</summary>
    public required Lick Lick
    {
        get;
        init => field = Check.NotNull(value, nameof(Lick));
    }

    /// <summary>The name of its file in the folder.</summary>
    public required string File
    {
        get;
        init => field = Check.NotNull(value, nameof(File));
    }

    /// <summary>What was ambiguous in its tab or passed over, with the lines of the file.</summary>
    public IReadOnlyList<TabRemark> Remarks
    {
        get => remarks;
        init => remarks = Check.Items(value, nameof(Remarks));
    }

    /// <summary>The lick's name and the file's.</summary>
    public override string ToString() => $"{Lick.Name} ({File})";
}

/// <summary>A lick that a search found.</summary>
[EqualBy(nameof(Kept), nameof(Score), nameof(Reasons))]
public sealed partial record FoundLick
{
    private readonly Lazy<Sequence<FoundReason>> reasons = new(static () => new([]));

    /// <summary>The lick and its file.</summary>
    public required KeptLick Kept
    {
        get;
        init => field = Check.NotNull(value, nameof(Kept));
    }

    /// <summary>How well it answers, 0 to 1: the mean over what was asked.</summary>
    public required double Score { get; init; }

    /// <summary>Why it was found, a reason for each thing asked.</summary>
    public IReadOnlyList<FoundReason> Reasons
    {
        get => reasons.Value;
        init
        {
            var given = Check.Items(value, nameof(Reasons));
            reasons = new(() => given);
        }
    }

    // Most of what is found is never asked why: the reasons of thousands would take longer than finding them.
    internal Func<IEnumerable<FoundReason>> Why
    {
        init => reasons = new(() => value().ToSequence());
    }

    /// <summary>The lick.</summary>
    public Lick Lick => Kept.Lick;

    /// <summary>The lick's name and the file's.</summary>
    public override string ToString() => Kept.ToString();
}

/// <summary>Licks of a folder that are the same but for key and register, or nearly.</summary>
public sealed record SimilarLicks
{
    private readonly Sequence<KeptLick> licks = new([]);

    /// <summary>The licks, by name; at least two.</summary>
    public required IReadOnlyList<KeptLick> Licks
    {
        get => licks;
        init => licks = Check.Items(value, nameof(Licks));
    }

    /// <summary>The least likeness by which one of them belongs to the others; 1 exactly where all are the same line.</summary>
    public required double Likeness { get; init; }

    /// <summary>Whether all are the same but for key and register.</summary>
    public bool IsSame => Likeness >= 1;

    /// <summary>The names.</summary>
    public override string ToString() => string.Join(", ", licks.Select(static each => each.Lick.Name));
}
