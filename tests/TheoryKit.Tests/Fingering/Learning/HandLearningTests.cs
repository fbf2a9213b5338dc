using TheoryKit.Fingering.Hands;
using TheoryKit.Fingering.Learning;
using TheoryKit.Fingering.Lines;
using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Tests.Fingering.Learning;

public class HandLearningTests
{
    private const int Unseen = 40;

    private const int Examples = 100;

    // Two hands are quick; with the variable there are more of them, for figures:
    // THEORYKIT_HIDDEN_HANDS=20 dotnet test tests/TheoryKit.Tests -c Release --filter AHiddenHandIsRecovered
    private static readonly int[] Hands =
    [
        .. Enumerable.Range(
            4,
            int.TryParse(Environment.GetEnvironmentVariable("THEORYKIT_HIDDEN_HANDS"), out var many) ? many : 2
        ),
    ];

    private static readonly HandLearningOptions Alone = new() { Folds = 0 };

    public static TheoryData<int> Seeds => [.. Hands];

    /// <summary>The same pitches written now low, now high, with fingers that no weights choose for both.</summary>
    [Fact]
    public void ExamplesThatContradictEachOtherEndAtTheLimitAndSaySo()
    {
        string[] ways = ["5:5-1 5:7-3 4:5-1 4:7-3", "6:10-4 6:12-4 5:10-4 5:12-4", "5:5-2 5:7-4 4:5-2 4:7-4"];
        var examples = Enumerable.Range(0, 9).Select(index => PlayedLine.Parse(ways[index % 3], Neck.Guitar)).ToList();
        foreach (var slip in new[] { double.Epsilon, 0.5, double.PositiveInfinity })
        {
            var learned = HandLearning.Learn(examples, options: new() { Slip = slip, Rounds = 1 });
            Assert.InRange(learned.Rounds, 1, HandLearning.MaxRounds);
            Assert.False(learned.IsSettled);
        }
    }

    [Fact]
    public void LearningCanBeCancelled() =>
        Assert.Throws<OperationCanceledException>(() =>
            HandLearning.Learn([PlayedLine.Parse("6:3-2 6:5-4 5:2-1", Neck.Guitar)], cancellation: new(true))
        );

    [Fact]
    public void TheEffortOfALineIsTheSumOfItsTermsForEveryWeight() =>
        Gen.Select(Gen.Int[0, 999], FingeringGens.Weights, FingeringGens.UsualHand)
            .Sample(
                (seed, weights, hand) =>
                {
                    var own = hand with { Weights = weights };
                    var line = LineSearch.Place(Neck.Guitar, Pitches(new(seed)), hand)[0];
                    var terms = EffortTerms.Named(new EffortTerms(Neck.Guitar, hand).AmountsIn(line), weights);
                    var query = new LineQuery
                    {
                        Neck = Neck.Guitar,
                        Hand = own,
                        Notes = [],
                    };
                    var effort = line.Sum(note => BruteForce.NoteCost(query, note));
                    for (var index = 1; index < line.Count; index++)
                    {
                        effort += BruteForce.StepCost(query, line[index - 1], line[index]);
                    }

                    Assert.Equal(effort, terms.Sum(term => term.Effort), 1e-9);
                    Assert.All(terms, term => Assert.True(term.Amount > 0));
                },
                iter: 300
            );

    [Theory]
    [MemberData(nameof(Seeds))]
    public void AHiddenHandIsRecovered(int seed)
    {
        var hidden = Hidden(new(seed));
        var learned = Learn(seed, noise: 0);
        var held = learned.Agreement[1];
        Assert.Equal(TriedLines.HeldBack, held.Lines);
        Assert.True(held.Before.OfPositions < 0.9, $"There is nothing to learn: {held.Before}");
        Assert.True(held.After.OfPositions >= 0.95, $"{seed}: {held} for {hidden}");
        Assert.True(held.After.OfFingers >= 0.95, $"{seed}: {held} for {hidden}");
    }

