using System.Collections.Concurrent;
using System.Collections.Immutable;
using TheoryKit.Fingering.Grips;
using TheoryKit.Fingering.Hands;
using TheoryKit.Fingering.Lines;
using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Necks;
using TheoryKit.Tunings.Strings;

namespace TheoryKit.Fingering.Retuning;

/// <summary>
/// The tunings in which a hand has the least effort with a tune, over all tunings within some semitones of a base, exactly.
/// </summary>
/// <remarks>
/// What a grip costs depends on its frets and not on the tuning, so all that a hand can hold is listed once, from the least
/// effort up. Strings are tuned one after the other, from the highest number down. Each chord keeps those patterns that can
/// still sound it; the first of them bounds what the chord costs in any tuning that begins like that, and the patterns are
/// shared by all of them. A beginning whose bounds add up to more than the worst tuning wanted is left out whole. A line is
/// bounded by the effort it has where every undecided string has all its tunings at once.
/// <para>
/// Before anything is listed it is looked whether the requirements and the line leave any tuning at all. Where they leave few,
/// each of these is worked out by itself. Where more than <see cref="MostStringsListed"/> strings may sound there is no other
/// way, as a hand has too many patterns there.
/// </para>
/// <para>
/// Among tunings with the same score the one that is retuned less comes first, then the one whose highest-numbered strings are
/// lower. The answer and all of its counts are the same on any number of threads.
/// </para>
/// </remarks>
public static class TuningSearch
{
    /// <summary>Where more strings may sound, 8, what a hand can hold is not listed: few tunings can be gone through.</summary>
    public const int MostStringsListed = 8;

    /// <summary>How many grips at most are looked for where more strings may sound: chords times tunings that have what is required.</summary>
    public const int MostGripsUnlisted = 5000;

    /// <summary>Finds the best tunings.</summary>
    /// <param name="query">What is asked.</param>
    /// <param name="progress">Told, at most a thousand times, how far the search is; from any thread, one call at a time.</param>
    /// <param name="threads">How many threads work on it; null for one for each processor.</param>
    /// <param name="cancellation">Ends the search.</param>
    /// <exception cref="ArgumentException">The question contradicts itself or the neck, or asks for more than
    /// <see cref="TuningQuery.MaxSpace"/> tunings, or of more than <see cref="MostGripsUnlisted"/> grips where more than
    /// <see cref="MostStringsListed"/> strings may sound.</exception>
    /// <exception cref="OperationCanceledException">The search was ended.</exception>
    public static TuningAnswer Find(
        TuningQuery query,
        IProgress<TuningProgress>? progress = null,
        int? threads = null,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(query);
        query.Validate();
        if (threads is { } count)
        {
            ArgumentOutOfRangeException.ThrowIfLessThan(count, 1, nameof(threads));
        }

        return new Search(query, progress, threads ?? Environment.ProcessorCount, cancellation).Run();
    }

    /// <summary>The whole search: what all threads share.</summary>
    private sealed class Search
    {
        // How many strings a unit of work has decided. The batches after which all units learn of the best so far do not
        // depend on the number of threads, so that neither does what is cut off.
        private const int UnitStrings = 2;
        private const int LargestBatch = 16;

        // Tunings in which each chord has a grip of so little effort at most are looked for first: they need fewer patterns.
        private static readonly double[] EffortsOfSeeds = [6, 9, 12, 18, double.PositiveInfinity];

        // To look for so many grips by themselves takes no longer than to list all that a hand can hold.
        private const int MostGripsByThemselves = 1500;

        private readonly IProgress<TuningProgress>? progress;
        private readonly ParallelOptions parallel;
        private readonly Lock sync = new();
        private readonly Dictionary<TuningLimit, long> cutByString = [];
        private long decided;
        private long told = -1;
        private Candidate? leader;

