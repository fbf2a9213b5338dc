using System.Collections.Immutable;
using TheoryKit.Fingering.Hands;
using TheoryKit.Fingering.Lines;
using TheoryKit.Fingering.Zones;
using TheoryKit.Paths.Timing;
using TheoryKit.Theory.Progressions;
using TheoryKit.Tunings.Necks;
using TheoryKit.Values;

namespace TheoryKit.Paths.Exercises;

/// <summary>Where a line leaves one zone for the next.</summary>
/// <param name="Note">The number of the first note in the new zone, counted from 0.</param>
/// <param name="From">The zone that it leaves.</param>
/// <param name="To">The zone that it goes to.</param>
[Checked]
public sealed partial record ZoneHinge(int Note, Zone From, Zone To)
{
    /// <summary>The note, and the zones.</summary>
    public override string ToString() => $"note {Note + 1}: {From} to {To}";
}

/// <summary>
/// One chord through all its zones in one line, every zone played through, with the shifts where they cost least. Equal when
/// the zones, the direction and the path are.
/// </summary>
/// <remarks>
/// Up the neck: in the first zone from the lowest root to the top and down to the bottom; then upwards, over into the next zone and to its
/// top, down to its bottom, upwards again and over into the third, and so on; in the last zone down to the bottom and up to its lowest
/// root. Down the neck: in the first zone, the highest, from the lowest root down to the bottom and up to the top; then downwards, over into
/// the next zone and to its bottom, up to its top, and so on; in the last zone up to the top and down to its lowest root.
/// <para>The hinge from a zone to the next may lie after any tone of the way, as long as no tone between is lost (where some must be, as
/// few as can be). All hinges are chosen together so that the effort of the whole line, as <see cref="LineSearch"/> reckons it, is least:
/// dynamic programming over (tone, zone, finger, place of the hand), exact.</para>
/// </remarks>
[EqualBy(nameof(zones), nameof(IsDown), nameof(Path))]
public sealed partial class ZoneTravel : IEquatable<ZoneTravel>
{
    private readonly Sequence<Zone> zones;

    private ZoneTravel(Sequence<Zone> zones, bool isDown, Path path, double effort, IReadOnlyList<ZoneHinge> hinges)
    {
        this.zones = zones;
        (IsDown, Path, Effort, Hinges) = (isDown, path, effort, hinges);
    }

    /// <summary>The zones in the order in which they are visited.</summary>
    public IReadOnlyList<Zone> Zones => zones;

    /// <summary>Whether it goes down the neck.</summary>
    public bool IsDown { get; }

    /// <summary>The line, over its chord, in whole bars.</summary>
    public Path Path { get; }

    /// <summary>The effort of the line; see <see cref="EffortWeights"/>.</summary>
    public double Effort { get; }

    /// <summary>Where it goes from a zone to the next.</summary>
    public IReadOnlyList<ZoneHinge> Hinges { get; }

