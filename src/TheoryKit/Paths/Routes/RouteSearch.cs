using System.Numerics;
using TheoryKit.Fingering.Hands;
using TheoryKit.Paths.Timing;

namespace TheoryKit.Paths.Routes;

/// <summary>Finds lines over changes with a zone for every chord.</summary>
public static class RouteSearch
{
    private const long None = long.MaxValue / 4;
    private const double Unit = 1e-6; // costs are compared in whole millionths, so that equal ones are equal

    /// <summary>
    /// The routes of least cost, exact over every choice of zone, entry tone and direction for every chord, from the best on. Ties break the
    /// same way every time.
    /// </summary>
    /// <remarks>
    /// Inside a chord the line steps through the shape of its zone in the direction of travel and turns round at the last
    /// tone without repeating it. The cost is a plain sum (<see cref="RouteCost"/>): for every chord the effort of its line with the
    /// fingers of the shape, for every change the hand's step and shift, the leap, a repeated pitch and the turns.
    /// A chord of one note goes in the direction in which it is reached; the first chord of a route, if it has one note, up.
    /// Two routes differ by a window, a triad or a note.
    /// <para>The least cost from every choice to the end comes from dynamic programming from the last chord on; then the best routes are
    /// taken in order by a search that is led by it. A least number of zones is exact too: the search keeps the set of windows.</para>
    /// </remarks>
    /// <param name="query">What is asked.</param>
    /// <param name="cancellation">Ends the search.</param>
    /// <exception cref="ArgumentException">An anticipation would take all the notes of a chord, a climb would arrive after more times
    /// through than there are, or a place or fret of the plan is not on the neck.</exception>
    /// <exception cref="OperationCanceledException">The search was cancelled.</exception>
    public static RouteAnswer Find(RouteQuery query, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(query);
        Check(query);
        var time = RouteTime.Of(query);
        return time.Parts.Count == 0
            ? new(query, [], new NoRouteReason.NoNotes())
            : new Search(query, time, cancellation).Run();
    }

    private static void Check(RouteQuery query)
    {
        if (query.Plan.Times > query.Times)
        {
            throw new ArgumentException(
                $"The climb is to arrive after {query.Plan.Times} times through the changes; there are {query.Times}.",
                nameof(query)
            );
        }

        ReadOnlySpan<int> frets = query.Plan switch
        {
            RoutePlan.Climb climb => [climb.From, climb.Goal],
            RoutePlan.Stay { Place: { } place } => [place.First, place.Last],
            _ => [],
        };
        foreach (var fret in frets)
        {
            if (fret < query.Neck.Capo || fret > query.Neck.Frets)
            {
                throw new ArgumentException(
                    $"The route asks for fret {fret}, which is not on the neck {query.Neck}; it goes from {query.Neck.Capo} to {query.Neck.Frets}.",
                    nameof(query)
                );
            }
        }
    }

    private sealed class Search
    {
        private readonly RouteQuery query;
        private readonly RouteTime time;
        private readonly CancellationToken cancellation;
        private readonly RouteGround ground;
        private readonly int arrival;
        private readonly RouteNode[][] layers;
        private readonly long[][] own;
        private readonly Dictionary<(RouteNode[], RouteNode[]), long[,]> joins = [];
        private readonly Dictionary<Window, int> numberOf = [];

        // By chord, way through it, and how many changes of window are still needed: the least cost from there to the end,
        // its own not included.
        private readonly long[][,] toGo;

        public Search(RouteQuery query, RouteTime time, CancellationToken cancellation)
        {
            (this.query, this.time, this.cancellation) = (query, time, cancellation);
            ground = new(query, time.Parts.Select(static part => part.Span.Chord!));
            arrival = time
                .Parts.Select(static (part, index) => (part, index))
                .Last(each => each.part.Time < (query.Plan.Times ?? query.Times))
                .index;
            layers = [.. time.Parts.Select(part => ground.Nodes(part.Span.Chord!, part.Strokes.Count))];
            own = [.. layers.Select((layer, index) => layer.Select(node => Own(node, index)).ToArray())];
            toGo = new long[layers.Length][,];
            foreach (var node in layers.SelectMany(static layer => layer))
            {
                numberOf.TryAdd(node.Choice.Window, numberOf.Count);
            }
        }

