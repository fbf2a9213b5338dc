using TheoryKit.Fingering.Grips;
using TheoryKit.Fingering.Hands;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Benchmarks;

/// <summary>
/// The plain search for grips: window by window every choice of muted, open or a fret for every string, and for each that
/// sounds the chord every function from held strings to the four fingers. No step is skipped because of the one before.
/// </summary>
internal static class PlainGrips
{
    /// <summary>How many grips there are, each once, by their frets.</summary>
    public static HashSet<string> Find(GripQuery query)
    {
        var neck = query.Neck;
        var strings = neck.StringCount;
        var last = Math.Min(query.LastFret ?? neck.Frets, neck.Frets);
        var found = new HashSet<string>();
        var tips = Enumerable.Range(0, neck.Frets + 1).Select(fret => fret == 0 ? 0 : Tip(neck, fret)).ToArray();
        var tones = query.Chord.Tones.Select(static tone => tone.PitchClass).ToHashSet();
        var optional = GripQuery.CommonlyOptional(query.Chord.Formula);
        var required = query
            .Chord.Formula.Where(degree => !optional.Contains(degree))
            .Select(degree => (query.Chord.Root.PitchClass + degree.PitchClass) % 12)
            .ToArray();
        var frets = new int[strings]; // string 1 first; -1 muted
        for (var first = 1; first <= last; first++)
        {
            var highest = first;
            while (highest < last && tips[highest + 1] - tips[first] <= query.Hand.IndexToLittle)
            {
                highest++;
            }

            Choose(0, first, highest);
        }

        return found;

        void Choose(int index, int first, int highest)
        {
            if (index == strings)
            {
                if (Sounds() && Holds())
                {
                    found.Add(string.Join(' ', frets));
                }

                return;
            }

            frets[index] = -1;
            Choose(index + 1, first, highest);
            frets[index] = 0;
            Choose(index + 1, first, highest);
            for (var fret = first; fret <= highest; fret++)
            {
                frets[index] = fret;
                Choose(index + 1, first, highest);
            }
        }

        bool Sounds()
        {
            var (lowest, classes, count, from, to) = (int.MaxValue, 0, 0, 0, 0);
            for (var index = 0; index < strings; index++)
            {
                if (frets[index] < 0)
                {
                    continue;
                }

                var midi = neck.Tuning[index + 1].Open.MidiNumber + frets[index];
                if (!tones.Contains(midi % 12))
                {
                    return false;
                }

                (lowest, classes, from, to) = (
                    Math.Min(lowest, midi),
                    classes | (1 << (midi % 12)),
                    count == 0 ? index : from,
                    index
                );
                count++;
            }

            return count >= query.MinSounding
                && to - from + 1 == count
                && lowest % 12 == query.Chord.Bass.PitchClass
                && required.All(tone => (classes & (1 << tone)) != 0);
        }

        bool Holds()
        {
            var held = Enumerable.Range(0, strings).Where(index => frets[index] > 0).ToArray();
            var fingers = new int[held.Length];
            return Assign(0);

            bool Assign(int index)
            {
                if (index == held.Length)
                {
                    return Reaches();
                }

                for (fingers[index] = 1; fingers[index] <= 4; fingers[index]++)
                {
                    var finger = fingers[index];
                    if (Assign(index + 1))
                    {
                        return true;
                    }

                    fingers[index] = finger;
                }

                return false;
            }

            bool Reaches()
            {
                for (var i = 0; i < held.Length; i++)
                {
                    for (var j = i + 1; j < held.Length; j++)
                    {
                        if (fingers[i] == fingers[j])
                        {
                            var most = fingers[i] == 1 ? query.Hand.BarreStrings : query.Hand.OtherBarreStrings;
                            if (frets[held[i]] != frets[held[j]] || held[j] - held[i] + 1 > most)
                            {
                                return false;
                            }

                            for (var between = held[i] + 1; between < held[j]; between++)
                            {
                                if (
                                    frets[between] < frets[held[i]]
                                    || (
                                        frets[between] == frets[held[i]]
                                        && fingers[Array.IndexOf(held, between)] != fingers[i]
                                    )
                                )
                                {
                                    return false;
                                }
                            }
                        }
                        else if ((fingers[i] - fingers[j]) * (frets[held[i]] - frets[held[j]]) < 0)
                        {
                            return false;
                        }
                        else
                        {
                            var along = tips[frets[held[i]]] - tips[frets[held[j]]];
                            var across = 8.0 * Gap(fingers[i], fingers[j]);
                            if (
                                Math.Sqrt((along * along) + (across * across))
                                > query.Hand.Reach((Finger)fingers[i], (Finger)fingers[j])
                            )
                            {
                                return false;
                            }
                        }
                    }
                }

                return true;
            }

            int Gap(int one, int other)
            {
                int Low(int finger) => held.Where((_, at) => fingers[at] == finger).Min();
                int High(int finger) => held.Where((_, at) => fingers[at] == finger).Max();
                return Math.Max(0, Math.Max(Low(one) - High(other), Low(other) - High(one)));
            }
        }
    }

    private static double Tip(Neck neck, int fret)
    {
        var (here, before) = (neck.FretDistance(fret), neck.FretDistance(fret - 1));
        return here - Math.Min(8, (here - before) / 2);
    }
}
