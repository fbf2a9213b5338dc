using TheoryKit.Drawing.Necks;
using TheoryKit.Fingering.Words;
using TheoryKit.Fingering.Zones;
using TheoryKit.Theory.Chords;
using TheoryKit.Tunings.Necks;
using TheoryKit.Values;

namespace TheoryKit.Drawing.Zones;

/// <summary>
/// A whole neck with the zones of a chord as bands below it. Tones in no zone's shape stand back. Equal when the zones and
/// everything shown agree.
/// </summary>
public sealed record ZoneMap
{
    /// <summary>A map of zones, all of one chord on one neck, in order up the neck.</summary>
    /// <exception cref="ArgumentException">No zone, or not all of one chord on one neck.</exception>
    public ZoneMap(IEnumerable<Zone> zones)
    {
        Zones = [.. Check.Items(zones)];
        if (Zones.Count == 0 || Zones.Any(zone => zone.Chord != Chord || zone.Neck != Neck))
        {
            throw new ArgumentException(
                (zones as ZoneAnswer)?.Reason?.InWords()
                    ?? "A map shows one or more zones, all of one chord on one neck.",
                nameof(zones)
            );
        }
    }

    /// <summary>The zones.</summary>
    public IReadOnlyList<Zone> Zones { get; }

    /// <summary>The chord.</summary>
    public Chord Chord => Zones[0].Chord;

    /// <summary>The neck.</summary>
    public Neck Neck => Zones[0].Neck;

    /// <summary>What is written on the marks at first.</summary>
    public Labels Labels { get; init; }

    /// <summary>Whether the neck is mirrored for a left-handed player.</summary>
    public bool IsLeftHanded { get; init; }

    /// <summary>The map as a drawing of the neck.</summary>
    public NeckDrawing Drawing
    {
        get
        {
            var inShapes = Zones
                .SelectMany(static zone => zone.Shape.Notes)
                .Select(static note => note.Place.Position)
                .ToHashSet();
            return NeckDrawing
                .Of(Neck, Chord)
                .WithEach(mark => mark with { IsPale = !inShapes.Contains(mark.Position) })
                .WithBands(Zones.Select(static zone => new NeckBand(zone.Window, ZoneWords.Short(zone.Form))))
                .WithLabels(Labels)
                .WithLeftHand(IsLeftHanded);
        }
    }

    /// <inheritdoc/>
    public bool Equals(ZoneMap? other) =>
        other is not null
        && (Labels, IsLeftHanded) == (other.Labels, other.IsLeftHanded)
        && Zones.SequenceEqual(other.Zones);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Zones[0], Zones.Count, Labels, IsLeftHanded);
}
