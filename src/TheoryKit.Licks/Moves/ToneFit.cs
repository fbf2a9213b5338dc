using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;

namespace TheoryKit.Licks.Moves;

/// <summary>What a tone of a chord or of its scale becomes over another chord; the order is told at <see cref="Refitting"/>.</summary>
internal static class ToneFit
{
    /// <summary>What a tone of the chord becomes.</summary>
    public static Refitted OfTone(Pitch pitch, Degree tone, ChordSounds from, ChordSounds to, bool isEarly)
    {
        var number = tone.Simple.Number;
        var same = to.Tones(number).ToList();
        if (same.Count > 0)
        {
            var (there, isAlike) = Nearest(same, tone);
            var isChoice = !isAlike && (same.Count > 1 || from.Tones(number).Count() > 1);
            return At(
                pitch,
                tone,
                there,
                from,
                to,
                isChoice
                    ? new RefitReason.OneOfSeveral(tone, from.Chord, there, to.Chord, isEarly)
                    : new RefitReason.ToneOfChord(tone, from.Chord, there, to.Chord, isEarly)
            );
        }

        if (number == 3 && Suspended(to) is { } suspended)
        {
            return At(pitch, tone, suspended, from, to, new RefitReason.Suspended(suspended, to.Chord, isEarly));
        }

        if (Suspended(from) == tone && to.Tones(3).ToList() is { Count: > 0 } thirds)
        {
            return At(pitch, tone, thirds[0], from, to, new RefitReason.Resolved(tone, thirds[0], to.Chord, isEarly));
        }

        return to.Scale.WithNumber(number) is { } colour && Named(to.Chord, colour) is var named
            ? At(pitch, tone, named, from, to, new RefitReason.ToneOfScale(tone.Number, named, to.Chord, isEarly))
            : Without(pitch, tone, from, to, isEarly);
    }

    /// <summary>What a colour tone, that the scale of the chord has, becomes.</summary>
    public static Refitted OfColour(Pitch pitch, Degree colour, ChordSounds from, ChordSounds to)
    {
        var name = Named(from.Chord, colour);
        var same = to.Tones(colour.Number).ToList();
        if (same.Count > 0)
        {
            var (there, isAlike) = Nearest(same, colour);
            return At(
                pitch,
                colour,
                there,
                from,
                to,
                !isAlike && same.Count > 1
                    ? new RefitReason.ColourOfSeveral(name, there, to.Chord)
                    : new RefitReason.ColourInChord(name, from.Chord, there, to.Chord)
            );
        }

        if (to.Scale.WithNumber(colour.Number) is not { } scale)
        {
            return Without(pitch, colour, from, to, isEarly: false);
        }

        var now = Named(to.Chord, scale);
        return At(
            pitch,
            colour,
            now,
            from,
            to,
            IsOutside(to.Chord, scale)
                ? new RefitReason.NoColour(name, from.Chord, now, to.Chord, IsOutside(from.Chord, colour))
                : new RefitReason.Colour(name, from.Chord, now, to.Chord)
        );
    }

    /// <summary>What becomes of a number that neither the new chord nor its scale has.</summary>
    private static Refitted Without(Pitch pitch, Degree degree, ChordSounds from, ChordSounds to, bool isEarly)
    {
        var name = Named(from.Chord, degree);
        return to.InsteadOf(degree) is { } other
            ? At(
                pitch,
                degree,
                other,
                from,
                to,
                new RefitReason.NearestThere(name, Named(to.Chord, other), to.Chord, isEarly)
            )
            : At(pitch, degree, degree, from, to, new RefitReason.NothingThere(name, to.Chord));
    }

    private static Refitted At(
        Pitch pitch,
        Degree before,
        Degree after,
        ChordSounds from,
        ChordSounds to,
        RefitReason why
    )
    {
        var midi =
            pitch.MidiNumber
            + Shift(from.Chord.Root, to.Chord.Root).Semitones
            + after.Simple.Semitones
            - before.Simple.Semitones;
        return new(Pitch.Nearest(to.Chord.Root.Add(after), midi), why);
    }

    /// <summary>The short way from a root to another: up to a fourth up, else down.</summary>
    public static Interval Shift(NoteName from, NoteName to)
    {
        var steps = Diatonic.Modulo((int)to.Letter - (int)from.Letter, Diatonic.StepsPerOctave);
        var natural = Diatonic.Semitones(steps);
        var semitones = to.PitchClass - from.PitchClass;
        semitones += 12 * (int)Math.Round((natural - semitones) / 12.0);
        var up = new Interval(steps, semitones);
        return steps <= 3 ? up : up - Interval.Octave;
    }

    private static bool IsOutside(Chord chord, Degree degree) =>
        ToneRoles.Over(degree, chord.Formula) == ToneRole.Other;

    private static (Degree There, bool IsAlike) Nearest(List<Degree> same, Degree tone)
    {
        var there = same.MinBy(each =>
            (Math.Abs(each.Simple.Semitones - tone.Simple.Semitones), each.Simple.Semitones)
        );
        return (there, there.PitchClass == tone.PitchClass);
    }

    private static Degree? Suspended(ChordSounds of) =>
        of.Tones(3).Any() ? null
        : of.Chord.Formula.Contains(new Degree(4)) ? new Degree(4)
        : of.Chord.Formula.Contains(new Degree(2)) ? new Degree(2)
        : null;

    /// <summary>Over a seventh chord 2, 4 and 6 are called 9, 11 and 13.</summary>
    private static Degree Named(Chord chord, Degree degree) =>
        degree.Number is 2 or 4 or 6 && chord.Formula.Any(static tone => tone.Number >= 7)
            ? new(degree.Number + 7, degree.Alteration)
            : degree;
}
