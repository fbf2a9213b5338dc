using TheoryKit.Drawing.Necks;
using TheoryKit.Drawing.Zones;
using TheoryKit.Licks.Moves;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Drawing.Tests.Necks;

/// <summary>Random necks and marks, and the ones that the expectation files show.</summary>
internal static class SampleNecks
{
    public static Neck Banjo { get; } = Neck.Parse("G4@5 D3 G3 B3 D4, 670 mm, 22 frets");

    public static Neck Bass { get; } = Neck.Parse("E1 A1 D2 G2, 864 mm, 20 frets");

    public static Neck Ukulele { get; } = Neck.Parse("G4 C4 E4 A4, 380 mm, 15 frets");

    public static Formula MajorSeventh { get; } = Formula.Parse("1 3 5 7");

    public static NeckDrawing Guitar { get; } = Chord.Parse("Ebmaj7").On(Neck.Guitar);

    public static Gen<Neck> AnyNeck { get; } =
        from strings in Gen.Int[20, 84].Array[Tuning.MinStrings, Tuning.MaxStrings]
        from length in Gen.Int[300, 1000]
        from frets in Gen.Int[1, Position.MaxFret]
        from capo in Gen.Frequency((2, Gen.Const(0)), (1, Gen.Int[0, frets]))
        from start in Gen.Frequency((2, Gen.Const(0)), (1, Gen.Int[0, frets]))
        select new Neck(
            new Tuning(strings.Select((midi, index) => new TuningString(Pitch.FromMidi(midi), index == 0 ? start : 0))),
            length,
            frets,
            capo
        );

    /// <summary>A drawing of any neck, with up to 40 marks of every kind, either hand, any frets shown.</summary>
    public static Gen<NeckDrawing> AnyDrawing { get; } = Drawing(0, 40);

    public static Gen<NeckDrawing> Drawing(int fewest, int most) =>
        from neck in AnyNeck
        from marks in AnyMark(neck).Array[fewest, most]
        from window in Gen.Int[0, neck.Frets].Select(Gen.Int[1, neck.Frets])
        from isLeft in Gen.Bool
        from labels in Gen.Enum<Labels>()
        from naming in Gen.Int[0, 2].Select(index => NoteNaming.Known[index])
        select NeckDrawing
            .Of(neck, marks.DistinctBy(static mark => mark.Position))
            .WithFrets(Math.Min(window.Item1, window.Item2), Math.Max(window.Item1, window.Item2))
            .WithLeftHand(isLeft)
            .WithLabels(labels)
            .WithNaming(naming);

    private static Gen<Mark> AnyMark(Neck neck) =>
        from @string in Gen.Int[1, neck.StringCount]
        from fret in Gen.Int[neck.OpenFret(@string), neck.Frets]
        from number in Gen.Int[1, 13]
        from sign in Gen.Int[-2, 2]
        from letter in Gen.Enum<Letter>()
        from alteration in Gen.Int[-2, 2]
        from finger in Gen.Int[0, 4]
        from gaps in Gen.Int[0, 15]
        select new Mark(new Position(@string, fret))
        {
            Function = (gaps & 3) == 1 ? null : new Degree(number, sign),
            Name = (gaps & 3) == 2 ? null : new NoteName(letter, alteration),
            Finger = (gaps & 3) == 3 ? null : finger,
            IsPale = gaps == 15,
        };
}
