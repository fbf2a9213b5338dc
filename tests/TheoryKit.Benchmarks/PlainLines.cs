using TheoryKit.Fingering.Hands;
using TheoryKit.Fingering.Lines;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Benchmarks;

/// <summary>The plain way to finger a line: every finger and place of the hand for every note, all of them in turn.</summary>
internal static class PlainLines
{
    public static double LeastEffort(Neck neck, Hand hand, Position[] positions)
    {
        var weights = hand.Weights;
        return Least(0, default, 0);

        double Least(int index, FingeredNote before, double cost)
        {
            if (index == positions.Length)
            {
                return cost;
            }

            var least = double.PositiveInfinity;
            for (var place = 1; place <= positions[index].Fret; place++)
            {
                for (var finger = Finger.Index; finger <= Finger.Little; finger++)
                {
                    var note = new FingeredNote(positions[index], finger, place);
                    var total = cost + Note(note) + (index == 0 ? 0 : Step(before, note));
                    if (total < double.PositiveInfinity)
                    {
                        least = Math.Min(least, Least(index + 1, note, total));
                    }
                }
            }

            return least;
        }

        double Note(FingeredNote note) =>
            note.Finger == Finger.Index
                ? note.Position.Fret == note.Place
                    ? weights.Index
                    : double.PositiveInfinity
                : weights.Of(note.Finger!.Value)
                    + (weights.Upper * Math.Max(0, note.Position.Fret - EffortWeights.UpperFret))
                    + Spread(Finger.Index, note.Finger.Value, Tip(note.Position.Fret) - Tip(note.Place), 0);

        double Step(FingeredNote from, FingeredNote to)
        {
            var crossed = Math.Abs(from.Position.String - to.Position.String);
            var cost = weights.StringCrossing * crossed;
            var shifts = from.Place != to.Place;
            cost += shifts
                ? weights.Shift + (weights.ShiftDistance * Math.Abs(Tip(from.Place) - Tip(to.Place)) / 1000)
                : 0;
            if (from.Finger == to.Finger)
            {
                return cost
                    + (
                        from.Position == to.Position ? 0
                        : from.Position.Fret == to.Position.Fret ? weights.Roll
                        : shifts && crossed == 0 ? 0
                        : weights.SameFinger
                    );
            }

            if (shifts)
            {
                return cost;
            }

            var (low, high) = from.Finger < to.Finger ? (from, to) : (to, from);
            var spread = Spread(
                low.Finger!.Value,
                high.Finger!.Value,
                Tip(high.Position.Fret) - Tip(low.Position.Fret),
                crossed
            );
            return low.Position.Fret > high.Position.Fret || double.IsInfinity(spread) ? double.PositiveInfinity
                : low.Finger == Finger.Index ? cost
                : cost + spread;
        }

        double Spread(Finger low, Finger high, double along, int strings)
        {
            var distance = Math.Sqrt((along * along) + (64 * strings * strings));
            var (reach, rest) = (hand.Reach(low, high), hand.Rest * (high - low));
            return distance > reach ? double.PositiveInfinity
                : distance < rest ? weights.Crowding * Math.Pow((rest - distance) / rest, 2)
                : weights.Stretch * Math.Pow((distance - rest) / (reach - rest), 3);
        }

        double Tip(int fret)
        {
            var (here, before) = (neck.FretDistance(fret), neck.FretDistance(fret - 1));
            return here - Math.Min(8, (here - before) / 2);
        }
    }
}
