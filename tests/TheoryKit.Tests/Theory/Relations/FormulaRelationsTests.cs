using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Relations;
using TheoryKit.Theory.Scales;

namespace TheoryKit.Tests.Theory.Relations;

public class FormulaRelationsTests
{
    // The sounds of the four triads, and of these with each seventh that leaves them whole.
    private static readonly int[][] TriadSounds =
    [
        [0, 4, 7],
        [0, 3, 7],
        [0, 3, 6],
        [0, 4, 8],
    ];

    private static readonly int[][] SeventhSounds =
    [
        [0, 4, 7, 10],
        [0, 4, 7, 11],
        [0, 3, 7, 10],
        [0, 3, 7, 11],
        [0, 3, 6, 10],
        [0, 3, 6, 9],
        [0, 3, 6, 11],
        [0, 4, 8, 10],
        [0, 4, 8, 11],
    ];

    private static readonly Gen<Formula> Formulas = Gen.OneOf(
        Gens.UsualFormula,
        AnyOf.Any(ChordQuality.Known).Select(quality => quality.Formula),
        AnyOf.Any(ScaleType.Known).Select(type => type.Formula),
        Gens.Formula.Where(formula => formula.Count > 0)
    );

    private static FormulaRelations Of(string formula) => Formula.Parse(formula).Relations();

    [Theory]
    [InlineData("m7", "b3: sixth")]
    [InlineData("6", "6: minor seventh")]
    [InlineData("m6", "6: half-diminished seventh")]
    [InlineData("7alt", "b5: dominant thirteenth, sharp eleven")] // its tritone substitute
    [InlineData("7")]
    public void Named_rotations_are_those_that_players_name(string symbol, params string[] expected)
    {
        var relations = Chord.Parse($"C{symbol}").Formula.Relations();
        Assert.Equal(expected, relations.NamedRotations.Select(rotation => rotation.ToString()));
        Assert.Equal(relations.Formula.PitchClasses.Count - 1, relations.Rotations.Count);
        Assert.All(relations.Rotations.Except(relations.NamedRotations), rotation => Assert.False(rotation.IsNamed));
    }

    [Fact]
    public void Triads_and_sevenths_inside_are_all_there_are()
    {
        Formulas.Sample(formula =>
        {
            AssertInside(formula, TriadSounds, formula.Relations().Triads);
            AssertInside(formula, SeventhSounds, formula.Relations().Sevenths);
        });
    }

    private static void AssertInside(Formula formula, int[][] kinds, IReadOnlyList<DegreeChord> found)
    {
        var sounds = formula.Select(degree => degree.PitchClass).ToHashSet();
        var expected =
            from root in Enumerable.Range(0, 12)
            from kind in kinds
            let moved = kind.Select(each => (each + root) % 12).ToHashSet()
            where moved.IsProperSubsetOf(sounds)
            select $"{root}: {string.Join(' ', kind)}";
        Assert.Equal(
            expected.Order(),
            found.Select(chord => $"{chord.On.PitchClass}: {string.Join(' ', chord.Formula.PitchClasses)}").Order()
        );
        AssertFunctions(formula, found);
    }

    private static void AssertFunctions(Formula formula, IEnumerable<DegreeChord> chords)
    {
        foreach (var chord in chords)
        {
            Assert.True(formula.Contains(chord.On));
            Assert.Equal(chord.Formula, chord.Functions.Select(each => each.Own));
            Assert.All(
                chord.Functions,
                each =>
                {
                    Assert.True(formula.Contains(each.Outer));
                    Assert.Equal(each.Outer.PitchClass, (chord.On.PitchClass + each.Own.PitchClass) % 12);
                }
            );
        }
    }

    [Fact]
    public void What_is_not_marked_respelled_has_the_names_of_the_outer_formula()
    {
        var c = NoteName.Parse("C");
        Formulas.Sample(formula =>
        {
            var relations = formula.Relations();
            foreach (var chord in relations.Triads.Concat(relations.Sevenths).Concat(relations.Rotations))
            {
                var root = c.Add(chord.On);
                Assert.All(
                    chord.Functions,
                    each => Assert.Equal(chord.Respelled.Contains(each), root.Add(each.Own) != c.Add(each.Outer))
                );
            }
        });
    }

