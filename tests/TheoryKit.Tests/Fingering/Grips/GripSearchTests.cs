using TheoryKit.Fingering.Grips;
using TheoryKit.Fingering.Hands;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Tests.Fingering.Grips;

public class GripSearchTests
{
    private const double Tolerance = 1e-9;

    // As many frets as keep the number of fret tuples small, by the number of strings.
    private static readonly Gen<Neck> SmallNeck = Gen.OneOf(
        FingeringGens.Neck(3, 3, 3, 14),
        FingeringGens.Neck(4, 4, 3, 9),
        FingeringGens.Neck(5, 5, 3, 6),
        FingeringGens.Neck(6, 6, 3, 4)
    );

    private static readonly Gen<GripQuery> Query = Gen.Select(
        SmallNeck,
        FingeringGens.SmallChord,
        Gen.OneOf(FingeringGens.Hand, FingeringGens.UsualHand),
        Gen.Int[0, 99].Array[12],
        (neck, chord, hand, dice) =>
            new GripQuery
            {
                Neck = neck,
                Chord = chord,
                Hand = hand,
                Optional = dice[0] < 70 ? null : Formula.Parse(dice[0] < 85 ? "()" : "1 5"),
                AnyBass = dice[1] < 50,
                Bass = dice[2] < 20 ? chord.Root + Interval.Parse("M3") : null,
                Top = dice[3] < 15 ? Pitch.FromMidi(48 + dice[3]) : null,
                Strings =
                    dice[4] < 20
                        ? Enumerable.Range(1, neck.StringCount).Where(s => s != 1 + (dice[5] % 3)).ToHashSet()
                        : null,
                AllStrings = dice[6] < 15,
                MinSounding = 1 + (dice[7] % 4),
                MaxSounding = dice[7] % 4 == 3 ? 12 : 3 + (dice[7] % 2),
                FirstFret = dice[8] < 20 ? 2 : 1,
                LastFret = dice[8] < 30 ? 3 : null,
                OpenStrings =
                    dice[9] < 60 ? OpenStrings.Allowed
                    : dice[9] < 90 ? OpenStrings.None
                    : OpenStrings.Only,
                InnerMutes = dice[10] < 50,
                MaxFingers = dice[11] < 70 ? 5 : dice[11] % 5,
            }
    );

    [Fact]
    public void GripsAreAllThatAPlainSearchFindsWithTheSameEffort() =>
        Query.Sample(
            query =>
            {
                var expected = BruteForce.Grips(query);
                var found = GripSearch.Find(query);
                var actual = found.ToDictionary(each => BruteForce.Key(each.Grip), each => each.Effort);
                Assert.Equal(expected.Keys.Order(), actual.Keys.Order());
                foreach (var (key, effort) in expected)
                {
                    Assert.Equal(effort, actual[key], Tolerance);
                }

                Assert.Equal(found.Select(each => each.Effort).Order(), found.Select(each => each.Effort));
                Assert.Equal(found.Count == 0, found.Reason is not null);
            },
            iter: 400
        );

    [Fact]
    public void TheFingersGivenHaveTheEffortGiven() =>
        Query.Sample(
            query =>
            {
                foreach (var each in GripSearch.Find(query))
                {
                    var effort = BruteForce.Effort(query.Neck, query.Hand, [.. each.Grip.Strings]);
                    Assert.Equal(effort, each.Effort, Tolerance);
                    var fingers = each.Grip.Strings.Where(s => s.Finger is not null).Select(s => s.Finger).Distinct();
                    Assert.True(fingers.Count() <= query.MaxFingers);
                }
            },
            iter: 300
        );

    [Fact]
    public void FingersOfAnyFretsAreTheLeastEffortOverAllAssignments() =>
        Gen.Select(
                FingeringGens.Neck(3, 6, 3, 15),
                FingeringGens.Hand,
                Gen.Int[-3, 5].Array[6],
                Gen.Int[1, 10],
                Gen.Int[0, 5]
            )
            .Sample(
                (neck, hand, choice, from, most) =>
                {
                    var solver = new GripSolver(new(neck, hand));
                    var frets = new int[neck.StringCount + 1];
                    var plain = new int?[neck.StringCount];
                    for (var number = 1; number <= neck.StringCount; number++)
                    {
                        var fret = Math.Min(from + choice[number - 1], neck.Frets);
                        var kind =
                            choice[number - 1] == -3 ? GripSolver.Muted
                            : choice[number - 1] == -2 || fret <= neck.OpenFret(number) ? GripSolver.Open
                            : fret;
                        frets[number] = kind;
                        plain[number - 1] =
                            kind == GripSolver.Muted ? null
                            : kind == GripSolver.Open ? neck.OpenFret(number)
                            : fret;
                    }

                    Assert.Equal(
                        BruteForce.LeastEffort(neck, hand, plain, most),
                        solver.Solve(frets, neck.StringCount, most),
                        Tolerance
                    );
                },
                iter: 1_000
            );

