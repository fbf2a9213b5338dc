using System.Collections.Immutable;
using TheoryKit.Tunings;

namespace TheoryKit.Fingering;

/// <summary>
/// The line solver for lines in which notes ring on: their fingers stay down and the hand stays in its place while any
/// fingered one does. Exact; the state grows with the notes that ring, so it is slower than <see cref="LineSolver"/>.
/// </summary>
internal sealed class RingingLineSolver(HandOnNeck hand, LineSolver line)
{
    /// <inheritdoc cref="LineSolver.Solve"/>
    public IReadOnlyList<FingeredLine> Solve(
        IReadOnlyList<IReadOnlyList<Position>> candidates,
        IReadOnlyList<int> rings,
        int best
    )
    {
        var layer = new Dictionary<State, List<Way>>(State.ByValue) { [new State([], [])] = [new(0, null, default)] };
        var options = new List<FingeredNote>();
        for (var index = 0; index < candidates.Count; index++)
        {
            options.Clear();
            foreach (var position in candidates[index])
            {
                line.AddStates(position, options);
            }

            var next = new Dictionary<State, List<Way>>(State.ByValue);
            foreach (var (state, ways) in layer)
            {
                foreach (var note in options)
                {
                    var step = line.NoteCost(note.Position, note.Finger, note.Place) + Follow(state, note);
                    if (double.IsPositiveInfinity(step))
                    {
                        continue;
                    }

                    var after = state.After(note, index, rings[index]);
                    if (!next.TryGetValue(after, out var kept))
                    {
                        next[after] = kept = [];
                    }

                    foreach (var way in ways)
                    {
                        Offer(kept, new(way.Cost + step, way, note), best);
                    }
                }
            }

            layer = next;
        }

        return
        [
            .. layer
                .Values.SelectMany(static ways => ways)
                .OrderBy(static way => way.Cost)
                .Take(best)
                .Select(way => way.ToLine(candidates.Count)),
        ];
    }

    private static void Offer(List<Way> kept, Way way, int best)
    {
        var at = kept.Count;
        while (at > 0 && kept[at - 1].Cost > way.Cost)
        {
            at--;
        }

        if (at < best)
        {
            kept.Insert(at, way);
            if (kept.Count > best)
            {
                kept.RemoveAt(best);
            }
        }
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

    /// <summary>A way through the line so far: its last note, and the way before.</summary>
    private sealed record Way(double Cost, Way? Before, FingeredNote Note)
    {
        public FingeredLine ToLine(int count)
        {
            var notes = new FingeredNote[count];
            var way = this;
            for (var index = count - 1; index >= 0; index--, way = way.Before!)
            {
                notes[index] = way.Note;
            }

            return new(ImmutableArray.Create(notes), Cost);
        }
    }
}
