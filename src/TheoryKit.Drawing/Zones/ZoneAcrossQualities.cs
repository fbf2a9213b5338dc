using TheoryKit.Drawing.Necks;
using TheoryKit.Fingering.Hands;
using TheoryKit.Fingering.Zones;
using TheoryKit.Theory.Chords;
using TheoryKit.Values;

namespace TheoryKit.Drawing.Zones;

/// <summary>
/// The same zone for several chords on one root: what lies elsewhere than in the first stands out, what stays stands back.
/// Equal when the zones and what is shown agree.
/// </summary>
public sealed record ZoneAcrossQualities
{
    /// <summary>Zones on one neck, the first of which the others are held against.</summary>
    /// <exception cref="ArgumentException">No zone, or not all on one neck.</exception>
    public ZoneAcrossQualities(IEnumerable<Zone> zones)
    {
        Zones = [.. Check.Items(zones)];
        if (Zones.Count == 0 || Zones.Any(zone => zone.Neck != Zones[0].Neck))
        {
            throw new ArgumentException("Zones held against each other are one or more, on one neck.", nameof(zones));
        }
    }

    /// <summary>The zones, the one first that the others are held against.</summary>
    public IReadOnlyList<Zone> Zones { get; }

    /// <summary>What is written on the marks at first.</summary>
    public Labels Labels { get; init; }

    /// <summary>Whether everything is mirrored for a left-handed player.</summary>
    public bool IsLeftHanded { get; init; }

    /// <summary>A zone and the zones of the same form, nearest to it, of other formulas over its root.</summary>
    /// <param name="zone">The zone.</param>
    /// <param name="formulas">The other formulas. One that has no such zone is left out.</param>
    /// <param name="hand">The hand; the average one if null.</param>
    /// <exception cref="ArgumentException">A formula has no degree.</exception>
    public static ZoneAcrossQualities Of(Zone zone, IEnumerable<Formula> formulas, Hand? hand = null)
    {
        ArgumentNullException.ThrowIfNull(zone);
        var all = Check.Items(formulas);
        if (all.Any(static formula => formula.Count == 0))
        {
            throw new ArgumentException("A formula has no degree; a chord has at least one.", nameof(formulas));
        }

        var others = all.Select(formula => new Chord(zone.Chord.Root, formula))
            .Where(chord => chord != zone.Chord)
            .Select(chord =>
                chord
                    .Zones(zone.Neck, hand)
                    .Where(other => other.Form.Equals(zone.Form))
                    .MinBy(other => Math.Abs(other.Window.First - zone.Window.First))
            )
            .OfType<Zone>();
        return new(others.Prepend(zone));
    }

    /// <inheritdoc cref="Of(Zone, IEnumerable{Formula}, Hand?)"/>
    public static ZoneAcrossQualities Of(Zone zone, IEnumerable<ChordQuality> qualities, Hand? hand = null)
    {
        return Of(zone, Check.Items(qualities).Select(static quality => quality.Formula), hand);
    }

    /// <inheritdoc/>
    public bool Equals(ZoneAcrossQualities? other) =>
        other is not null
        && (Labels, IsLeftHanded) == (other.Labels, other.IsLeftHanded)
        && Zones.SequenceEqual(other.Zones);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Zones[0], Zones.Count, Labels, IsLeftHanded);
}
