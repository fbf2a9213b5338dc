using BenchmarkDotNet.Attributes;
using TheoryKit.Theory.Chords;

namespace TheoryKit.Benchmarks;

/// <summary>Reading a chord symbol; to stay under 2 microseconds.</summary>
[BenchmarkCategory("chord symbol")]
public class ChordSymbolBenchmarks
{
    [Params("Ebmaj7", "C13b9", "F#m7b5/E", "Bb7(#9,b13)")]
    public string Symbol { get; set; } = "";

    [GlobalSetup]
    public void Check()
    {
        var (root, semitones, bass) = PlainChordReader.Read(Symbol);
        var chord = Chord.Parse(Symbol);
        Answers.MustAgree(
            [chord.Root.PitchClass, .. chord.Formula.PitchClasses, chord.Bass.PitchClass],
            [root, .. semitones.Order(), bass]
        );
    }

    [Benchmark(Baseline = true, Description = "chord symbol: regex and dictionary")]
    public (int Root, List<int> Semitones, int Bass) Plain() => PlainChordReader.Read(Symbol);

    [Benchmark(Description = "chord symbol: Chord.Parse")]
    public Chord Parse() => Chord.Parse(Symbol);
}