    [Fact]
    public void EffortNeverRisesWhenALimitIsDropped() =>
        Query.Sample(
            query =>
            {
                GripQuery[] wider =
                [
                    query with
                    {
                        AnyBass = true,
                    },
                    query with
                    {
                        Top = null,
                    },
                    query with
                    {
                        Strings = null,
                        AllStrings = false,
                    },
                    query with
                    {
                        MinSounding = 1,
                    },
                    query with
                    {
                        MaxSounding = 12,
                    },
                    query with
                    {
                        FirstFret = 1,
                        LastFret = null,
                    },
                    query with
                    {
                        OpenStrings = OpenStrings.Allowed,
                    },
                    query with
                    {
                        InnerMutes = true,
                    },
                    query with
                    {
                        MaxFingers = 5,
                    },
                    query with
                    {
                        Optional = query.Chord.Formula,
                    },
                ];
                var found = GripSearch.Find(query);
                foreach (
                    var without in wider.Where(each => !each.AnyBass || IsTone(query.Bass ?? query.Chord.Bass, query))
                )
                {
                    var more = GripSearch
                        .Find(without)
                        .ToDictionary(each => BruteForce.Key(each.Grip), each => each.Effort);
                    Assert.All(found, each => Assert.True(more[BruteForce.Key(each.Grip)] <= each.Effort + Tolerance));
                }
            },
            iter: 150
        );

    [Fact]
    public void ALargerHandNeverLosesAGrip() =>
        Gen.Select(Query, Gen.Double[0, 60].Array[7], Gen.Int[0, 2])
            .Sample(
                (query, more, barre) =>
                {
                    var hand = query.Hand;
                    var larger = hand with
                    {
                        IndexToMiddle = hand.IndexToMiddle + more[0],
                        MiddleToRing = hand.MiddleToRing + more[1],
                        RingToLittle = hand.RingToLittle + more[2],
                        IndexToRing = hand.IndexToRing + more[3],
                        MiddleToLittle = hand.MiddleToLittle + more[4],
                        IndexToLittle = hand.IndexToLittle + more[5],
                        ThumbReach = hand.ThumbReach + more[6],
                        BarreStrings = hand.BarreStrings + barre,
                        OtherBarreStrings = hand.OtherBarreStrings + barre,
                        ThumbOver = hand.ThumbOver || barre == 2,
                    };
                    Assert.Subset(Frets(query with { Hand = larger }), Frets(query));
                },
                iter: 200
            );

    [Fact]
    public void PresetsGrowFromSmallToLarge()
    {
        foreach (var chord in "Ebmaj7 Cm7 Fm7 Bb7".Split(' ').Select(text => Chord.Parse(text)))
        {
            HashSet<string>[] bySize =
            [
                .. new[] { Hand.Small, Hand.Average, Hand.Large }.Select(hand =>
                    Frets(
                        new()
                        {
                            Chord = chord,
                            Neck = Neck.Guitar,
                            Hand = hand,
                        }
                    )
                ),
            ];
            Assert.Subset(bySize[1], bySize[0]);
            Assert.Subset(bySize[2], bySize[1]);
        }
    }

    [Fact]
    public void GripsWithoutOpenStringsMoveUpTheNeckWithTheirChord() =>
        Gen.Select(FingeringGens.Tuning(4, 6), FingeringGens.SmallChord, FingeringGens.UsualHand, Gen.Int[1, 6])
            .Sample(
                (tuning, chord, hand, up) =>
                {
                    var neck = new Neck(tuning, frets: 14);
                    var query = new GripQuery
                    {
                        Chord = chord,
                        Neck = neck,
                        Hand = hand,
                        OpenStrings = OpenStrings.None,
                        FirstFret = 3,
                        LastFret = 8,
                    };
                    var moved = query with
                    {
                        Chord = new(
                            Pitch.FromMidi(60 + chord.Root.PitchClass + up).Name,
                            chord.Formula,
                            Pitch.FromMidi(60 + chord.Bass.PitchClass + up).Name
                        ),
                        FirstFret = 3 + up,
                        LastFret = 8 + up,
                    };

                    // Frets are closer together up the neck: no grip is lost, though some may be gained.
                    var here = GripSearch
                        .Find(query)
                        .Select(each => BruteForce.Key(each.Grip.Strings.Select(s => s.Fret + up)));
                    Assert.Subset(Frets(moved), here.ToHashSet());
                    foreach (var each in GripSearch.Find(query))
                    {
                        Assert.True(each.Grip.IsMovable);
                    }
                },
                iter: 100
            );

