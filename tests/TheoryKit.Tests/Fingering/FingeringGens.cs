using TheoryKit.Fingering.Hands;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Tests.Fingering;

/// <summary>Random hands, necks and questions, small enough to go through everything.</summary>
internal static class FingeringGens
{
    /// <summary>One of these texts.</summary>
    public static Gen<string> OneOf(params string[] texts) =>
        Gen.Int[0, texts.Length - 1].Select(index => texts[index]);

    private static readonly Gen<double> Weight = Gen.OneOf(Gen.Double[0, 4], Gen.Const(0.0), Gen.Const(1.0));

    public static readonly Gen<EffortWeights> Weights = Weight
        .Array[21]
        .Select(w => new EffortWeights
        {
            Thumb = w[0],
            Index = w[1],
            Middle = w[2],
            Ring = w[3],
            Little = w[4],
            Stretch = w[5],
            Crowding = w[6],
            Barre = w[7],
            BarreString = w[8],
            OtherBarre = w[9],
            Twist = w[10],
            InnerMute = w[11],
            ShiftDistance = 20 * w[12],
            Shift = w[13],
            StringCrossing = w[14],
            SameFinger = w[15],
            Roll = w[16],
            VoiceStep = w[17],
            Preference = 20 * w[18],
            Upper = w[19],
            OpenString = 20 * w[20],
        });

    public static readonly Gen<Hand> Hand = Gen.Select(
        Gen.Double[15, 150].Array[8],
        Gen.Int[0, 6],
        Gen.Int[0, 4],
        Gen.Bool,
        Gen.OneOf(Weights, Gen.Const(EffortWeights.Default)),
        (mm, barre, other, thumb, weights) =>
            new Hand
            {
                IndexToMiddle = mm[0],
                MiddleToRing = mm[1],
                RingToLittle = mm[2],
                IndexToRing = mm[3],
                MiddleToLittle = mm[4],
                IndexToLittle = mm[5],
                ThumbReach = mm[6],
                Rest = mm[7] / 4,
                BarreStrings = barre,
                OtherBarreStrings = other,
                ThumbOver = thumb,
                Weights = weights,
            }
    );

    /// <summary>A hand that is made like people's, of any size.</summary>
    public static readonly Gen<Hand> UsualHand = Gen.OneOf(
        Gen.Const(TheoryKit.Fingering.Hands.Hand.Small),
        Gen.Const(TheoryKit.Fingering.Hands.Hand.Average),
        Gen.Const(TheoryKit.Fingering.Hands.Hand.Large),
        Gen.Double[0.7, 1.4].Select(TheoryKit.Fingering.Hands.Hand.Average.Scale)
    );

    /// <summary>Any tuning: short strings, re-entrant ones and unisons among them.</summary>
    public static Gen<Tuning> Tuning(int minStrings, int maxStrings) =>
        Gen.Select(Gen.Int[36, 72], Gen.Int[0, 6].Select(kind => kind == 0 ? 2 : 0))
            .Array[minStrings, maxStrings]
            .Select(strings => new Tuning(
                strings.Select(each => new TuningString(Pitch.FromMidi(each.Item1), each.Item2))
            ));

    public static Gen<Neck> Neck(int minStrings, int maxStrings, int minFrets, int maxFrets) =>
        Gen.Select(
            Tuning(minStrings, maxStrings),
            Gen.Double[300, 900],
            Gen.Int[minFrets, maxFrets],
            Gen.Int[0, 5],
            (tuning, length, frets, capo) => new Neck(tuning, length, frets, capo > 2 ? 0 : capo)
        );

    /// <summary>A chord of two to four tones.</summary>
    public static readonly Gen<Chord> SmallChord = Gen.Select(
        Gens.UsualNoteName,
        OneOf(
            "1 5",
            "1 3 5",
            "1 b3 5",
            "1 3 5 7",
            "1 3 5 b7",
            "1 b3 b5 b7",
            "1 b3 5 b7",
            "1 4 5",
            "1 3 #5 #9",
            "1 b3 3 5"
        ),
        Gen.Int[0, 4],
        Gens.UsualNoteName,
        (root, formula, slash, bass) => new Chord(root, Formula.Parse(formula), slash == 0 ? bass : null)
    );
}
