using System.Collections.Immutable;
using TheoryKit.Fingering.Hands;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Fingering.Lines;

/// <summary>
/// The line solver for lines in which notes ring on: their fingers stay down and the hand stays in its place while any
/// fingered one does. Exact; the state grows with the notes that ring, so it is slower than <see cref="LineSolver"/>.
/// </summary>
internal sealed class RingingLineSolver(LineSolver line)
{
    private readonly HandOnNeck hand = line.Hand;

    /// <inheritdoc cref="LineSolver.Solve"/>
    public IReadOnlyList<FingeredLine> Solve(
        IReadOnlyList<IReadOnlyList<Position>> candidates,
        IReadOnlyList<int> rings,
        int best,
        IReadOnlyList<bool>? staysOnString = null
    )
    {
        var layers = new List<Node>[candidates.Count];
        List<Node> before = [new(new([], []), default, 0)];
        var options = new List<FingeredNote>();
        for (var layer = 0; layer < layers.Length; layer++)
        {
            line.Cancellation.ThrowIfCancellationRequested();
            options.Clear();
            foreach (var position in candidates[layer])
            {
                line.AddStates(position, options);
            }

            var nodes = layers[layer] = [];
            var numbers = new Dictionary<State, int>(State.ByValue);
            foreach (var node in before)
            {
                foreach (var note in options)
                {
                    var step = Follow(node.State, note);
                    if (
                        double.IsPositiveInfinity(step)
                        || (
                            staysOnString is not null
                            && staysOnString[layer]
                            && node.State.Last is { } last
                            && last.Position.String != note.Position.String
                        )
                    )
                    {
                        continue;
                    }

                    var state = node.State.After(note, layer, rings[layer]);
                    if (!numbers.TryGetValue(state, out var number))
                    {
                        numbers[state] = number = nodes.Count;
                        nodes.Add(new(state, note, line.NoteCost(note.Position, note.Finger, note.Place)));
                    }

                    node.Steps.Add((number, node.Own + step));
                }
            }

            before = nodes;
        }

        for (var layer = layers.Length - 1; layer >= 0; layer--)
        {
            foreach (var node in layers[layer])
            {
                node.ToGo = layer + 1 < layers.Length ? double.PositiveInfinity : node.Own;
                foreach (var (to, cost) in node.Steps)
                {
                    if (cost + layers[layer + 1][to].ToGo is var toGo && toGo < node.ToGo)
                    {
                        (node.ToGo, node.Next) = (toGo, to);
                    }
                }
            }
        }

        return new Graph(layers).Best(best, line.Cancellation);
    }

    /// <summary>What the step to a note costs after the last one and beside all that still ring; infinite where that can't be.</summary>
    private double Follow(State state, FingeredNote note)
    {
        if (state.Last is not { } last)
        {
            return 0;
        }

        foreach (var held in state.Held)
        {
            if (!CanRingBeside(held, note))
            {
                return double.PositiveInfinity;
            }
        }

        // A finger that stays down does not leap or roll: it lies flat. LineSolver charges the roll, which stands for it.
        return line.StepCost(last, note);
    }

    private bool CanRingBeside(FingeredNote held, FingeredNote note)
    {
        if (held.Position.String == note.Position.String)
        {
            return false;
        }

        if (held.Finger is not { } kept)
        {
            return true;
        }

        if (held.Place != note.Place)
        {
            return false;
        }

        if (note.Finger is not { } finger)
        {
            return true;
        }

        if (finger == kept)
        {
            return held.Position.Fret == note.Position.Fret
                && Math.Abs(held.Position.String - note.Position.String) < hand.Hand.Flat(finger);
        }

        var (low, high) = kept < finger ? (held, note) : (note, held);
        return low.Position.Fret <= high.Position.Fret
            && hand.Excess(
                low.Finger!.Value,
                high.Finger!.Value,
                hand.Tip(high.Position.Fret) - hand.Tip(low.Position.Fret),
                Math.Abs(low.Position.String - high.Position.String)
            ) <= 0;
    }

    /// <summary>The last note and those before it that still ring, with the index of the last note they ring through.</summary>
    private sealed class State(ImmutableArray<FingeredNote> notes, ImmutableArray<int> until)
    {
        public static IEqualityComparer<State> ByValue { get; } = new Comparer();

        private readonly ImmutableArray<FingeredNote> notes = notes; // the last note of the line is the last here
        private readonly ImmutableArray<int> until = until;

        public FingeredNote? Last => notes.IsEmpty ? null : notes[^1];

        public IEnumerable<FingeredNote> Held
        {
            get
            {
                for (var at = 0; at < notes.Length; at++)
                {
                    if (until[at] >= 0)
                    {
                        yield return notes[at];
                    }
                }
            }
        }

        /// <summary>After another note: counts down what still rings through the one that follows.</summary>
        public State After(FingeredNote note, int index, int rings)
        {
            var (kept, left) = (new List<FingeredNote>(), new List<int>());
            for (var at = 0; at < notes.Length; at++)
            {
                if (until[at] > index)
                {
                    kept.Add(notes[at]);
                    left.Add(until[at]);
                }
            }

            kept.Add(note);
            left.Add(rings > 0 ? index + rings : -1);
            return new([.. kept], [.. left]);
        }

        private sealed class Comparer : IEqualityComparer<State>
        {
            public bool Equals(State? x, State? y) =>
                x is not null
                && y is not null
                && x.notes.AsSpan().SequenceEqual(y.notes.AsSpan())
                && x.until.AsSpan().SequenceEqual(y.until.AsSpan());

            public int GetHashCode(State obj)
            {
                var hash = default(HashCode);
                foreach (var note in obj.notes)
                {
                    hash.Add(note);
                }

                return hash.ToHashCode();
            }
        }
    }

    /// <summary>A state that the line can be in at one of its notes.</summary>
    private sealed record Node(State State, FingeredNote Note, double Own)
    {
        public List<(int To, double Cost)> Steps { get; } = [];

        public double ToGo { get; set; }

        public int Next { get; set; }
    }

    private sealed class Graph(List<Node>[] layers) : LineGraph
    {
        public override int Layers => layers.Length;

        public override int Count(int layer) => layers[layer].Count;

        public override FingeredNote Note(int layer, int state) => layers[layer][state].Note;

        public override double ToGo(int layer, int state) => layers[layer][state].ToGo;

        public override int Next(int layer, int state) => layers[layer][state].Next;

        public override void Steps(int layer, int state, List<(int To, double Cost)> into) =>
            into.AddRange(layers[layer][state].Steps);
    }
}