    // With a tenth or a fifth of the notes elsewhere, no more than 6 of a hundred unseen positions are lost.
    [Theory]
    [InlineData(0.1, 0.94)]
    [InlineData(0.2, 0.94)]
    public void SlipsInTheExamplesCostLittle(double noise, double least)
    {
        var sum = Hands.Select(seed => Learn(seed, noise).Agreement[1].After).Aggregate(LineAgreement.Add);
        Assert.True(sum.OfPositions >= least, $"{noise}: {sum}, {sum.OfPositions:F3}");
    }

    [Fact]
    public void TabWithoutFingersTeachesLess()
    {
        var held = Learn(Hands[0], 0, withFingers: false).Agreement[1];
        Assert.True(held.After.OfPositions > held.Before.OfPositions + 0.05, $"{held}");
        Assert.Null(held.After.OfFingers);
    }

    [Fact]
    public void TheSameExamplesTeachTheSameHand()
    {
        var lines = Played(new(3), Hand.Parse("average; shift 9, ring 3"), 12, true);
        Assert.Equal(HandLearning.Learn(lines, options: Alone), HandLearning.Learn(lines, options: Alone));
    }

    [Fact]
    public void AHandThatPlaysTheExamplesAlreadyPlaysThemAfterwards()
    {
        var lines = Played(new(5), Hand.Small, 12, true);
        var learned = HandLearning.Learn(lines, Hand.Small, Alone);
        Assert.Equal(1, learned.Agreement[0].Before.OfPositions);
        Assert.Equal(1, learned.Agreement[0].After.OfPositions);
        Assert.Equal(
            lines.Sum(line => line.By(Hand.Small)!.Effort),
            lines.Sum(line => line.By(learned.Hand)!.Effort),
            1e-6
        );
    }

    [Fact]
    public void WhatIsNotLearnedStaysAndWhatIsStaysInItsRange()
    {
        var start = Hand.Large with
        {
            Weights = new() { Shift = 0, Twist = 3 },
        };
        var learned = HandLearning.Learn(Played(new(7), Hidden(new(7)), 15, true), start, Alone);
        Assert.Equal(start with { Weights = learned.Hand.Weights }, learned.Hand);
        Assert.Equal(3, learned.Hand.Weights.Twist);
        Assert.Equal(start.Weights.Barre, learned.Hand.Weights.Barre);
        Assert.DoesNotContain(learned.Weights, weight => weight.Name is "twist" or "barre" or "thumb" or "preference");
        Assert.All(learned.Weights, weight => Assert.InRange(weight.After, 0, EffortWeights.MaxWeight));
    }

    [Fact]
    public void ALearnedHandIsKeptInAFileAsText()
    {
        var learned = HandLearning.Learn(Played(new(8), Hidden(new(8)), 10, true), options: Alone).Hand;
        var file = System.IO.Path.GetTempFileName();
        try
        {
            File.WriteAllText(file, learned.ToString());
            Assert.Equal(learned, Hand.Parse(File.ReadAllText(file)));
        }
        finally
        {
            File.Delete(file);
        }
    }

    [Fact]
    public void WithoutLinesHeldBackTheExamplesTakeTurns()
    {
        var lines = Played(new(9), Hidden(new(9)), 8, true);
        var learned = HandLearning.Learn(lines, options: new() { Folds = 2 });
        Assert.Equal([TriedLines.Examples, TriedLines.HeldBack], learned.Agreement.Select(each => each.Lines));
        Assert.Equal(lines.Sum(line => line.Notes.Count), learned.Agreement[1].After.Notes);
        var alone = learned.Options with { Folds = 0 };
        var halves = Enumerable
            .Range(0, 2)
            .Select(half =>
                LineAgreement.Of(
                    lines.Where((_, index) => index % 2 == half),
                    HandLearning.Learn(lines.Where((_, index) => index % 2 != half), options: alone).Hand
                )
            );
        Assert.Equal(halves.Aggregate(LineAgreement.Add), learned.Agreement[1].After);
    }

