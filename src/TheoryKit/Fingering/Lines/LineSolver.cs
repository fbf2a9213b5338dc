using TheoryKit.Fingering.Hands;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Fingering.Lines;

/// <summary>
/// The least-effort fingers, and where there is a choice positions, for a line of notes played one after the other: dynamic
/// programming over (position, finger, place of the hand), exact, the k best.
/// </summary>
/// <remarks>
/// The model. With the hand at a place the index finger is at home at that fret; every other finger plays frets from there
/// on, as far as its reach from the index finger goes. A note costs its finger and its spread from home, an open string how
/// far the hand is from where it begins. Between notes the hand may shift; the same finger letting go, rolling and crossing
/// strings cost what <see cref="EffortWeights"/> says. Without a shift two neighbouring notes keep the order and the reach
/// of their fingers, and two fingers other than the index, from which each is counted already, cost the spread between them.
/// <para>Costs are the same for any thread; <see cref="Solve"/> keeps what it has worked out and is for one at a time.</para>
/// </remarks>
internal sealed class LineSolver
{
    private readonly HandOnNeck hand;
    private readonly EffortWeights weights;
    private readonly int firstPlace;
    private readonly int lastPlace;
    private readonly int? preferred;

    // By the places it leaves and goes to: what a shift costs.
    private readonly double[] shift;
    private readonly int places;

    // Every state that was asked for so far, those of one position together, with what each costs by itself.
    private readonly List<FingeredNote> states = [];
    private readonly List<double> owns = [];
    private readonly int[]?[] numbersOf;

    public LineSolver(HandOnNeck hand, int firstPlace = 1, int lastPlace = int.MaxValue, int? preferred = null)
    {
        Hand = this.hand = hand;
        weights = hand.Hand.Weights;
        this.firstPlace = Math.Max(hand.LowestFret, firstPlace);
        this.lastPlace = Math.Min(lastPlace, hand.Neck.Frets);
        this.preferred = preferred is { } place ? Math.Clamp(place, 1, hand.Neck.Frets) : null;
        places = hand.Neck.Frets + 1;
        numbersOf = new int[(hand.Neck.StringCount + 1) * places][];
        shift = new double[places * places];
        for (var from = 1; from < places; from++)
        {
            for (var to = 1; to < places; to++)
            {
                shift[(from * places) + to] =
                    from == to
                        ? 0
                        : weights.Shift + (weights.ShiftDistance * Math.Abs(hand.Tip(from) - hand.Tip(to)) / 1000);
            }
        }
    }

    public HandOnNeck Hand { get; }

    /// <summary>Ends a search that goes on too long; asked at every note.</summary>
    public CancellationToken Cancellation { get; init; }

    /// <summary>The lowest place that the hand can have.</summary>
    public int FirstPlace => firstPlace;

    /// <summary>The highest.</summary>
    public int LastPlace => lastPlace;

    /// <summary>How many mm a position is out of reach from the nearest place that the hand can have; zero or less if it is not.</summary>
    public double ExcessOf(Position position)
    {
        if (position.Fret < firstPlace)
        {
            return hand.Tip(firstPlace) - hand.Tip(position.Fret);
        }

        var along = hand.Tip(position.Fret) - hand.Tip(Math.Min(position.Fret, lastPlace));
        return along - Math.Max(hand.Hand.IndexToMiddle, Math.Max(hand.Hand.IndexToRing, hand.Hand.IndexToLittle));
    }

    /// <summary>The cost of a note by itself; infinite if that finger can't play it from that place.</summary>
    public double NoteCost(Position position, Finger? finger, int place)
    {
        var away = preferred is { } home ? weights.Preference * Math.Abs(hand.Tip(place) - hand.Tip(home)) / 1000 : 0;
        if (finger is not { } held)
        {
            return away + (weights.OpenString * hand.FromStart(position.String, place) / 1000);
        }

        if (position.Fret < place || (held == Finger.Index && position.Fret != place))
        {
            return double.PositiveInfinity;
        }

        var spread =
            held == Finger.Index ? 0 : hand.Spread(Finger.Index, held, hand.Tip(position.Fret) - hand.Tip(place), 0);
        return hand.Setting(held, position.Fret) + spread + away;
    }

