using TheoryKit.Theory;

namespace TheoryKit.Paths;

/// <summary>A chord and the scale that its colour tones come from.</summary>
/// <remarks>
/// Of the known scales of seven tones that hold the chord as it is spelled, the one that shares most notes with the key, where the changes
/// have one; of equals the first in the catalogue (<see cref="FormulaRelations.Scales"/>), which is the usual one: major over a major
/// seventh, mixolydian over a dominant, dorian over a minor seventh. Where there is none, the numbers that the chord leaves free are filled
/// up with 2, 4, 5, 6 and the third and seventh of its kind.
/// </remarks>
internal sealed class ChordSounds
{
    private ChordSounds(Chord chord, Formula scale) => (Chord, Scale) = (chord, scale);

    public Chord Chord { get; }

    /// <summary>Seven degrees within the octave, fewer where the chord's own tones lie in the way.</summary>
    public Formula Scale { get; }

    public static ChordSounds Of(Chord chord, Key? key)
    {
        var known = ScaleType
            .Known.Where(type =>
                type.Formula.Count == 7
                && type.Formula.PitchClasses.Contains(chord.Formula.PitchClasses)
                && Enumerable.Range(1, 7).All(number => type.Formula.WithNumber(number) is not null)
                && chord.Formula.All(degree => type.Formula.Contains(degree.Simple))
            )
            .Select(static type => type.Formula)
            .ToList();
        if (known.Count == 0)
        {
            return new(chord, Filled(chord.Formula));
        }

        var sounds = key?.Scale.PitchClasses;
        return new(
            chord,
            sounds is { } inKey
                ? known.MaxBy(scale =>
                    scale.Count(degree => inKey.Contains((chord.Root.PitchClass + degree.PitchClass) % 12))
                )
                : known[0]
        );
    }

    /// <summary>The tone of the chord that sounds so many semitones above the root; null for none.</summary>
    public Degree? ToneAt(int semitones) => Chord.Formula.At(semitones);

    /// <summary>The tone of the scale, within the octave, that sounds so many semitones above the root; null for none.</summary>
    public Degree? ColourAt(int semitones) => Scale.At(semitones);

    /// <summary>The tones of the chord with a number, counted within the octave (9 as 2).</summary>
    public IEnumerable<Degree> Tones(int number) => Chord.Formula.Where(degree => degree.Simple.Number == number);

    private static Formula Filled(Formula chord)
    {
        var isMinor = chord.At(3) is { } third && third.Simple.Number == 3 && chord.At(4) is null;
        var scale = new Formula(
            chord.GroupBy(static degree => degree.Simple.Number).Select(static same => same.First().Simple)
        );
        foreach (var degree in Formula.Parse(isMinor ? "1 2 b3 4 5 6 b7" : "1 2 3 4 5 6 b7"))
        {
            if (
                scale.WithNumber(degree.Number) is null
                && scale.At(degree.PitchClass) is null
                && chord.At(degree.PitchClass) is null
            )
            {
                scale = scale.With(degree);
            }
        }

        return scale;
    }
}