    [Fact]
    public void Rotations_have_the_same_sounds_from_every_other_tone()
    {
        Formulas.Sample(formula =>
        {
            var rotations = formula.Relations().Rotations;
            Assert.Equal(
                formula.Select(degree => degree.PitchClass).Where(each => each != 0).Distinct().Order(),
                rotations.Select(each => each.On.PitchClass).Order()
            );
            Assert.All(
                rotations,
                each => Assert.Equal(formula.PitchClasses, each.Formula.PitchClasses.Transpose(each.On.PitchClass))
            );
            AssertFunctions(formula, rotations);
        });
    }

    [Theory]
    [InlineData("1 b3 5 b7", "b3", "1 3 5 6", false)]
    [InlineData("1 3 5 6", "6", "1 b3 5 b7", false)]
    [InlineData("1 b3 5 6", "6", "1 b3 b5 b7", false)]
    [InlineData("1 b3 b5 b7", "b3", "1 b3 5 6", false)]
    [InlineData("1 4 5", "4", "1 2 5", false)]
    [InlineData("1 3 5 6 9", "9", "1 4 5 b7 9", false)]
    [InlineData("1 b3 b5 bb7", "b5", "1 b3 b5 bb7", true)]
    [InlineData("1 3 #5", "3", "1 3 #5", true)]
    [InlineData("1 3 b5 b7", "b5", "1 3 b5 b7", true)]
    [InlineData("1 3 5", "5", "1 4 6", false)]
    public void The_same_notes_from_another_root(string formula, string on, string rotated, bool respelled)
    {
        var rotation = Of(formula).Rotations.Single(each => each.On == Degree.Parse(on));
        Assert.Equal(rotated, rotation.Formula.ToString());
        Assert.Equal(respelled, rotation.IsRespelled);
    }

    [Fact]
    public void Rotations_of_a_scale_are_its_modes()
    {
        Assert.Equal(
            ["dorian", "phrygian", "lydian", "mixolydian", "minor", "locrian"],
            ScaleType.Major.Formula.Relations().Rotations.Select(each => each.Scale!.Name)
        );
        Assert.All(
            ScaleType.Known.Where(type => type.Formula.Count >= 5),
            type =>
                Assert.Equal(
                    type.Formula.Modes.Skip(1),
                    type.Formula.Relations().Rotations.Select(each => each.Formula)
                )
        );
    }

    [Fact]
    public void Diminished_sevenths_share_their_notes_with_simple_roots()
    {
        var c = NoteName.Parse("C");
        var rotations = Of("1 b3 b5 bb7").Rotations;
        Assert.Equal(["Ebdim7", "Gbdim7", "Bbbdim7"], rotations.Select(each => each.Over(c).ToString()));
        Assert.Equal(["Ebdim7", "Gbdim7", "Adim7"], rotations.Select(each => each.SimplestOver(c).ToString()));
    }

    [Fact]
    public void Inside_a_major_ninth()
    {
        var relations = Of("1 3 5 7 9");
        Assert.Equal(
            ["1: major triad", "3: minor triad", "5: major triad"],
            relations.Triads.Select(each => each.ToString())
        );
        Assert.Equal(["1: major seventh", "3: minor seventh"], relations.Sevenths.Select(each => each.ToString()));
        Assert.Equal(["1 = 5", "3 = 7", "5 = 9"], relations.Triads[2].Functions.Select(each => each.ToString()));
        Assert.Equal("Bb", relations.Triads[2].Over(NoteName.Parse("Eb")).ToString());
    }

