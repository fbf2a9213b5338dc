using System.Collections.Concurrent;
using System.Diagnostics;
using System.Reflection;
using Xunit.Abstractions;

namespace TheoryKit.Interactive.Tests.Entries;

/// <summary>Every public entry answers odd arguments at once, and says what is wrong with them.</summary>
public sealed class PublicEntryTests(ITestOutputHelper output)
{
    // Processor time of the whole process while one call lasts, so that a busy machine is no matter. The longest takes a few seconds;
    // what takes as much memory as that is told of sooner.
    private static readonly TimeSpan Endless = TimeSpan.FromSeconds(90);
    private static readonly TimeSpan EndlessAndLarge = TimeSpan.FromSeconds(10);
    private const long MostMemory = 3L << 30;
    private const int MostEndless = 6;

    private static readonly PublicSamples Samples = Grown();

    private static PublicSamples Grown()
    {
        var samples = new PublicSamples();
        samples.Grow(new(samples));
        return samples;
    }

    /// <summary>A new public type has to be reached, or the test below says nothing about it.</summary>
    [Fact]
    public void Every_public_type_has_a_sample()
    {
        var without = PublicSurface
            .Types.Where(static type =>
                !type.IsGenericTypeDefinition
                && !type.IsValueType
                && !(type.IsAbstract && type.IsSealed)
                && Samples.Of(type).Count == 0
                && PublicSurface.Members(type).Any(static member => !member.IsStatic && !member.IsConstructor)
            )
            .Select(static type => type.FullName);
        Assert.True(
            !without.Any(),
            $"Nothing leads to a value of these types; add one to {nameof(PublicSamples)}.Roots or to the samples of the drawings: {string.Join(", ", without)}"
        );
    }

    [Fact]
    public void Odd_arguments_are_refused_by_name_or_answered()
    {
        var arguments = new Arguments(Samples);
        var walk = new EntryWalk(Samples, arguments);
        var counts = new ConcurrentDictionary<Type, int>();
        var watch = Stopwatch.StartNew();

        // What is made of odd parts and not refused is an odd argument for all else, so it is made first: by constructors and setters,
        // then by what else gives a value of ours. All of a type is tried on one thread, for some types are for one.
        var all = PublicSurface
            .Types.SelectMany(static type => PublicSurface.Members(type).Select(member => (type, member)))
            .ToList();
        var endless = new List<string>();
        foreach (var stage in all.GroupBy(static each => StageOf(each.member)).OrderBy(static stage => stage.Key))
        {
            endless.AddRange(Run([.. stage.GroupBy(static each => each.type)]));
            arguments.Give();
        }

        List<string> Run(List<IGrouping<Type, (Type, MethodBase Member)>> types)
        {
            var waiting = new ConcurrentQueue<IGrouping<Type, (Type, MethodBase Member)>>(types);
            var never = new List<string>();
            var workers = Enumerable.Range(0, Environment.ProcessorCount).Select(_ => Worker.Start(Work)).ToList();
            while (workers.Any(static worker => worker.IsAlive && !worker.IsAbandoned))
            {
                Thread.Sleep(20);
                for (var index = 0; index < workers.Count; index++)
                {
                    if (
                        workers[index].Late(GC.GetTotalMemory(false) > MostMemory ? EndlessAndLarge : Endless) is
                        { } call
                    )
                    {
                        never.Add(call);
                        workers[index].Abandon();
                        if (never.Count >= MostEndless)
                        {
                            return never;
                        }

                        workers[index] = Worker.Start(Work);
                    }
                }
            }

            return never;

            void Work(Worker worker)
            {
                while (!worker.IsAbandoned && waiting.TryDequeue(out var next))
                {
                    foreach (var (type, member) in next)
                    {
                        var calls = walk.Try(type, member, worker.Begin);
                        counts.AddOrUpdate(type, calls, (_, sofar) => sofar + calls);
                    }
                }
            }
        }

        foreach (var (type, calls) in counts.OrderBy(static each => each.Key.FullName, StringComparer.Ordinal))
        {
            output.WriteLine($"{calls, 6} {type.FullName}");
        }

        var byMember = walk
            .Faults.GroupBy(static fault => fault.Member)
            .OrderBy(static each => each.Key, StringComparer.Ordinal)
            .ToList();
        var report = string.Join(
            "\n",
            byMember.Select(static member =>
                $"{member.Key}\n  {string.Join("\n  ", member.DistinctBy(static fault => fault.What).Take(6).Select(static fault => $"{fault.Call}\n    {fault.What}"))}"
            )
        );
        output.WriteLine(
            $"{counts.Values.Sum()} calls of {all.Count} members of {counts.Count} types in {watch.Elapsed.TotalSeconds:F0} s."
        );
        Assert.True(
            byMember.Count == 0 && endless.Count == 0,
            $"{byMember.Count} members answer odd arguments badly, {endless.Count} calls never ended.\n{string.Join("\n", endless)}\n{report}"
        );
    }

    private static int StageOf(MethodBase member) =>
        member.IsConstructor || PublicSurface.IsInit(member) ? 0
        : member is MethodInfo { IsSpecialName: false } method && PublicSurface.IsOurs(method.ReturnType) ? 1
        : 2;

    /// <summary>A thread that can be left to itself when a call does not come back.</summary>
    private sealed class Worker
    {
        private TimeSpan since = Environment.CpuUsage.TotalTime;
        private readonly Lock gate = new();
        private Thread thread = null!;
        private string call = "";

        public bool IsAlive => thread.IsAlive;

        public bool IsAbandoned { get; private set; }

        public static Worker Start(Action<Worker> work)
        {
            var worker = new Worker();
            worker.thread = new(() => work(worker), 4 << 20) { IsBackground = true };
            worker.thread.Start();
            return worker;
        }

        public void Begin(string next)
        {
            lock (gate)
            {
                call = next;
                since = Environment.CpuUsage.TotalTime;
            }
        }

        public string? Late(TimeSpan limit)
        {
            lock (gate)
            {
                return IsAlive && !IsAbandoned && Environment.CpuUsage.TotalTime - since > limit ? call : null;
            }
        }

        public void Abandon() => IsAbandoned = true;
    }
}
