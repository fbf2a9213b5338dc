using System.Runtime.InteropServices;
using TheoryKit.Fingering.Hands;

namespace TheoryKit.Fingering.Grips;

/// <summary>
/// Every way to hold, leave open or mute the strings of a neck that a hand can do under some limits, from the least effort
/// up: what a grip costs does not depend on the tuning, so one list serves all of them. It is made in stages of effort, as
/// far as it is asked for; any thread may ask.
/// </summary>
internal sealed class GripPatterns
{
    public const byte Muted = byte.MaxValue;

    // Up to which effort each stage goes; few questions come to the last.
    private static readonly double[] Stages = [3, 6, 9, 12, 18, double.PositiveInfinity];

    private readonly HandOnNeck hand;
    private readonly GripLimits limits;
    private readonly int[] lowestOpen; // by string number the lowest pitch at fret 0 in any of the tunings
    private readonly ParallelOptions parallel;
    private readonly Lock sync = new();
    private volatile Part known;
    private int stage;

    /// <param name="hand">The hand on the neck, in whatever tuning.</param>
    /// <param name="limits">What is asked of every grip.</param>
    /// <param name="lowestOpen">By string number the lowest pitch that fret 0 has in any of the tunings.</param>
    /// <param name="parallel">How many threads may work at it, and what ends it.</param>
    public GripPatterns(HandOnNeck hand, GripLimits limits, int[] lowestOpen, ParallelOptions parallel)
    {
        this.parallel = parallel;
        this.hand = hand;
        this.limits = limits;
        this.lowestOpen = lowestOpen;
        Strings = hand.Neck.StringCount;
        known = new(0, double.NegativeInfinity, [], [], [], []);
    }

    public int Strings { get; }

    /// <summary>What is known so far; it grows with <see cref="After"/>.</summary>
    public Part Known => known;

    /// <summary>Up to which effort the patterns are known: all others cost more.</summary>
    public double KnownEffort => known.Most;

    /// <summary>More than is in <paramref name="part"/>; null if that is all.</summary>
    public Part? After(Part part)
    {
        lock (sync)
        {
            while (known.Count <= part.Count && stage < Stages.Length)
            {
                Extend(stage == 0 ? double.NegativeInfinity : Stages[stage - 1], Stages[stage]);
                stage++;
            }

            return known.Count > part.Count ? known : null;
        }
    }

    private void Extend(double over, double most)
    {
        var windows = Windows();
        var stages = new Stage[windows.Count];
        Parallel.For(
            0,
            stages.Length,
            parallel,
            index => stages[index] = new Stage(hand, limits, over, most, windows[index], parallel.CancellationToken)
        );
        var order = stages
            .SelectMany(static (each, window) => Enumerable.Range(0, each.Efforts.Count).Select(at => (window, at)))
            .ToArray();
        var keys = Array.ConvertAll(order, each => stages[each.window].Efforts[each.at]);
        Array.Sort(keys, order);
        var (before, count) = (known.Count, known.Count + order.Length);
        var efforts = new double[count];
        var frets = new byte[count * Strings];
        var sounding = new ushort[count];
        var lowest = new short[count * (Strings + 1)];
        known.Efforts.AsSpan(0, before).CopyTo(efforts);
        known.Frets.AsSpan(0, before * Strings).CopyTo(frets);
        known.Sounding.AsSpan(0, before).CopyTo(sounding);
        known.Lowest.AsSpan(0, before * (Strings + 1)).CopyTo(lowest);
        for (var index = before; index < count; index++)
        {
            var (window, at) = order[index - before];
            efforts[index] = keys[index - before];
            stages[window].FretsOf(at).CopyTo(frets.AsSpan(index * Strings));
            var low = short.MaxValue;
            lowest[index * (Strings + 1)] = low;
            for (var number = 1; number <= Strings; number++)
            {
                var fret = frets[(index * Strings) + number - 1];
                if (fret != Muted)
                {
                    sounding[index] |= (ushort)(1 << (number - 1));
                    low = (short)Math.Min(low, lowestOpen[number] + fret);
                }

                lowest[(index * (Strings + 1)) + number] = low;
            }
        }

        known = new(count, most, efforts, frets, sounding, lowest);
    }

    /// <summary>The lowest frets that a grip can hold, and before them null: no fret is held.</summary>
    private List<int?> Windows()
    {
        var windows = new List<int?>();
        if (limits.OpenStrings != OpenStrings.None)
        {
            windows.Add(null);
        }

        if (limits.OpenStrings != OpenStrings.Only)
        {
            var last = Math.Min(limits.LastFret ?? hand.Neck.Frets, hand.Neck.Frets);
            for (var lowest = Math.Max(hand.LowestFret, limits.FirstFret); lowest <= last; lowest++)
            {
                windows.Add(lowest);
            }
        }

        return windows;
    }

