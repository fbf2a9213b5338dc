using System.Collections.Concurrent;
using System.Globalization;
using TheoryKit.Fingering.Grips;
using TheoryKit.Fingering.Hands;
using TheoryKit.Fingering.Lines;
using TheoryKit.Fingering.Retuning;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Progressions;
using TheoryKit.Tunings.Necks;
using TheoryKit.Tunings.Strings;

namespace TheoryKit.Tests.Fingering.Retuning;

public class TuningSearchTests
{
    private static readonly Chord[] Pool =
    [
        .. Chord.ParseList("Ebmaj7 Cm7 Fm7 Bb7 Gm9 C13 Fmaj9 Dm7 A7sus4 D/F# Em7b5 Gdim7"),
    ];

    private static readonly TuningRequirement[] Requirements =
    [
        TuningRequirement.NoTwoAlike,
        TuningRequirement.Rising,
        TuningRequirement.Drone(NoteName.Parse("Bb")),
        TuningRequirement.OpenChord(Chord.Parse("Gm7")),
        TuningRequirement.OpenChord(Chord.Parse("Ebmaj7")),
        TuningRequirement.Keeps(2),
        TuningRequirement.AtMostRetuned(2),
    ];

    [Fact]
    public void TheWholeSpaceWithinTwoSemitonesIsRankedAsGripByGripEvaluationRanksIt()
    {
        // 15,625 tunings. The first four frets and four strings keep the slow way, which asks GripSearch for each
        // chord in each tuning, to seconds.
        var limits = new GripLimits { LastFret = 4, MinSounding = 4 };
        var table = new Table(Neck.Guitar, 2, Pool, limits, Hand.Average);
        Gen.Select(Gen.Int[0, Pool.Length - 1].Array[8], Gen.Double[0.1, 5].Array[8], Gen.Int[1, 9], Gen.Int[0, 20])
            .Sample(
                (chords, weights, best, requirement) =>
                {
                    var query = new TuningQuery
                    {
                        Base = Neck.Guitar,
                        Chords = [.. chords.Zip(weights, (chord, weight) => new WeightedChord(Pool[chord], weight))],
                        Limits = limits,
                        Best = best,
                        Requirements = requirement < Requirements.Length ? [Requirements[requirement]] : [],
                    };
                    MustAgree(table.Rank(query, chords), query);
                },
                iter: 25,
                threads: 1
            );
    }

    [Fact]
    public void AnyHandAndAnyLimitsOnFewStringsAreRankedAsGripByGripEvaluationRanksThem() =>
        Gen.Select(
                Gen.OneOf(FingeringGens.Neck(3, 3, 3, 14), FingeringGens.Neck(4, 4, 3, 9)),
                FingeringGens.SmallChord.Array[1, 3],
                Gen.OneOf(FingeringGens.Hand, FingeringGens.UsualHand),
                Gen.Int[0, 99].Array[8],
                Gen.Int[0, 12].Array[0, 2]
            )
            .Sample(
                (neck, chords, hand, dice, required) =>
                {
                    var limits = new GripLimits
                    {
                        AnyBass = dice[0] < 50,
                        MinSounding = 1 + (dice[1] % 3),
                        MaxSounding = dice[1] < 20 ? 3 : 12,
                        InnerMutes = dice[2] < 50,
                        OpenStrings = dice[3] < 70 ? OpenStrings.Allowed : OpenStrings.None,
                        AllStrings = dice[4] < 20,
                        MaxFingers = dice[5] < 70 ? 5 : dice[5] % 5,
                        Optional = dice[6] < 30 ? Formula.Parse("1 5") : null,
                    };
                    var query = new TuningQuery
                    {
                        Base = neck,
                        Chords = [.. chords.Select((chord, index) => new WeightedChord(chord, 1 + index))],
                        Limits = limits,
                        Hand = hand,
                        Within = 1,
                        Best = 1 + (dice[7] % 7),
                        Requirements =
                        [
                            .. required
                                .Where(static each => each < Requirements.Length)
                                .Select(static each => Requirements[each]),
                        ],
                    };
                    var table = new Table(neck, 1, chords, limits, hand);
                    MustAgree(table.Rank(query, [.. Enumerable.Range(0, chords.Length)]), query);
                },
                iter: 200
            );