    // Five lines along one string, by a player who hardly minds shifts; the average hand stays and crosses strings. That
    // it is one string is learned; which of the inner strings, no weight of effort says, so only the outer ones come out.
    [Theory]
    [InlineData(1, true, 0.8)]
    [InlineData(3, true, 0.4)]
    [InlineData(6, true, 0.8)]
    [InlineData(6, false, 0.8)]
    public void AStrongHabitIsLearnedFromFiveLines(int @string, bool withFingers, double least)
    {
        string[] lines =
        [
            "5-1 7-3 9-3 7-3 5-1 4-1 5-1",
            "4-1 5-1 7-3 9-3 10-3 9-3 7-1",
            "9-3 7-1 5-1 4-1 2-1 4-3 5-3",
            "2-1 4-3 5-3 7-3 9-3 11-3 12-3",
            "12-3 11-3 9-1 7-1 9-3 7-1 5-1",
        ];
        var examples = lines
            .Select(line => line.Split(' ').Select(note => PlayedNote.Parse($"{@string}:{note}")))
            .Select(notes => new PlayedLine(
                Neck.Guitar,
                notes.Select(note => withFingers ? note : new PlayedNote(note.Position))
            ))
            .ToList();
        var learned = HandLearning.Learn(examples);
        var (own, held) = (learned.Agreement[0], learned.Agreement[1]);
        Assert.False(learned.IsKept);
        Assert.True(own.Before.OfPositions < 0.4, $"There is nothing to learn: {own.Before}");
        Assert.True(own.After.OfPositions >= least, $"{own}");
        Assert.True(held.After.OfPositions > held.Before.OfPositions, $"{held}");
        var (usual, weights) = (EffortWeights.Default, learned.Hand.Weights);
        Assert.True(weights.Shift / weights.StringCrossing < usual.Shift / usual.StringCrossing, $"{weights}");

        int AlongOne(Hand hand) =>
            examples.Count(line =>
                LineSearch
                    .Place(
                        Neck.Guitar,
                        line.Notes.Select(n => Neck.Guitar.MidiNumberAt(n.Position)).Select(Pitch.FromMidi),
                        hand
                    )[0]
                    .Select(note => note.Position.String)
                    .Distinct()
                    .Count() == 1
            );

        Assert.Equal(0, AlongOne(Hand.Average));
        Assert.InRange(AlongOne(learned.Hand), 4, 5);
    }

    [Fact]
    public void LinesThatContradictEachOtherMakeNothingWorse()
    {
        // The same pitches along one string, high on the neck, and low across three strings.
        string[] lines =
        [
            "3:5-1 3:7-3 3:9-3 3:10-4 3:9-3 3:7-1 3:5-1",
            "5:15-4 4:12-1 4:14-4 4:15-4 4:14-3 4:12-1 5:15-4",
            "3:5-4 2:3-3 2:5-4 2:6-4 1:0 2:3-1 3:5-1",
        ];
        var learned = HandLearning.Learn(lines.Select(line => PlayedLine.Parse(line, Neck.Guitar)));
        var held = learned.Agreement[1];
        Assert.Equal(held.After.Positions < held.Before.Positions, learned.IsKept);
        Assert.True(learned.IsKept ? learned.Hand == learned.Start : held.After.Positions >= held.Before.Positions);
    }

    [Fact]
    public void TheHandToStartWithIsKeptWhereTheLinesHeldBackWouldBePlayedWorse()
    {
        var along = PlayedLine.Parse("3:5-1 3:7-3 3:9-3 3:7-3 3:5-1 3:4-1 3:5-1", Neck.Guitar);
        var usual = Played(new(11), Hand.Average, 5, true);
        var learned = HandLearning.Learn([along, along], options: new() { HeldBack = usual });
        Assert.True(learned.IsKept, $"{learned.Agreement[1]}");
        Assert.Equal(Hand.Average, learned.Hand);
        Assert.True(learned.Agreement[1].After.Positions < learned.Agreement[1].Before.Positions);
        Assert.All(learned.Weights, weight => Assert.Equal(weight.Before, weight.After));
    }