        public Search(
            TuningQuery query,
            IProgress<TuningProgress>? progress,
            int threads,
            CancellationToken cancellation
        )
        {
            Query = query;
            this.progress = progress;
            parallel = new() { MaxDegreeOfParallelism = threads, CancellationToken = cancellation };
            Cancellation = cancellation;
            var neck = query.Base;
            Strings = neck.StringCount;
            Space = 1;
            for (var number = 1; number <= Strings; number++)
            {
                Space *= (2 * query.Within) + 1;
            }

            Allowed = new IReadOnlyList<int>[Strings + 1];
            Open = new int[Strings + 1];
            var lowest = new int[Strings + 1];
            // The highest-numbered string first, as they are decided: a tuning counts for the first limit that it meets.
            var (before, after) = (1L, Space);
            for (var number = Strings; number >= 1; number--)
            {
                var each = neck.Tuning[number];
                Open[number] = each.Open.MidiNumber - each.Start;
                after /= (2 * query.Within) + 1;
                // The least change first: good tunings are near, and the earlier they are found the more is cut off.
                var allowed = new List<int>();
                for (var distance = 0; distance <= query.Within; distance++)
                {
                    foreach (var offset in distance == 0 ? [0] : new[] { -distance, distance })
                    {
                        if (LimitOf(query, number, offset) is { } limit)
                        {
                            cutByString[limit] = cutByString.GetValueOrDefault(limit) + (before * after);
                        }
                        else
                        {
                            allowed.Add(offset);
                        }
                    }
                }

                Allowed[number] = allowed;
                before *= allowed.Count;
                lowest[number] = Open[number] + allowed.DefaultIfEmpty().Min();
            }

            Patterns = new(new(neck, query.Hand), query.Limits, lowest, parallel);
            Tones =
            [
                .. query.Chords.Select(each => new GripTones(each.Chord, query.Limits.Optional, query.Limits.AnyBass)),
            ];
            Best = new(query.Best + 1);
        }

        public TuningQuery Query { get; }

        public CancellationToken Cancellation { get; }

        public int Strings { get; }

        public long Space { get; }

        /// <summary>By string number the semitones by which it may be retuned.</summary>
        public IReadOnlyList<int>[] Allowed { get; }

        /// <summary>By string number the pitch of fret 0 in the base.</summary>
        public int[] Open { get; }

        public GripPatterns Patterns { get; }

        public GripTones[] Tones { get; }

        public Ranking Best { get; private set; }

        public TuningAnswer Run()
        {
            Tell(cutByString.Values.Sum());
            if (Allowed.Skip(1).Any(static each => each.Count == 0))
            {
                return Answer([]);
            }

            var first = new Worker(this);
            if (first.IsImpossible())
            {
                return Answer([first]);
            }

            var sounding = Enumerable.Range(1, Strings).Count(Query.Limits.MaySound);
            var isListed = sounding <= MostStringsListed || Tones.Length == 0;
            var most = (isListed ? MostGripsByThemselves : MostGripsUnlisted) / Math.Max(1, Tones.Length);
            if (first.Few(most) is { } few)
            {
                return OneByOne(first, few);
            }

            if (!isListed)
            {
                throw new ArgumentException(
                    FormattableString.Invariant(
                        $"On {sounding} strings a hand has too many ways to hold something for all of them to be listed, so that no more than {most:N0} tunings can be gone through, one by one; ask for fewer semitones, fewer strings retuned, more strings that stay, or for grips of {MostStringsListed} strings at most."
                    ),
                    nameof(TuningQuery.Within)
                );
            }

            Seed(first);
            var units = Units(first);
            var idle = new ConcurrentBag<Worker>();
            var size = 2;
            for (var from = 0; from < units.Count; from += size, size = Math.Min(2 * size, LargestBatch))
            {
                var batch = units.GetRange(from, Math.Min(size, units.Count - from));
                var found = new Ranking[batch.Count];
                Parallel.For(
                    0,
                    batch.Count,
                    parallel,
                    index =>
                    {
                        var worker = idle.TryTake(out var other) ? other : new(this);
                        found[index] = worker.Run(batch[index]);
                        idle.Add(worker);
                    }
                );
                foreach (var ranking in found)
                {
                    Best.Add(ranking);
                }
            }

            return Answer([first, .. idle]);
        }

