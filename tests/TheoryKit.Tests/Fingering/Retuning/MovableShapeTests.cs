using TheoryKit.Fingering.Grips;
using TheoryKit.Fingering.Hands;
using TheoryKit.Fingering.Retuning;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Tests.Fingering.Retuning;

public class MovableShapeTests
{
    private static readonly Gen<(Formula Formula, Neck Neck, Hand Hand, GripLimits Limits, int Fret)> Asked =
        Gen.Select(
            FingeringGens.SmallChord,
            FingeringGens.Neck(4, 5, 9, 12),
            FingeringGens.UsualHand,
            Gen.Bool.Select(Gen.Bool, (any, inner) => new GripLimits { AnyBass = any, InnerMutes = inner }),
            Gen.Int[0, 5],
            (chord, neck, hand, limits, above) => (chord.Formula, neck, hand, limits, neck.Capo + 1 + above)
        );

    [Fact]
    public void They_are_the_grips_of_every_root_and_fret_by_their_frets_from_the_lowest() =>
        Asked.Sample(
            asked =>
            {
                var (formula, neck, hand, limits, fret) = asked;
                var slow = new HashSet<string>();
                for (var root = 0; root < 12; root++)
                {
                    var chord = new Chord(Pitch.FromMidi(60 + root).Name, formula);
                    foreach (var grip in GripSearch.Find(limits.For(chord, neck, hand)))
                    {
                        var positions = grip.Grip.Positions.ToList();
                        var lowest = positions.Min(static position => position.Fret);
                        var isOpenAtOneFret =
                            grip.Grip.LowestFret is null && positions.TrueForAll(each => each.Fret == lowest);
                        if (isOpenAtOneFret || (grip.Grip.IsMovable && lowest == fret))
                        {
                            slow.Add(
                                Text(
                                    grip.Grip.Strings.Select(each => each.Fret - lowest),
                                    Enumerable
                                        .Range(1, neck.StringCount)
                                        .Select(number =>
                                            grip.Grip[number].Fret is { } at
                                                ? formula.At(neck.MidiNumberAt(new(number, at)) - root)
                                                : null
                                        )
                                )
                            );
                        }
                    }
                }

                var shapes = MovableShape.Find(formula, neck, hand, limits, fret);
                Assert.Equal(slow.Order(), shapes.Select(static shape => Text(shape.Frets, shape.Functions)).Order());
                Assert.Equal(shapes.Count, shapes.Distinct().Count());
            },
            iter: 150
        );

    [Fact]
    public void They_come_from_the_least_effort_up_and_begin_at_the_fret_asked() =>
        Asked.Sample(
            asked =>
            {
                var shapes = MovableShape.Find(asked.Formula, asked.Neck, asked.Hand, asked.Limits, asked.Fret);
                var movable = shapes.TakeWhile(static shape => !shape.IsOpenOnly).ToList();
                Assert.All(
                    shapes.Skip(movable.Count),
                    static shape => Assert.True(shape.IsOpenOnly && shape.IsOneFret)
                );
                Assert.Equal(
                    movable.Select(static shape => shape.Effort).Order(),
                    movable.Select(static s => s.Effort)
                );
                Assert.All(
                    movable,
                    shape =>
                    {
                        Assert.Equal(asked.Fret, shape.Fret);
                        Assert.Equal(0, shape.Frets.Min());
                        Assert.True(shape.Grip.Grip.IsMovable);
                    }
                );
            },
            iter: 150
        );

    [Fact]
    public void Anywhere_on_the_neck_the_root_string_names_the_chord() =>
        Asked.Sample(
            asked =>
            {
                var shapes = MovableShape.Find(asked.Formula, asked.Neck, asked.Hand, asked.Limits, asked.Fret);
                foreach (var shape in shapes.Take(10))
                {
                    for (var fret = 1; fret <= asked.Neck.Frets; fret++)
                    {
                        if (shape.At(fret) is not { } grip)
                        {
                            continue;
                        }

                        Assert.Equal(fret, grip.Grip.LowestFret ?? fret);
                        Assert.All(
                            grip.Places,
                            place =>
                                Assert.Equal(
                                    (shape.RootAt(fret).PitchClass + place.Function.PitchClass) % 12,
                                    place.Pitch.PitchClass
                                )
                        );
                        Assert.All(
                            shape.RootStrings,
                            number =>
                                Assert.Equal(
                                    shape.RootAt(fret).PitchClass,
                                    asked.Neck.MidiNumberAt(new(number, fret + shape.Frets[number - 1]!.Value)) % 12
                                )
                        );
                        // The hand that holds it here holds it higher up too, where frets are narrower.
                        Assert.True(
                            fret == 1 || fret <= shape.Fret || shape.IsOpenOnly || grip.Effort < double.MaxValue
                        );
                    }
                }
            },
            iter: 60
        );

