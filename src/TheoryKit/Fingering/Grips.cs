using System.Numerics;
using TheoryKit.Theory;
using TheoryKit.Tunings;

namespace TheoryKit.Fingering;

/// <summary>Finds every grip that a question asks for.</summary>
public static class Grips
{
    /// <summary>
    /// All grips under the limits of the question, each with its least-effort fingers, from the least effort up; none
    /// beyond the hand's reach. Grips of the same effort stand in the order of their frets.
    /// </summary>
    public static GripAnswer Find(GripQuery query)
    {
        ArgumentNullException.ThrowIfNull(query);
        var found = new Search(query, query.Hand).Run();
        return new(query, found);
    }

    /// <summary>The grips of a chord on a neck, for an average hand and with the defaults of <see cref="GripQuery"/>.</summary>
    public static GripAnswer Grip(this Chord chord, Neck neck, Hand? hand = null) =>
        Find(
            new()
            {
                Chord = chord,
                Neck = neck,
                Hand = hand ?? Hand.Average,
            }
        );

    /// <summary>Whether a question has an answer, whatever the hand's reach has to do with it.</summary>
    internal static bool Any(GripQuery query) => new Search(query, query.Hand).Run().Count > 0;

    /// <summary>
    /// How many mm the reach between some two fingers lacks for the nearest grip, if reach is all that is in the way; else
    /// null.
    /// </summary>
    internal static double? NearestMiss(GripQuery query)
    {
        // By halving: the least that, added to every reach, gives an answer.
        const double limit = 250;
        const double precision = 0.25;
        if (!Any(query with { Hand = query.Hand.Reaching(limit) }))
        {
            return null;
        }

        var (low, high) = (0.0, limit);
        while (high - low > precision)
        {
            var middle = (low + high) / 2;
            (low, high) = Any(query with { Hand = query.Hand.Reaching(middle) }) ? (low, middle) : (middle, high);
        }

        return high;
    }

    internal sealed class Search
    {
        private readonly GripQuery query;
        private readonly HandOnNeck hand;
        private readonly GripSolver solver;
        private readonly int strings;
        private readonly int lastFret;
        private readonly int[] frets;
        private readonly sbyte[] toneAt; // by string number * stride + fret: the tone's place in the formula, -1 for none
        private readonly int stride;
        private readonly int[] open;
        private readonly int[] openMidi;
        private readonly bool[] maySound;
        private readonly uint required;
        private readonly int bass; // pitch class, or -1 for any
        private readonly int? top;
        private readonly uint[] reachable; // by string number: tones on this and the lower-numbered strings in the window
        private readonly List<ChordGrip> found = [];
        private int lowest;
        private int highest;

        public Search(GripQuery query, Hand hand)
        {
            this.query = query;
            this.hand = new(query.Neck, hand);
            solver = new(this.hand);
            var neck = query.Neck;
            strings = neck.StringCount;
            lastFret = Math.Min(query.LastFret ?? neck.Frets, neck.Frets);
            frets = new int[strings + 1];
            open = this.hand.OpenFrets;
            stride = neck.Frets + 1;
            toneAt = new sbyte[(strings + 1) * stride];
            openMidi = new int[strings + 1];
            maySound = new bool[strings + 1];
            reachable = new uint[strings + 1];
            var formula = query.Chord.Formula;
            var optional = query.Optional ?? GripQuery.CommonlyOptional(formula);
            Span<sbyte> toneOf = stackalloc sbyte[12];
            toneOf.Fill(-1);
            var tone = (sbyte)0;
            foreach (var degree in formula)
            {
                var pitchClass = (query.Chord.Root.PitchClass + degree.PitchClass) % 12;
                if (toneOf[pitchClass] < 0)
                {
                    toneOf[pitchClass] = tone;
                    required |= optional.Contains(degree) ? 0u : 1u << tone;
                    tone++;
                }
            }

            var asked = query.Bass ?? query.Chord.Bass;
            bass = query.AnyBass ? -1 : asked.PitchClass;
            if (!query.AnyBass && toneOf[bass] < 0)
            {
                toneOf[bass] = tone;
                foreign = tone;
            }

            top = query.Top?.MidiNumber;
            for (var number = 1; number <= strings; number++)
            {
                maySound[number] = query.Strings?.Contains(number) != false;
                openMidi[number] = neck.Tuning[number].Open.MidiNumber - neck.Tuning[number].Start;
                for (var fret = 0; fret < stride; fret++)
                {
                    toneAt[(number * stride) + fret] =
                        maySound[number] && fret >= open[number]
                            ? toneOf[Diatonic.Modulo(openMidi[number] + fret, 12)]
                            : (sbyte)-1;
                }
            }
        }

        private readonly int foreign = -1; // the bass of a slash chord that is no tone of it: only lowest