    [Fact]
    public void NoMoreNotesAreSlipsThanTheOptionSays()
    {
        var random = new Random(12);
        var lines = Played(random, Hand.Average, 15, true).ConvertAll(line => Slipped(line, random, 0.4));
        var notes = lines.Sum(line => line.Notes.Count);
        foreach (var part in (double[])[0, 0.1, 0.3])
        {
            var learned = HandLearning.Learn(lines, options: Alone with { MostSlips = part });
            Assert.InRange(learned.Slips, part > 0 ? 1 : 0, (int)(part * notes));
        }
    }

    [Theory]
    [InlineData(2)]
    [InlineData(20)]
    public void NoWeightMovesFartherThanTheOptionSays(double times)
    {
        var start = Hand.Average with
        {
            Weights = new() { Crowding = 0, Shift = 0.01 },
        };
        var learned = HandLearning.Learn(
            Played(new(13), Hand.Parse("average; shift 60, ring 0.01, crowding 8"), 12, true),
            start,
            Alone with
            {
                MostChange = times,
            }
        );
        Assert.All(
            learned.Weights,
            weight =>
            {
                var usual = weight.Name switch
                {
                    "crowding" => 1.0,
                    "shift" => 2.0,
                    _ => 0,
                };
                var most = times * Math.Max(weight.Before, 0.1 * usual);
                Assert.InRange(weight.After, (weight.Before / times) - 1e-9, most + 1e-9);
            }
        );
        Assert.Throws<ArgumentOutOfRangeException>(() => new HandLearningOptions { MostChange = 0.5 });
        Assert.Throws<ArgumentOutOfRangeException>(() => new HandLearningOptions { MostSlips = 1.1 });
    }

    [Fact]
    public void NoExamplesTeachNothing()
    {
        var learned = HandLearning.Learn([]);
        Assert.Equal(Hand.Average, learned.Hand);
        Assert.Empty(learned.Weights);
        Assert.Equal(1, Assert.Single(learned.Agreement).After.OfPositions);
    }

    [Fact]
    public void AnExampleThatTheHandCannotPlayIsLeftOut()
    {
        // Both at fret 1, so there is no place to shift to, and five strings apart, which so small a hand does not reach.
        var tiny = Hand.Average.Scale(0.2);
        var learned = HandLearning.Learn([PlayedLine.Parse("6:1-4 1:1-1", Neck.Guitar)], tiny);
        Assert.Equal(1, learned.Unplayable);
        Assert.Equal(tiny, learned.Hand);
    }

    [Fact]
    public void PlayedNotesReadBackAsTheyAreWritten() =>
        Gen.Select(Gen.Int[1, Position.MaxString], Gen.Int[0, Position.MaxFret], Gen.Int[0, 4])
            .Select((@string, fret, finger) => new PlayedNote(new(@string, fret), finger == 0 ? null : (Finger)finger))
            .Sample(note => Assert.Equal(note, PlayedNote.Parse(note.ToString())));

    [Fact]
    public void AnyTextIsAPlayedNoteOrSaysWhyNot() => Fuzz.Parser<PlayedNote>(["6:3-2", "1:0", "12:36-4"]);

    [Fact]
    public void PlayedLinesReadBackAsTheyAreWritten()
    {
        var line = PlayedLine.Parse("6:3-2 6:5-4 5:0 5:2", Neck.Guitar);
        Assert.Equal("6:3-2 6:5-4 5:0 5:2", line.ToString());
        Assert.Equal(line, PlayedLine.Parse(line.ToString(), Neck.Guitar));
        Assert.Throws<ArgumentException>(() => PlayedLine.Parse("7:3", Neck.Guitar));
        Assert.Throws<ArgumentException>(() => PlayedLine.Parse("6:0-1", Neck.Guitar));
        Assert.Throws<ArgumentOutOfRangeException>(() => new PlayedNote(new(6, 3), Finger.Thumb));
    }

