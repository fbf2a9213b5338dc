using System.Collections.Immutable;
using TheoryKit.Fingering.Hands;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Fingering.Lines;

/// <summary>
/// All ways through a line: a layer of states for every note, with what each costs by itself, the steps to the next layer,
/// and the least cost from a state to the end.
/// </summary>
internal abstract class LineGraph
{
    /// <summary>How many notes.</summary>
    public abstract int Layers { get; }

    /// <summary>How many states a note has.</summary>
    public abstract int Count(int layer);

    /// <summary>The note as played in a state.</summary>
    public abstract FingeredNote Note(int layer, int state);

    /// <summary>The least cost from a state to the end, the state's own cost included; infinite if there is no way.</summary>
    public abstract double ToGo(int layer, int state);

    /// <summary>The state after it on the least-cost way to the end.</summary>
    public abstract int Next(int layer, int state);

    /// <summary>Fills in every possible step to the next layer, with its cost and the own cost of the state it leaves.</summary>
    public abstract void Steps(int layer, int state, List<(int To, double Cost)> into);

    /// <summary>
    /// The <paramref name="best"/> least-cost lines, from the least. Two ways with the same positions and fingers are one
    /// line, which has the least-cost places of the hand.
    /// </summary>
    /// <remarks>
    /// Each line found splits what is left by the first note at which a line differs from it (from memory: Lawler, "A procedure for
    /// computing the k best solutions to discrete optimization problems", Management Science 18, 1972). In each part the
    /// notes before that are fixed, so the costs of all places that the hand may have had are carried along, and the best
    /// rest is known from <see cref="ToGo"/>.
    /// </remarks>
    public List<FingeredLine> Best(int best, CancellationToken cancellation)
    {
        var lines = new List<FingeredLine>();
        var parts = new PriorityQueue<Part, (double Cost, int Order)>();
        if (Cheapest(null, [], out _) is { } first)
        {
            parts.Enqueue(new(null, 0, []), (first, 0));
        }

        var order = 1;
        while (lines.Count < best && parts.TryDequeue(out var part, out _))
        {
            cancellation.ThrowIfCancellationRequested();
            lines.Add(Split(part, lines.Count + 1 < best, parts, ref order));
        }

        return lines;
    }

    /// <summary>The best line of a part; puts what is left of it back in parts.</summary>
    private FingeredLine Split(Part part, bool goesOn, PriorityQueue<Part, (double, int)> parts, ref int order)
    {
        var reached = Reach(part);
        var cost = Cheapest(reached, part.Without, out var chosen, part.Layer)!.Value;
        var line = new (FingeredNote Note, int State)[Layers];
        var state = chosen;
        for (var layer = part.Layer; layer < Layers; layer++)
        {
            line[layer] = (Note(layer, state), state);
            state = layer + 1 < Layers ? Next(layer, state) : 0;
        }

        state = reached?.From[chosen] ?? 0;
        for (var layer = part.Layer - 1; layer >= 0; layer--)
        {
            line[layer] = (Note(layer, state), state);
            state = part.Parent!.Fronts[layer].From(state);
        }

        var found = new FingeredLine([.. line.Select(static each => each.Note)], cost);
        if (!goesOn)
        {
            return found;
        }

        var fronts = new Front[Layers];
        part.Parent?.Fronts.AsSpan(0, part.Layer).CopyTo(fronts);
        var answer = new Answer(fronts);
        for (var layer = part.Layer; layer < Layers; layer++)
        {
            var label = Label(line[layer].Note);
            ImmutableArray<Labelled> without = layer == part.Layer ? part.Without.Add(label) : [label];
            if (Cheapest(reached, without, out _, layer) is { } next)
            {
                parts.Enqueue(new(answer, layer, without), (next, order++));
            }

            fronts[layer] = Front.Of(this, layer, label, reached);
            reached = layer + 1 < Layers ? Advance(layer, fronts[layer]) : null;
        }

        return found;
    }

    /// <summary>The costs of the states of the part's layer after the notes that are fixed; null at the first.</summary>
    private Reached? Reach(Part part) =>
        part.Layer == 0 ? null : Advance(part.Layer - 1, part.Parent!.Fronts[part.Layer - 1]);

    private Reached Advance(int layer, Front front)
    {
        var reached = new Reached(new double[Count(layer + 1)], new int[Count(layer + 1)]);
        Array.Fill(reached.Costs, double.PositiveInfinity);
        var steps = new List<(int To, double Cost)>();
        for (var index = 0; index < front.States.Length; index++)
        {
            steps.Clear();
            Steps(layer, front.States[index], steps);
            foreach (var (to, step) in steps)
            {
                var cost = front.Costs[index] + step;
                if (cost < reached.Costs[to])
                {
                    (reached.Costs[to], reached.From[to]) = (cost, front.States[index]);
                }
            }
        }

        return reached;
    }

    /// <summary>The least cost of a whole line through this layer, none of some labels; null if there is none.</summary>
    private double? Cheapest(Reached? reached, ImmutableArray<Labelled> without, out int chosen, int layer = 0)
    {
        var least = double.PositiveInfinity;
        chosen = -1;
        for (var state = 0; state < Count(layer); state++)
        {
            var cost = (reached?.Costs[state] ?? 0) + ToGo(layer, state);
            if (cost < least && !without.Contains(Label(Note(layer, state))))
            {
                (least, chosen) = (cost, state);
            }
        }

        return chosen < 0 ? null : least;
    }

    private static Labelled Label(FingeredNote note) => new(note.Position, note.Finger);

    /// <summary>What a player sees of a note.</summary>
    private readonly record struct Labelled(Position Position, Finger? Finger);

    /// <summary>Lines that share the notes of a line before a layer and differ from some in it.</summary>
    private sealed record Part(Answer? Parent, int Layer, ImmutableArray<Labelled> Without);

    private sealed record Answer(Front[] Fronts);

    /// <summary>By state of a layer the least cost to get there, its own not included, and from which state before.</summary>
    private sealed record Reached(double[] Costs, int[] From);

    /// <summary>The states of a layer with one label: the places that the hand may have.</summary>
    private sealed record Front(int[] States, double[] Costs, int[] Froms)
    {
        public int From(int state) => Froms[Array.IndexOf(States, state)];

        public static Front Of(LineGraph graph, int layer, Labelled label, Reached? reached)
        {
            var states = Enumerable
                .Range(0, graph.Count(layer))
                .Where(state =>
                    Label(graph.Note(layer, state)) == label && !double.IsPositiveInfinity(reached?.Costs[state] ?? 0)
                )
                .ToArray();
            return new(
                states,
                [.. states.Select(state => reached?.Costs[state] ?? 0)],
                [.. states.Select(state => reached?.From[state] ?? 0)]
            );
        }
    }
}
