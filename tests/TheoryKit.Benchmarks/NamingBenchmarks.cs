using BenchmarkDotNet.Attributes;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Naming;
using TheoryKit.Theory.Notes;

namespace TheoryKit.Benchmarks;

/// <summary>
/// Naming a set of notes. The plain way only looks the notes up in the catalogue over each root; ours also composes names,
/// spells the tones, weighs every reading and gives the reason.
/// </summary>
[BenchmarkCategory("names")]
public class NamingBenchmarks
{
    private static readonly NoteName[] Notes = [.. "C E G A".Split(' ').Select(static each => NoteName.Parse(each))];
    private static readonly Dictionary<int, ChordQuality> Catalogue = ChordQuality
        .Known.GroupBy(static quality => quality.Formula.PitchClasses.Mask)
        .ToDictionary(static group => group.Key, static group => group.First());

    [GlobalSetup]
    public void Check()
    {
        if (
            !Plain()
                .All(chord =>
                    Readings()
                        .Any(reading => reading.Chord.Root == chord.Root && reading.Chord.Formula == chord.Formula)
                )
        )
        {
            throw new InvalidOperationException("A name of the catalogue is missing.");
        }
    }

    [Benchmark(Baseline = true, Description = "names of four notes: catalogue over each root")]
    public List<Chord> Plain()
    {
        var found = new List<Chord>();
        foreach (var root in Notes)
        {
            var mask = Notes.Aggregate(0, (all, note) => all | (1 << ((note.PitchClass - root.PitchClass + 12) % 12)));
            if (Catalogue.TryGetValue(mask, out var quality))
            {
                found.Add(quality.On(root, Notes[0]));
            }
        }

        return found;
    }

    [Benchmark(Description = "names of four notes: ranked readings with reasons")]
    public IReadOnlyList<ChordReading> Readings() => ChordNaming.Readings(Notes);
}