    [Theory]
    [InlineData("G4 C4 E4 A4, 350 mm, 12 frets")]
    [InlineData("G4@5 D3 G3 B3 D4, 670 mm, 8 frets")]
    [InlineData("E2 A2 D3 G3, 864 mm, 10 frets, capo 2")]
    public void OtherInstrumentsAreRankedAsGripByGripEvaluationRanksThem(string text)
    {
        var neck = Neck.Parse(text);
        var limits = new GripLimits { AnyBass = true };
        var chords = Chord.ParseList("Gm9 C7 Fmaj7 Dm");
        var query = new TuningQuery
        {
            Base = neck,
            Chords = WeightedChord.Of(chords),
            Limits = limits,
            Within = 1,
            Best = 20,
        };
        MustAgree(new Table(neck, 1, chords, limits, Hand.Average).Rank(query, [0, 1, 2, 3]), query);
    }

    [Fact]
    public void ALineCountsAsMuchAsPlacingItCosts() =>
        Gen.Select(Gen.Int[60, 76].Array[2, 7], Gen.Int[0, 3], Gen.Int[0, 2])
            .Sample(
                (notes, weight, count) =>
                {
                    var neck = new Neck(Tuning.Find("Ukulele")!, 350, 12);
                    var chords = Chord.ParseList("Fm7 Bb7").Take(count).ToArray();
                    var limits = new GripLimits { AnyBass = true };
                    var query = new TuningQuery
                    {
                        Base = neck,
                        Chords = WeightedChord.Of(chords),
                        Limits = limits,
                        Line = [.. notes.Select(Pitch.FromMidi)],
                        LineWeight = weight,
                        Within = 1,
                        Best = 4,
                    };
                    var table = new Table(neck, 1, chords, limits, Hand.Average);
                    MustAgree(table.Rank(query, [.. Enumerable.Range(0, count)]), query);
                },
                iter: 15
            );

    [Fact]
    public void AnswerAndCountsAreTheSameOnAnyNumberOfThreads()
    {
        var query = Query("Ebmaj7 Cm7 Fm7 Bb7") with { Requirements = [TuningRequirement.NoTwoAlike] };
        List<int> threads = [1, 2, 3, 7];
        var answers = threads.ConvertAll(count => TuningSearch.Find(query, threads: count));
        Assert.All(
            answers,
            answer =>
            {
                Assert.Equal(answers[0], answer);
                Assert.Equal(answers[0].Select(static each => each.Score), answer.Select(static each => each.Score));
                Assert.Equal(answers[0].RunnerUp, answer.RunnerUp);
                Assert.Equal(answers[0].Evaluated, answer.Evaluated);
                Assert.Equal(answers[0].Cuts, answer.Cuts);
            }
        );
    }

    [Fact]
    public void EveryTuningIsEitherWorkedOutOrCutOffByOneLimit() =>
        Gen.Select(Gen.Int[0, Requirements.Length], Gen.Int[0, 2], Gen.Bool)
            .Sample(
                (requirement, within, fitted) =>
                {
                    var answer = TuningSearch.Find(
                        Query("Fm7 Bb7") with
                        {
                            Within = within,
                            Requirements = requirement < Requirements.Length ? [Requirements[requirement]] : [],
                            Strings = fitted ? StringSet.Known[0].Set : null,
                        }
                    );
                    Assert.Equal((long)Math.Pow((2 * within) + 1, 6), answer.Space);
                    Assert.Equal(answer.Space, answer.Evaluated + answer.Cuts.Sum(static cut => cut.Count));
                    Assert.Equal(answer.Count == 0, answer.Reason is not null);
                },
                iter: 12
            );