        public RouteAnswer Run()
        {
            for (var layer = layers.Length - 1; layer >= 0; layer--)
            {
                cancellation.ThrowIfCancellationRequested();
                toGo[layer] = LeastFrom(layer);
            }

            var routes = Best();
            return routes.Count > 0 ? new(query, routes, null) : Nothing();
        }

        private long Own(RouteNode node, int layer) =>
            !query.Plan.Allows(node.Choice.Window, layer, arrival)
            || (layer == 0 && node is { IsStill: true, Direction: Direction.Down })
                ? None
                : Rounded(ground.Own(node, layer, arrival));

        private long[,] Joins(int layer)
        {
            var (from, to) = (layers[layer], layers[layer + 1]);
            if (!joins.TryGetValue((from, to), out var costs))
            {
                costs = new long[from.Length, to.Length];
                for (var one = 0; one < from.Length; one++)
                {
                    for (var other = 0; other < to.Length; other++)
                    {
                        costs[one, other] = ground.Join(from[one], to[other]) is { } cost ? Rounded(cost) : None;
                    }
                }

                joins[(from, to)] = costs;
            }

            return costs;
        }

        private long[,] LeastFrom(int layer)
        {
            var most = query.Plan.Zones;
            var least = new long[layers[layer].Length, most];
            if (layer == layers.Length - 1)
            {
                for (var node = 0; node < layers[layer].Length; node++)
                {
                    for (var needed = 1; needed < most; needed++)
                    {
                        least[node, needed] = None;
                    }
                }

                return least;
            }

            var (costs, after, next) = (Joins(layer), toGo[layer + 1], layers[layer + 1]);
            for (var node = 0; node < layers[layer].Length; node++)
            {
                for (var needed = 0; needed < most; needed++)
                {
                    var best = None;
                    for (var to = 0; to < next.Length; to++)
                    {
                        var moved = next[to].Choice.Window != layers[layer][node].Choice.Window;
                        var rest = after[to, Math.Max(0, moved ? needed - 1 : needed)];
                        if (costs[node, to] < None && own[layer + 1][to] < None && rest < None)
                        {
                            best = Math.Min(best, costs[node, to] + own[layer + 1][to] + rest);
                        }
                    }

                    least[node, needed] = best;
                }
            }

            return least;
        }

        /// <summary>
        /// Best-first from the first chord on. What is still to come is known exactly but for which windows are new, of which
        /// it is never more; so routes are complete in the order of their costs. Where chord, way and windows so far agree only as
        /// many beginnings as routes are asked for can matter.
        /// </summary>
        private List<Route> Best()
        {
            var routes = new List<Route>();
            var open = new PriorityQueue<Step, (long Cost, int Left, long Order)>();
            var taken = new Dictionary<(int, int, BigInteger), int>();
            var order = 0L;
            for (var node = 0; node < layers[0].Length; node++)
            {
                Put(null, 0, node, own[0][node]);
            }

            while (routes.Count < query.Best && open.TryDequeue(out var step, out _))
            {
                cancellation.ThrowIfCancellationRequested();
                ref var count = ref System.Runtime.InteropServices.CollectionsMarshal.GetValueRefOrAddDefault(
                    taken,
                    (step.Layer, step.Node, step.Windows),
                    out _
                );
                if (count++ >= query.Best)
                {
                    continue;
                }

                if (step.Layer == layers.Length - 1)
                {
                    routes.Add(Built(step));
                    continue;
                }

                var costs = Joins(step.Layer);
                for (var to = 0; to < layers[step.Layer + 1].Length; to++)
                {
                    if (costs[step.Node, to] < None && own[step.Layer + 1][to] < None)
                    {
                        Put(step, step.Layer + 1, to, step.Cost + costs[step.Node, to] + own[step.Layer + 1][to]);
                    }
                }
            }

            return routes;

            void Put(Step? before, int layer, int node, long cost)
            {
                if (cost >= None)
                {
                    return;
                }

                var windows = With(before?.Windows ?? BigInteger.Zero, numberOf[layers[layer][node].Choice.Window]);
                var rest = toGo[layer][node, Needed(windows)];
                if (rest < None)
                {
                    open.Enqueue(
                        new(before, layer, node, windows, cost),
                        (cost + rest, layers.Length - layer, order++)
                    );
                }
            }
        }