    /// <summary>The patterns up to some effort.</summary>
    /// <param name="Count">How many.</param>
    /// <param name="Most">The effort.</param>
    /// <param name="Efforts">What each costs, ascending.</param>
    /// <param name="Frets">For each, string 1 first, the fret or <see cref="Muted"/>.</param>
    /// <param name="Sounding">For each a bit for each string that sounds, string 1 the lowest.</param>
    /// <param name="Lowest">For each, by number n, the lowest pitch that strings 1 to n could have in any of the tunings.</param>
    public sealed record Part(
        int Count,
        double Most,
        double[] Efforts,
        byte[] Frets,
        ushort[] Sounding,
        short[] Lowest
    );

    /// <summary>Goes through one window, as <see cref="GripSearch"/> does for one chord, for the patterns within a range of effort.</summary>
    private sealed class Stage
    {
        private readonly GripLimits limits;
        private readonly double over;
        private readonly double most;
        private readonly GripSolver solver;
        private readonly HandWindow window;
        private readonly int strings;
        private readonly int[] open;
        private readonly int[] frets;
        private readonly List<byte> found = [];
        private readonly bool isOpenOnly;
        private readonly CancellationToken cancellation;
        private readonly double mostFingers;

        public Stage(
            HandOnNeck hand,
            GripLimits limits,
            double over,
            double most,
            int? lowest,
            CancellationToken cancellation
        )
        {
            this.cancellation = cancellation;
            this.limits = limits;
            this.over = over;
            this.most = most;
            solver = new(hand);
            var neck = hand.Neck;
            window = new(hand, Math.Min(limits.LastFret ?? neck.Frets, neck.Frets), limits.MaxFingers);
            strings = neck.StringCount;
            open = hand.OpenFrets;
            frets = new int[strings + 1];
            mostFingers = Math.Min(
                most / hand.Hand.Weights.LeastFinger,
                Math.Min(limits.MaxFingers, hand.Hand.ThumbOver ? HandOnNeck.Fingers : HandOnNeck.Fingers - 1)
            );
            isOpenOnly = lowest is null;
            if (lowest is { } from)
            {
                window.MoveTo(from);
            }

            From(strings, 0, 0, 0, 0, isOpenOnly, false);
        }

        public List<double> Efforts { get; } = [];

        public ReadOnlySpan<byte> FretsOf(int index) =>
            CollectionsMarshal.AsSpan(found).Slice(index * strings, strings);

        /// <summary>Goes through what the strings from this one down to string 1 can do.</summary>
        /// <param name="number">The string.</param>
        /// <param name="sounding">How many strings sound so far.</param>
        /// <param name="rows">The frets held so far, a bit for each from the lowest of the window.</param>
        /// <param name="flat">Of these the ones at which the last finger could hold this string too, lying flat.</param>
        /// <param name="fingers">How many fingers that takes at least.</param>
        /// <param name="held">Whether the lowest fret of the window is held, or need not be.</param>
        /// <param name="muted">Whether the string before is silent after one that sounds.</param>
        private void From(int number, int sounding, ulong rows, ulong flat, int fingers, bool held, bool muted)
        {
            if (number == 0)
            {
                if (held && sounding >= limits.MinSounding)
                {
                    Finish();
                }

                return;
            }

            if (number == strings - 2)
            {
                cancellation.ThrowIfCancellationRequested();
            }

            var isOver = muted && !limits.InnerMutes;
            if (sounding + number < limits.MinSounding || (isOver && (sounding < limits.MinSounding || !held)))
            {
                return;
            }

            if (sounding < limits.MaxSounding && !isOver && limits.MaySound(number))
            {
                if (limits.OpenStrings != OpenStrings.None)
                {
                    frets[number] = GripSolver.Open;
                    From(number - 1, sounding + 1, rows, 0, fingers, held, false);
                }

                if (!isOpenOnly)
                {
                    for (var fret = Math.Max(window.Lowest, open[number] + 1); fret <= window.Highest; fret++)
                    {
                        var row = 1UL << (fret - window.Lowest);
                        var more = fingers + ((flat & row) == 0 ? 1 : 0);
                        if (more <= mostFingers && window.CanHold(rows | row))
                        {
                            frets[number] = fret;
                            // Under a flat finger strings are held at its fret or higher.
                            var still = row | (flat & (row - 1));
                            From(
                                number - 1,
                                sounding + 1,
                                rows | row,
                                still,
                                more,
                                held || fret == window.Lowest,
                                false
                            );
                        }
                    }
                }
            }

            if (!(limits.AllStrings && limits.MaySound(number)))
            {
                frets[number] = GripSolver.Muted;
                From(number - 1, sounding, rows, 0, fingers, held, sounding > 0);
            }
        }

        private void Finish()
        {
            var effort = solver.Solve(frets, strings, limits.MaxFingers, most);
            if (effort <= over || double.IsPositiveInfinity(effort))
            {
                return;
            }

            Efforts.Add(effort);
            for (var number = 1; number <= strings; number++)
            {
                found.Add(
                    frets[number] switch
                    {
                        GripSolver.Muted => Muted,
                        GripSolver.Open => (byte)open[number],
                        var fret => (byte)fret,
                    }
                );
            }
        }
    }
}
