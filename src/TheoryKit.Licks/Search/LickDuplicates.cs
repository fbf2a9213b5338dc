using System.Collections.Immutable;

namespace TheoryKit.Licks.Search;

/// <summary>Finds licks that are the same but for key and register, and those that are nearly, without comparing every two.</summary>
internal static class LickDuplicates
{
    private const int Run = 3;

    public static IReadOnlyList<SimilarLicks> Find(ImmutableArray<KeptLick> licks, LickFacts[] facts, double least)
    {
        // Equal lines first: one of each stands for all of them.
        var same = Enumerable
            .Range(0, licks.Length)
            .GroupBy(index => facts[index].Line)
            .Select(static each => each.ToArray());
        int[][] lines = [.. same];
        var likeness = lines.Select(static _ => 1.0).ToArray();
        var leader = Enumerable.Range(0, lines.Length).ToArray();
        if (least < 1)
        {
            foreach (var (first, second, value) in Near([.. lines.Select(line => facts[line[0]])], least))
            {
                var (a, b) = (Leader(leader, first), Leader(leader, second));
                leader[Math.Max(a, b)] = Math.Min(a, b);
                likeness[Math.Min(a, b)] = Math.Min(value, Math.Min(likeness[a], likeness[b]));
            }
        }

        return
        [
            .. Enumerable
                .Range(0, lines.Length)
                .GroupBy(line => Leader(leader, line))
                .Select(group => new SimilarLicks
                {
                    Licks = [.. group.SelectMany(line => lines[line]).Order().Select(index => licks[index])],
                    Likeness = likeness[group.Key],
                })
                .Where(static group => group.Licks.Count > 1)
                .OrderByDescending(static group => group.Likeness)
                .ThenBy(static group => group.Licks[0].Lick.Name, StringComparer.Ordinal),
        ];
    }

    private static int Leader(int[] leader, int line)
    {
        while (leader[line] != line)
        {
            line = leader[line] = leader[leader[line]];
        }

        return line;
    }

    private static IEnumerable<(int First, int Second, double Value)> Near(LickFacts[] facts, double least)
    {
        var runs = new (long[] All, int Fewest)[facts.Length];
        Parallel.For(0, facts.Length, index => runs[index] = RunsOf(facts[index]));
        var places = new Dictionary<long, List<int>>();
        for (var index = 0; index < facts.Length; index++)
        {
            foreach (var run in runs[index].All)
            {
                if (!places.TryGetValue(run, out var list))
                {
                    places[run] = list = [];
                }

                list.Add(index);
            }
        }

        var found = new List<(int, int, double)>[facts.Length];
        Parallel.For(
            0,
            facts.Length,
            () => (Shared: new int[facts.Length], Touched: new List<int>()),
            (index, _, scratch) =>
            {
                var here = found[index] = [];
                var count = facts[index].Line.Steps.Count;
                foreach (var run in runs[index].All)
                {
                    foreach (var other in places[run])
                    {
                        if (other >= index)
                        {
                            break;
                        }

                        if (scratch.Shared[other]++ == 0)
                        {
                            scratch.Touched.Add(other);
                        }
                    }
                }

                foreach (var other in scratch.Touched)
                {
                    var shared = scratch.Shared[other];
                    scratch.Shared[other] = 0;
                    var others = facts[other].Line.Steps.Count;
                    var room = Likeness.Room(least, count, others);

                    // A note too many or too few spoils as many runs as it is part of.
                    var needed = Math.Max(1, Math.Max(runs[index].Fewest, runs[other].Fewest) - (Run * (room + 1)));
                    if (
                        shared >= needed
                        && Math.Abs(count - others) <= room
                        && Likeness.AtLeast(least, facts[index].Line, facts[other].Line) is { } value
                    )
                    {
                        here.Add((index, other, value));
                    }
                }

                scratch.Touched.Clear();
                return scratch;
            },
            static _ => { }
        );
        return found.SelectMany(static pairs => pairs);
    }

    /// <summary>The runs of steps in a line, each once, in two kinds: by semitones and by letters; and how many there are of the kind that has fewer.</summary>
    private static (long[] All, int Fewest) RunsOf(LickFacts facts)
    {
        var runs = new HashSet<long>();
        var cents = facts.Line.Cents;
        for (var start = 1; start + Run <= cents.Length; start++)
        {
            var run = 1L;
            for (var index = start; index < start + Run; index++)
            {
                // 16 bits each hold any step and a dead note.
                run = (run << 16) | (ushort)(cents[index] == LickLine.Apart ? short.MinValue : cents[index] / 50);
            }

            runs.Add(run);
        }

        var ofSemitones = runs.Count;
        var letters = facts.Sounding;
        for (var start = 1; start + Run <= letters.Length; start++)
        {
            var run = 2L;
            for (var index = start; index < start + Run; index++)
            {
                run = (run << 16) | (ushort)(StepOf(letters[index].Pitch) - StepOf(letters[index - 1].Pitch));
            }

            runs.Add(run);
        }

        return ([.. runs], Math.Min(ofSemitones, runs.Count - ofSemitones));
    }

    private static int StepOf(TheoryKit.Theory.Notes.Pitch pitch) => (7 * pitch.Octave) + (int)pitch.Name.Letter;
}