    [Fact]
    public void AMirroredTuningHasTheMirroredGrips() =>
        Query.Sample(
            query =>
            {
                // The thumb comes from one side of the neck only, and a twist of the hand is not one in the mirror.
                var hand = query.Hand with
                {
                    ThumbOver = false,
                    Weights = query.Hand.Weights with { Twist = 0 },
                };
                var neck = query.Neck;
                var strings = neck.StringCount;
                var one = GripSearch.Find(query with { Hand = hand });
                var other = GripSearch.Find(
                    query with
                    {
                        Hand = hand,
                        Neck = neck.With(new Tuning(neck.Tuning.Strings)),
                        Strings = query.Strings?.Select(number => strings + 1 - number).ToHashSet(),
                    }
                );
                var efforts = other.ToDictionary(
                    each => BruteForce.Key(each.Grip.Strings.Reverse().Select(s => s.Fret)),
                    each => each.Effort
                );
                Assert.Equal(efforts.Count, one.Count);
                Assert.All(one, each => Assert.Equal(efforts[BruteForce.Key(each.Grip)], each.Effort, Tolerance));
            },
            iter: 300
        );

    [Fact]
    public void FourFretsAreTooFarForASmallHandAtTheNutAndEasyAtTheOctave()
    {
        // On strings 6 and 5 a root and its sixth lie four frets apart, and nowhere nearer.
        GripQuery Sixth(string root, int fret) =>
            new()
            {
                Chord = new(NoteName.Parse(root), Formula.Parse("1 6")),
                Neck = Neck.Guitar,
                Hand = Hand.Small,
                Strings = new HashSet<int> { 5, 6 },
                MinSounding = 2,
                FirstFret = fret,
                LastFret = fret + 4,
                OpenStrings = OpenStrings.None,
            };

        var atNut = GripSearch.Find(Sixth("F", 1));
        Assert.Empty(atNut);

        // By ruler: 154.5 - 28.4 mm along the neck and 8 across are 126.5 mm; the hand has 136 * 5/6 = 113.3.
        var miss = Assert.IsType<NoGripReason.OutOfReach>(atNut.Reason);
        Assert.Equal(Grip.Parse("1-1 5-4 x x x x"), miss.Nearest);
        Assert.Equal((Finger.Index, Finger.Little), (miss.One, miss.Other));
        Assert.InRange(miss.Excess, 13, 14);
        var average = GripSearch.Find(Sixth("F", 1) with { Hand = Hand.Average })[0];
        Assert.Equal("1-1 5-4 x x x x", average.Grip.ToString());
        var atOctave = GripSearch.Find(Sixth("E", 12))[0];
        Assert.True(atOctave.Effort < average.Effort / 2, $"{atOctave} {atOctave.Effort}, {average} {average.Effort}");
    }

    [Fact]
    public void TheMillimetresInTheReasonAreTheFewestThatHelp() =>
        Query
            .Where(query => query.MaxFingers == 5)
            .Sample(
                query =>
                {
                    // From the thumb to another finger two reaches add up, and both would grow.
                    var small = query with
                    {
                        Hand = query.Hand.Scale(0.2) with { ThumbOver = false },
                    };
                    if (GripSearch.Find(small).Count > 0 || GripSearch.NearestMiss(small) is not { } miss)
                    {
                        return;
                    }

                    // With every reach longer by a little less than what the worst pair lacks there is nothing yet; with a little more there is.
                    Assert.True(miss.Excess > 0);
                    Assert.NotEmpty(GripSearch.Find(small with { Hand = small.Hand.Reaching(miss.Excess + 0.01) }));
                    if (miss.Excess > 0.5)
                    {
                        Assert.Empty(GripSearch.Find(small with { Hand = small.Hand.Reaching(miss.Excess - 0.5) }));
                    }
                },
                iter: 100
            );

    [Fact]
    public void AnEmptyAnswerNamesTheLimitWithoutWhichThereIsAGrip()
    {
        var query = new GripQuery
        {
            Chord = Chord.Parse("Fmaj7"),
            Neck = Neck.Guitar,
            LastFret = 5,
        };
        var chord = query.Chord;
        var top = Pitch.Parse("E7");
        Assert.Equal(new NoGripReason.Top(chord, top), GripSearch.Find(query with { Top = top }).Reason);
        Assert.Equal(new NoGripReason.Fingers(chord, 1), GripSearch.Find(query with { MaxFingers = 1 }).Reason);
        Assert.Equal(
            new NoGripReason.Strings(chord),
            GripSearch
                .Find(
                    query with
                    {
                        Strings = new HashSet<int> { 1, 2, 3 },
                        Optional = Formula.Empty,
                    }
                )
                .Reason
        );
        Assert.Equal(
            new NoGripReason.Frets(chord, 4, 4),
            GripSearch.Find(query with { FirstFret = 4, LastFret = 4, OpenStrings = OpenStrings.None }).Reason
        );
        Assert.Equal(
            new NoGripReason.SeveralLimits(chord),
            GripSearch.Find(query with { Top = top, MaxFingers = 0 }).Reason
        );
    }

