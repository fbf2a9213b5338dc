using TheoryKit.Fingering.Grips;
using TheoryKit.Fingering.Hands;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Tests.Fingering.Grips;

public class GripProgressionTests
{
    private const double Tolerance = 1e-9;

    [Fact]
    public void VoicesMoveByTheLeastTotalInWhichEveryNoteHasAVoice()
    {
        var pitches = Gen.Int[40, 70].Array[1, 4].Select(each => each.Order().ToArray());
        Gen.Select(pitches, Gen.Int[40, 70].Array[1, 3].Select(each => each.Order().ToArray()))
            .Sample((from, to) => Assert.Equal(LeastCover(from, to), GripProgression.VoiceMotion(from, to)), iter: 500);
    }

    [Fact]
    public void AProgressionIsTheBestOfAllChoicesOfGrips() =>
        Gen.Select(
                FingeringGens.SmallChord.Array[1, 3],
                FingeringGens.Tuning(4, 5),
                Gen.OneOf(FingeringGens.UsualHand, FingeringGens.Hand)
            )
            .Sample(
                (chords, tuning, hand) =>
                {
                    var query = new GripQuery
                    {
                        Chord = chords[0],
                        Neck = new(tuning, frets: 5),
                        Hand = hand,
                        AnyBass = true,
                    };
                    var columns = chords.Select(chord => GripSearch.Find(query with { Chord = chord })).ToArray();
                    var answer = ProgressionSearch.Find(chords, query);
                    if (columns.Any(column => column.Count == 0))
                    {
                        Assert.Empty(answer.Grips);
                        var first = Array.FindIndex(columns, column => column.Count == 0);
                        Assert.Equal(new(first, columns[first].Reason), answer.Reason);
                        return;
                    }

                    if (columns.Aggregate(1.0, (product, column) => product * column.Count) > 20_000)
                    {
                        return;
                    }

                    Assert.Null(answer.Reason);
                    Assert.Equal(Least(hand.Weights, columns, 0, null, 0), answer.Cost, Tolerance);
                    Assert.Equal(Cost(hand.Weights, answer.Grips), answer.Cost, Tolerance);
                },
                iter: 200
            );

    [Fact]
    public void AMelodyStaysOnTop()
    {
        var chords = "Ebmaj7 Cm7 Fm7 Bb7".Split(' ').Select(text => Chord.Parse(text)).ToArray();
        Pitch?[] melody = [Pitch.Parse("G4"), Pitch.Parse("Bb4"), null, Pitch.Parse("D4")];
        var like = new GripQuery
        {
            Chord = chords[0],
            Neck = Neck.Guitar,
            LastFret = 12,
        };
        var answer = ProgressionSearch.Find(chords, like, melody);
        Assert.Equal(4, answer.Grips.Count);
        Assert.All(melody.Zip(answer.Grips), each => Assert.True(each.First is null || each.Second.Top == each.First));
        Assert.True(ProgressionSearch.Find(chords, like).Cost <= answer.Cost);
        Assert.Throws<ArgumentException>(() => ProgressionSearch.Find(chords, like, melody[..3]));
    }

    [Fact]
    public void NoChordsMakeAnEmptyProgression() => Assert.Empty(ProgressionSearch.Find([]).Grips);

    private static double Least(
        EffortWeights weights,
        GripAnswer[] columns,
        int index,
        ChordGrip? before,
        double cost
    ) =>
        index == columns.Length
            ? cost
            : columns[index]
                .Min(grip =>
                    Least(
                        weights,
                        columns,
                        index + 1,
                        grip,
                        cost + grip.Effort + (before is null ? 0 : Motion(weights, before, grip))
                    )
                );

    internal static double Cost(EffortWeights weights, IReadOnlyList<ChordGrip> grips) =>
        grips.Sum(grip => grip.Effort) + grips.Zip(grips.Skip(1), (one, other) => Motion(weights, one, other)).Sum();

    private static double Motion(EffortWeights weights, ChordGrip from, ChordGrip to)
    {
        int[] Pitches(ChordGrip grip) => [.. grip.Places.Select(place => place.Pitch.MidiNumber)];
        var voices = weights.VoiceStep * GripProgression.VoiceMotion(Pitches(from), Pitches(to));
        return from.Grip.LowestFret is not { } one || to.Grip.LowestFret is not { } other || one == other
            ? voices
            : voices
                + weights.Shift
                + (
                    weights.ShiftDistance
                    * Math.Abs(BruteForce.Tip(from.Neck, one) - BruteForce.Tip(to.Neck, other))
                    / 1000
                );
    }

    /// <summary>Over all sets of voices that leave no note out.</summary>
    private static int LeastCover(int[] from, int[] to)
    {
        var least = int.MaxValue;
        for (var set = 0; set < 1 << (from.Length * to.Length); set++)
        {
            var (sum, one, other) = (0, 0, 0);
            for (var edge = 0; edge < from.Length * to.Length; edge++)
            {
                if ((set & (1 << edge)) != 0)
                {
                    var (i, j) = (edge / to.Length, edge % to.Length);
                    (sum, one, other) = (sum + Math.Abs(from[i] - to[j]), one | (1 << i), other | (1 << j));
                }
            }

            if (one == (1 << from.Length) - 1 && other == (1 << to.Length) - 1)
            {
                least = Math.Min(least, sum);
            }
        }

        return least;
    }
}
