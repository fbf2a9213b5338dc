using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Relations;

namespace TheoryKit.Tests.Theory.Relations;

public class ChordComparisonTests
{
    private static readonly NoteName C = NoteName.Parse("C");

    [Fact]
    public void Every_sound_is_listed_once_with_those_that_have_it()
    {
        Gens.Chord.Array[1, 5]
            .Sample(chords =>
            {
                var comparison = ChordComparison.Of(chords);
                var root = chords[0].Root.PitchClass;
                return comparison
                        .Tones.Select(tone => tone.PitchClass)
                        .ToHashSet()
                        .SetEquals(chords.SelectMany(chord => chord.PitchClasses))
                    && comparison
                        .Tones.Select(tone => tone.Semitones)
                        .SequenceEqual(comparison.Tones.Select(tone => tone.Semitones).Distinct().Order())
                    && comparison.Tones.All(tone =>
                        (root + tone.Semitones) % 12 == tone.PitchClass
                        && tone.Tones.Count == chords.Length
                        && Enumerable
                            .Range(0, chords.Length)
                            .All(index =>
                                (tone.Tones[index] is not null) == chords[index].PitchClasses.Contains(tone.PitchClass)
                                && (tone.Tones[index] is not { } held || held.PitchClass == tone.PitchClass)
                            )
                        && tone.Holders.All(index => tone.Tones[index] is not null)
                    );
            });
    }

    [Fact]
    public void Shared_and_alone_are_set_operations()
    {
        Gens.Chord.Array[2, 5]
            .Sample(chords =>
            {
                var comparison = ChordComparison.Of(chords);
                var sets = chords.Select(chord => chord.PitchClasses).ToList();
                var shared = sets.Aggregate((a, b) => a.Intersect(b));
                return shared.SequenceEqual(comparison.Shared.Select(tone => tone.PitchClass).Order())
                    && Enumerable
                        .Range(0, chords.Length)
                        .All(index =>
                            sets.Where((_, other) => other != index)
                                .Aggregate(sets[index], (left, other) => left.Except(other))
                                .SequenceEqual(comparison.OnlyIn(index).Select(tone => tone.PitchClass).Order())
                        );
            });
    }

    [Fact]
    public void Every_two_chords_make_one_pair()
    {
        Gens.Chord.Array[1, 5]
            .Sample(chords =>
            {
                var comparison = ChordComparison.Of(chords);
                Assert.Equal(chords.Length * (chords.Length - 1) / 2, comparison.Pairs.Count);
                for (var i = 0; i < chords.Length; i++)
                {
                    for (var j = i + 1; j < chords.Length; j++)
                    {
                        Assert.Equal(ChordPair.Of(chords[i], chords[j]), comparison.Pair(i, j));
                        Assert.Equal(comparison.Pair(i, j), comparison.Pair(j, i));
                        Assert.Equal(
                            chords[i].PitchClasses.Intersect(chords[j].PitchClasses).Count,
                            comparison.Pair(i, j).CommonTones.Count
                        );
                    }
                }
            });
    }

    [Fact]
    public void Four_sevenths_over_one_root()
    {
        var comparison = ChordComparison.Of(
            C,
            Formula.Parse("1 3 5 7"),
            Formula.Parse("1 3 5 b7"),
            Formula.Parse("1 b3 5 b7"),
            Formula.Parse("1 b3 b5 b7")
        );
        Assert.Equal(C, comparison.CommonRoot);
        Assert.Equal([0, 3, 4, 6, 7, 10, 11], comparison.Tones.Select(tone => tone.Semitones));
        Assert.Equal([0], comparison.Shared.Select(tone => tone.Semitones));
        Assert.Equal([11], comparison.OnlyIn(0).Select(tone => tone.Semitones));
        Assert.Empty(comparison.OnlyIn(1));
        Assert.Empty(comparison.OnlyIn(2));
        Assert.Equal([6], comparison.OnlyIn(3).Select(tone => tone.Semitones));
        Assert.Equal([1, 2, 3, 1, 2, 1], comparison.Pairs.Select(pair => pair.Distance));
        Assert.All(comparison.Tones, tone => Assert.False(tone.ChangesFunction));
    }

    [Fact]
    public void A_sound_spelled_two_ways_is_marked()
    {
        var comparison = ChordComparison.Of(C, Formula.Parse("1 3 b5"), Formula.Parse("1 3 #11"));
        var tone = comparison.Tones.Single(each => each.Semitones == 6);
        Assert.True(tone is { IsShared: true, IsRespelled: true, ChangesFunction: true });
        Assert.True(comparison.Pairs[0].CommonTones.Single(each => each.InFirst.PitchClass == 6).IsRespelled);
    }

    [Fact]
    public void Equal_by_the_chords()
    {
        var formulas = new[] { Formula.Parse("1 3 5"), Formula.Parse("1 b3 5") };
        Assert.Equal(ChordComparison.Of(C, formulas), ChordComparison.Of(C, formulas));
        Assert.Equal(ChordComparison.Of(C, formulas).Tones, ChordComparison.Of(C, formulas).Tones);
        Assert.NotEqual(ChordComparison.Of(C, formulas), ChordComparison.Of(C, formulas.Reverse()));
        Assert.Null(
            ChordComparison.Of(new Chord(C, formulas[0]), new Chord(NoteName.Parse("D"), formulas[0])).CommonRoot
        );
        Assert.Throws<ArgumentException>(() => ChordComparison.Of());
        Assert.Throws<ArgumentOutOfRangeException>(() => ChordComparison.Of(C, formulas).Pair(1, 1));
    }
}
