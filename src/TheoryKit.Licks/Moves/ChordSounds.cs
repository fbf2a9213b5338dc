using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Scales;

namespace TheoryKit.Licks.Moves;

/// <summary>A chord and the scale that its colour tones come from.</summary>
/// <remarks>
/// <para>Of the known scales on its root that hold all its sounds, and none a semitone above a minor third (the major third beside it), that one
/// which, in this order:</para>
/// <list type="number">
/// <item>has seven tones, spells the chord alike and lies wholly in the key, where the changes have one;</item>
/// <item>has the fewest tones that <see cref="ToneRoles.Over"/> does not count as colour, a natural 4 or 6 aside, which stay what they are
/// by usage (major over a major seventh, mixolydian over a dominant);</item>
/// <item>spells the chord alike, one of seven tones before others (so a diminished seventh has whole tone and semitone in turns, a 7alt
/// the altered scale);</item>
/// <item>shares most notes with the key;</item>
/// <item>comes first in the catalogue.</item>
/// </list>
/// <para>What sounds like a tone of the chord is that tone, whatever the scale calls it. Where no scale is known, the numbers that the chord
/// leaves free are filled up with 2, 4, 5, 6 and the third and seventh of its kind.</para>
/// </remarks>
internal sealed class ChordSounds
{
    private ChordSounds(Chord chord, Formula scale) => (Chord, Scale) = (chord, scale);

    public Chord Chord { get; }

    /// <summary>
    /// Degrees within the octave: the tones of the chord, one of each number, and what the scale adds to them. A number may be missing.
    /// </summary>
    public Formula Scale { get; }

    public static ChordSounds Of(Chord chord, Key? key)
    {
        var formula = chord.Formula;
        var hasMinorThird = formula.At(3) is { Simple.Number: 3 } && formula.At(4) is null;
        var inKey = key?.Scale.PitchClasses;
        var best = ScaleType
            .Known.Select(static type => type.Formula)
            .Where(scale =>
                scale.Count is >= 6 and <= 8
                && scale.PitchClasses.Contains(formula.PitchClasses)
                && !(hasMinorThird && scale.At(4) is not null)
            )
            .Select(scale =>
                (
                    Scale: scale,
                    IsAlike: formula.All(degree => scale.Contains(degree.Simple)),
                    IsSeven: scale.Count == 7
                        && Enumerable.Range(1, 7).All(number => scale.WithNumber(number) is not null),
                    Shared: scale.Count(degree =>
                        inKey is { } sounds && sounds.Contains((chord.Root.PitchClass + degree.PitchClass) % 12)
                    )
                )
            )
            .OrderByDescending(static each => each.IsAlike && each.IsSeven && each.Shared == each.Scale.Count)
            .ThenBy(each => each.Scale.Count(degree => IsOutside(degree, formula)))
            .ThenByDescending(static each => each.IsAlike)
            .ThenByDescending(static each => each.IsSeven)
            .ThenByDescending(static each => each.Shared)
            .Select(static each => (Formula?)each.Scale)
            .FirstOrDefault();
        return new(chord, best is { } known ? Around(formula, known) : Filled(formula));
    }

    /// <summary>The tone of the chord that sounds so many semitones above the root; null for none.</summary>
    public Degree? ToneAt(int semitones) => Chord.Formula.At(semitones);

    /// <summary>The tone of the scale, within the octave, that sounds so many semitones above the root; null for none.</summary>
    public Degree? ColourAt(int semitones) => Scale.At(semitones);

    /// <summary>The tones of the chord with a number, counted within the octave (9 as 2).</summary>
    public IEnumerable<Degree> Tones(int number) => Chord.Formula.Where(degree => degree.Simple.Number == number);

    /// <summary>
    /// What stands for a number that neither chord nor scale has: the tone of either a semitone from where it was, a colour or a fifth, for
    /// a third or seventh would say something else (for the 13 over 7alt the #5, not the b7); null for none.
    /// </summary>
    public Degree? InsteadOf(Degree degree) =>
        new[] { degree.PitchClass - 1, degree.PitchClass + 1 }
            .Select(semitones => ToneAt(semitones) ?? ColourAt(semitones))
            .FirstOrDefault(static tone => tone is { Simple.Number: 2 or 4 or 5 or 6 });

    /// <summary>Whether it clashes with the chord and is not there by usage.</summary>
    private static bool IsOutside(Degree degree, Formula chord) =>
        degree is not { Number: 4 or 6, Alteration: 0 } && ToneRoles.Over(degree, chord) == ToneRole.Other;

    private static Formula Around(Formula chord, Formula known)
    {
        var scale = Own(chord);
        foreach (var degree in known.Where(degree => chord.At(degree.PitchClass) is null))
        {
            // Beside a major third the minor one is a ninth.
            scale = scale.With(
                degree is { Number: 3, Alteration: -1 } && chord.At(4) is { Simple.Number: 3 } ? new(2, 1) : degree
            );
        }

        return scale;
    }

    private static Formula Own(Formula chord) =>
        new(chord.GroupBy(static degree => degree.Simple.Number).Select(static same => same.First().Simple));

    private static Formula Filled(Formula chord)
    {
        var isMinor = chord.At(3) is { } third && third.Simple.Number == 3 && chord.At(4) is null;
        var scale = Own(chord);
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
