using TheoryKit.Theory.Notes;
using TheoryKit.Values;

namespace TheoryKit.Theory.Chords;

/// <summary>A tone of a chord: its name, and its function there.</summary>
/// <param name="Name">The note name, spelled over the chord's root.</param>
/// <param name="Function">Its degree over the root; null for a bass note that the formula has not.</param>
public readonly record struct ChordTone(NoteName Name, Degree? Function)
{
    /// <summary>The pitch class, 0 (C) to 11 (B).</summary>
    public int PitchClass => Name.PitchClass;

    /// <summary>
    /// The tones of a chord, each sound once: those of the formula in its order, before them a bass that is none of these. Where two
    /// degrees sound alike (b3 and #9) the first stands for both.
    /// </summary>
    /// <exception cref="OverflowException">A tone would need more accidentals than a note name has.</exception>
    public static IReadOnlyList<ChordTone> Of(Chord chord)
    {
        ArgumentNullException.ThrowIfNull(chord);
        var tones = new List<ChordTone>(chord.Formula.Count + 1);
        if (chord.FunctionOf(chord.Bass) is null)
        {
            tones.Add(new(chord.Bass, null));
        }

        foreach (var degree in chord.Formula)
        {
            if (chord.Formula.At(degree.PitchClass) == degree)
            {
                tones.Add(new(chord.Root.Add(degree), degree));
            }
        }

        return tones.ToSequence();
    }

    /// <summary>Name and function, as in <c>Bb (b7)</c>.</summary>
    public override string ToString() => Function is null ? $"{Name}" : $"{Name} ({Function})";
}
