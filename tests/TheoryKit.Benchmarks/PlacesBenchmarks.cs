using BenchmarkDotNet.Attributes;
using TheoryKit.Theory.Chords;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Benchmarks;

/// <summary>Finding every place where a chord's tones lie.</summary>
[BenchmarkCategory("places")]
public class PlacesBenchmarks
{
    private static readonly Neck Neck = Neck.Guitar;
    private static readonly Chord Chord = Chord.Parse("Ebmaj7");

    [GlobalSetup]
    public void Check() => Answers.MustAgree(Places().Select(static place => place.Position), Plain());

    [Benchmark(Baseline = true, Description = "places of a chord: every position tried")]
    public List<Position> Plain()
    {
        var tones = Chord.Tones.Select(static tone => tone.PitchClass).ToHashSet();
        return
        [
            .. from number in Enumerable.Range(1, Neck.StringCount)
            from fret in Enumerable.Range(0, Neck.Frets + 1)
            where tones.Contains((Neck.Tuning[number].Open.MidiNumber + fret) % 12)
            select new Position(number, fret),
        ];
    }

    [Benchmark(Description = "places of a chord: PlacesOf, with pitch and function")]
    public IReadOnlyList<Place> Places() => Neck.PlacesOf(Chord);
}