    [Fact]
    public void The_fret_of_a_root_is_the_lowest_that_gives_it() =>
        Gen.Select(Asked, Gens.UsualNoteName)
            .Sample(
                (asked, root) =>
                {
                    var neck = asked.Neck;
                    foreach (
                        var shape in MovableShape
                            .Find(asked.Formula, neck, asked.Hand, asked.Limits, asked.Fret)
                            .Where(static shape => !shape.IsOpenOnly)
                            .Take(10)
                    )
                    {
                        var held = Enumerable.Range(1, neck.StringCount).Where(n => shape.Frets[n - 1] is not null);
                        int? lowest = Enumerable
                            .Range(0, neck.Frets + 1)
                            .Where(fret =>
                                shape.RootAt(fret).PitchClass == root.PitchClass
                                && held.All(n =>
                                    fret + shape.Frets[n - 1] > neck.OpenFret(n)
                                    && fret + shape.Frets[n - 1] <= neck.Frets
                                )
                            )
                            .Select(static fret => (int?)fret)
                            .FirstOrDefault();
                        Assert.Equal(lowest, shape.FretOf(root));
                    }
                },
                iter: 150
            );

    [Fact]
    public void What_is_part_of_another_shape_sounds_a_choice_of_its_strings() =>
        Asked.Sample(
            asked =>
            {
                var shapes = MovableShape.Find(asked.Formula, asked.Neck, asked.Hand, asked.Limits, asked.Fret);
                var whole = MovableShape.Whole(shapes);
                Assert.True(shapes.Count == 0 || whole.Count > 0);
                foreach (var shape in shapes.Except(whole))
                {
                    // Whatever is left out is part of something that is not.
                    Assert.Contains(whole, other => shape.IsPartOf(other));
                }

                foreach (var (one, other) in whole.SelectMany(one => whole.Select(other => (one, other))).Take(500))
                {
                    Assert.False(one.IsPartOf(other));
                }
            },
            iter: 100
        );

    [Theory]
    [InlineData("Open D", "0 0 0 0 0 0", "6 4 1")]
    [InlineData("Open E", "0 0 0 0 0 0", "6 4 1")]
    [InlineData("Open G", "x 0 0 0 0 0", "5 3")]
    [InlineData("Open A", "x 0 0 0 0 0", "5 3")]
    [InlineData("Open C", "0 0 0 0 0 0", "6 4 2")]
    public void In_an_open_major_tuning_a_barre_across_gives_every_major_chord(string name, string frets, string roots)
    {
        var neck = new Neck(Tuning.Find(name)!);
        var shapes = MovableShape.Whole(MovableShape.Find(Formula.Parse("1 3 5"), neck));
        var barre = Assert.Single(shapes, static shape => shape.IsOneFret);
        Assert.Equal(frets, barre.ToString());
        Assert.Equal(roots, string.Join(' ', barre.RootStrings));
        Assert.True(barre.Grip.Grip.HasBarre && !barre.IsOpenOnly);
        Assert.Equal(
            12,
            Enumerable.Range(1, 12).Select(fret => barre.At(fret)!.Chord.Root.PitchClass).Distinct().Count()
        );
    }

    [Fact]
    public void A_hand_without_a_barre_has_the_open_strings_alone()
    {
        var neck = new Neck(Tuning.Find("Open D")!);
        var hand = Hand.Average with { BarreStrings = 1, OtherBarreStrings = 1 };
        var shapes = MovableShape.Whole(MovableShape.Find(Formula.Parse("1 3 5"), neck, hand));
        var open = Assert.Single(shapes, static shape => shape.IsOpenOnly);
        Assert.Equal("0 0 0 0 0 0", open.ToString());
        Assert.Equal((0, 0.0, "D"), (open.Fret, open.Effort, open.Grip.Chord.ToString()));
        Assert.Equal(0, open.FretOf(NoteName.Parse("D")));
        Assert.Null(open.FretOf(NoteName.Parse("E")));
    }

    [Theory] // The barre shapes that every method teaches, root on string 6 and on string 5.
    [InlineData("1 3 5", "0 2 2 1 0 0", "6 4 1")]
    [InlineData("1 3 5", "x 0 2 2 2 0", "5 3")]
    [InlineData("1 b3 5", "0 2 2 0 0 0", "6 4 1")]
    [InlineData("1 b3 5", "x 0 2 2 1 0", "5 3")]
    [InlineData("1 3 5 b7", "0 2 0 1 0 0", "6 1")]
    [InlineData("1 3 5 b7", "x 0 2 0 2 0", "5")]
    public void In_standard_tuning_the_barre_shapes_are_among_them(string formula, string frets, string roots)
    {
        var shapes = MovableShape.Find(Formula.Parse(formula), Neck.Guitar);
        var shape = Assert.Single(shapes, shape => shape.ToString() == frets);
        Assert.Equal(roots, string.Join(' ', shape.RootStrings));
        Assert.Equal(5, shape.Fret);
        var root = shape.RootStrings[0] == 6 ? "A" : "D";
        Assert.Equal(root, shape.RootAt(5).ToString());
        Assert.Equal(5, shape.FretOf(NoteName.Parse(root)));
    }

    [Fact]
    public void A_fret_that_can_not_be_held_is_refused()
    {
        var formula = Formula.Parse("1 3 5");
        Assert.Throws<ArgumentOutOfRangeException>(() => MovableShape.Find(formula, Neck.Guitar, fret: 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => MovableShape.Find(formula, Neck.Guitar, fret: 23));
        Assert.Throws<ArgumentOutOfRangeException>(() => MovableShape.Find(formula, Neck.Guitar.WithCapo(3), fret: 3));
        Assert.NotEmpty(MovableShape.Find(formula, Neck.Guitar.WithCapo(7)));
    }

    private static string Text(IEnumerable<int?> frets, IEnumerable<Degree?> functions) =>
        string.Join(' ', frets.Zip(functions, static (fret, function) => $"{fret}:{function}"));
}