    /// <summary>The line through some zones of one chord on one neck.</summary>
    /// <param name="zones">The zones in any order; those of one window are visited once.</param>
    /// <param name="isDown">Whether down the neck, from the highest zone on.</param>
    /// <param name="rhythm">The rhythm; two notes a beat if null.</param>
    /// <param name="accents">Which tones are louder; as the rhythm says if null.</param>
    /// <param name="time">The time signature; 4/4 unless told.</param>
    /// <exception cref="ArgumentException">No zone, zones of several chords, necks or hands, or no way for the hand.</exception>
    public static ZoneTravel Of(
        IEnumerable<Zone> zones,
        bool isDown = false,
        Rhythm? rhythm = null,
        AccentPattern? accents = null,
        TimeSignature time = default
    )
    {
        var all = Check.Items(zones).ToList();
        if (all.Count == 0)
        {
            throw new ArgumentException("A line through zones needs a zone.", nameof(zones));
        }

        var first = all[0];
        if (
            all.Find(zone => zone.Chord != first.Chord || zone.Neck != first.Neck || zone.Hand != first.Hand) is { } odd
        )
        {
            throw new ArgumentException(
                $"The zones {first} of {first.Chord} and {odd} of {odd.Chord} are not of one chord, neck and hand.",
                nameof(zones)
            );
        }

        var order = all.DistinctBy(static zone => zone.Window)
            .OrderBy(static zone => zone.Window.First)
            .ThenBy(static zone => zone.Window.Last)
            .ToList();
        if (isDown)
        {
            order.Reverse();
        }

        var graph = Ways(order, isDown);
        var (stops, line, effort) = new Walk(graph, new(new(first.Neck, first.Hand))).Find();
        var hinges = ImmutableArray.CreateBuilder<ZoneHinge>();
        for (var index = 1; index < stops.Count; index++)
        {
            if (stops[index].Zone != stops[index - 1].Zone)
            {
                hinges.Add(new(index, order[stops[index - 1].Zone], order[stops[index].Zone]));
            }
        }

        var entries = hinges.ToDictionary(static hinge => hinge.Note, static hinge => hinge.To);
        var notes = stops.Select(
            (stop, index) =>
                new PathNote
                {
                    Pitch = stop.Place.Pitch,
                    Position = stop.Place.Position,
                    Finger = line[index].Finger,
                    Place = line[index].Place,
                    Start = index,
                    Why = entries.TryGetValue(index, out var to)
                        ? new DrillReason.IntoZone(stop.Place.Function, first.Chord, to.Window)
                        : new DrillReason.Tone(stop.Place.Function, first.Chord),
                }
        );
        var path = new Path(first.Neck, notes, time, Drills.Over(first.Chord, time)).InRhythm(rhythm ?? Rhythm.Even(2));
        path = (accents is null ? path : path.Accented(accents)).ToWholeBars();
        return new(order.ToSequence(), isDown, path, effort, hinges.DrainToImmutable());
    }

    /// <summary>The chord, the first zone and the last.</summary>
    public override string ToString() => $"{zones[0].Chord}, {zones[0]} to {zones[^1]}";

    /// <summary>All ways through the zones: every stop with those that may come before it, in an order in which these come first.</summary>
    internal static List<Stop> Ways(List<Zone> order, bool isDown)
    {
        var ways = new Builder();
        var tones = order.ConvertAll(static zone => zone.Shape.Notes.Select(static note => note.Place).ToList());
        var (root, last) = (Drill.Root(order[0].Shape), order.Count - 1);
        ways.Straight(tones[0].Skip(root).Take(1), 0);
        if (isDown && last > 0)
        {
            ways.Straight(Falling(tones[0].Take(root)), 0);
            ways.Straight(tones[0].Skip(1), 0);
        }
        else
        {
            ways.Straight(tones[0].Skip(root + 1), 0);
            ways.Straight(Falling(tones[0]).Skip(1), 0);
        }

        for (var zone = 0; zone < last; zone++)
        {
            if (isDown)
            {
                ways.Cross(Falling(tones[zone]), Falling(tones[zone + 1]), zone, -1);
                ways.Straight(tones[zone + 1].Skip(1), zone + 1);
            }
            else
            {
                ways.Cross(tones[zone], tones[zone + 1], zone, 1);
                ways.Straight(Falling(tones[zone + 1]).Skip(1), zone + 1);
            }
        }

        root = Drill.Root(order[last].Shape);
        ways.Straight(
            isDown && last > 0 ? Falling(tones[last].Skip(root)).Skip(1) : tones[last].Take(root + 1).Skip(1),
            last
        );
        return ways.Stops;

        static IEnumerable<Place> Falling(IEnumerable<Place> places) => places.Reverse();
    }

    /// <summary>A tone on the way, in a zone, and the stops that may come before it; none for the first. The last one ends the line.</summary>
    internal sealed partial record Stop(Place Place, int Zone, IReadOnlyList<int> Before);

    private sealed class Builder
    {
        private int? at;

        public List<Stop> Stops { get; } = [];

        public void Straight(IEnumerable<Place> places, int zone)
        {
            foreach (var place in places)
            {
                at = Add(place, zone, at is { } before ? [before] : []);
            }
        }

