using BenchmarkDotNet.Attributes;
using TheoryKit.Fingering.Hands;
using TheoryKit.Paths.Joins;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Progressions;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Benchmarks;

/// <summary>
/// How many chords lead in and how many the cycle has, for four chords in twelve zones with 2 to 16 notes per chord. The plain way plays
/// every line note by note until an entry returns, as the rule says it, from tones found by trying every position; it has no shapes, fingers
/// or joins to find.
/// </summary>
[BenchmarkCategory("joining")]
public class JoiningBenchmarks
{
    private const int Fewest = 2;
    private const int Most = 16;

    private readonly Changes changes = Changes.Parse("4/4, F major: Gm9 | C13 | Fmaj9 | Dm7");
    private readonly Window[] windows = [.. Enumerable.Range(1, 12).Select(static fret => new Window(fret, fret + 3))];

    [GlobalSetup]
    public void Check() => Answers.MustAgree(Table().Cells.Select(static cell => (cell.LeadIn, cell.Cycle)), Plain());

    [Benchmark(Baseline = true, Description = "180 cycles: note by note")]
    public List<(int LeadIn, int Cycle)> Plain()
    {
        var found = new List<(int, int)>();
        foreach (var window in windows)
        {
            var tones = changes.Chords.Select(span => Tones(span.Chord!, window)).ToList();
            for (var notes = Fewest; notes <= Most; notes++)
            {
                found.Add(Play(tones, notes));
            }
        }

        return found;
    }

    [Benchmark(Description = "180 cycles: Table, with the shapes and which joins are made")]
    public JoinTable Table() => JoinSearch.Table(changes, Neck.Guitar, windows, Fewest, Most);

    [Benchmark(Description = "180 cycles: Table, from every start")]
    public JoinTable TableOfStarts() =>
        JoinSearch.Table(changes, Neck.Guitar, windows, Fewest, Most, starts: JoinStarts.LongestCycle);

    private (int, int) Play(List<SortedSet<int>> tones, int notes)
    {
        var seen = new Dictionary<(int, int, bool), int>();
        var root = changes.Chords[0].Chord!.Root.PitchClass;
        var (place, up) = (0, true);
        var at = tones[0].Where(tone => tone % 12 == root).DefaultIfEmpty(tones[0].Min).First();
        while (true)
        {
            // What counts is where the line goes on from here.
            up = up ? at != tones[place].Max : at == tones[place].Min;
            if (!seen.TryAdd((place, at, up), seen.Count))
            {
                var first = seen[(place, at, up)];
                return (first, seen.Count - first);
            }

            for (var note = 1; note < notes; note++)
            {
                Step(tones[place]);
            }

            place = (place + 1) % tones.Count;
            Step(tones[place]);
        }

        void Step(SortedSet<int> among)
        {
            var next = Beyond(among);
            if (next == 0)
            {
                up = !up;
                next = Beyond(among);
            }

            at = next;
        }

        int Beyond(SortedSet<int> among) =>
            up ? among.GetViewBetween(at + 1, int.MaxValue).Min : among.GetViewBetween(int.MinValue, at - 1).Max;
    }

    private static SortedSet<int> Tones(Chord chord, Window window)
    {
        var tones = new SortedSet<int>();
        for (var number = 1; number <= Neck.Guitar.StringCount; number++)
        {
            for (var fret = window.First; fret <= window.Last; fret++)
            {
                var sound = Neck.Guitar.MidiNumberAt(new(number, fret));
                if (chord.Formula.At(sound - chord.Root.PitchClass) is not null)
                {
                    tones.Add(sound);
                }
            }
        }

        return tones;
    }
}
