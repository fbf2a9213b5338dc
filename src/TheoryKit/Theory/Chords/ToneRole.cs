using TheoryKit.Theory.Notes;

namespace TheoryKit.Theory.Chords;

/// <summary>What a tone does in its chord or scale. Drawings tell it by the mark, colour and shape alike.</summary>
public enum ToneRole
{
    /// <summary>Anything else: a dot.</summary>
    Other,

    /// <summary>The root: a rounded square.</summary>
    Root,

    /// <summary>A tone of the chord proper: a disc.</summary>
    ChordTone,

    /// <summary>A tone that colours the chord, its ninth, eleventh or thirteenth: a ring.</summary>
    ColourTone,
}

/// <summary>Which role a degree has.</summary>
public static class ToneRoles
{
    /// <summary>
    /// The role of a degree by itself: 1 is the root; any third, fifth or seventh a chord tone; any ninth, eleventh or
    /// thirteenth a colour tone; a second, fourth or sixth anything else.
    /// </summary>
    public static ToneRole Of(Degree degree) =>
        degree.Number switch
        {
            1 or 8 or 15 => degree.Alteration == 0 ? ToneRole.Root : ToneRole.Other,
            3 or 5 or 7 or 10 or 12 or 14 => ToneRole.ChordTone,
            9 or 11 or 13 => ToneRole.ColourTone,
            _ => ToneRole.Other,
        };

    /// <summary>
    /// The role of a degree within a formula. As <see cref="Of(Degree)"/>, but a second or fourth that stands for the
    /// missing third (a suspension) is a chord tone, and so is the sixth of a formula without a seventh; and an altered
    /// fifth beside the perfect one is anything else.
    /// </summary>
    public static ToneRole Of(Degree degree, Formula formula) =>
        degree.Number switch
        {
            2 or 4 when !Has(formula, 3) => ToneRole.ChordTone,
            6 when degree.Alteration == 0 && !Has(formula, 7) => ToneRole.ChordTone,
            5 when degree.Alteration != 0 && formula.Contains(new Degree(5)) => ToneRole.Other,
            _ => Of(degree),
        };

    /// <summary>
    /// The role of any note over a chord, by its sound. A tone of the chord has its role in the formula, a colour tone where that would be anything
    /// else (the sixth of a seventh chord, an added second or fourth). Of the other notes these are colour tones:
    /// <list type="bullet">
    /// <item>over a dominant (major third and minor seventh) b9, #9, #11 and b13, and 9 and 13 where they are not a semitone above a tone of the
    /// chord, as a 13 is beside #5 or b13;</item>
    /// <item>a tone a whole tone above a chord tone that is not also a semitone above any tone of the chord: the clash that makes a 4 over
    /// a major third a note to resolve, and a #11 not;</item>
    /// <item>a member that the chord leaves open: any third where it has no third, second or fourth, the fifth where it has none, any
    /// seventh where it has neither seventh nor sixth.</item>
    /// </list>
    /// </summary>
    /// <remarks>
    /// That a tension lies a whole tone above a chord tone, dominants aside, is the usual rule of harmony teaching for what may be added to
    /// a chord.
    /// </remarks>
    public static ToneRole Over(Degree function, Formula chord)
    {
        if (chord.At(function.Semitones) is { } named)
        {
            return Of(named, chord) is var role and not ToneRole.Other ? role : ToneRole.ColourTone;
        }

        return IsAvailable(function.PitchClass, chord) ? ToneRole.ColourTone : ToneRole.Other;
    }

    private static bool IsAvailable(int above, Formula chord)
    {
        if (chord.Contains(new Degree(3)) && chord.Contains(new Degree(7, -1)))
        {
            return above switch
            {
                5 or 11 => false,
                7 => !Has(chord, 5),
                2 or 9 => chord.At(above - 1) is null,
                _ => true,
            };
        }

        var (hasThird, hasFifth, hasSeventh) = (false, false, false);
        var (isAboveTone, clashes) = (false, false);
        foreach (var degree in chord)
        {
            hasThird |= degree.Number is 2 or 3 or 4;
            hasFifth |= degree.Number == 5;
            hasSeventh |= degree.Number is 6 or 7;
            clashes |= Diatonic.Modulo(above - degree.PitchClass, 12) == 1;
            isAboveTone |=
                Diatonic.Modulo(above - degree.PitchClass, 12) == 2
                && Of(degree, chord) is ToneRole.Root or ToneRole.ChordTone;
        }

        return (isAboveTone && !clashes)
            || (!hasThird && above is 3 or 4)
            || (!hasFifth && above == 7)
            || (!hasSeventh && above is 10 or 11);
    }

    /// <summary>The role in words: "root", "chord tone", "colour tone", "other tone".</summary>
    public static string Words(ToneRole role) =>
        role switch
        {
            ToneRole.Root => "root",
            ToneRole.ChordTone => "chord tone",
            ToneRole.ColourTone => "colour tone",
            _ => "other tone",
        };

    private static bool Has(Formula formula, int number) => formula.WithNumber(number) is not null;
}
