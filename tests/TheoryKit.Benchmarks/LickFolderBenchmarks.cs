using BenchmarkDotNet.Attributes;
using Fractions;
using TheoryKit.Licks;
using TheoryKit.Licks.Folders;
using TheoryKit.Licks.Search;
using TheoryKit.Paths;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Progressions;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Benchmarks;

/// <summary>A folder of ten thousand licks on the disk, and one of a thousand.</summary>
internal static class ManyLicks
{
    private static readonly Changes[] SomeChanges =
    [
        Changes.Parse("4/4, F major: Gm9 | C13 | Fmaj9 | Dm7"),
        Changes.Parse("3/4, Eb major: Ebmaj7 | Cm7 | Fm7 | Bb7"),
        Changes.Parse("4/4: Am7 | D7"),
    ];

    /// <summary>A new folder with so many licks.</summary>
    public static string Make(int count)
    {
        var path = Directory.CreateTempSubdirectory("licks").FullName;
        Parallel.For(
            0,
            count,
            index =>
                File.WriteAllText(
                    System.IO.Path.Combine(path, $"lick-{index:00000}{LickFolder.Extension}"),
                    Lick(index).ToString()
                )
        );
        return path;
    }

    /// <summary>A walk over the neck in eighths, with a bend here and there, over the changes of a tune.</summary>
    private static Lick Lick(int seed)
    {
        var random = new Random(seed);
        var changes = SomeChanges[seed % SomeChanges.Length];
        var notes = new List<PathNote>();
        var (fret, number) = (random.Next(3, 12), random.Next(1, 7));
        for (var index = 0; index < 16; index++)
        {
            (fret, number) = (
                Math.Clamp(fret + random.Next(-3, 4), 1, 15),
                Math.Clamp(number + random.Next(-1, 2), 1, 6)
            );
            var start = new Fraction(index, 2).Reduce();
            var midi = Neck.Guitar.MidiNumberAt(new(number, fret));
            var isBent = random.Next(10) == 0;
            notes.Add(
                new()
                {
                    Position = new(number, fret),
                    Pitch = changes.At(start % changes.Beats).Chord!.Spell(midi),
                    Start = start,
                    Length = new(1, 2),
                    Techniques = isBent ? [Technique.Bend] : [],
                    Bend = isBent ? 200 : 0,
                }
            );
        }

        return new()
        {
            Name = $"Lick {seed}",
            Path = new TheoryKit.Paths.Path(Neck.Guitar, notes, changes.Time, changes).ToWholeBars(),
            Tune = seed % 3 == 0 ? "Nine Tin Boats" : "Kestrel Stairs",
            Tempo = 60 + (seed % 100),
            Tags = seed % 5 == 0 ? ["slow"] : [],
            Headers = [new("from", "a rehearsal of the trio")],
        };
    }
}

/// <summary>Opening a folder of ten thousand licks and searching it for the first time, against reading file by file.</summary>
[BenchmarkCategory("lick folder, opened")]
public class LickFolderOpenBenchmarks
{
    private string path = "";

    [GlobalSetup]
    public void Make()
    {
        path = ManyLicks.Make(10_000);
        Answers.MustAgree([Open()], [Plain()]);
    }

    [GlobalCleanup]
    public void Remove() => Directory.Delete(path, recursive: true);

    [Benchmark(Baseline = true, Description = "10,000 licks: each file read and asked")]
    public int Plain() =>
        Directory
            .GetFiles(path)
            .Select(static file => Lick.Parse(File.ReadAllText(file)))
            .Count(static lick => PlainLickSearch.HasThirdAndBend(lick));

    [Benchmark(Description = "10,000 licks: LickFolder.Open and the first search")]
    public int Open() => LickFolder.Open(path).Find("function:3 technique:bend").Count;
}

/// <summary>Searching ten thousand licks, against asking each lick anew.</summary>
[BenchmarkCategory("lick folder, searched")]
public class LickFolderSearchBenchmarks
{
    private string path = "";
    private LickFolder folder = null!;

    [GlobalSetup]
    public void Make()
    {
        path = ManyLicks.Make(10_000);
        folder = LickFolder.Open(path);
        Answers.MustAgree([Find()], [Plain()]);
        Answers.MustAgree([FindAlike()], [PlainAlike()]);
    }

    [GlobalCleanup]
    public void Remove() => Directory.Delete(path, recursive: true);

    [Benchmark(Baseline = true, Description = "10,000 licks: a third and a bend, each asked")]
    public int Plain() => folder.Licks.Count(static kept => PlainLickSearch.HasThirdAndBend(kept.Lick));

    [Benchmark(Description = "10,000 licks: Find, a third and a bend")]
    public int Find() => folder.Find("function:3 technique:bend").Count;

    [Benchmark(Description = "10,000 licks: Find, seven things")]
    public int FindMuch() =>
        folder.Find("function:9,1 strong:3 chord:m9 tag:slow tempo:60-120 contour:up,down text:boats").Count;

    [Benchmark(Description = "10,000 licks: Find, a text")]
    public int FindText() => folder.Find("rehearsal").Count;

    [Benchmark(Description = "10,000 licks: alike to one, each compared")]
    public int PlainAlike() => folder.Licks.Count(kept => Likeness.Of(folder.Licks[0].Lick, kept.Lick).Value >= 0.6);

    [Benchmark(Description = "10,000 licks: Find, alike to one")]
    public int FindAlike() => folder.Find(LickQuery.All.AlikeTo(folder.Licks[0].Lick, 0.6)).Count;
}

/// <summary>Duplicates, against comparing every two.</summary>
[BenchmarkCategory("lick folder, duplicates")]
public class LickDuplicatesBenchmarks
{
    private readonly string[] paths = new string[2];
    private LickFolder small = null!;
    private LickFolder large = null!;

    [GlobalSetup]
    public void Make()
    {
        (paths[0], paths[1]) = (ManyLicks.Make(500), ManyLicks.Make(10_000));
        (small, large) = (LickFolder.Open(paths[0]), LickFolder.Open(paths[1]));
        _ = (small.Find("x"), large.Find("x"));
    }

    [GlobalCleanup]
    public void Remove() => Array.ForEach(paths, static path => Directory.Delete(path, recursive: true));

    [Benchmark(Baseline = true, Description = "500 licks: every two compared")]
    public int Plain()
    {
        var lines = small.Licks.Select(static kept => LickLine.Of(kept.Lick)).ToList();
        return lines
            .Select((line, index) => lines.Take(index).Count(other => Likeness.Of(line, other).Value >= 0.8))
            .Sum();
    }

    [Benchmark(Description = "500 licks: Duplicates")]
    public int Small() => small.Duplicates().Count;

    [Benchmark(Description = "10,000 licks: Duplicates")]
    public int Large() => large.Duplicates().Count;
}

/// <summary>A search without index: everything worked out from the lick each time.</summary>
internal static class PlainLickSearch
{
    public static bool HasThirdAndBend(Lick lick) =>
        lick.Path.Notes.Any(static note => note.Has(Technique.Bend))
        && lick.Path.Notes.Any(note => lick.Path.FunctionOf(note) is { Simple: var degree } && degree == new Degree(3));
}
