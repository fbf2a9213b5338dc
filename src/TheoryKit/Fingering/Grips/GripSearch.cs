using System.Numerics;
using TheoryKit.Fingering.Hands;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Fingering.Grips;

/// <summary>Finds every grip that a question asks for.</summary>
public static class GripSearch
{
    // How far beyond the hand the search for the nearest grip goes, and how fine, in mm.
    private const double FarthestMiss = 100;
    private const double Precision = 0.25;

    /// <summary>
    /// All grips under the limits of the question, each with its least-effort fingers, from the least effort up; none
    /// beyond the hand's reach. Grips of the same effort stand in the order of their frets, string 1 first.
    /// </summary>
    /// <remarks>
    /// Exact: every choice of muted, open and held strings is gone through, but for those that a limit already rules out
    /// half way.
    /// </remarks>
    /// <exception cref="ArgumentException">The question contradicts itself or the neck.</exception>
    public static GripAnswer Find(GripQuery query)
    {
        ArgumentNullException.ThrowIfNull(query);
        query.Validate();
        return new(query, new Search(query, new(query.Neck, query.Hand)).Run());
    }

    /// <summary>The grips of a chord on a neck, with the defaults of <see cref="GripQuery"/>, from the least effort up.</summary>
    /// <param name="chord">The chord.</param>
    /// <param name="neck">The neck.</param>
    /// <param name="hand">The hand; the average one if null.</param>
    public static GripAnswer Grips(this Chord chord, Neck neck, Hand? hand = null) =>
        Find(
            new()
            {
                Chord = chord,
                Neck = neck,
                Hand = hand ?? Hand.Average,
            }
        );

    /// <summary>The first answer, for a caller that has the hand on the neck already; null if there is none.</summary>
    internal static ChordGrip? Best(GripQuery query, HandOnNeck hand) =>
        new Search(query, hand) { OnlyBest = true }.Run() is [var best, ..] ? best : null;

    /// <summary>The answers whose lowest held fret is the first that may be held, if there is one behind the capo; no others.</summary>
    internal static IReadOnlyList<ChordGrip> FromFirstFret(GripQuery query)
    {
        query.Validate();
        return new Search(query, new(query.Neck, query.Hand)) { OnlyFirstFret = true }.Run();
    }

    /// <summary>Whether a question has an answer.</summary>
    internal static bool Any(GripQuery query) => Best(query, new(query.Neck, query.Hand)) is not null;

    /// <summary>
    /// The grip for which the hand's reach lacks least, if reach is all that is in the way: what it lacks between which
    /// fingers, in mm; else null.
    /// </summary>
    internal static Miss? NearestMiss(GripQuery query)
    {
        if (!Any(query with { Hand = query.Hand.Reaching(FarthestMiss) }))
        {
            return null;
        }

        // By halving: the least that, added to every reach, gives an answer.
        var (low, high) = (0.0, FarthestMiss);
        while (high - low > Precision)
        {
            var middle = (low + high) / 2;
            (low, high) = Any(query with { Hand = query.Hand.Reaching(middle) }) ? (low, middle) : (middle, high);
        }

        var nearest = Best(query, new(query.Neck, query.Hand.Reaching(high)))!;
        return new HandOnNeck(query.Neck, query.Hand).WorstExcess(nearest.Grip) is var (one, other, excess)
            ? new(nearest.Grip, one, other, excess)
            : null;
    }

    /// <summary>A grip that is out of reach: between which two fingers most, and by how many mm.</summary>
    internal sealed record Miss(Grip Grip, Finger One, Finger Other, double Excess);

    private sealed class Search
    {
        private readonly GripQuery query;
        private readonly Chord chord;
        private readonly GripSolver solver;
        private readonly int strings;
        private readonly int[] frets;
        private readonly sbyte[] toneAt; // by string number * stride + fret: the tone's place in the formula, -1 for none
        private readonly int stride;
        private readonly int[] open;
        private readonly int[] openMidi;
        private readonly GripTones tones;
        private readonly int? top;

        // Of a string and all lower-numbered ones in the window, by string number: what can still come.
        private readonly uint[] reachable; // tones
        private readonly bool[] hasLowest; // a tone at the lowest fret
        private readonly int[] lowestBass; // the lowest pitch that the bass asked for has
        private readonly bool[] hasTop; // the highest pitch asked for

        private readonly HandWindow window;
        private readonly int mostFingers;
        private readonly List<Found> found = [];
        private int lowest;
        private int highest;
        private double bestEffort = double.PositiveInfinity;