        /// <summary>Works out each of these tunings by itself.</summary>
        private TuningAnswer OneByOne(Worker first, List<ImmutableArray<int>> tunings)
        {
            var idle = new ConcurrentBag<Worker>();
            var found = new Candidate?[tunings.Count];
            Parallel.For(
                0,
                tunings.Count,
                parallel,
                index =>
                {
                    var worker = idle.TryTake(out var other) ? other : new(this);
                    found[index] = worker.ByItself(tunings[index]);
                    Tell(1, found[index]);
                    idle.Add(worker);
                }
            );
            foreach (var candidate in found)
            {
                Best.Add(candidate);
            }

            return Answer([first, .. idle]);
        }

        /// <summary>The limit that keeps a string from being retuned so; null for none.</summary>
        private static TuningLimit? LimitOf(TuningQuery query, int number, int offset)
        {
            var each = query.Base.Tuning[number];
            var midi = each.Open.MidiNumber + offset;
            if (midi is < 0 or > TuningString.MaxMidiNumber)
            {
                return new TuningLimit.BeyondPitches();
            }

            if (query.Strings is not { } fitted)
            {
                return null;
            }

            var limits = query.TensionLimits;
            var tension = fitted[number].TensionAt(Pitch.FromMidi(midi), query.Base.OpenLength(number));
            return limits.StateOf(tension, fitted[number].BreakingPart(tension)) switch
            {
                StringState.Comfortable => null,
                StringState.Slack => new TuningLimit.TooSlack(limits.Lightest),
                StringState.Heavy => new TuningLimit.TooTight(limits.Heaviest),
                _ => new TuningLimit.NearBreaking(limits.MostOfBreaking),
            };
        }

        /// <summary>Tells how far it is: so many tunings more are decided.</summary>
        public void Tell(long more, Candidate? best = null)
        {
            var now = Interlocked.Add(ref decided, more);
            if (progress is null || (best is null && now * 1000 / Space == Volatile.Read(ref told)))
            {
                return;
            }

            lock (sync)
            {
                leader = best is not null && (leader is null || best.CompareTo(leader) < 0) ? best : leader;
                var all = Volatile.Read(ref decided);
                if (all * 1000 / Space > told)
                {
                    Volatile.Write(ref told, all * 1000 / Space);
                    progress.Report(new(all, Space, leader?.Found(Query)));
                }
            }
        }

        /// <summary>
        /// Some good tunings to begin with, by changing one string at a time from the best of those that are known and the
        /// base: they decide nothing, but the better they are the more is cut off.
        /// </summary>
        private void Seed(Worker worker)
        {
            var known = Tuning
                .Known.Select(static each => each.Tuning)
                .Where(each => each.StringCount == Strings)
                .Prepend(Query.Base.Tuning)
                .Select(each => Enumerable.Range(1, Strings).Select(number => OffsetTo(each, number)).ToArray())
                .Where(AllAllowed)
                .ToList();
            foreach (var most in EffortsOfSeeds)
            {
                known.ForEach(offsets => Best.Add(worker.Evaluate(offsets, most)));
                for (var at = Best.First; at is not null; at = Best.First == at ? null : Best.First)
                {
                    Cancellation.ThrowIfCancellationRequested();
                    for (var number = 1; number <= Strings; number++)
                    {
                        foreach (var offset in Allowed[number])
                        {
                            Best.Add(worker.Evaluate([.. at.Offsets.SetItem(number - 1, offset)], most));
                        }
                    }
                }

                if (Best.IsFull)
                {
                    return;
                }
            }
        }

        private int OffsetTo(Tuning tuning, int number) =>
            tuning[number].Start == Query.Base.Tuning[number].Start
                ? tuning[number].Open.MidiNumber - Query.Base.Tuning[number].Open.MidiNumber
                : int.MaxValue;

        private bool AllAllowed(int[] offsets) =>
            Enumerable.Range(1, Strings).All(number => Allowed[number].Contains(offsets[number - 1]));

        /// <summary>The beginnings that are worked on by themselves, the most promising first.</summary>
        private List<Unit> Units(Worker worker)
        {
            var units = new List<Unit>();
            worker.Split(Math.Min(UnitStrings, Strings), Best, units);
            units.Sort();
            return units;
        }

