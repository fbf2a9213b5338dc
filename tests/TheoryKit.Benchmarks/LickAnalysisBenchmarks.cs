using BenchmarkDotNet.Attributes;
using Fractions;
using TheoryKit.Licks.Analysis;
using TheoryKit.Licks.Words;
using TheoryKit.Paths;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Progressions;
using TheoryKit.Tunings.Necks;
using Path = TheoryKit.Paths.Path;

namespace TheoryKit.Benchmarks;

/// <summary>
/// What twenty notes do over four chords. The plain way asks the path for the function of one note after the other, and finds no parts, targets
/// or bars.
/// </summary>
[BenchmarkCategory("analysis of licks")]
public class LickAnalysisBenchmarks
{
    private readonly Path path = new(
        Neck.Guitar,
        "G3 Bb3 D4 F4 A4 G4 Eb4 D#4 E4 G4 Bb4 A4 G#4 A4 C5 Bb4 A4 F4 D4 C#4"
            .Split(' ')
            .Select(
                static (name, index) =>
                {
                    var pitch = Pitch.Parse(name);
                    return new PathNote
                    {
                        Pitch = pitch,
                        Position = Neck.Guitar.PositionsOf(pitch)[0],
                        Start = new Fraction(index * 3, 4),
                        Length = new Fraction(3, 4),
                    };
                }
            ),
        changes: Changes.Parse("4/4, F major: Gm9 | C13 | Fmaj9 | Dm7")
    );

    [GlobalSetup]
    public void Check() =>
        Answers.MustAgree(Analyse().Notes.Select(static note => (note.Function, note.Role)), Plain());

    [Benchmark(Baseline = true, Description = "twenty notes: functions only, one by one")]
    public List<(Degree?, ToneRole)> Plain()
    {
        var found = new List<(Degree?, ToneRole)>();
        foreach (var note in path.Notes)
        {
            var function = path.FunctionOf(note);
            found.Add((function, ToneRoles.Over(function!.Value, path.ChordAt(note.Start)!.Formula)));
        }

        return found;
    }

    [Benchmark(Description = "twenty notes: Analyse")]
    public LickAnalysis Analyse() => path.Analyse();

    [Benchmark(Description = "twenty notes: Analyse, with the words of all bars")]
    public int Words() => path.Analyse().Bars.Sum(static bar => bar.InWords().Count);
}
