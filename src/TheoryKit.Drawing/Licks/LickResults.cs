using System.Collections.Immutable;
using TheoryKit.Licks.Search;

namespace TheoryKit.Drawing.Licks;

/// <summary>
/// What a search has found, for one sheet of paper: of each lick the name, chords, tempo, tags, why it was found and how its tab begins. Equal
/// when the title and the licks are.
/// </summary>
public sealed record LickResults
{
    /// <summary>The most licks on a sheet of A4: 10.</summary>
    public const int MostOnSheet = 10;

    private readonly ImmutableArray<FoundLick> found;

    /// <summary>Licks that were found.</summary>
    /// <param name="found">The licks in order; from the eleventh on they are named only.</param>
    /// <param name="title">What the sheet is called.</param>
    public LickResults(IEnumerable<FoundLick> found, string title = "Licks")
    {
        ArgumentNullException.ThrowIfNull(found);
        ArgumentNullException.ThrowIfNull(title);
        this.found = [.. found];
        Title = title;
    }

    /// <summary>What the sheet is called.</summary>
    public string Title { get; }

    /// <summary>The licks in order.</summary>
    public IReadOnlyList<FoundLick> Found => found;

    /// <inheritdoc/>
    public bool Equals(LickResults? other) =>
        other is not null && Title == other.Title && found.AsSpan().SequenceEqual(other.found.AsSpan());

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Title, found.Length);
}