    [Fact]
    public void QuestionsThatContradictThemselvesAreRefused()
    {
        var query = new GripQuery { Chord = Chord.Parse("C"), Neck = Neck.Guitar };
        Assert.Throws<ArgumentOutOfRangeException>(() => query with { MinSounding = 0 });
        Assert.Throws<ArgumentOutOfRangeException>(() => query with { FirstFret = 0 });
        Assert.Throws<ArgumentOutOfRangeException>(() => query with { LastFret = 0 });
        Assert.Throws<ArgumentOutOfRangeException>(() => query with { MaxFingers = -1 });
        Assert.Throws<ArgumentOutOfRangeException>(() => query with { Strings = new HashSet<int> { 13 } });
        Assert.Throws<ArgumentException>(() => GripSearch.Find(query with { MinSounding = 5, MaxSounding = 4 }));
        Assert.Throws<ArgumentException>(() => GripSearch.Find(query with { FirstFret = 7, LastFret = 5 }));
        Assert.Throws<ArgumentException>(() => GripSearch.Find(query with { FirstFret = 23 }));
        Assert.Throws<ArgumentException>(() => GripSearch.Find(query with { Strings = new HashSet<int> { 7 } }));
        Assert.Throws<ArgumentException>(() => GripSearch.Find(query with { Strings = new HashSet<int>() }));
    }

    [Fact]
    public void QuestionsAreEqualByValue()
    {
        var one = new GripQuery
        {
            Chord = Chord.Parse("C7"),
            Neck = Neck.Guitar,
            Strings = new HashSet<int> { 1, 2, 3 },
        };
        var other = new GripQuery
        {
            Chord = Chord.Parse("C7"),
            Neck = Neck.Parse(Neck.Guitar.ToString()),
            Strings = new HashSet<int> { 3, 2, 1 },
        };
        Assert.Equal(one, other);
        Assert.Equal(one.GetHashCode(), other.GetHashCode());
        Assert.Equal([1, 2, 3], one.Strings!);
        Assert.NotEqual(one, other with { Strings = null });
    }

    [Fact]
    public void TheOpenChordsThatEveryBeginnerLearnsAreAmongTheEasiest()
    {
        // The shapes are the trade's; from the thickest string on.
        foreach (
            var (chord, frets) in new[]
            {
                ("E", "0 2 2 1 0 0"),
                ("A", "x 0 2 2 2 0"),
                ("D", "x x 0 2 3 2"),
                ("C", "x 3 2 0 1 0"),
                ("G", "3 2 0 0 0 3"),
                ("Am", "x 0 2 2 1 0"),
                ("Em", "0 2 2 0 0 0"),
                ("Dm", "x x 0 2 3 1"),
            }
        )
        {
            var grips = Chord.Parse(chord).Grips(Neck.Guitar).Where(g => g.Grip.HighestFret <= 4).Take(12);
            Assert.Contains(
                frets,
                grips.Select(each => string.Join(' ', BruteForce.Key(each.Grip).Split(' ').Reverse()))
            );
        }
    }

    private static bool IsTone(NoteName note, GripQuery query) => query.Chord.FunctionOf(note) is not null;

    private static HashSet<string> Frets(GripQuery query) =>
        GripSearch.Find(query).Select(each => BruteForce.Key(each.Grip)).ToHashSet();

    [Fact]
    public void AnAlteredDominantIsHeldWithoutAllItsAlterations()
    {
        var grips = Chord.Parse("C7alt").Grips(Neck.Guitar);
        Assert.NotEmpty(grips);
        Assert.All(grips, grip => Assert.Equal(Formula.Empty, grip.Missing.Intersect(Formula.Parse("1 3 b7"))));
    }

    [Fact]
    public void AnEmptyAnswerOnManyStringsHasAReason()
    {
        var chord = Chord.Parse("Bmaj13#11");
        Assert.Equal(
            new NoGripReason.Fingers(chord, 1),
            GripSearch
                .Find(
                    new()
                    {
                        Chord = chord,
                        Neck = new(Tuning.Parse("B0 E1 A1 D2 G2 C3 F3 Bb3 Eb4 Ab4")),
                        MaxFingers = 1,
                        OpenStrings = OpenStrings.None,
                        LastFret = 12,
                    }
                )
                .Reason
        );
    }
}
