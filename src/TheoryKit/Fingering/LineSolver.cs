using System.Collections.Immutable;
using TheoryKit.Tunings;

namespace TheoryKit.Fingering;

/// <summary>
/// The least-effort fingers, and where there is a choice positions, for a line of notes played one after the other: dynamic
/// programming over (position, finger, place of the hand), exact, the k best.
/// </summary>
/// <remarks>
/// The model. With the hand at a place the index finger is at home at that fret; every other finger plays frets from there
/// on, as far as its reach from the index finger goes. A note costs its finger and its spread from home. Between notes the
/// hand may shift; the same finger letting go, rolling and crossing strings cost what <see cref="EffortWeights"/> says.
/// Without a shift two neighbouring notes keep the order of the fingers and their reach.
/// </remarks>
internal sealed class LineSolver
{
    private readonly HandOnNeck hand;
    private readonly EffortWeights weights;
    private readonly int firstPlace;
    private readonly int lastPlace;
    private readonly int? preferred;

    // The cheapest way to a note costs, by place: the hand's own part of every shift.
    private readonly double[] shift;
    private readonly int places;

    public LineSolver(HandOnNeck hand, int firstPlace = 1, int lastPlace = int.MaxValue, int? preferred = null)
    {
        this.hand = hand;
        weights = hand.Hand.Weights;
        this.firstPlace = Math.Max(1, firstPlace);
        this.lastPlace = Math.Min(lastPlace, hand.Neck.Frets);
        this.preferred = preferred is { } place ? Math.Clamp(place, 1, hand.Neck.Frets) : null;
        places = hand.Neck.Frets + 1;
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

    /// <summary>The cost of a note by itself; infinite if that finger can't play it from that place.</summary>
    public double NoteCost(Position position, Finger? finger, int place)
    {
        var away = preferred is { } home ? weights.Preference * Math.Abs(hand.Tip(place) - hand.Tip(home)) / 1000 : 0;
        if (finger is not { } held)
        {
            return away;
        }

        if (position.Fret < place || (held == Finger.Index && position.Fret != place))
        {
            return double.PositiveInfinity;
        }

        var spread =
            held == Finger.Index ? 0 : hand.Spread(Finger.Index, held, hand.Tip(position.Fret) - hand.Tip(place), 0);
        return weights.Of(held) + spread + away;
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

        if (from.Place == to.Place)
        {
            var (low, high) = before < after ? (from, to) : (to, from);
            var along = hand.Tip(high.Position.Fret) - hand.Tip(low.Position.Fret);
            if (
                low.Position.Fret > high.Position.Fret
                || hand.Excess(
                    low.Finger!.Value,
                    high.Finger!.Value,
                    along,
                    Math.Abs(low.Position.String - high.Position.String)
                ) > 0
            )
            {
                return double.PositiveInfinity;
            }
        }

        return cost;
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

    /// <summary>The <paramref name="best"/> least-effort ways through the line, from the least; none if there is no way.</summary>
    /// <param name="candidates">For each note the positions it may be played at.</param>
    /// <param name="best">How many, at least 1.</param>
    public IReadOnlyList<FingeredLine> Solve(IReadOnlyList<IReadOnlyList<Position>> candidates, int best = 1)
    {
        if (candidates.Count == 0)
        {
            return [new([], 0)];
        }

        var columns = new Column[candidates.Count];
        var states = new List<FingeredNote>();
        for (var index = 0; index < candidates.Count; index++)
        {
            states.Clear();
            foreach (var position in candidates[index])
            {
                AddStates(position, states);
            }

            var column = columns[index] = new(states.ToArray(), best);
            for (var to = 0; to < column.States.Length; to++)
            {
                var note = column.States[to];
                var own = NoteCost(note.Position, note.Finger, note.Place);
                if (index == 0)
                {
                    column.Offer(to, own, -1);
                    continue;
                }

                var before = columns[index - 1];
                for (var from = 0; from < before.States.Length; from++)
                {
                    var least = before.Least(from) + own;
                    if (least >= column.Worst(to))
                    {
                        continue;
                    }

                    var step = own + StepCost(before.States[from], note);
                    for (var rank = 0; rank < best; rank++)
                    {
                        var total = before.Cost(from, rank) + step;
                        if (total >= column.Worst(to))
                        {
                            break;
                        }

                        column.Offer(to, total, (from * best) + rank);
                    }
                }
            }
        }

        return Ends(columns, best);
    }

    private static List<FingeredLine> Ends(Column[] columns, int best)
    {
        var last = columns[^1];
        var ends = new List<(double Cost, int Slot)>();
        for (var slot = 0; slot < last.States.Length * best; slot++)
        {
            if (last.Cost(slot / best, slot % best) < double.PositiveInfinity)
            {
                ends.Add((last.Cost(slot / best, slot % best), slot));
            }
        }

        var lines = new List<FingeredLine>();
        foreach (var (cost, end) in ends.Order().Take(best))
        {
            var notes = new FingeredNote[columns.Length];
            var slot = end;
            for (var index = columns.Length - 1; index >= 0; index--)
            {
                notes[index] = columns[index].States[slot / best];
                slot = columns[index].From(slot);
            }

            lines.Add(new(ImmutableArray.Create(notes), cost));
        }

        return lines;
    }

    /// <summary>One note's states, each with the best costs up to it and where they come from.</summary>
    private sealed class Column
    {
        private readonly int best;
        private readonly double[] costs;
        private readonly int[] froms;

        public Column(FingeredNote[] states, int best)
        {
            States = states;
            this.best = best;
            costs = new double[states.Length * best];
            froms = new int[costs.Length];
            Array.Fill(costs, double.PositiveInfinity);
        }

        public FingeredNote[] States { get; }

        public double Cost(int state, int rank) => costs[(state * best) + rank];

        public double Least(int state) => costs[state * best];

        public double Worst(int state) => costs[(state * best) + best - 1];

        public int From(int slot) => froms[slot];

        /// <summary>Keeps a way if it is among the best; of equals the one offered first stays before.</summary>
        public void Offer(int state, double cost, int from)
        {
            var first = state * best;
            var at = first + best - 1;
            if (cost >= costs[at])
            {
                return;
            }

            for (; at > first && costs[at - 1] > cost; at--)
            {
                (costs[at], froms[at]) = (costs[at - 1], froms[at - 1]);
            }

            (costs[at], froms[at]) = (cost, from);
        }
    }
}