        /// <summary>The windows so far, a bit for each; -1 once there are enough.</summary>
        private BigInteger With(BigInteger windows, int number)
        {
            if (windows.Sign < 0)
            {
                return windows;
            }

            var all = windows | (BigInteger.One << number);
            return Count(all) >= query.Plan.Zones ? BigInteger.MinusOne : all;
        }

        private int Needed(BigInteger windows) => windows.Sign < 0 ? 0 : query.Plan.Zones - Count(windows);

        private static int Count(BigInteger windows)
        {
            var count = 0;
            for (; !windows.IsZero; windows &= windows - 1)
            {
                count++;
            }

            return count;
        }

        private Route Built(Step last)
        {
            var nodes = new RouteNode[layers.Length];
            for (var step = last; step is not null; step = step.Before)
            {
                nodes[step.Layer] = layers[step.Layer][step.Node];
            }

            var notes = new List<PathNote>();
            var stops = new List<RouteStop>();
            for (var index = 0; index < nodes.Length; index++)
            {
                var (node, part) = (nodes[index], time.Parts[index]);
                var cost = ground.Own(node, index, arrival);
                if (index > 0)
                {
                    cost += ground.Join(nodes[index - 1], node)!.Value;
                }

                stops.Add(
                    new(
                        part.Span,
                        node.Choice.Window,
                        node.Choice.Form,
                        node.Choice.Shape,
                        node.Choice.Triad,
                        node.Choice.Shape.Notes[node.Entry],
                        node.Direction,
                        node.Line.Length,
                        cost
                    )
                );
                for (var at = 0; at < node.Line.Length; at++)
                {
                    var (tone, stroke) = (node.Choice.Shape.Notes[node.Line[at]], part.Strokes[at]);
                    notes.Add(
                        new()
                        {
                            Pitch = tone.Place.Pitch,
                            Position = tone.Place.Position,
                            Finger = tone.Finger,
                            Place = node.Choice.Home,
                            Start = stroke.Start,
                            Length = stroke.Length,
                            Techniques = stroke.IsAccented ? [Technique.Accent] : [],
                            Why = at == 0 ? Entered(stops[^1], stroke) : null,
                        }
                    );
                }
            }

            return new(new(query.Neck, notes, null, query.Changes, time.Beats), [.. stops]);
        }

        private static RouteReason Entered(RouteStop stop, Stroke stroke)
        {
            var (function, triad) = (stop.Entry.Place.Function, stop.Triad?.Over(stop.Chord.Root));
            return stroke.Start < stop.Span.Start
                ? new RouteReason.Anticipates(stop.Chord, function, triad, (stop.Span.Start - stroke.Start).Reduce())
                : new RouteReason.Enters(stop.Chord, function, triad);
        }

        /// <summary>The first chord that no route gets to, and why.</summary>
        private RouteAnswer Nothing()
        {
            var reached = Array.Empty<bool>();
            for (var layer = 0; layer < layers.Length; layer++)
            {
                reached =
                [
                    .. Enumerable.Range(0, layers[layer].Length).Select(node => IsReached(layer, node, reached)),
                ];
                if (!Array.Exists(reached, static each => each))
                {
                    return new(query, [], new NoRouteReason.Blocked(layer, time.Parts[layer].Span.Chord!, Lack(layer)));
                }
            }

            return new(query, [], new NoRouteReason.TooFewWindows(query.Plan.Zones, layers.Length));
        }

        private bool IsReached(int layer, int node, bool[] before) =>
            own[layer][node] < None
            && (
                layer == 0
                || Enumerable.Range(0, before.Length).Any(from => before[from] && Joins(layer - 1)[from, node] < None)
            );

        private ChordLack Lack(int layer) =>
            !ground.HasPlace(time.Parts[layer].Span.Chord!)
                ? query.Plan is RoutePlan.Stay { Place: { } place }
                    ? new ChordLack.ShapeAt(place)
                    : new ChordLack.Zone()
                : layers[layer].Length == 0
                    ? query.Targets.Count > 0
                        ? new ChordLack.Target(query.Targets)
                        : new ChordLack.Reach()
                    : new ChordLack.ZoneInPlan(query.Plan);

        private static long Rounded(RouteCost cost) => (long)Math.Round(cost.Total / Unit);

        private sealed record Step(Step? Before, int Layer, int Node, BigInteger Windows, long Cost);
    }
}