    [Fact]
    public void NoStringIsRetunedBeyondTheLimitsOfTension()
    {
        var strings = StringSet.Known[0].Set;
        var limits = new TensionLimits(new(60), new(90), 0.75);
        var query = Query("Fm7 Bb7") with { Strings = strings, TensionLimits = limits, Best = 30 };
        var answer = TuningSearch.Find(query);
        var free = TuningSearch.Find(query with { Strings = null });

        // Counted string by string, as every choice for one string goes with every choice for the others.
        var allowed = Enumerable
            .Range(1, 6)
            .Select(number =>
                Enumerable
                    .Range(-2, 5)
                    .Count(offset =>
                    {
                        var frequency =
                            440 * Math.Pow(2, (Neck.Guitar.Tuning[number].Open.MidiNumber + offset - 69) / 12.0);
                        var tension = 4 * Math.Pow(0.648 * frequency, 2) * strings[number].UnitWeight;
                        return tension is >= 60 and <= 90 && !(strings[number].BreakingPart(new(tension)) > 0.75);
                    })
            )
            .Aggregate(1, static (product, count) => product * count);
        Assert.Equal(
            answer.Space - allowed,
            answer
                .Cuts.Where(static cut =>
                    cut.Limit is TuningLimit.TooSlack or TuningLimit.TooTight or TuningLimit.NearBreaking
                )
                .Sum(static cut => cut.Count)
        );
        Assert.All(
            answer,
            found =>
                Assert.All(
                    found.Neck.Tensions(strings, limits: limits).Strings,
                    static each => Assert.Equal(StringState.Comfortable, each.State)
                )
        );
        Assert.True(answer[0].Score >= free[0].Score);
    }

    [Fact]
    public void WhereNoTuningIsLeftTheReasonSaysWhatCutOffMost()
    {
        var query = Query("Fm7") with { Strings = StringSet.Known[0].Set, TensionLimits = new(new(500), new(600), 1) };
        var answer = TuningSearch.Find(query);
        Assert.Empty(answer);
        Assert.Null(answer.RunnerUp);
        Assert.Null(answer.RunnerUpDistance);
        Assert.Equal(
            new TuningLimit.TooSlack(new(500)),
            Assert.IsType<NoTuningReason.AllCutOff>(answer.Reason).Cuts[0].Limit
        );
    }

    [Fact]
    public void GripsLineAndScoreOfAFoundTuningBelongTogether()
    {
        var query = Query("Ebmaj7 Fm7") with { Line = [.. "G4 Bb4 D5".Split(' ').Select(each => Pitch.Parse(each))] };
        foreach (var found in TuningSearch.Find(query))
        {
            Assert.Equal(found.Score, found.Grips.Sum(static grip => grip.Effort) + found.Line!.Effort, 9);
            Assert.Equal(found.Score / 3, found.MeanEffort, 9);
            Assert.All(found.Grips, grip => Assert.Equal(found.Neck, grip.Neck));
        }
    }

    [Fact]
    public void TheRunnerUpIsWhatOneMoreAnswerWouldHaveBeen()
    {
        var query = Query("Ebmaj7 Cm7") with { Best = 3 };
        var (three, four) = (TuningSearch.Find(query), TuningSearch.Find(query with { Best = 4 }));
        Assert.Equal(four[3].Tuning, three.RunnerUp!.Tuning);
        Assert.Equal(four[3].Score - four[0].Score, three.RunnerUpDistance!.Value, 9);
    }

    [Fact]
    public void RetunedStringsAreSpelledAsTheChordsAre()
    {
        var found = TuningSearch.Find(
            Query("Ebmaj7") with
            {
                Within = 1,
                Requirements = [TuningRequirement.Drone(NoteName.Parse("Eb")), TuningRequirement.OpenChord(Pool[0])],
            }
        )[0];
        Assert.All(found.Tuning.Strings, each => Assert.Contains(each.Open.Name, Pool[0].Tones));
    }