        public List<ChordGrip> Run()
        {
            if (query.OpenStrings != OpenStrings.None)
            {
                (lowest, highest) = (1, 0);
                From(strings, 0, 0, int.MaxValue, int.MinValue, 0, false, false);
            }

            if (query.OpenStrings != OpenStrings.Only)
            {
                var span = MaxSpan();
                for (lowest = Math.Max(1, query.FirstFret); lowest <= lastFret; lowest++)
                {
                    highest = lowest;
                    while (highest < lastFret && hand.Tip(highest + 1) - hand.Tip(lowest) <= span)
                    {
                        highest++;
                    }

                    SumReachable();
                    From(strings, 0, 0, int.MaxValue, int.MinValue, 0, false, false);
                }
            }

            found.Sort(
                static (one, other) =>
                {
                    var byEffort = one.Effort.CompareTo(other.Effort);
                    if (byEffort != 0)
                    {
                        return byEffort;
                    }

                    for (var at = 0; at < one.Grip.Strings.Count; at++)
                    {
                        var byFret = (one.Grip.Strings[at].Fret ?? -1).CompareTo(other.Grip.Strings[at].Fret ?? -1);
                        if (byFret != 0)
                        {
                            return byFret;
                        }
                    }

                    return 0;
                }
            );
            return found;
        }

        private double MaxSpan()
        {
            var span = 0.0;
            for (var low = hand.Hand.ThumbOver ? Finger.Thumb : Finger.Index; low < Finger.Little; low++)
            {
                for (var high = low + 1; high <= Finger.Little; high++)
                {
                    span = Math.Max(span, hand.Reach(low, high));
                }
            }

            return span;
        }

        private void SumReachable()
        {
            var tones = 0u;
            for (var number = 1; number <= strings; number++)
            {
                if (
                    query.OpenStrings == OpenStrings.Allowed
                    && toneAt[(number * stride) + open[number]] is >= 0 and var atOpen
                )
                {
                    tones |= 1u << atOpen;
                }

                for (var fret = Math.Max(lowest, open[number] + 1); fret <= highest; fret++)
                {
                    if (toneAt[(number * stride) + fret] is >= 0 and var tone)
                    {
                        tones |= 1u << tone;
                    }
                }

                reachable[number] = tones;
            }
        }

        /// <summary>Goes through what the strings from this one down to string 1 can do.</summary>
        private void From(int number, uint tones, int sounding, int low, int high, int lowTone, bool held, bool muted)
        {
            if (number == 0)
            {
                Finish(tones, sounding, low, high, lowTone, held);
                return;
            }

            var missing = BitOperations.PopCount(required & ~tones);
            if (
                missing > number
                || sounding + number < query.MinSounding
                || (lowest <= highest && (required & ~tones & ~reachable[number]) != 0)
            )
            {
                return;
            }

            if (sounding < query.MaxSounding && (!muted || query.InnerMutes || sounding == 0))
            {
                if (query.OpenStrings != OpenStrings.None)
                {
                    Sound(number, open[number], GripSolver.Open, tones, sounding, low, high, lowTone, held);
                }

                for (var fret = Math.Max(lowest, open[number] + 1); fret <= highest; fret++)
                {
                    Sound(number, fret, fret, tones, sounding, low, high, lowTone, held || fret == lowest);
                }
            }

            if (!(query.AllStrings && query.Strings is not null && maySound[number]))
            {
                frets[number] = GripSolver.Muted;
                From(number - 1, tones, sounding, low, high, lowTone, held, sounding > 0);
            }
        }

        private void Sound(
            int number,
            int fret,
            int how,
            uint tones,
            int sounding,
            int low,
            int high,
            int lowTone,
            bool held
        )
        {
            int tone = toneAt[(number * stride) + fret];
            if (tone < 0)
            {
                return;
            }

            var midi = openMidi[number] + fret;
            if (midi > top)
            {
                return;
            }

            frets[number] = how;
            From(
                number - 1,
                tones | (1u << tone),
                sounding + 1,
                Math.Min(low, midi),
                Math.Max(high, midi),
                midi < low ? tone : lowTone,
                held,
                false
            );
        }

        private void Finish(uint tones, int sounding, int low, int high, int lowTone, bool held)
        {
            if (
                sounding < query.MinSounding
                || (required & ~tones) != 0
                || (lowest <= highest && !held)
                || (bass >= 0 && low % 12 != bass)
                || (top is { } asked && high != asked)
                || (foreign >= 0 && !OnlyLowestIsForeign(low))
            )
            {
                return;
            }

            var effort = solver.Solve(frets, strings, query.MaxFingers);
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

            found.Add(new(query.Chord, query.Neck, new(grip), effort));
        }

        /// <summary>Whether the bass that is no tone of the chord sounds once, lowest.</summary>
        private bool OnlyLowestIsForeign(int low)
        {
            for (var number = 1; number <= strings; number++)
            {
                var fret = frets[number] == GripSolver.Open ? open[number] : frets[number];
                if (fret >= 0 && toneAt[(number * stride) + fret] == foreign && openMidi[number] + fret != low)
                {
                    return false;
                }
            }

            return true;
        }
    }
}