    [Fact]
    public void Scales_around_are_all_that_hold_the_sounds()
    {
        Formulas.Sample(formula =>
        {
            var sounds = formula.Select(degree => degree.PitchClass).ToHashSet();
            var scales = formula.Relations().Scales;
            Assert.Equal(
                ScaleType
                    .Known.Where(type => type.Formula.Count < 12)
                    .Where(type => sounds.IsSubsetOf(type.Formula.Select(degree => degree.PitchClass)))
                    .Select(type => type.Name)
                    .Order(),
                scales.Select(each => each.Type.Name).Order()
            );
            foreach (var scale in scales)
            {
                Assert.Equal(scale.Type.Formula.Count, scale.Added.Count + sounds.Count);
                Assert.True(scale.Type.Formula.Contains(scale.Added));
                Assert.Equal(scale.IsRespelled, !scale.Type.Formula.Contains(formula.Simple));
            }
        });
    }

    [Fact]
    public void Scales_of_a_dominant_seventh_begin_with_the_mode_it_is_taught_with()
    {
        var scales = Of("1 3 5 b7").Scales;
        Assert.Equal("mixolydian: 2 4 6", scales[0].ToString());
        Assert.DoesNotContain(scales, each => each.Type.Name == "altered");
        Assert.Contains(Of("1 3 b7 b9 #9").Scales, each => each.Type.Name == "altered" && each.IsRespelled);
    }

    [Fact]
    public void Neighbours_are_all_sets_one_tone_away()
    {
        Formulas.Sample(formula =>
        {
            var sounds = formula.PitchClasses;
            var members = sounds.ToHashSet();
            var neighbours = formula.Relations().Neighbours;
            var moved =
                from each in members
                from way in new[] { -2, -1, 1, 2 }
                let target = (each + way + 12) % 12
                where !members.Contains(target)
                select (each, way, PitchClassSet.Of([.. members.Where(other => other != each), target]).Mask);
            Assert.Equal(
                moved.Order(),
                neighbours
                    .Where(each => each.Change == FormulaChange.Moved)
                    .Select(each => (each.From!.Value.PitchClass, each.Semitones, each.Formula.PitchClasses.Mask))
                    .Order()
            );
            Assert.Equal(
                Enumerable
                    .Range(0, 12)
                    .Where(each => !members.Contains(each))
                    .Select(each => sounds.Mask | (1 << each))
                    .Order(),
                neighbours
                    .Where(each => each.Change == FormulaChange.Added)
                    .Select(each => each.Formula.PitchClasses.Mask)
                    .Order()
            );
            Assert.Equal(
                members.Count == 1 ? [] : members.Select(each => sounds.Mask & ~(1 << each)).Order(),
                neighbours
                    .Where(each => each.Change == FormulaChange.Dropped)
                    .Select(each => each.Formula.PitchClasses.Mask)
                    .Order()
            );
            Assert.All(neighbours, each => Assert.True(each.From is not { } from || formula.Contains(from)));
            Assert.All(neighbours, each => Assert.True(each.To is not { } to || each.Formula.Contains(to)));
        });
    }

    [Theory]
    // The chain that is taught by lowering one tone at a time, and the scales one raised or lowered tone apart.
    [InlineData("1 3 5 7", "7", "b7", "dominant seventh")]
    [InlineData("1 3 5 b7", "3", "b3", "minor seventh")]
    [InlineData("1 b3 5 b7", "5", "b5", "half-diminished seventh")]
    [InlineData("1 b3 b5 b7", "b7", "bb7", "diminished seventh")]
    [InlineData("1 3 5", "5", "#5", "augmented triad")]
    [InlineData("1 3 5", "3", "4", "suspended fourth")]
    [InlineData("1 3 5", "3", "2", "suspended second")]
    [InlineData("1 3 5 b7", "b7", "6", "sixth")]
    public void One_tone_moved_gives_a_named_quality(string formula, string from, string to, string name)
    {
        var neighbour = Of(formula)
            .Neighbours.Single(each => each.From == Degree.Parse(from) && each.To == Degree.Parse(to));
        Assert.Equal(name, neighbour.Quality!.Name);
        Assert.Equal(ChordQuality.Find(neighbour.Formula), neighbour.Readings[0].Quality);
    }

