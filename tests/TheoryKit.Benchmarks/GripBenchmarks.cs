using BenchmarkDotNet.Attributes;
using TheoryKit.Fingering.Grips;
using TheoryKit.Theory.Chords;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Benchmarks;

/// <summary>
/// All grips of a seventh chord up to fret 15. The plain way only says which there are; ours also gives each its
/// least-effort fingers and ranks them.
/// </summary>
[BenchmarkCategory("grips")]
public class GripBenchmarks
{
    private readonly GripQuery query = new()
    {
        Chord = Chord.Parse("Ebmaj7"),
        Neck = Neck.Guitar,
        LastFret = 15,
    };

    [GlobalSetup]
    public void Check() => Answers.MustAgree(Keys(Search()).Order(), Plain().Order());

    [Benchmark(Baseline = true, Description = "grips up to fret 15: every fret tuple of every window")]
    public HashSet<string> Plain() => PlainGrips.Find(query);

    [Benchmark(Description = "grips up to fret 15: GripSearch, with fingers, ranked")]
    public GripAnswer Search() => GripSearch.Find(query);

    private static IEnumerable<string> Keys(GripAnswer grips) =>
        grips.Select(static each => string.Join(' ', each.Grip.Strings.Select(static s => s.Fret ?? -1)));
}

/// <summary>The same for any bass and with muted strings inside: the most that can be asked of six strings.</summary>
[BenchmarkCategory("grips")]
public class AnyGripBenchmarks
{
    [Benchmark(Description = "grips up to fret 15, any bass, muted strings inside: GripSearch")]
    public GripAnswer Search() =>
        GripSearch.Find(
            new()
            {
                Chord = Chord.Parse("Ebmaj7"),
                Neck = Neck.Guitar,
                LastFret = 15,
                AnyBass = true,
                InnerMutes = true,
            }
        );
}