        private TuningAnswer Answer(IReadOnlyList<Worker> workers)
        {
            // In the order in which the workers count.
            var limits = Query
                .Requirements.Select(static each => (TuningLimit)new TuningLimit.Lacks(each))
                .Append(new TuningLimit.NoteNowhere())
                .Concat(Query.Chords.Select(static each => new TuningLimit.NoGrip(each.Chord)))
                .Append(new TuningLimit.NoFingering())
                .Append(new TuningLimit.Outdone(Query.Best));
            var cuts = limits
                .Select((limit, index) => new TuningCut(limit, workers.Sum(worker => worker.Cut[index])))
                .Concat(cutByString.Select(static each => new TuningCut(each.Key, each.Value)))
                .Where(static cut => cut.Count > 0);
            var tunings = Best.All.Select(each => each.Found(Query)).ToList();
            return new(
                Query,
                [.. tunings.Take(Query.Best)],
                tunings.ElementAtOrDefault(Query.Best),
                Space,
                workers.Sum(static worker => worker.Evaluated),
                [.. cuts]
            );
        }
    }

    /// <summary>A beginning, and the least that its chords can cost.</summary>
    private sealed record Unit(ImmutableArray<int> Offsets, double Bound, int Index) : IComparable<Unit>
    {
        public int CompareTo(Unit? other) =>
            Bound.CompareTo(other!.Bound) is var byBound and not 0 ? byBound : Index.CompareTo(other.Index);
    }

    /// <summary>A tuning, string 1 first, and its score.</summary>
    private sealed record Candidate(ImmutableArray<int> Offsets, double Score) : IComparable<Candidate>
    {
        private readonly int distance = Offsets.Sum(Math.Abs);

        public FoundTuning Found(TuningQuery query) => new(query, Offsets, Score);

        public int CompareTo(Candidate? other)
        {
            var order = Score.CompareTo(other!.Score);
            order = order != 0 ? order : distance.CompareTo(other.distance);
            for (var index = Offsets.Length - 1; order == 0 && index >= 0; index--)
            {
                order = Offsets[index].CompareTo(other.Offsets[index]);
            }

            return order;
        }
    }

    /// <summary>The best so far, each once.</summary>
    private sealed class Ranking(int capacity)
    {
        private readonly List<Candidate> list = [];

        public Ranking(Ranking other)
            : this(other.Capacity) => list.AddRange(other.list);

        public int Capacity => capacity;

        public bool IsFull => list.Count == capacity;

        /// <summary>What scores more than this is of no use.</summary>
        public double Worst => IsFull ? list[^1].Score : double.PositiveInfinity;

        public Candidate? First => list.Count == 0 ? null : list[0];

        public IReadOnlyList<Candidate> All => list;

        public bool Add(Candidate? candidate)
        {
            if (candidate is null)
            {
                return false;
            }

            var at = list.BinarySearch(candidate);
            if (at >= 0 || ~at == capacity)
            {
                return false;
            }

            if (IsFull)
            {
                list.RemoveAt(capacity - 1);
            }

            list.Insert(~at, candidate);
            return true;
        }

        public void Add(Ranking other) => other.list.ForEach(each => Add(each));
    }

    /// <summary>What one thread has.</summary>
    private sealed class Worker
    {
        // With so many strings undecided or fewer the line is bounded too; with more the bound costs more than it saves.
        private const int LineStrings = 2;

        // So many beginnings are looked at before anything is listed.
        private const int MostSteps = 500_000;

        private static readonly double[] Unlimited = [double.PositiveInfinity];

        private readonly Search search;
        private readonly int strings;
        private readonly int chords;
        private readonly int terms; // the chords, and the line after them
        private readonly double[] weights;
        private readonly SoundingPatterns[][] sounding; // by how many strings are decided, then by chord
        private readonly double[][] bounds; // by how many strings are decided: what each term costs at least
        private readonly long[] below; // by string number: how many tunings the lower-numbered strings have
        private readonly TuningPrefix prefix;
        private readonly LineSolver? solver;
        private readonly IReadOnlyList<Position>[] candidates;
        private readonly HandOnNeck hand;
        private Ranking best;
        private List<Unit>? units;
        private int unitStrings;