    [Fact]
    public void PlayedAsWrittenALineHasTheLeastEffortOfAllWaysThatAreAsWritten()
    {
        var all = LineSearch.Finger(
            Neck.Guitar,
            PlayedLine.Parse("5:3 4:2 4:3", Neck.Guitar).Notes.Select(n => n.Position),
            best: 500
        );
        var written = PlayedLine.Parse("5:3 4:2-2 4:3-4", Neck.Guitar);
        var expected = all.First(line => line[1].Finger == Finger.Middle && line[2].Finger == Finger.Little);
        Assert.Equal(expected.Effort, written.By(Hand.Average)!.Effort, 1e-9);
        Assert.Equal(expected.Select(note => note.Finger), written.By(Hand.Average)!.Select(note => note.Finger));
    }

    private static LearnedHand Learn(int seed, double noise, bool withFingers = true)
    {
        var random = new Random(seed);
        var hidden = Hidden(random);
        var examples = Played(random, hidden, Examples, withFingers);
        var unseen = Played(random, hidden, Unseen, withFingers);
        return HandLearning.Learn(
            noise > 0 ? examples.Select(line => Slipped(line, random, noise)) : examples,
            options: new() { HeldBack = unseen }
        );
    }

    /// <summary>A hand each of whose weights of lines is a quarter to four times the usual one.</summary>
    private static Hand Hidden(Random random)
    {
        var usual = EffortWeights.Default;
        double Times() => Math.Pow(4, (2 * random.NextDouble()) - 1);
        return Hand.Average with
        {
            Weights = new()
            {
                Index = usual.Index * Times(),
                Middle = usual.Middle * Times(),
                Ring = usual.Ring * Times(),
                Little = usual.Little * Times(),
                Upper = usual.Upper * Times(),
                Stretch = usual.Stretch * Times(),
                Crowding = usual.Crowding * Times(),
                ShiftDistance = usual.ShiftDistance * Times(),
                Shift = usual.Shift * Times(),
                StringCrossing = usual.StringCrossing * Times(),
                SameFinger = usual.SameFinger * Times(),
                Roll = usual.Roll * Times(),
                OpenString = usual.OpenString * Times(),
            },
        };
    }

    /// <summary>A line of 8 to 16 notes, mostly in steps, here and there with a leap.</summary>
    private static List<Pitch> Pitches(Random random)
    {
        var sound = 45 + random.Next(30);
        var pitches = new List<Pitch>();
        for (var left = 8 + random.Next(9); left > 0; left--)
        {
            pitches.Add(Pitch.FromMidi(sound));
            var step = random.Next(6) == 0 ? random.Next(-9, 10) : random.Next(-4, 5);
            sound += sound + step is < 40 or > 84 ? -step : step;
        }

        return pitches;
    }

    private static List<PlayedLine> Played(Random random, Hand hand, int count, bool withFingers) =>
        [
            .. Enumerable
                .Range(0, count)
                .Select(_ => LineSearch.Place(Neck.Guitar, Pitches(random), hand)[0])
                .Select(line => new PlayedLine(
                    Neck.Guitar,
                    line.Select(note => new PlayedNote(note.Position, withFingers ? note.Finger : null))
                )),
        ];

    /// <summary>The line with some of its notes at other positions of the same pitch.</summary>
    private static PlayedLine Slipped(PlayedLine line, Random random, double part) =>
        new(
            line.Neck,
            line.Notes.Select(note =>
            {
                var others = line
                    .Neck.PositionsOf(Pitch.FromMidi(line.Neck.MidiNumberAt(note.Position)))
                    .Where(position => position != note.Position)
                    .ToList();
                return random.NextDouble() >= part || others.Count == 0
                    ? note
                    : new PlayedNote(others[random.Next(others.Count)]);
            })
        );
}