        public Search(GripQuery query, HandOnNeck hand)
        {
            this.query = query;
            solver = new(hand);
            var neck = query.Neck;
            window = new(hand, Math.Min(query.LastFret ?? neck.Frets, neck.Frets), query.MaxFingers);
            mostFingers = Math.Min(query.MaxFingers, hand.Hand.ThumbOver ? HandOnNeck.Fingers : HandOnNeck.Fingers - 1);
            strings = neck.StringCount;
            frets = new int[strings + 1];
            open = hand.OpenFrets;
            stride = neck.Frets + 1;
            toneAt = new sbyte[(strings + 1) * stride];
            openMidi = new int[strings + 1];
            reachable = new uint[strings + 1];
            hasLowest = new bool[strings + 1];
            lowestBass = new int[strings + 1];
            hasTop = new bool[strings + 1];
            chord = query.Bass is { } other && !query.AnyBass ? query.Chord.Over(other) : query.Chord;
            tones = new(chord, query.Optional, query.AnyBass);
            top = query.Top?.MidiNumber;
            for (var number = 1; number <= strings; number++)
            {
                openMidi[number] = neck.Tuning[number].Open.MidiNumber - neck.Tuning[number].Start;
                var may = query.MaySound(number);
                var pitchClass = Diatonic.Modulo(openMidi[number], 12);
                for (var fret = 0; fret < stride; fret++)
                {
                    toneAt[(number * stride) + fret] = may && fret >= open[number] ? tones.At[pitchClass] : (sbyte)-1;
                    pitchClass = pitchClass == 11 ? 0 : pitchClass + 1;
                }
            }
        }

        /// <summary>Whether the best answer alone is wanted.</summary>
        public bool OnlyBest { get; init; }

        /// <summary>Whether only grips are wanted whose lowest fret is the first one that may be held.</summary>
        public bool OnlyFirstFret { get; init; }

        public List<ChordGrip> Run()
        {
            if (query.OpenStrings != OpenStrings.None)
            {
                (lowest, highest) = (1, 0);
                if (Prepare())
                {
                    From(strings, 0, 0, int.MaxValue, int.MinValue, default, true, false);
                }
            }

            if (query.OpenStrings != OpenStrings.Only)
            {
                var first = Math.Max(window.LowestFret, query.FirstFret);
                var last = OnlyFirstFret ? Math.Min(first, window.LastFret) : window.LastFret;
                for (var from = first; from <= last; from++)
                {
                    window.MoveTo(from);
                    (lowest, highest) = (window.Lowest, window.Highest);
                    if (Prepare())
                    {
                        From(strings, 0, 0, int.MaxValue, int.MinValue, default, false, false);
                    }
                }
            }

            found.Sort();
            return found.ConvertAll(each => new ChordGrip(chord, query.Neck, Grip.Owning(each.Strings), each.Effort));
        }

        /// <summary>Sums up what the strings have in the window; false if that is not enough for any grip.</summary>
        private bool Prepare()
        {
            lowestBass[0] = int.MaxValue;
            for (var number = 1; number <= strings; number++)
            {
                reachable[number] = reachable[number - 1];
                hasLowest[number] = hasLowest[number - 1];
                lowestBass[number] = lowestBass[number - 1];
                hasTop[number] = hasTop[number - 1];
                if (query.OpenStrings != OpenStrings.None)
                {
                    Note(number, open[number]);
                }

                for (var fret = Math.Max(lowest, open[number] + 1); fret <= highest; fret++)
                {
                    Note(number, fret);
                    hasLowest[number] |= fret == lowest && toneAt[(number * stride) + fret] >= 0;
                }
            }

            return (tones.Required & ~reachable[strings]) == 0
                && (hasLowest[strings] || lowest > highest)
                && (tones.Bass < 0 || lowestBass[strings] < int.MaxValue)
                && (top is null || hasTop[strings]);
        }

        private void Note(int number, int fret)
        {
            if (toneAt[(number * stride) + fret] is >= 0 and var tone)
            {
                reachable[number] |= 1u << tone;
                var midi = openMidi[number] + fret;
                if (tones.Bass >= 0 && Diatonic.Modulo(midi, 12) == tones.Bass)
                {
                    lowestBass[number] = Math.Min(lowestBass[number], midi);
                }

                hasTop[number] |= midi == top;
            }
        }