        public Worker(Search search)
        {
            this.search = search;
            var query = search.Query;
            strings = search.Strings;
            chords = search.Tones.Length;
            terms = chords + (query.Line.Count > 0 ? 1 : 0);
            weights = [.. query.Chords.Select(static each => each.Weight), query.LineWeight];
            sounding = new SoundingPatterns[strings + 1][];
            bounds = new double[strings + 1][];
            for (var level = 0; level <= strings; level++)
            {
                bounds[level] = new double[terms];
                sounding[level] = new SoundingPatterns[chords];
                for (var chord = 0; chord < chords; chord++)
                {
                    sounding[level][chord] =
                        level == 0
                            ? new(search.Patterns, search.Tones[chord])
                            : new(sounding[level - 1][chord], strings - level + 1);
                }
            }

            below = new long[strings + 1];
            below[1] = 1;
            for (var number = 2; number <= strings; number++)
            {
                below[number] = below[number - 1] * search.Allowed[number - 1].Count;
            }

            prefix = new(query.Base, search.Allowed);
            candidates = new IReadOnlyList<Position>[query.Line.Count];
            hand = new(query.Base, query.Hand);
            solver = query.Line.Count > 0 ? new(hand) : null;
            Cut = new long[query.Requirements.Count + 1 + chords + 2];
            best = search.Best;
        }

        /// <summary>How many tunings were worked out.</summary>
        public long Evaluated { get; private set; }

        /// <summary>
        /// How many were cut off: by each requirement, by a note that lies nowhere, by each chord that has no grip, by the line
        /// that has no fingering, by their effort.
        /// </summary>
        public long[] Cut { get; }

        private int ByPlace => search.Query.Requirements.Count;

        private int ByLine => Cut.Length - 2;

        private int ByEffort => Cut.Length - 1;

        private int ByGrip(int chord) => ByPlace + 1 + chord;

        /// <summary>Whether the line can't be played where every string has all its tunings at once: then in none.</summary>
        public bool IsImpossible()
        {
            if (solver is null)
            {
                return false;
            }

            var isPlaced = PlaceLine(strings + 1);
            if (isPlaced && !double.IsPositiveInfinity(Line()))
            {
                return false;
            }

            var all = below[strings] * search.Allowed[strings].Count;
            Cut[isPlaced ? ByLine : ByPlace] += all;
            search.Tell(all);
            return true;
        }

        /// <summary>
        /// The tunings that have what is required, string 1 first, what cuts off the others being counted; null, and nothing counted,
        /// if there are more than <paramref name="most"/>, or if it takes too many steps to say.
        /// </summary>
        public List<ImmutableArray<int>>? Few(int most)
        {
            var found = new List<ImmutableArray<int>>();
            var cuts = new long[Cut.Length];
            var steps = 0;
            if (!Walk(strings))
            {
                return null;
            }

            for (var limit = 0; limit < cuts.Length; limit++)
            {
                Cut[limit] += cuts[limit];
            }

            search.Tell(cuts.Sum());
            return found;

            bool Walk(int number)
            {
                if (number == 0)
                {
                    found.Add(Offsets(strings));
                    return found.Count <= most;
                }

                foreach (var offset in search.Allowed[number])
                {
                    if (++steps > MostSteps)
                    {
                        return false;
                    }

                    prefix.Decide(number, offset);
                    var limit = FirstBroken();
                    if (limit >= 0)
                    {
                        cuts[limit] += below[number];
                    }
                    else if (!Walk(number - 1))
                    {
                        return false;
                    }
                }

                return true;
            }
        }