        /// <summary>From a zone into the next in one direction; the line has come to the first of the tones.</summary>
        public void Cross(IEnumerable<Place> from, IEnumerable<Place> into, int zone, int direction)
        {
            var (left, entered) = (from.ToList(), into.ToList());
            var lost = new int[left.Count];
            for (var tone = 0; tone < left.Count; tone++)
            {
                var next = Next(tone);
                lost[tone] =
                    next < 0
                        ? int.MaxValue
                        : left.Skip(tone + 1).Count(place => !Has(entered, place))
                            + entered
                                .Take(next)
                                .Count(place => !Has(left.Take(tone + 1), place) && IsBeyond(place, left[0]));
            }

            var fewest = lost.Min();
            var entries = new List<int>?[entered.Count];
            for (var tone = 0; tone < left.Count; tone++)
            {
                if (tone > 0)
                {
                    at = Add(left[tone], zone, [at!.Value]);
                }

                if (lost[tone] == fewest)
                {
                    // Where the next zone has no tone beyond any of these, it is entered at its end.
                    var next = fewest == int.MaxValue ? entered.Count - 1 : Next(tone);
                    (entries[next] ??= []).Add(at!.Value);
                }
            }

            int? before = null;
            for (var tone = 0; tone < entered.Count; tone++)
            {
                if (before is null && entries[tone] is null)
                {
                    continue;
                }

                before = Add(
                    entered[tone],
                    zone + 1,
                    [.. before is { } here ? [here] : Array.Empty<int>(), .. entries[tone] ?? []]
                );
            }

            at = before;

            int Next(int tone) => entered.FindIndex(place => IsBeyond(place, left[tone]));

            bool IsBeyond(Place place, Place than) => (place.Pitch.MidiNumber - than.Pitch.MidiNumber) * direction > 0;
        }

        private static bool Has(IEnumerable<Place> places, Place place) =>
            places.Any(other => other.Pitch.MidiNumber == place.Pitch.MidiNumber);

        private int Add(Place place, int zone, IReadOnlyList<int> before)
        {
            Stops.Add(new(place, zone, before));
            return Stops.Count - 1;
        }
    }

    /// <summary>The way of least effort.</summary>
    private sealed class Walk(List<Stop> stops, LineSolver solver)
    {
        private readonly List<FingeredNote>[] states = new List<FingeredNote>[stops.Count];
        private readonly double[][] costs = new double[stops.Count][];
        private readonly (int Stop, int State)[][] froms = new (int, int)[stops.Count][];

        public (List<Stop> Stops, List<FingeredNote> Line, double Effort) Find()
        {
            for (var stop = 0; stop < stops.Count; stop++)
            {
                Reach(stop);
            }

            var (at, state) = (stops.Count - 1, 0);
            for (var index = 1; index < costs[at].Length; index++)
            {
                state = costs[at][index] < costs[at][state] ? index : state;
            }

            if (costs[at].Length == 0 || double.IsPositiveInfinity(costs[at][state]))
            {
                throw new ArgumentException("The hand can't play these zones one after the other.", "zones");
            }

            var effort = costs[at][state];
            var (way, line) = (new List<Stop>(), new List<FingeredNote>());
            while (at >= 0)
            {
                way.Add(stops[at]);
                line.Add(states[at][state]);
                (at, state) = froms[at][state];
            }

            way.Reverse();
            line.Reverse();
            return (way, line, effort);
        }

        private void Reach(int stop)
        {
            var (position, before) = (stops[stop].Place.Position, stops[stop].Before);
            var own = states[stop] = [];
            solver.AddStates(position, own);
            costs[stop] = new double[own.Count];
            froms[stop] = new (int, int)[own.Count];
            for (var state = 0; state < own.Count; state++)
            {
                var (least, from) = (before.Count == 0 ? 0 : double.PositiveInfinity, (-1, -1));
                foreach (var other in before)
                {
                    for (var index = 0; index < costs[other].Length; index++)
                    {
                        if (costs[other][index] >= least)
                        {
                            continue;
                        }

                        var cost = costs[other][index] + solver.StepCost(states[other][index], own[state]);
                        if (cost < least)
                        {
                            (least, from) = (cost, (other, index));
                        }
                    }
                }

                costs[stop][state] = least + solver.NoteCost(position, own[state].Finger, own[state].Place);
                froms[stop][state] = from;
            }
        }
    }
}
