using TheoryKit.Theory;

namespace TheoryKit.Paths;

/// <summary>A lick of a folder, and its file.</summary>
public sealed record KeptLick
{
    private readonly Sequence<TabRemark> remarks = new([]);

    /// <summary>The lick.</summary>
    public required Lick Lick { get; init; }

    /// <summary>The name of its file in the folder.</summary>
    public required string File { get; init; }

    /// <summary>What was ambiguous in its tab or passed over, with the lines of the file.</summary>
    public IReadOnlyList<TabRemark> Remarks
    {
        get => remarks;
        init => remarks = value.ToSequence();
    }

    /// <summary>The lick's name and the file's.</summary>
    public override string ToString() => $"{Lick.Name} ({File})";
}

/// <summary>A file of a lick folder that could not be read.</summary>
/// <param name="File">Its name.</param>
/// <param name="Problem">What is wrong with it, and what would have worked.</param>
/// <param name="Line">The line that it is about, from 1; null where it is about the file.</param>
public sealed record BrokenLick(string File, string Problem, int? Line = null)
{
    /// <summary>The file, the line and what is wrong.</summary>
    public override string ToString() => Line is null ? $"{File}: {Problem}" : $"{File}, line {Line}: {Problem}";
}

/// <summary>A lick that a search found.</summary>
public sealed record FoundLick
{
    private readonly Lazy<Sequence<string>> reasons = new(static () => new([]));

    /// <summary>The lick and its file.</summary>
    public required KeptLick Kept { get; init; }

    /// <summary>How well it answers, 0 to 1: the mean over what was asked.</summary>
    public required double Score { get; init; }

    /// <summary>Why it was found, a reason for each thing asked.</summary>
    public IReadOnlyList<string> Reasons
    {
        get => reasons.Value;
        init
        {
            var given = value.ToSequence();
            reasons = new(() => given);
        }
    }

    // Most of what is found is never asked why: the reasons of thousands would take longer than finding them.
    internal Func<IEnumerable<string>> Why
    {
        init => reasons = new(() => value().ToSequence());
    }

    /// <summary>The lick.</summary>
    public Lick Lick => Kept.Lick;

    /// <inheritdoc/>
    public bool Equals(FoundLick? other) =>
        other is not null && Kept == other.Kept && Score == other.Score && Reasons.SequenceEqual(other.Reasons);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Kept, Score);

    /// <summary>The name and the reasons.</summary>
    public override string ToString() => Reasons.Count == 0 ? Lick.Name : $"{Lick.Name}: {string.Join("; ", Reasons)}";
}

/// <summary>Licks of a folder that are the same but for key and register, or nearly.</summary>
public sealed record SimilarLicks
{
    private readonly Sequence<KeptLick> licks = new([]);

    /// <summary>The licks, by name; at least two.</summary>
    public required IReadOnlyList<KeptLick> Licks
    {
        get => licks;
        init => licks = value.ToSequence();
    }

    /// <summary>The least likeness by which one of them belongs to the others; 1 exactly where all are the same line.</summary>
    public required double Likeness { get; init; }

    /// <summary>Whether all are the same but for key and register.</summary>
    public bool IsSame => Likeness >= 1;

    /// <summary>The names, and how alike they are.</summary>
    public override string ToString() =>
        $"{string.Join(", ", licks.Select(static each => each.Lick.Name))}: "
        + (IsSame ? "the same" : $"{Paths.Likeness.Percent(Likeness)} % alike");
}