        /// <summary>One tuning, string 1 first, by searches of its own; null if it is no answer.</summary>
        public Candidate? ByItself(ImmutableArray<int> offsets)
        {
            search.Cancellation.ThrowIfCancellationRequested();
            var query = search.Query;
            for (var number = strings; number >= 1; number--)
            {
                prefix.Decide(number, offsets[number - 1]);
            }

            if (solver is not null)
            {
                var isPlaced = PlaceLine(1);
                var line = isPlaced ? Line() : double.PositiveInfinity;
                bounds[strings][chords] = line;
                if (double.IsPositiveInfinity(line))
                {
                    Cut[isPlaced ? ByLine : ByPlace]++;
                    return null;
                }
            }

            var tuned = query.Base.With(
                new(
                    query
                        .Base.Tuning.Strings.Select(
                            (each, index) =>
                                new TuningString(Pitch.FromMidi(each.Open.MidiNumber + offsets[index]), each.Start)
                        )
                        .Reverse()
                )
            );
            for (var chord = 0; chord < chords; chord++)
            {
                if (
                    GripSearch.Best(query.Limits.For(query.Chords[chord].Chord, tuned, query.Hand), hand)
                    is not { } grip
                )
                {
                    Cut[ByGrip(chord)]++;
                    return null;
                }

                bounds[strings][chord] = grip.Effort;
            }

            Evaluated++;
            return new(offsets, Sum(strings, terms));
        }

        /// <summary>The first requirement that the beginning can't have any more; -1 for none.</summary>
        private int FirstBroken()
        {
            var requirements = search.Query.Requirements;
            for (var index = 0; index < requirements.Count; index++)
            {
                if (!requirements[index].MayHold(prefix))
                {
                    return index;
                }
            }

            return -1;
        }

        /// <summary>
        /// One tuning by itself, string 1 first; null if it is no answer, or a chord costs more than <paramref name="most"/>. It
        /// counts for nothing.
        /// </summary>
        public Candidate? Evaluate(ReadOnlySpan<int> offsets, double most)
        {
            for (var number = strings; number >= 1; number--)
            {
                prefix.Decide(number, offsets[number - 1]);
                Tune(strings - number + 1, number, offsets[number - 1]);
            }

            var isAnswer = search.Query.Requirements.All(each => each.MayHold(prefix));
            for (var term = 0; isAnswer && term < terms; term++)
            {
                bounds[strings][term] =
                    term < chords ? sounding[strings][term].First(most)
                    : PlaceLine(1) ? Line()
                    : double.PositiveInfinity;
                isAnswer = bounds[strings][term] < double.PositiveInfinity;
            }

            return isAnswer ? new([.. offsets], Sum(strings, terms)) : null;
        }

        /// <summary>Collects the beginnings of so many strings that may have an answer.</summary>
        public void Split(int count, Ranking known, List<Unit> found)
        {
            (best, units, unitStrings) = (known, found, count);
            Begin();
            From(0);
            units = null;
        }

        /// <summary>Goes through all tunings that begin like that; gives the best of them and of those known before.</summary>
        public Ranking Run(Unit unit)
        {
            best = new(search.Best);
            Begin();
            for (var level = 0; level < unit.Offsets.Length; level++)
            {
                if (!Enter(level, strings - level, unit.Offsets[level], out var cut))
                {
                    // What was found since the units were made is better than all of this one.
                    var all = below[strings - unit.Offsets.Length + 1];
                    Cut[cut] += all;
                    search.Tell(all);
                    return best;
                }
            }

            From(unit.Offsets.Length);
            return best;
        }

        private void Begin() => Array.Clear(bounds[0]);

        private void Tune(int level, int number, int offset)
        {
            foreach (var chord in sounding[level])
            {
                chord.Tune(search.Open[number] + offset);
            }
        }

        /// <summary>Goes through what the strings after the first <paramref name="level"/> can be.</summary>
        private void From(int level)
        {
            if (level == strings)
            {
                Evaluated++;
                var candidate = new Candidate(Offsets(strings), Sum(level, terms));
                search.Tell(1, best.Add(candidate) ? candidate : null);
                return;
            }

            if (units is not null && level == unitStrings)
            {
                units.Add(new(ImmutableArray.CreateRange(Offsets(level).Reverse()), Sum(level, terms), units.Count));
                return;
            }

            if (strings - level >= 2)
            {
                search.Cancellation.ThrowIfCancellationRequested();
            }

            var number = strings - level;
            foreach (var offset in search.Allowed[number])
            {
                if (Enter(level, number, offset, out var cut))
                {
                    From(level + 1);
                }
                else
                {
                    Cut[cut] += below[number];
                    search.Tell(below[number]);
                }
            }
        }

