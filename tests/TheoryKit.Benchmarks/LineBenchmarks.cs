using BenchmarkDotNet.Attributes;
using TheoryKit.Fingering.Hands;
using TheoryKit.Fingering.Lines;
using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Benchmarks;

/// <summary>
/// Fingering a line against going through all its ways, on a line short enough for that.
/// </summary>
[BenchmarkCategory("short lines")]
public class ShortLineBenchmarks
{
    private static readonly Position[] Positions = [new(6, 3), new(6, 5), new(5, 2), new(5, 3), new(5, 5)];

    [GlobalSetup]
    public void Check() => Answers.MustAgree([Math.Round(Finger()[0].Effort, 9)], [Math.Round(Plain(), 9)]);

    [Benchmark(Baseline = true, Description = "five notes: every way")]
    public double Plain() => PlainLines.LeastEffort(Neck.Guitar, Hand.Average, Positions);

    [Benchmark(Description = "five notes: Finger")]
    public LineAnswer Finger() => LineSearch.Finger(Neck.Guitar, Positions);
}

/// <summary>Long lines: the time is to grow as the number of notes does.</summary>
[BenchmarkCategory("long lines")]
public class LongLineBenchmarks
{
    private Position[] positions = [];
    private Pitch[] pitches = [];

    [Params(10_000, 20_000)]
    public int Notes { get; set; }

    [GlobalSetup]
    public void Make()
    {
        // A walk over the neck and one over the pitches of a guitar, in steps that players take.
        var random = new Random(20_26);
        var (fret, number, midi) = (5, 3, 60);
        (positions, pitches) = (new Position[Notes], new Pitch[Notes]);
        for (var index = 0; index < Notes; index++)
        {
            fret = Math.Clamp(fret + random.Next(-3, 4), 0, 19);
            number = Math.Clamp(number + random.Next(-1, 2), 1, 6);
            midi = Math.Clamp(midi + random.Next(-4, 5), 40, 80);
            (positions[index], pitches[index]) = (new(number, fret), Pitch.FromMidi(midi));
        }
    }

    [Benchmark(Description = "fingering a line")]
    public LineAnswer Finger() => LineSearch.Finger(Neck.Guitar, positions);

    [Benchmark(Description = "placing a line")]
    public LineAnswer Place() => LineSearch.Place(Neck.Guitar, pitches);
}
