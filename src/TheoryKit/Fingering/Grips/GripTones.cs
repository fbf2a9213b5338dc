using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;

namespace TheoryKit.Fingering.Grips;

/// <summary>The tones of a chord as the searches for grips ask for them: numbered from 0 up, by pitch class.</summary>
internal sealed class GripTones
{
    private readonly sbyte[] at = new sbyte[Diatonic.SemitonesPerOctave];

    public GripTones(Chord chord, Formula? optional, bool anyBass)
    {
        Array.Fill(at, (sbyte)-1);
        var may = optional ?? GripLimits.CommonlyOptional(chord.Formula);
        foreach (var degree in chord.Formula)
        {
            var pitchClass = (chord.Root.PitchClass + degree.PitchClass) % Diatonic.SemitonesPerOctave;
            if (at[pitchClass] < 0)
            {
                at[pitchClass] = (sbyte)Count++;
            }

            Required |= may.Contains(degree) ? 0u : 1u << at[pitchClass];
        }

        Bass = anyBass ? -1 : chord.Bass.PitchClass;
        Foreign = -1;
        if (Bass >= 0 && at[Bass] < 0)
        {
            at[Bass] = (sbyte)Count;
            Foreign = Count++;
        }
    }

    /// <summary>By pitch class the number of the tone that it sounds; -1 for none.</summary>
    public ReadOnlySpan<sbyte> At => at;

    /// <summary>How many tones there are.</summary>
    public int Count { get; }

    /// <summary>A bit for each tone that must sound.</summary>
    public uint Required { get; }

    /// <summary>The pitch class that must be lowest; -1 for any.</summary>
    public int Bass { get; }

    /// <summary>The number of a bass that is no tone of the chord: it sounds once, lowest. -1 for none.</summary>
    public int Foreign { get; }
}