    /// <summary>The cost of going from one note to the next; infinite if the hand can't.</summary>
    public double StepCost(FingeredNote from, FingeredNote to)
    {
        var cost =
            shift[(from.Place * places) + to.Place]
            + (weights.StringCrossing * Math.Abs(from.Position.String - to.Position.String));
        if (
            from.Finger is not { } before
            || to.Finger is not { } after
            || from.Position == to.Position && before == after
        )
        {
            return cost;
        }

        if (before == after)
        {
            return cost
                + (
                    from.Position.Fret == to.Position.Fret ? weights.Roll
                    : from.Place != to.Place && from.Position.String == to.Position.String ? 0
                    : weights.SameFinger
                );
        }

        if (from.Place != to.Place)
        {
            return cost;
        }

        var (low, high) = before < after ? (from, to) : (to, from);
        if (low.Position.Fret > high.Position.Fret)
        {
            return double.PositiveInfinity;
        }

        var spread = hand.Spread(
            low.Finger!.Value,
            high.Finger!.Value,
            hand.Tip(high.Position.Fret) - hand.Tip(low.Position.Fret),
            Math.Abs(low.Position.String - high.Position.String)
        );

        // How far a finger is from the index finger the note itself has counted.
        return low.Finger == Finger.Index && spread < double.PositiveInfinity ? cost : cost + spread;
    }

    /// <summary>Every way to play a note at a position, in a fixed order.</summary>
    public void AddStates(Position position, List<FingeredNote> states)
    {
        if (position.Fret == hand.OpenFrets[position.String])
        {
            for (var place = firstPlace; place <= lastPlace; place++)
            {
                states.Add(new(position, null, place));
            }

            return;
        }

        for (var place = Math.Min(position.Fret, lastPlace); place >= firstPlace; place--)
        {
            var any = false;
            for (var finger = Finger.Index; finger <= Finger.Little; finger++)
            {
                if (NoteCost(position, finger, place) < double.PositiveInfinity)
                {
                    states.Add(new(position, finger, place));
                    any = true;
                }
            }

            if (!any)
            {
                return; // farther down the neck it is only farther
            }
        }
    }

    /// <summary>The cost of a whole line; infinite if the hand can't play it so.</summary>
    public double CostOf(IReadOnlyList<FingeredNote> line)
    {
        var cost = 0.0;
        for (var index = 0; index < line.Count; index++)
        {
            var note = line[index];
            cost +=
                NoteCost(note.Position, note.Finger, note.Place) + (index > 0 ? StepCost(line[index - 1], note) : 0);
        }

        return cost;
    }

    /// <summary>The <paramref name="best"/> least-effort lines, from the least; none if there is no way.</summary>
    /// <param name="candidates">For each note the positions it may be played at.</param>
    /// <param name="best">How many, at least 1.</param>
    /// <param name="extra">
    /// By the index of a note what a way to play it costs besides: infinite if it is not allowed, less than zero if it is
    /// favoured. The effort of the lines has it in it.
    /// </param>
    /// <param name="staysOnString">By the index of a note whether it is on the string of the note before; null for none.</param>
    public IReadOnlyList<FingeredLine> Solve(
        IReadOnlyList<IReadOnlyList<Position>> candidates,
        int best = 1,
        Func<int, FingeredNote, double>? extra = null,
        IReadOnlyList<bool>? staysOnString = null
    ) =>
        candidates.Count == 0
            ? [new([], 0)]
            : new Graph(this, candidates, best > 1, extra, staysOnString).Best(best, Cancellation);

    /// <summary>The states of a position by their numbers in the table of all, which is filled when it is asked for.</summary>
    private int[] StatesAt(Position position)
    {
        ref var numbers = ref numbersOf[(position.String * places) + position.Fret];
        if (numbers is null)
        {
            var first = states.Count;
            AddStates(position, states);
            numbers = new int[states.Count - first];
            for (var index = 0; index < numbers.Length; index++)
            {
                var state = states[first + index];
                owns.Add(NoteCost(position, state.Finger, state.Place));
                numbers[index] = first + index;
            }
        }

        return numbers;
    }

    /// <summary>
    /// The ways through a line. Goes through it from the end, so that the least cost from every state on is known; each
    /// state looks at those of the next note from the cheapest on and stops where no step can make up for the difference.
    /// </summary>
    private sealed class Graph : LineGraph
    {
        private readonly LineSolver solver;
        private readonly int[][] columns; // by note: its states, by their number in the table
        private readonly ushort[][] nexts; // what grows with the line is kept small, so that its cost does not
        private readonly Dictionary<IReadOnlyList<Position>, int[]> columnOf = new(BySequence.Instance);
        private readonly double[]?[] toGo; // all of them are kept only where more than one line is asked for
        private readonly Func<int, FingeredNote, double>? extra;
        private readonly IReadOnlyList<bool>? staysOnString;

