using BenchmarkDotNet.Attributes;
using TheoryKit.Fingering.Grips;
using TheoryKit.Fingering.Retuning;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Benchmarks;

/// <summary>
/// The best tunings for eight chords, out of all around standard tuning, with the default limits on a neck of 22 frets. The
/// plain way asks for the grips of each chord in each tuning; it goes through a hundred tunings here, so its time a tuning
/// is a hundredth of the figure, and the whole small space takes 156 times as long.
/// </summary>
[BenchmarkCategory("tuning search")]
public class TuningSearchBenchmarks
{
    private const int PlainCount = 100;

    private static readonly TuningQuery Small = new()
    {
        Base = Neck.Guitar,
        Chords = WeightedChord.Of(Chord.ParseList("Ebmaj7 Cm7 Fm7 Bb7 Gm9 C13 Fmaj9 Dm7")),
    };

    [GlobalSetup]
    public void Check()
    {
        // What is found scores as the plain way scores it, and nothing that the plain way meets is better.
        var answer = Search();
        Answers.MustAgree(
            answer.Select(static each => each.Score),
            answer.Select(static each => Score(each.Neck)!.Value)
        );
        if (Plain() < answer[0].Score)
        {
            throw new InvalidOperationException("The plain way met a better tuning than the search.");
        }
    }

    [Benchmark(Baseline = true, Description = "tuning search: 100 tunings, grips chord by chord")]
    public double Plain()
    {
        var best = double.PositiveInfinity;
        for (var index = 0; index < PlainCount; index++)
        {
            // Spread over the whole space: 157 and 15,625 have no common factor.
            var neck = Neck.Guitar.With(Tuned(157 * index % 15_625));
            best = Math.Min(best, Score(neck) ?? best);
        }

        return best;
    }

    [Benchmark(Description = "tuning search: all 15,625 within 2 semitones")]
    public TuningAnswer Search() => TuningSearch.Find(Small);

    [Benchmark(Description = "tuning search: all 1,771,561 within 5 semitones")]
    public TuningAnswer SearchWide() => TuningSearch.Find(Small with { Within = 5 });

    private static double? Score(Neck neck)
    {
        var score = 0.0;
        foreach (var each in Small.Chords)
        {
            if (GripSearch.Find(Small.Limits.For(each.Chord, neck, Small.Hand)) is not [var easiest, ..])
            {
                return null;
            }

            score += each.Weight * easiest.Effort;
        }

        return score;
    }

    private static Tuning Tuned(int number) =>
        new(
            Enumerable
                .Range(1, 6)
                .Reverse()
                .Select(at =>
                    Pitch.FromMidi(Neck.Guitar.Tuning[at].Open.MidiNumber + (number / (int)Math.Pow(5, at - 1) % 5) - 2)
                )
        );
}