    [Theory]
    [InlineData("1 2 3 4 5 6 7", "4", "#4", "lydian")]
    [InlineData("1 2 3 4 5 6 7", "7", "b7", "mixolydian")]
    [InlineData("1 2 3 4 5 6 7", "3", "b3", "melodic minor")]
    [InlineData("1 2 b3 4 5 6 b7", "6", "b6", "minor")]
    [InlineData("1 2 3 5 6", "3", "b3", "kumoi")]
    public void One_tone_moved_gives_a_named_scale(string formula, string from, string to, string name) =>
        Assert.Equal(
            name,
            Of(formula)
                .Neighbours.Single(each => each.From == Degree.Parse(from) && each.To == Degree.Parse(to))
                .Scale!.Name
        );

    [Theory]
    [InlineData("9", "1 3 5 b7 9", "dominant ninth")]
    [InlineData("b9", "1 3 5 b7 b9", "dominant seventh, flat nine")]
    [InlineData("13", "1 3 5 b7 13", "dominant seventh, added thirteen")]
    public void An_added_tone_is_spelled_as_the_chord_has_it(string to, string formula, string name)
    {
        var neighbour = Of("1 3 5 b7")
            .Neighbours.Single(each => each.Change == FormulaChange.Added && each.To == Degree.Parse(to));
        Assert.Equal(Formula.Parse(formula), neighbour.Formula);
        Assert.Equal(name, neighbour.Quality!.Name);
    }

    [Fact]
    public void A_major_triad_turns_into_three_minor_triads_by_one_tone()
    {
        // Its parallel, its relative and its leading-tone exchange.
        Assert.Equal(
            ["1: minor triad", "3: minor triad", "6: minor triad"],
            Of("1 3 5")
                .Neighbours.Where(each => each.Change == FormulaChange.Moved)
                .SelectMany(each => each.Readings)
                .Where(each => each.Formula == Formula.Parse("1 b3 5"))
                .Select(each => each.ToString())
                .Order(StringComparer.Ordinal)
        );
    }

    [Fact]
    public void A_minor_seventh_stands_on_2_3_and_6_of_the_major_scale()
    {
        Assert.Equal(["2", "3", "6"], On("1 b3 5 b7"));
        Assert.Equal(["1", "4"], On("1 3 5 7"));
        Assert.Equal(["5"], On("1 3 5 b7"));
        Assert.Equal(["7"], On("1 b3 b5 b7"));
        Assert.Empty(On("1 3 #5"));

        static IEnumerable<string> On(string formula) =>
            Of(formula).Within(ScaleType.Major.Formula).Select(each => each.On.ToString());
    }

    [Fact]
    public void Equal_by_value()
    {
        Formulas.Sample(formula =>
        {
            var (left, right) = (formula.Relations(), FormulaRelations.Of(formula));
            return left.Equals(right)
                && left.GetHashCode() == right.GetHashCode()
                && left.Triads.Equals(right.Triads)
                && left.Sevenths.Equals(right.Sevenths)
                && left.Scales.Equals(right.Scales)
                && left.Rotations.Equals(right.Rotations)
                && left.Neighbours.Equals(right.Neighbours);
        });
    }

    [Fact]
    public void Relations_of_the_seventh_chords_in_words()
    {
        var text = new System.Text.StringBuilder();
        foreach (var quality in ChordQuality.Known.Where(quality => quality.Family == ChordFamily.Seventh))
        {
            var relations = quality.Formula.Relations();
            text.Append(
                $"{quality.Name}: {quality.Formula}, class {relations.SetClass}, intervals {relations.IntervalVector}\n"
            );
            Append(text, "inside", relations.Triads);
            Append(text, "the same notes", relations.Rotations);
            Append(text, "scales", relations.Scales);
            Append(
                text,
                "one tone away",
                relations
                    .Neighbours.Where(each => each.Readings.Count > 0)
                    .Select(each => $"{each} ({string.Join("; ", each.Readings)})")
            );
            text.Append('\n');
        }

        Expectations.Matches(text.ToString(), "relations-of-sevenths.txt");

        static void Append<T>(System.Text.StringBuilder text, string heading, IEnumerable<T> items)
        {
            text.Append($"  {heading}\n");
            foreach (var item in items)
            {
                text.Append($"    {item}\n");
            }
        }
    }
}
