using System.Collections;
using TheoryKit.Values;

namespace TheoryKit.Fingering.Zones;

/// <summary>The zones of a chord up the neck; where there are none, why.</summary>
public sealed class ZoneAnswer : IReadOnlyList<Zone>
{
    private readonly List<Zone> zones;

    internal ZoneAnswer(ZoneQuery query, List<Zone> zones) => (Query, this.zones) = (query, zones);

    /// <summary>What was asked.</summary>
    public ZoneQuery Query { get; }

    /// <inheritdoc/>
    public int Count => zones.Count;

    /// <inheritdoc/>
    public Zone this[int index] => zones[Check.Index(index, Count)];

    /// <summary>Why there is no zone; null where there are some.</summary>
    public NoZoneReason? Reason =>
        Count > 0 ? null
        : Query.Neck.Capo >= Query.Neck.Frets ? new NoZoneReason.NoFrets(Query.Neck.Capo)
        : new NoZoneReason.RootNowhere(Query.Chord.Root, Query.Neck.Capo, Query.Neck.Frets);

    /// <inheritdoc/>
    public IEnumerator<Zone> GetEnumerator() => zones.GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}