        /// <summary>The semitones of the decided strings, the lowest-numbered one first.</summary>
        private ImmutableArray<int> Offsets(int level) =>
            [.. Enumerable.Range(strings - level + 1, level).Select(prefix.Offset)];

        /// <summary>Decides one string more; false, with the limit that says so, if no answer begins like that.</summary>
        private bool Enter(int level, int number, int offset, out int cut)
        {
            prefix.Decide(number, offset);
            cut = FirstBroken();
            if (cut >= 0)
            {
                return false;
            }

            cut = ByEffort;
            Tune(level + 1, number, offset);
            bounds[level].CopyTo(bounds[level + 1], 0);
            // First as far as the patterns are known: more of them are made only where that does not cut off yet.
            var known = search.Patterns.KnownEffort;
            foreach (var most in known < double.PositiveInfinity ? [known, double.PositiveInfinity] : Unlimited)
            {
                for (var chord = 0; chord < chords; chord++)
                {
                    ref var bound = ref bounds[level + 1][chord];
                    var useful = MostOf(chord, level + 1);
                    var first = sounding[level + 1][chord].First(Math.Min(most, useful));
                    bound = double.IsPositiveInfinity(first) && useful > most ? Math.Max(bound, most) : first;
                    if (double.IsPositiveInfinity(bound) && double.IsPositiveInfinity(useful))
                    {
                        cut = ByGrip(chord);
                        return false;
                    }

                    if (double.IsPositiveInfinity(bound) || Sum(level + 1, terms) > best.Worst)
                    {
                        return false;
                    }
                }
            }

            if (terms == chords || number - 1 > LineStrings)
            {
                return true;
            }

            if (!PlaceLine(number))
            {
                cut = ByPlace;
                return false;
            }

            var line = Line();
            bounds[level + 1][chords] = line;
            cut = double.IsPositiveInfinity(line) ? ByLine : ByEffort;
            return !double.IsPositiveInfinity(line) && Sum(level + 1, terms) <= best.Worst;
        }

        /// <summary>What the terms cost at least. Always added in the same order, so that rounding never makes a bound exceed a sum.</summary>
        private double Sum(int level, int count)
        {
            var sum = 0.0;
            for (var term = 0; term < count; term++)
            {
                sum += weights[term] * bounds[level][term];
            }

            return sum;
        }

        /// <summary>Beyond which effort a chord can't be in an answer, a little generously.</summary>
        private double MostOf(int term, int level)
        {
            var others = Sum(level, terms) - (weights[term] * bounds[level][term]);
            return ((best.Worst - others) / weights[term] * (1 + 1e-9)) + 1e-9;
        }

        /// <summary>Gathers where the notes of the line can be; false if one lies nowhere.</summary>
        private bool PlaceLine(int first)
        {
            var neck = search.Query.Base;
            for (var note = 0; note < candidates.Length; note++)
            {
                var pitch = search.Query.Line[note].MidiNumber;
                var positions = new SortedSet<Position>(ByString);
                for (var number = 1; number <= strings; number++)
                {
                    if (number >= first)
                    {
                        Add(number, prefix.Offset(number));
                        continue;
                    }

                    foreach (var offset in search.Allowed[number])
                    {
                        Add(number, offset);
                    }
                }

                if (positions.Count == 0)
                {
                    return false;
                }

                candidates[note] = [.. positions];

                void Add(int number, int offset)
                {
                    var fret = pitch - search.Open[number] - offset;
                    if (fret >= neck.OpenFret(number) && fret <= neck.Frets)
                    {
                        positions.Add(new(number, fret));
                    }
                }
            }

            return true;
        }

        private double Line() => solver!.Solve(candidates) is [var line, ..] ? line.Effort : double.PositiveInfinity;

        private static readonly Comparer<Position> ByString = Comparer<Position>.Create(
            static (one, other) => (one.String, one.Fret).CompareTo((other.String, other.Fret))
        );
    }
}