    [Fact]
    public void ProgressGrowsToTheWholeSpaceInAThousandStepsAtMost()
    {
        var reports = new ConcurrentQueue<TuningProgress>();
        var answer = TuningSearch.Find(Query("Ebmaj7 Cm7 Fm7 Bb7"), new Reported(reports.Enqueue), threads: 2);
        var decided = reports.Select(static each => each.Decided).ToList();
        Assert.Equal(decided.Order(), decided);
        Assert.InRange(decided.Count, 1, 1001);
        Assert.Equal(answer.Space, decided[^1]);
        Assert.Equal(1, reports.Last().Part);
        Assert.All(reports, report => Assert.Equal(answer.Space, report.Space));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void ItEndsWhenItIsToldTo(int after)
    {
        using var stop = new CancellationTokenSource();
        var reports = 0;
        var query = Query("Ebmaj7 Cm7 Fm7 Bb7") with { Within = 5, Best = 500 };
        Assert.ThrowsAny<OperationCanceledException>(() =>
            TuningSearch.Find(
                query,
                new Reported(_ =>
                {
                    if (++reports > after)
                    {
                        stop.Cancel();
                    }
                }),
                cancellation: stop.Token
            )
        );
    }

    [Fact]
    public void WhatCannotBeSearchedIsRefusedWithTheReason()
    {
        var query = Query("Fm7");
        Refused("Nothing to play", query with { Chords = [] });
        Refused(
            "more than",
            query with
            {
                Base = new(new Tuning(Enumerable.Repeat(Pitch.Parse("E3"), 12))),
                Within = 12,
            }
        );
        Refused(
            "The set has 6 strings, the neck 4",
            query with
            {
                Base = Neck.Parse("E2 A2 D3 G3"),
                Strings = StringSet.Known[0].Set,
            }
        );
        Refused("String 7 is to stay", query with { Requirements = [TuningRequirement.Keeps(7)] });
        Refused(
            "At least 5 strings but at most 4",
            query with
            {
                Limits = new() { MinSounding = 5, MaxSounding = 4 },
            }
        );
        Refused("the neck has 6", query with { Limits = new() { MinSounding = 9 } });
        Refused(
            "only 2 may",
            query with
            {
                Limits = new()
                {
                    Strings = new HashSet<int> { 1, 2 },
                },
            }
        );
        Assert.Throws<ArgumentException>(() => query with { Requirements = [null!] });
        Assert.Throws<ArgumentException>(() => query with { Chords = [null!] });
        Assert.Throws<ArgumentOutOfRangeException>(() => new WeightedChord(Pool[0], 1e308));
        Assert.Throws<ArgumentOutOfRangeException>(() => query with { LineWeight = 1e308 });
        Assert.Throws<ArgumentOutOfRangeException>(() => query with { Within = 13 });
        Assert.Throws<ArgumentOutOfRangeException>(() => query with { Best = 0 });
        Assert.Throws<ArgumentOutOfRangeException>(() => query with { LineWeight = double.NaN });
        Assert.Throws<ArgumentOutOfRangeException>(() => new WeightedChord(Pool[0], 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => TuningSearch.Find(query, threads: 0));

        static void Refused(string reason, TuningQuery query) =>
            Assert.Contains(
                reason,
                Assert.Throws<ArgumentException>(() => TuningSearch.Find(query)).Message,
                StringComparison.Ordinal
            );
    }

    [Fact]
    public void TheChordsOfATuneWeighTheirBeats()
    {
        var weights = WeightedChord.Of(Changes.Parse("Gm9 | C13 | Fmaj9 | Dm7 Gm9"));
        Assert.Equal("Gm9 C13 Fmaj9 Dm7".Split(' '), weights.Select(static each => each.Chord.ToString()));
        Assert.Equal([6, 4, 4, 2], weights.Select(static each => each.Weight));
    }

    [Fact]
    public void RequirementsThatContradictEachOtherEndTheSearchAtOnceAndAreAllNamed()
    {
        var query = Query("Dm7") with
        {
            Within = 6,
            Requirements =
            [
                TuningRequirement.AtMostRetuned(0),
                TuningRequirement.Keeps(3),
                TuningRequirement.Drone(NoteName.Parse("F")),
            ],
        };
        var reports = new ConcurrentQueue<TuningProgress>();
        var answer = TuningSearch.Find(query, new Reported(reports.Enqueue));
        Assert.Empty(answer);
        Assert.Equal(0, answer.Evaluated);
        Assert.Equal(answer.Space, answer.Cuts.Sum(static cut => cut.Count));
        Assert.Equal(answer.Space, reports.Last().Decided);
        Assert.Equal(
            answer.Cuts.OrderByDescending(static cut => cut.Count),
            Assert.IsType<NoTuningReason.AllCutOff>(answer.Reason).Cuts
        );
        // So many tunings have nothing in common with the base but what undoes the last requirement: the base alone.
        Assert.Equal(1, answer.Cuts.Single(cut => cut.Limit == new TuningLimit.Lacks(query.Requirements[2])).Count);
    }

    [Fact]
    public void ANoteThatLiesNowhereInAnyTuningCutsOffAllBeforeAnythingIsListed()
    {
        var query = Query("Dm7") with { Within = 6, Line = [Pitch.Parse("C1")] };
        var answer = TuningSearch.Find(query);
        Assert.Empty(answer);
        var cut = Assert.Single(answer.Cuts);
        Assert.Equal(new(new TuningLimit.NoteNowhere(), answer.Space), cut);
    }

    [Fact]
    public void AChordThatHasNoGripIsNamed()
    {
        var query = Query("D Dmaj13") with
        {
            Within = 0,
            Limits = new() { LastFret = 1, MinSounding = 6 },
        };
        var answer = TuningSearch.Find(query);
        Assert.Empty(answer);
        Assert.Equal(
            Chord.Parse("D"),
            Assert.IsType<TuningLimit.NoGrip>(Assert.IsType<NoTuningReason.OnlyOneCutOff>(answer.Reason).Limit).Chord
        );
    }

    [Fact]
    public void WhereManyStringsMaySoundFewTuningsAreGoneThroughAndManyRefusedBeforehand()
    {
        var neck = Neck.Parse("B1 E2 A2 D3 F#3 G3 B3 C4 E4 G4 A4 B4");
        var query = new TuningQuery
        {
            Base = neck,
            Chords = WeightedChord.Of(Chord.ParseList("D Bm7")),
            Within = 1,
        };
        Assert.Contains(
            "too many ways",
            Assert.Throws<ArgumentException>(() => TuningSearch.Find(query)).Message,
            StringComparison.Ordinal
        );
        var answer = TuningSearch.Find(query with { Requirements = [TuningRequirement.AtMostRetuned(1)] });
        Assert.Equal(
            25,
            answer.Evaluated
                + answer.Cuts.Where(static cut => cut.Limit is TuningLimit.NoGrip).Sum(static cut => cut.Count)
        );
        var best = answer[0];
        Assert.Equal(best.Score, best.Grips.Sum(static grip => grip.Effort), 9);
    }

    private static TuningQuery Query(string chords) =>
        new()
        {
            Base = Neck.Guitar,
            Chords = WeightedChord.Of(Chord.ParseList(chords)),
            Limits = new() { LastFret = 4, MinSounding = 4 },
        };

    private static void MustAgree(List<(double Score, int[] Offsets)> expected, TuningQuery query)
    {
        var answer = TuningSearch.Find(query);
        Assert.Equal(
            expected.Take(query.Best).Select(static each => Key(each.Score, each.Offsets)),
            answer.Select(static each => Key(each.Score, each.Offsets))
        );
        Assert.Equal(
            expected.Skip(query.Best).Take(1).Select(static each => Key(each.Score, each.Offsets)),
            answer.RunnerUp is { } next ? [Key(next.Score, next.Offsets)] : []
        );
    }

    private static string Key(double score, IEnumerable<int> offsets) =>
        $"{string.Join(' ', offsets)}: {score.ToString("R", CultureInfo.InvariantCulture)}";

    private sealed class Reported(Action<TuningProgress> action) : IProgress<TuningProgress>
    {
        public void Report(TuningProgress value) => action(value);
    }

    /// <summary>The slow way: every tuning of the space, and in each the easiest grip of each chord by a search of its own.</summary>
    private sealed class Table
    {
        private readonly Hand hand;
        private readonly int within;
        private readonly (int[] Offsets, Neck Neck, double?[] Efforts)[] rows;

        public Table(Neck neck, int within, IReadOnlyList<Chord> chords, GripLimits limits, Hand hand)
        {
            this.hand = hand;
            this.within = within;
            var strings = neck.StringCount;
            rows = new (int[], Neck, double?[])[(int)Math.Pow((2 * within) + 1, strings)];
            Parallel.For(
                0,
                rows.Length,
                row =>
                {
                    var offsets = new int[strings];
                    for (var (index, rest) = (0, row); index < strings; index++, rest /= (2 * within) + 1)
                    {
                        offsets[index] = (rest % ((2 * within) + 1)) - within;
                    }

                    var tuned = neck.With(
                        new(
                            Enumerable
                                .Range(0, strings)
                                .Reverse()
                                .Select(index => new TuningString(
                                    Pitch.FromMidi(neck.Tuning.Strings[index].Open.MidiNumber + offsets[index]),
                                    neck.Tuning.Strings[index].Start
                                ))
                        )
                    );
                    rows[row] = (
                        offsets,
                        tuned,
                        [
                            .. chords.Select(chord =>
                                GripSearch.Find(limits.For(chord, tuned, hand)) is [var first, ..]
                                    ? first.Effort
                                    : (double?)null
                            ),
                        ]
                    );
                }
            );
        }

        /// <summary>Every answer in order.</summary>
        public List<(double Score, int[] Offsets)> Rank(TuningQuery query, int[] columns)
        {
            Assert.Equal(within, query.Within);
            var found = new List<(double Score, int[] Offsets)>();
            foreach (var (offsets, neck, efforts) in rows)
            {
                var score = 0.0;
                var all = true;
                for (var index = 0; index < columns.Length; index++)
                {
                    all &= efforts[columns[index]] is not null;
                    score += query.Chords[index].Weight * (efforts[columns[index]] ?? 0);
                }

                if (all && query.Line.Count > 0)
                {
                    var line = LineSearch.Place(neck, query.Line, hand);
                    all = line.Count > 0;
                    score += all ? query.LineWeight * line[0].Effort : 0;
                }

                if (all && query.Requirements.All(each => Holds(each, query.Base.Tuning, neck)))
                {
                    found.Add((score, offsets));
                }
            }

            found.Sort(
                static (one, other) =>
                    (one.Score, one.Offsets.Sum(Math.Abs), Order(one.Offsets)).CompareTo(
                        (other.Score, other.Offsets.Sum(Math.Abs), Order(other.Offsets))
                    )
            );
            return found;

            static string Order(int[] offsets) =>
                string.Concat(offsets.Reverse().Select(static each => (char)('m' + each)));
        }

        private static bool Holds(TuningRequirement requirement, Tuning from, Neck neck)
        {
            var open = neck.Tuning.Strings.Select(static each => each.Open.MidiNumber).ToList();
            var changed = open.Where((pitch, index) => pitch != from.Strings[index].Open.MidiNumber).Count();
            var heard = Enumerable
                .Range(1, neck.StringCount)
                .Select(number => neck.MidiNumberAt(new(number, neck.OpenFret(number))) % 12)
                .ToHashSet();
            return Array.IndexOf(Requirements, requirement) switch
            {
                0 => open.Distinct().Count() == open.Count,
                1 => open.Zip(open.Skip(1)).All(static pair => pair.First > pair.Second),
                2 => heard.Contains(10),
                3 => heard.IsSubsetOf([7, 10, 2, 5]) && heard.IsSupersetOf([7, 10, 5]),
                4 => heard.IsSubsetOf([3, 7, 10, 2]) && heard.IsSupersetOf([3, 7, 2]),
                5 => open[1] == from.Strings[1].Open.MidiNumber,
                6 => changed <= 2,
                _ => throw new ArgumentException($"{requirement}"),
            };
        }
    }
}