        /// <summary>Goes through what the strings from this one down to string 1 can do.</summary>
        /// <param name="number">The string.</param>
        /// <param name="heard">The tones that sound so far.</param>
        /// <param name="sounding">How many strings do.</param>
        /// <param name="low">The lowest pitch so far.</param>
        /// <param name="high">The highest.</param>
        /// <param name="hold">What the hand holds so far.</param>
        /// <param name="held">Whether the lowest fret of the window is held, or need not be.</param>
        /// <param name="muted">Whether the string before is silent after one that sounds.</param>
        private void From(int number, uint heard, int sounding, int low, int high, Hold hold, bool held, bool muted)
        {
            if (number == 0)
            {
                if (held)
                {
                    Finish(heard, sounding, low, high);
                }

                return;
            }

            var missing = tones.Required & ~heard;
            if (
                (missing & ~reachable[number]) != 0
                || BitOperations.PopCount(missing) > number
                || sounding + number < query.MinSounding
                || (!held && !hasLowest[number])
                || (
                    tones.Bass >= 0
                    && lowestBass[number] > low
                    && (low == int.MaxValue || Diatonic.Modulo(low, 12) != tones.Bass)
                )
                || (top is { } asked && high != asked && !hasTop[number])
            )
            {
                return;
            }

            var isOver = muted && !query.InnerMutes;
            if (isOver && (missing != 0 || sounding < query.MinSounding || !held))
            {
                return;
            }

            if (sounding < query.MaxSounding && !isOver)
            {
                if (query.OpenStrings != OpenStrings.None)
                {
                    var loose = hold with { Flat = 0 };
                    Sound(number, open[number], GripSolver.Open, heard, sounding, low, high, loose, held);
                }

                for (var fret = Math.Max(lowest, open[number] + 1); fret <= highest; fret++)
                {
                    var more = hold.With(1UL << (fret - lowest));
                    if (more.Fingers <= mostFingers && window.CanHold(more.Rows))
                    {
                        Sound(number, fret, fret, heard, sounding, low, high, more, held || fret == lowest);
                    }
                }
            }

            if (!(query.AllStrings && query.MaySound(number)))
            {
                frets[number] = GripSolver.Muted;
                From(number - 1, heard, sounding, low, high, hold with { Flat = 0 }, held, sounding > 0);
            }
        }

        private void Sound(
            int number,
            int fret,
            int how,
            uint heard,
            int sounding,
            int low,
            int high,
            Hold hold,
            bool held
        )
        {
            int tone = toneAt[(number * stride) + fret];
            var midi = openMidi[number] + fret;
            if (tone < 0 || midi > top)
            {
                return;
            }

            frets[number] = how;
            From(
                number - 1,
                heard | (1u << tone),
                sounding + 1,
                Math.Min(low, midi),
                Math.Max(high, midi),
                hold,
                held,
                muted: false
            );
        }

        private void Finish(uint heard, int sounding, int low, int high)
        {
            if (
                sounding < query.MinSounding
                || (tones.Required & ~heard) != 0
                || (tones.Bass >= 0 && Diatonic.Modulo(low, 12) != tones.Bass)
                || (top is { } asked && high != asked)
                || (tones.Foreign >= 0 && !IsForeignOnce())
            )
            {
                return;
            }

            var effort = solver.Solve(
                frets,
                strings,
                query.MaxFingers,
                OnlyBest ? bestEffort : double.PositiveInfinity
            );
            if (double.IsPositiveInfinity(effort))
            {
                return;
            }

            Span<Finger?> fingers = stackalloc Finger?[Position.MaxString + 1];
            solver.Write(fingers);
            var grip = new GripString[strings];
            for (var number = 1; number <= strings; number++)
            {
                grip[number - 1] = frets[number] switch
                {
                    GripSolver.Muted => GripString.Muted,
                    GripSolver.Open => GripString.Open(open[number]),
                    var fret => GripString.Held(fret, fingers[number]!.Value),
                };
            }

            if (effort < bestEffort)
            {
                bestEffort = effort;
                if (OnlyBest)
                {
                    found.Clear();
                }
            }

            found.Add(new(effort, grip));
        }

        /// <summary>Whether the bass that is no tone of the chord sounds once; that it is lowest is known.</summary>
        private bool IsForeignOnce()
        {
            var count = 0;
            for (var number = 1; number <= strings; number++)
            {
                var fret = frets[number] == GripSolver.Open ? open[number] : frets[number];
                count += fret >= 0 && toneAt[(number * stride) + fret] == tones.Foreign ? 1 : 0;
            }

            return count == 1;
        }
    }

    /// <summary>What the hand holds.</summary>
    /// <param name="Rows">The frets, a bit for each from the lowest of the window.</param>
    /// <param name="Flat">Of these the ones at which a finger could hold the next string too, lying flat.</param>
    /// <param name="Fingers">How many fingers that takes at least.</param>
    internal readonly record struct Hold(ulong Rows, ulong Flat, int Fingers)
    {
        /// <summary>One string more, at the fret of this bit: under a flat finger strings are held at its fret or higher.</summary>
        public Hold With(ulong row) => new(Rows | row, row | (Flat & (row - 1)), Fingers + ((Flat & row) == 0 ? 1 : 0));
    }

    private readonly record struct Found(double Effort, GripString[] Strings) : IComparable<Found>
    {
        public int CompareTo(Found other)
        {
            var byEffort = Effort.CompareTo(other.Effort);
            for (var at = 0; byEffort == 0 && at < Strings.Length; at++)
            {
                byEffort = (Strings[at].Fret ?? -1).CompareTo(other.Strings[at].Fret ?? -1);
            }

            return byEffort;
        }
    }
}
