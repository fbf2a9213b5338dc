using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Tests;

/// <summary>Random values of every core type, over their whole range unless the name says otherwise.</summary>
internal static class Gens
{
    public static readonly Gen<NoteName> NoteName = Gen.Select(
        Gen.Int[0, 6],
        Gen.Int[-TheoryKit.Theory.Notes.NoteName.MaxAlteration, TheoryKit.Theory.Notes.NoteName.MaxAlteration],
        (letter, alteration) => new NoteName((Letter)letter, alteration)
    );

    /// <summary>The 35 names with up to two accidentals.</summary>
    public static readonly Gen<NoteName> UsualNoteName = Gen.Select(
        Gen.Int[0, 6],
        Gen.Int[-2, 2],
        (letter, alteration) => new NoteName((Letter)letter, alteration)
    );

    public static readonly Gen<Pitch> Pitch = Gen.Select(
        NoteName,
        Gen.Int[TheoryKit.Theory.Notes.Pitch.MinOctave, TheoryKit.Theory.Notes.Pitch.MaxOctave],
        (name, octave) => new Pitch(name, octave)
    );

    public static readonly Gen<Interval> Interval = IntervalOf(
        TheoryKit.Theory.Notes.Interval.MaxSteps,
        TheoryKit.Theory.Notes.Interval.MaxAlteration
    );

    /// <summary>Up to two octaves up or down, at most doubly augmented or diminished.</summary>
    public static readonly Gen<Interval> UsualInterval = IntervalOf(14, 2);

    public static readonly Gen<Degree> Degree = Gen.Select(
        Gen.Int[1, TheoryKit.Theory.Notes.Degree.MaxNumber],
        Gen.Int[-TheoryKit.Theory.Notes.Degree.MaxAlteration, TheoryKit.Theory.Notes.Degree.MaxAlteration],
        (number, alteration) => new Degree(number, alteration)
    );

    public static readonly Gen<Formula> Formula = Degree.HashSet[0, 12].Select(degrees => new Formula(degrees));

    /// <summary>Two to seven degrees as chords and scales have them, the root among them.</summary>
    public static readonly Gen<Formula> UsualFormula = Gen.Shuffle(
            "b2 2 b3 3 4 #4 b5 5 #5 b6 6 b7 7 b9 9 #9 11 #11 b13 13".Split(' ')
        )
        .Select(
            Gen.Int[1, 6],
            (all, count) => TheoryKit.Theory.Chords.Formula.Parse($"1 {string.Join(' ', all.Take(count))}")
        );

    public static readonly Gen<Chord> Chord = Gen.Select(
        UsualNoteName,
        UsualFormula,
        Gen.Bool,
        UsualNoteName,
        (root, formula, slash, bass) => new Chord(root, formula, slash ? bass : null)
    );

    public static readonly Gen<PitchClassSet> PitchClassSet = Gen.Int[0, 0xFFF]
        .Select(mask => new PitchClassSet((ushort)mask));

    public static readonly Gen<Position> Position = Gen.Select(
        Gen.Int[1, TheoryKit.Tunings.Necks.Position.MaxString],
        Gen.Int[0, TheoryKit.Tunings.Necks.Position.MaxFret],
        (number, fret) => new Position(number, fret)
    );

    /// <summary>A string as an instrument may have it; one in four is short.</summary>
    public static readonly Gen<TuningString> TuningString = Gen.Select(
        UsualNoteName,
        Gen.Int[0, 6],
        Gen.Int[0, 3],
        Gen.Int[1, 12],
        (name, octave, kind, start) => new TuningString(new(name, octave), kind == 0 ? start : 0)
    );

    public static readonly Gen<Tuning> Tuning = TuningString
        .Array[TheoryKit.Tunings.Necks.Tuning.MinStrings, TheoryKit.Tunings.Necks.Tuning.MaxStrings]
        .Select(strings => new Tuning(strings));

    public static readonly Gen<Neck> Neck = Gen.Select(
        Tuning,
        Gen.Double[TheoryKit.Tunings.Necks.Neck.MinScaleLength, TheoryKit.Tunings.Necks.Neck.MaxScaleLength],
        Gen.Int[12, TheoryKit.Tunings.Necks.Position.MaxFret],
        Gen.Int[0, 12],
        (tuning, length, frets, capo) => new Neck(tuning, length, frets, capo)
    );

    private static Gen<Interval> IntervalOf(int maxSteps, int maxAlteration) =>
        Gen.Select(
            Gen.Int[-maxSteps, maxSteps],
            Gen.Int[-maxAlteration, maxAlteration],
            (steps, shift) => new Interval(steps, NaturalSemitones(steps) + shift)
        );

    // Semitones of the major scale so many letters away, counted out letter by letter.
    private static int NaturalSemitones(int steps)
    {
        int[] up = [2, 2, 1, 2, 2, 2, 1];
        var sum = 0;
        for (var step = 0; step < Math.Abs(steps); step++)
        {
            sum += up[step % 7];
        }

        return steps < 0 ? -sum : sum;
    }
}
