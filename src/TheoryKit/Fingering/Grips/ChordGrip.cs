using System.Collections.Immutable;
using TheoryKit.Fingering.Hands;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Naming;
using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Necks;
using TheoryKit.Values;

namespace TheoryKit.Fingering.Grips;

/// <summary>How the tones of a grip are spaced.</summary>
public enum GripSpacing
{
    /// <summary>All within an octave, each tone next to its neighbours in the chord.</summary>
    Close,

    /// <summary>A close chord of four tones with its second highest dropped an octave.</summary>
    Drop2,

    /// <summary>A close chord of four tones with its third highest dropped an octave.</summary>
    Drop3,

    /// <summary>A close chord of four tones with its second and fourth highest dropped an octave.</summary>
    Drop2And4,

    /// <summary>Any other spacing, or tones doubled.</summary>
    Open,
}

/// <summary>A grip that sounds a chord on a neck: what sounds, how it is spaced, and what it costs the hand. Equal when chord, neck and grip are.</summary>
[EqualBy(nameof(Chord), nameof(Neck), nameof(Grip))]
public sealed partial class ChordGrip : IEquatable<ChordGrip>
{
    private IReadOnlyList<ChordReading>? readings;

    internal ChordGrip(Chord chord, Neck neck, Grip grip, double effort)
    {
        Chord = chord;
        Neck = neck;
        Grip = grip;
        Effort = effort;
    }

    /// <summary>The chord it was made for.</summary>
    public Chord Chord { get; }

    /// <summary>Where.</summary>
    public Neck Neck { get; }

    /// <summary>What is held.</summary>
    public Grip Grip { get; }

    /// <summary>What holding it costs the hand it was found for; see <see cref="EffortWeights"/>.</summary>
    public double Effort { get; }

    /// <summary>The places that sound, from the lowest pitch up.</summary>
    public IReadOnlyList<Place> Places =>
        field ??= [
            .. Grip
                .Positions.Select(position => PlaceAt(position))
                .OrderBy(static place => place.Pitch.MidiNumber)
                .ThenByDescending(static place => place.Position.String),
        ];

    /// <summary>The functions that sound, from the lowest pitch up.</summary>
    public IReadOnlyList<Degree> Functions => [.. Places.Select(static place => place.Function)];

    /// <summary>The lowest pitch.</summary>
    public Pitch Bass => Places[0].Pitch;

    /// <summary>The highest pitch.</summary>
    public Pitch Top => Places[^1].Pitch;

    /// <summary>The chord's tones that do not sound.</summary>
    public Formula Missing
    {
        get
        {
            var missing = Chord.Formula;
            foreach (var place in Places)
            {
                missing = missing.Without(place.Function);
            }

            return missing;
        }
    }

    /// <summary>The chord's tones that sound more than once.</summary>
    public Formula Doubled =>
        new(
            Functions
                .GroupBy(static function => function)
                .Where(static group => group.Count() > 1)
                .Select(static group => group.Key)
        );

    /// <summary>
    /// 0 with the root lowest, 1 with the next tone of the chord, and so on up its formula; null when the lowest note is
    /// none of its tones.
    /// </summary>
    public int? Inversion
    {
        get
        {
            var index = 0;
            foreach (var degree in Chord.Formula)
            {
                if (degree.PitchClass == Diatonic.Modulo(Bass.PitchClass - Chord.Root.PitchClass, 12))
                {
                    return index;
                }

                index++;
            }

            return null;
        }
    }

    /// <summary>
    /// How the sounding notes read as chords, the plainest first; see <see cref="ChordNaming"/>. Notes with their spelling in
    /// <see cref="Chord"/>.
    /// </summary>
    public IReadOnlyList<ChordReading> Readings =>
        readings ??= ChordNaming.Readings(Places.Select(static place => place.Pitch.Name), Bass.Name);

    /// <summary>
    /// The chord that the sounding notes make by their plainest reading, where that has another root than <see cref="Chord"/>:
    /// a sixth chord over its sixth is a minor seventh. Else null.
    /// </summary>
    public Chord? SoundsAs =>
        Readings[0].Chord is var plainest && plainest.Root.PitchClass != Chord.Root.PitchClass ? plainest : null;

    /// <summary>How it is spaced.</summary>
    public GripSpacing Spacing
    {
        get
        {
            var pitches = Places.Select(static place => place.Pitch.MidiNumber).ToArray();
            if (pitches.Select(static pitch => Diatonic.Modulo(pitch, 12)).Distinct().Count() < pitches.Length)
            {
                return GripSpacing.Open;
            }

            return IsClose(pitches) ? GripSpacing.Close
                : pitches.Length != 4 ? GripSpacing.Open
                : Undrop(pitches, 2) ? GripSpacing.Drop2
                : Undrop(pitches, 3) ? GripSpacing.Drop3
                : Undrop(pitches, 2, 4) ? GripSpacing.Drop2And4
                : GripSpacing.Open;
        }
    }

    /// <summary>The grip in text.</summary>
    public override string ToString() => $"{Chord}: {Grip}";

    private static bool IsClose(ReadOnlySpan<int> ascending) => ascending[^1] - ascending[0] < 12;

    /// <summary>Whether raising dropped voices an octave gives a close chord in which they are the ones counted from the top.</summary>
    private static bool Undrop(int[] ascending, params ReadOnlySpan<int> fromTop)
    {
        var raised = ascending.ToArray();
        for (var voice = 0; voice < fromTop.Length; voice++)
        {
            raised[voice] += 12;
        }

        var moved = raised[..fromTop.Length];
        Array.Sort(raised);
        if (!IsClose(raised))
        {
            return false;
        }

        foreach (var place in fromTop)
        {
            if (!moved.Contains(raised[^place]))
            {
                return false;
            }
        }

        return true;
    }

    private Place PlaceAt(Position position)
    {
        var sound = Neck.MidiNumberAt(position);
        var name =
            Chord.Formula.At(sound - Chord.Root.PitchClass) is { } degree ? Chord.Root.Add(degree)
            : Chord.Bass.PitchClass == Diatonic.Modulo(sound, 12) ? Chord.Bass
            : Pitch.FromMidi(sound).Name;
        return new(position, Pitch.Nearest(name, sound), Chord.DegreeOf(name));
    }
}
