using System.Collections.Immutable;
using TheoryKit.Fingering.Hands;

namespace TheoryKit.Fingering.Grips;

/// <summary>The chord of a progression that has no grip. Equal when both agree.</summary>
/// <param name="Index">Which, from 0.</param>
/// <param name="Reason">Why; null where the grips to choose from were given, and none were.</param>
public sealed record ChordWithoutGrip(int Index, NoGripReason? Reason);

/// <summary>One grip for each chord of a progression, chosen so that effort plus motion is least; found by <see cref="ProgressionSearch"/>.</summary>
public sealed class GripProgression
{
    private GripProgression(ImmutableArray<ChordGrip> grips, double cost, ChordWithoutGrip? reason = null) =>
        (Grips, Cost, Reason) = (grips, cost, reason);

    /// <summary>The grips in order; empty where some chord has none.</summary>
    public IReadOnlyList<ChordGrip> Grips { get; }

    /// <summary>The effort of all grips and the motion between them.</summary>
    public double Cost { get; }

    /// <summary>The chord that has no grip, and why; null where every chord has one.</summary>
    public ChordWithoutGrip? Reason { get; }

    /// <summary>The progression among the grips given for each question, which may be fewer than all that answer it; at the first with none it ends.</summary>
    internal static GripProgression Join(IEnumerable<(GripQuery Question, IReadOnlyList<ChordGrip> Grips)> among)
    {
        var columns = new List<Column>();
        foreach (var (question, choice) in among)
        {
            if (choice.Count == 0)
            {
                return new([], 0, new(columns.Count, (choice as GripAnswer)?.Reason));
            }

            var column = new Column(choice, question);
            if (columns.Count > 0)
            {
                column.Follow(columns[^1]);
            }

            columns.Add(column);
        }

        if (columns.Count == 0)
        {
            return new([], 0);
        }

        var last = columns[^1];
        var at = 0;
        for (var index = 1; index < last.Costs.Length; index++)
        {
            at = last.Costs[index] < last.Costs[at] ? index : at;
        }

        var cost = last.Costs[at];
        var grips = new ChordGrip[columns.Count];
        for (var index = columns.Count - 1; index >= 0; index--)
        {
            grips[index] = columns[index].Grips[at];
            at = columns[index].From[at];
        }

        return new(ImmutableArray.Create(grips), cost);
    }

    /// <summary>
    /// The least total motion in semitones between two sets of pitches, each ascending, in which every pitch of both has a
    /// voice. Voices never need to cross for the least total, so neighbours decide: dynamic programming over both lists.
    /// </summary>
    internal static int VoiceMotion(ReadOnlySpan<int> from, ReadOnlySpan<int> to)
    {
        Span<int> row = stackalloc int[to.Length];
        for (var i = 0; i < from.Length; i++)
        {
            var diagonal = 0;
            for (var j = 0; j < to.Length; j++)
            {
                var above = row[j];
                var least =
                    i == 0 && j == 0 ? 0
                    : i == 0 ? row[j - 1]
                    : j == 0 ? above
                    : Math.Min(diagonal, Math.Min(above, row[j - 1]));
                row[j] = least + Math.Abs(from[i] - to[j]);
                diagonal = above;
            }
        }

        return row[^1];
    }

    private sealed class Column
    {
        private readonly HandOnNeck hand;
        private readonly EffortWeights weights;
        private readonly int[][] pitches;
        private readonly double[] at; // where the hand is, in mm; NaN with nothing held

        public Column(IReadOnlyList<ChordGrip> answer, GripQuery question)
        {
            hand = new(question.Neck, question.Hand);
            weights = question.Hand.Weights;
            Grips = [.. answer];
            Costs = [.. answer.Select(static grip => grip.Effort)];
            From = new int[Costs.Length];
            pitches =
            [
                .. answer.Select(static grip => grip.Places.Select(static place => place.Pitch.MidiNumber).ToArray()),
            ];
            at = [.. answer.Select(grip => grip.Grip.LowestFret is { } fret ? hand.Tip(fret) : double.NaN)];
        }

        public ChordGrip[] Grips { get; }

        public double[] Costs { get; }

        public int[] From { get; }

        /// <summary>Joins each grip to the one before that makes the least of both and the motion; of equals the first.</summary>
        public void Follow(Column before)
        {
            // From the cheapest on: beyond the best so far no motion, which is never negative, can make up for the rest.
            var order = Enumerable.Range(0, before.Costs.Length).ToArray();
            Array.Sort((double[])before.Costs.Clone(), order);
            for (var index = 0; index < Grips.Length; index++)
            {
                var (best, from) = (double.PositiveInfinity, -1);
                foreach (var other in order)
                {
                    if (before.Costs[other] > best)
                    {
                        break;
                    }

                    var cost = before.Costs[other] + Motion(before, other, index);
                    if (cost < best || (cost == best && other < from))
                    {
                        (best, from) = (cost, other);
                    }
                }

                Costs[index] += best;
                From[index] = from;
            }
        }

        private double Motion(Column before, int from, int to)
        {
            var voices = weights.VoiceStep * VoiceMotion(before.pitches[from], pitches[to]);
            var way = Math.Abs(before.at[from] - at[to]);
            return double.IsNaN(way) || way == 0
                ? voices
                : voices + weights.Shift + (weights.ShiftDistance * way / 1000);
        }
    }
}