        public Graph(
            LineSolver solver,
            IReadOnlyList<IReadOnlyList<Position>> candidates,
            bool keepsAll,
            Func<int, FingeredNote, double>? extra,
            IReadOnlyList<bool>? staysOnString
        )
        {
            this.solver = solver;
            this.extra = extra;
            this.staysOnString = staysOnString;
            columns = new int[candidates.Count][];
            nexts = new ushort[candidates.Count][];
            toGo = new double[candidates.Count][];
            var (order, keys) = (Array.Empty<int>(), Array.Empty<double>());
            double[][] buffers =
            [
                [],
                [],
            ];
            for (var layer = candidates.Count - 1; layer >= 0; layer--)
            {
                solver.Cancellation.ThrowIfCancellationRequested();
                var column = columns[layer] = Column(candidates[layer]);
                ref var buffer = ref buffers[layer & 1];
                var costs = toGo[layer] =
                    keepsAll || buffer.Length < column.Length ? new double[column.Length] : buffer;
                buffer = costs;
                nexts[layer] = new ushort[column.Length];
                var after = layer + 1 < columns.Length ? columns[layer + 1] : [];
                for (var state = 0; state < column.Length; state++)
                {
                    var (least, next) =
                        after.Length > 0
                            ? Follow(
                                solver.states[column[state]],
                                after,
                                toGo[layer + 1]!,
                                order.AsSpan(0, after.Length),
                                StaysAt(layer + 1)
                            )
                            : (layer + 1 < columns.Length ? double.PositiveInfinity : 0, 0);
                    costs[state] = Own(layer, column[state]) + least;
                    nexts[layer][state] = (ushort)next;
                }

                Sort(costs, column.Length, ref order, ref keys);
                if (!keepsAll && layer + 1 < columns.Length)
                {
                    toGo[layer + 1] = null;
                }
            }
        }

        public override int Layers => columns.Length;

        public override int Count(int layer) => columns[layer].Length;

        public override FingeredNote Note(int layer, int state) => solver.states[columns[layer][state]];

        public override double ToGo(int layer, int state) => toGo[layer]![state];

        public override int Next(int layer, int state) => nexts[layer][state];

        public override void Steps(int layer, int state, List<(int To, double Cost)> into)
        {
            var from = columns[layer][state];
            var own = Own(layer, from);
            var next = columns[layer + 1];
            var stays = StaysAt(layer + 1);
            for (var to = 0; to < next.Length; to++)
            {
                var cost = solver.StepCost(solver.states[from], solver.states[next[to]]);
                if (
                    cost < double.PositiveInfinity
                    && (!stays || solver.states[from].Position.String == solver.states[next[to]].Position.String)
                )
                {
                    into.Add((to, own + cost));
                }
            }
        }

        private bool StaysAt(int layer) => staysOnString is not null && staysOnString[layer];

        private double Own(int layer, int state) =>
            solver.owns[state] + (extra is null ? 0 : extra(layer, solver.states[state]));

        private int[] Column(IReadOnlyList<Position> positions)
        {
            if (positions is [var only])
            {
                return solver.StatesAt(only);
            }

            if (columnOf.TryGetValue(positions, out var known))
            {
                return known;
            }

            var count = 0;
            foreach (var position in positions)
            {
                count += solver.StatesAt(position).Length;
            }

            var column = new int[count];
            count = 0;
            foreach (var position in positions)
            {
                var states = solver.StatesAt(position);
                states.CopyTo(column, count);
                count += states.Length;
            }

            columnOf.Add(positions, column);
            return column;
        }

        /// <summary>Puts the states in the order of their costs; the buffers grow as needed.</summary>
        private static void Sort(double[] costs, int count, ref int[] order, ref double[] keys)
        {
            if (order.Length < count)
            {
                (order, keys) = (new int[count], new double[count]);
            }

            for (var index = 0; index < count; index++)
            {
                order[index] = index;
            }

            costs.AsSpan(0, count).CopyTo(keys);
            Array.Sort(keys, order, 0, count);
        }

        /// <summary>The least cost after a note, and the state that it goes to: of equals the first.</summary>
        private (double Cost, int Next) Follow(
            FingeredNote note,
            int[] column,
            double[] costs,
            ReadOnlySpan<int> order,
            bool stays
        )
        {
            var (least, next) = (double.PositiveInfinity, 0);
            foreach (var to in order)
            {
                var rest = costs[to];
                if (rest > least)
                {
                    break;
                }

                if (stays && solver.states[column[to]].Position.String != note.Position.String)
                {
                    continue;
                }

                var cost = rest + solver.StepCost(note, solver.states[column[to]]);
                if (cost < least || (cost == least && to < next))
                {
                    (least, next) = (cost, to);
                }
            }

            return (least, next);
        }

        /// <summary>Notes of one pitch have the same positions, and so one column.</summary>
        private sealed class BySequence : IEqualityComparer<IReadOnlyList<Position>>
        {
            public static readonly BySequence Instance = new();

            public bool Equals(IReadOnlyList<Position>? x, IReadOnlyList<Position>? y) =>
                x is not null && y is not null && x.SequenceEqual(y);

            public int GetHashCode(IReadOnlyList<Position> obj) =>
                obj.Count == 0 ? 0 : HashCode.Combine(obj.Count, obj[0], obj[^1]);
        }
    }
}
