using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Relations;

namespace TheoryKit.Tests.Theory.Relations;

public class VoiceMotionTests
{
    private static readonly Gen<PitchClassSet> Small = Gens.PitchClassSet.Where(set => set.Count is >= 1 and <= 6);

    [Fact]
    public void Least_assignment_is_what_trying_everything_finds()
    {
        Small
            .Select(Small)
            .Sample(
                (from, to) =>
                {
                    int[] starts = [.. from];
                    int[] ends = [.. to];
                    var pairs = LeastAssignment.Of(starts, ends);
                    var cost = Rank(pairs.Select(pair => Distance(starts[pair.From], ends[pair.To])));
                    return cost == BruteForce(starts, ends);
                },
                iter: 300
            );
    }

    [Fact]
    public void Every_tone_has_a_voice_and_only_the_smaller_chord_is_doubled()
    {
        Gens.Chord.Select(Gens.Chord)
            .Sample(
                (from, to) =>
                {
                    var motion = VoiceMotion.Between(from, to);
                    var (starts, ends) = (ChordTone.Of(from), ChordTone.Of(to));
                    return motion.Moves.Count == Math.Max(starts.Count, ends.Count)
                        && motion.Moves.Select(move => move.From).ToHashSet().SetEquals(starts)
                        && motion.Moves.Select(move => move.To).ToHashSet().SetEquals(ends)
                        && motion.Moves.All(move =>
                            (move.From.PitchClass + move.Semitones + 12) % 12 == move.To.PitchClass
                        )
                        && motion.Moves.All(move => move.Semitones is >= -5 and <= 6)
                        && motion.Total == motion.Moves.Sum(move => move.Distance);
                }
            );
    }

    [Fact]
    public void Distance_is_the_same_both_ways_and_zero_for_the_same_sounds_only()
    {
        Gens.Chord.Select(Gens.Chord)
            .Sample(
                (a, b) =>
                    VoiceMotion.Between(a, b).Total == VoiceMotion.Between(b, a).Total
                    && (VoiceMotion.Between(a, b).Total == 0) == (a.PitchClasses == b.PitchClasses)
                    && VoiceMotion.Between(a, a).Held == ChordTone.Of(a).Count
            );
    }

    [Fact]
    public void Common_tones_of_chords_of_one_size_are_held()
    {
        // On the circle a held tone never makes the whole longer: if two voices cross it, let one stay and one go all the way.
        Small
            .Select(Small)
            .Where((a, b) => a.Count == b.Count)
            .Sample(
                (a, b) =>
                {
                    int[] starts = [.. a];
                    int[] ends = [.. b];
                    return LeastAssignment.Of(starts, ends).Count(pair => starts[pair.From] == ends[pair.To])
                        == a.Intersect(b).Count;
                }
            );
    }

    [Theory]
    // A fifth down by steps; the third relations, each one tone; the pole of a major triad.
    [InlineData("D", "1 b3 5 b7", "G", "1 3 5 b7", "D -> D 0, F -> F 0, A -> G -2, C -> B -1")]
    [InlineData("C", "1 3 5", "A", "1 b3 5", "C -> C 0, E -> E 0, G -> A +2")]
    [InlineData("C", "1 3 5", "E", "1 b3 5", "C -> B -1, E -> E 0, G -> G 0")]
    [InlineData("C", "1 3 5", "C", "1 b3 5", "C -> C 0, E -> Eb -1, G -> G 0")]
    [InlineData("Eb", "1 3 5 7", "C", "1 b3 5 b7", "Eb -> Eb 0, G -> G 0, Bb -> Bb 0, D -> C -2")]
    [InlineData("C", "1 3 5", "F#", "1 3 5", "C -> A# -2, E -> C# -3, G -> F# -1")]
    [InlineData("C", "1", "F#", "1", "C -> F# +6")]
    [InlineData("C", "1 3 5", "D", "1 b3 5 b7", "C -> D +2, C -> C 0, E -> F +1, G -> A +2")]
    public void Known_motions(string root, string formula, string toRoot, string toFormula, string moves)
    {
        var motion = VoiceMotion.Between(
            new Chord(NoteName.Parse(root), Formula.Parse(formula)),
            new Chord(NoteName.Parse(toRoot), Formula.Parse(toFormula))
        );
        Assert.Equal(moves, motion.ToString());
    }

    [Fact]
    public void A_foreign_bass_is_a_voice_of_its_own()
    {
        var slash = new Chord(NoteName.Parse("C"), Formula.Parse("1 3 5"), NoteName.Parse("D"));
        Assert.Equal(
            [new(NoteName.Parse("D"), null), new(NoteName.Parse("C"), Degree.Root)],
            ChordTone.Of(slash).Take(2)
        );
        Assert.Equal(4, VoiceMotion.Between(slash, slash.Over(slash.Root)).Moves.Count);
    }

    private static int Distance(int from, int to)
    {
        var up = ((to - from) % 12 + 12) % 12;
        return Math.Min(up, 12 - up);
    }

    private static (int Total, int Moving, int Squares) Rank(IEnumerable<int> distances)
    {
        var all = distances.ToList();
        return (all.Sum(), all.Count(d => d > 0), all.Sum(d => d * d));
    }

    /// <summary>Every map of the larger set onto the smaller.</summary>
    private static (int Total, int Moving, int Squares) BruteForce(int[] from, int[] to)
    {
        var (more, fewer) = from.Length >= to.Length ? (from, to) : (to, from);
        var best = (Total: int.MaxValue, Moving: 0, Squares: 0);
        var maps = (int)Math.Pow(fewer.Length, more.Length);
        for (var code = 0; code < maps; code++)
        {
            var (rest, taken) = (code, 0);
            var distances = new int[more.Length];
            for (var item = 0; item < more.Length; item++)
            {
                var place = rest % fewer.Length;
                rest /= fewer.Length;
                taken |= 1 << place;
                distances[item] = Distance(more[item], fewer[place]);
            }

            if (taken == (1 << fewer.Length) - 1)
            {
                var rank = Rank(distances);
                best = rank.CompareTo(best) < 0 ? rank : best;
            }
        }

        return best;
    }
}
