using TheoryKit.Fingering.Hands;
using TheoryKit.Paths;
using TheoryKit.Paths.Joins;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Progressions;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Tests.Paths.Joins;

/// <summary>
/// The joined line played note by note as the words of the rules say it, with no use of the library's shapes or states: the second way to
/// the same answer.
/// </summary>
internal sealed class JoinWalker
{
    private readonly string rule;
    private readonly Window window;
    private readonly Neck neck;
    private readonly List<(int Index, int[] Tones, int Notes, bool IsParted)> stops = [];
    private readonly NoteName firstRoot;

    public JoinWalker(Changes changes, Neck neck, Window window, Func<ChordSpan, int> notes, JoinRule rule)
    {
        (this.neck, this.window, this.rule) = (neck, window, rule.Name);
        for (var index = 0; index < changes.Chords.Count; index++)
        {
            var span = changes.Chords[index];
            if (span.Chord is { } chord && TonesOf(neck, window, chord) is { Length: > 0 } tones)
            {
                stops.Add((index, tones, notes(span), false));
            }
        }

        for (var stop = 0; stop < stops.Count; stop++)
        {
            var (here, next) = (stops[stop].Index, stops[(stop + 1) % stops.Count].Index);
            stops[stop] = stops[stop] with { IsParted = (here + 1) % changes.Chords.Count != next };
        }

        firstRoot = stops.Count > 0 ? changes.Chords[stops[0].Index].Chord!.Root : default;
    }

    public int Stops => stops.Count;

    /// <summary>Two directions for every tone at every place.</summary>
    public int States => stops.Sum(static stop => 2 * stop.Tones.Length);

    public int[] FirstTones => stops[0].Tones;

    /// <summary>What sounds in the window, rising.</summary>
    public static int[] TonesOf(Neck neck, Window window, Chord chord)
    {
        var sounds = new SortedSet<int>();
        for (var number = 1; number <= neck.StringCount; number++)
        {
            for (var fret = window.First; fret <= window.Last; fret++)
            {
                if (
                    neck.Has(new(number, fret))
                    && neck.MidiNumberAt(new(number, fret)) is var midi
                    && chord.Formula.Any(degree => (midi - chord.Root.PitchClass - degree.PitchClass) % 12 == 0)
                )
                {
                    sounds.Add(midi);
                }
            }
        }

        return [.. sounds];
    }

    /// <summary>Chord after chord without end.</summary>
    public IEnumerable<Played> Walk(int? start = null, Direction direction = Direction.Up)
    {
        var roots = stops[0].Tones.Where(tone => (tone - firstRoot.PitchClass) % 12 == 0).ToArray();
        var (entry, going) = (start ?? (roots.Length > 0 ? roots[0] : stops[0].Tones[0]), direction);
        JoinWay? way = null;
        for (var at = 0; ; at = (at + 1) % stops.Count)
        {
            var (_, tones, count, isParted) = stops[at];
            var notes = new List<int> { entry };
            Direction? onward = null;
            while (notes.Count < count)
            {
                // The next tone in the direction of travel; at the last one turn round, without repeating it.
                if (Next(tones, notes[^1], going) is not { } next)
                {
                    if (tones.Length == 1)
                    {
                        notes.Add(entry);
                        continue;
                    }

                    going = Turn(going);
                    next = Next(tones, notes[^1], going)!.Value;
                }

                onward ??= going;
                notes.Add(next);
            }

            var following = stops[(at + 1) % stops.Count].Tones;
            var last = notes[^1];
            var (entered, then, joined) = Enter(following, last, going);
            int? approach = null;
            if (rule == "semitone approach" && count > 1 && !isParted && entered != last)
            {
                var leading = entered > last ? entered - 1 : entered + 1;
                if (leading != last && leading != notes[^2] && IsInWindow(leading))
                {
                    approach = leading;
                    notes[^1] = leading;
                }
            }

            yield return new(at, [.. notes], onward ?? going, way, last, entered, joined, approach);
            (entry, going, way) = (entered, then, joined);
        }
    }

    /// <summary>
    /// Every join by place and pitch classes: from each tone, in each direction in which another tone of the shape lies behind it.
    /// </summary>
    public HashSet<(int Stop, int Last, int Entered)> PossibleJoins()
    {
        var joins = new HashSet<(int, int, int)>();
        for (var at = 0; at < stops.Count; at++)
        {
            foreach (var tone in stops[at].Tones)
            {
                foreach (var going in new[] { Direction.Up, Direction.Down })
                {
                    if (stops[at].Tones.Length == 1 || Next(stops[at].Tones, tone, Turn(going)) is not null)
                    {
                        var entered = Enter(stops[(at + 1) % stops.Count].Tones, tone, going).Entry;
                        joins.Add((at, tone % 12, entered % 12));
                    }
                }
            }
        }

        return joins;
    }

    private (int Entry, Direction Direction, JoinWay Way) Enter(int[] tones, int last, Direction going)
    {
        var (ahead, behind) = (Next(tones, last, going), Next(tones, last, Turn(going)));
        if (rule == "common tone held" && tones.Contains(last))
        {
            return (last, going, JoinWay.Held);
        }

        if (rule == "nearest either way" && ahead is { } one && behind is { } other)
        {
            return Math.Abs(one - last) <= Math.Abs(other - last)
                ? (one, going, JoinWay.WentOn)
                : (other, Turn(going), JoinWay.Turned);
        }

        return ahead is { } on ? (on, going, JoinWay.WentOn)
            : behind is { } back ? (back, Turn(going), JoinWay.Turned)
            : (last, going, JoinWay.Held);
    }

    private bool IsInWindow(int midi)
    {
        for (var number = 1; number <= neck.StringCount; number++)
        {
            for (var fret = window.First; fret <= window.Last; fret++)
            {
                if (neck.Has(new(number, fret)) && neck.MidiNumberAt(new(number, fret)) == midi)
                {
                    return true;
                }
            }
        }

        return false;
    }

    private static int? Next(int[] tones, int from, Direction going)
    {
        var beyond = tones.Where(tone => going == Direction.Up ? tone > from : tone < from).ToArray();
        return beyond.Length == 0 ? null
            : going == Direction.Up ? beyond.Min()
            : beyond.Max();
    }

    private static Direction Turn(Direction going) => going == Direction.Up ? Direction.Down : Direction.Up;

    /// <summary>A chord as it is played.</summary>
    /// <param name="Stop">Which of the places that sound.</param>
    /// <param name="Notes">What sounds.</param>
    /// <param name="Direction">In which direction it goes on from the entry.</param>
    /// <param name="Way">How it was entered.</param>
    /// <param name="Last">The tone it is left from.</param>
    /// <param name="Entered">Where it leads.</param>
    /// <param name="Joined">And how.</param>
    /// <param name="Approach">What is played in place of the last tone.</param>
    public sealed record Played(
        int Stop,
        int[] Notes,
        Direction Direction,
        JoinWay? Way,
        int Last,
        int Entered,
        JoinWay Joined,
        int? Approach
    )
    {
        public (int, int, Direction) State => (Stop, Notes[0], Direction);
    }
}
