using System.Collections;
using TheoryKit.Theory;

namespace TheoryKit.Fingering;

/// <summary>The grips found for a question, from the least effort up; where there are none, why.</summary>
public sealed class GripAnswer : IReadOnlyList<ChordGrip>
{
    private readonly List<ChordGrip> grips;
    private readonly Lazy<string> reason;

    internal GripAnswer(GripQuery query, List<ChordGrip> grips)
    {
        Query = query;
        this.grips = grips;
        reason = new(() => grips.Count > 0 ? "" : Why());
    }

    /// <summary>What was asked.</summary>
    public GripQuery Query { get; }

    /// <inheritdoc/>
    public int Count => grips.Count;

    /// <inheritdoc/>
    public ChordGrip this[int index] => grips[index];

    /// <summary>Empty where there are grips; else the limit that leaves none, and by how many mm where it is the hand's reach.</summary>
    public string Reason => reason.Value;

    /// <inheritdoc/>
    public IEnumerator<ChordGrip> GetEnumerator() => grips.GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    private string Why() => throw new NotImplementedException();
}
