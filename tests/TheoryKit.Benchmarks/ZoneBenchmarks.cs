using BenchmarkDotNet.Attributes;
using TheoryKit.Fingering.Hands;
using TheoryKit.Fingering.Zones;
using TheoryKit.Theory.Chords;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Benchmarks;

/// <summary>
/// The zones of a chord with their shapes. The plain way works out the shape of every window that the hand covers, for any
/// two root frets anew, and then looks for the least effort.
/// </summary>
[BenchmarkCategory("zones")]
public class ZoneBenchmarks
{
    private readonly Chord chord = Chord.Parse("Ebmaj7");

    [GlobalSetup]
    public void Check() => Answers.MustAgree(Zones().Select(static zone => zone.Window), Plain());

    [Benchmark(Baseline = true, Description = "zones: every window for every two root frets")]
    public List<Window> Plain()
    {
        var neck = Neck.Guitar;
        var hand = new Hand { Weights = new() { Upper = 0 } };
        var roots = Enumerable
            .Range(0, neck.Frets + 1)
            .Where(fret =>
                Enumerable
                    .Range(1, neck.StringCount)
                    .Any(number => (neck.MidiNumberAt(new(number, fret)) - chord.Root.PitchClass) % 12 == 0)
            )
            .ToArray();
        var windows = new List<Window>();
        foreach (var (lower, upper) in roots.Zip(roots.Skip(1)))
        {
            var shapes =
                from first in Enumerable.Range(0, lower + 1)
                from last in Enumerable.Range(upper, neck.Frets - upper + 1)
                let shape = ShapeRule.Window(last - first + 1).LayOut(neck, chord.Root, chord.Formula, first, hand)
                where shape is { IsComplete: true }
                orderby roots.Count(shape.Window.Contains), shape.EffortPerNote, shape.Window.Width, first
                select shape.Window;
            windows.Add(shapes.First());
        }

        return [.. windows.OrderBy(static window => window.First)];
    }

    [Benchmark(Description = "zones: Zones")]
    public IReadOnlyList<Zone> Zones() => chord.Zones(Neck.Guitar);

    [Benchmark(Description = "zones: Zones, with the best grip of each")]
    public int ZonesAndGrips()
    {
        var count = 0;
        foreach (var zone in chord.Zones(Neck.Guitar))
        {
            count += zone.Grip is null ? 0 : 1;
        }

        return count;
    }
}
