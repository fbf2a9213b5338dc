using Fractions;
using TheoryKit.Fingering.Zones;
using TheoryKit.Paths.Exercises;
using TheoryKit.Tests.Fingering;
using TheoryKit.Theory.Chords;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Tests.Paths.Exercises;

/// <summary>Random drills, ladders and what else there is to practise with.</summary>
internal static class PracticeGens
{
    public static readonly Gen<Drill> Drill = Gen.OneOf(
        Gen.Int[0, TheoryKit.Paths.Exercises.Drill.Known.Count - 1]
            .Select(index => TheoryKit.Paths.Exercises.Drill.Known[index]),
        Gen.Int[2, 12].Select(TheoryKit.Paths.Exercises.Drill.Groups),
        Gen.Int[1, 11].Select(TheoryKit.Paths.Exercises.Drill.BrokenIntervals),
        Gen.Int[1, 12].Array[2, 12].Select(tones => TheoryKit.Paths.Exercises.Drill.Figure(tones))
    );

    public static readonly Gen<AccentPattern> Accents = Gen
        .Bool.Array[1, 9]
        .Select(signs => AccentPattern.Parse(string.Concat(signs.Select(sign => sign ? '>' : '-'))));

    public static readonly Gen<RootCycle> Cycle = Gen.OneOf(
        Gen.Const(RootCycle.Fourths),
        Gen.Const(RootCycle.Semitones),
        Gen.Int[0, 999_999_999].Select(RootCycle.Shuffled)
    );

    public static readonly Gen<Picking> Picking = Gen.OneOf(
        Gen.Const(TheoryKit.Paths.Exercises.Picking.Alternate),
        Gen.Const(TheoryKit.Paths.Exercises.Picking.Economy),
        Gen.Select(Gen.Int[1, 12], Gen.Int[1, 12])
            .Select((over, under) => TheoryKit.Paths.Exercises.Picking.Pendulum(new Fraction(over, under)))
    );

    public static readonly Gen<TempoLadder> Ladder = Gen.Select(
            Gen.Int[1000, 300_000],
            Gen.Int[1000, 300_000],
            Gen.Bool,
            Gen.Int[1, 3000],
            Gen.Int[1, 100]
        )
        .Select(
            (from, to, isFactor, by, times) =>
                isFactor
                    ? TempoLadder.ByFactor(from / 1000m, to / 1000m, 1.01m + (by / 1000m), times)
                    : TempoLadder.ByStep(from / 1000m, to / 1000m, 1 + (by / 1000m), times)
        );

    /// <summary>Zones of usual chords on instruments that people have.</summary>
    public static readonly Gen<Zone> Zone =
        from root in Gens.UsualNoteName
        from formula in FingeringGens.OneOf(
            "1 3 5",
            "1 3 5 7",
            "1 b3 5 b7",
            "1 3 5 b7",
            "1 b3 b5 b7",
            "1 b3 5 b7 9",
            "1 4 5 b7"
        )
        from tuning in FingeringGens.OneOf("Standard", "DADGAD", "Open D", "All fourths", "Ukulele", "Banjo")
        let zones = new Chord(root, Formula.Parse(formula)).Zones(new Neck(Tuning.Find(tuning)!))
        where zones.Count > 0
        from index in Gen.Int[0, zones.Count - 1]
        select zones[index];
}
