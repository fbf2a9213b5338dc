using TheoryKit.Fingering.Hands;
using TheoryKit.Fingering.Learning;
using TheoryKit.Fingering.Lines;
using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Tests.Fingering.Lines;

public class LinesTests
{
    private const double Tolerance = 1e-9;

    private static readonly Gen<LineQuery> Query = Gen.Select(
        FingeringGens.Neck(3, 4, 4, 7),
        Gen.OneOf(FingeringGens.Hand, FingeringGens.UsualHand),
        Gen.Int[0, 999].Array[1, 7],
        Gen.Int[0, 99].Array[7],
        (neck, hand, notes, dice) =>
            new LineQuery
            {
                Neck = neck,
                Hand = hand,
                Notes = [.. notes.Select(seed => Note(neck, seed, dice))],
                Best = 1 + (dice[0] % 6),
                OpenStrings = dice[1] < 70,
                FirstPlace = 1 + (dice[2] % 3),
                LastPlace = 3 + (dice[3] % 4),
                PreferredPlace = dice[4] < 40 ? dice[4] % 6 : null,
            }
    );

    /// <summary>Lines few enough in their ways to go through all of them.</summary>
    private static readonly Gen<LineQuery> Small = Query.Where(query => BruteForce.Lines(query, 20_000) is not null);

    private static readonly Gen<LineQuery> Ringing = Gen.Select(
        Small,
        Gen.Int[0, 3].Array[7],
        (query, rings) =>
            query with
            {
                Notes = [.. query.Notes.Select((note, index) => note with { Rings = rings[index] })],
            }
    );

    [Fact]
    public void TheBestLinesAreTheFirstOfAllLinesByEffort() => Small.Sample(AreTheFirstOfAll, iter: 500);

    [Fact]
    public void TheBestLinesWithRingingNotesAreTheFirstOfAllLinesByEffort() =>
        Ringing.Sample(AreTheFirstOfAll, iter: 500);

    [Fact]
    public void ALineHasTheEffortOfItsNotesAndSteps() =>
        Gen.OneOf(Query, Ringing)
            .Sample(
                query =>
                {
                    foreach (var line in LineSearch.Find(query))
                    {
                        var effort = line.Sum(note => BruteForce.NoteCost(query, note));
                        for (var index = 1; index < line.Count; index++)
                        {
                            effort += BruteForce.StepCost(query, line[index - 1], line[index]);
                        }

                        Assert.Equal(effort, line.Effort, Tolerance);
                        Assert.All(line, (note, index) => Assert.Contains(note.Position, query.Notes[index].Positions));
                        Assert.All(line, note => Assert.InRange(note.Place, query.FirstPlace, query.LastPlace));
                    }
                },
                iter: 500
            );

    [Fact]
    public void TheSameQuestionHasTheSameAnswer() =>
        Gen.OneOf(Query, Ringing)
            .Sample(query => Assert.Equal(LineSearch.Find(query), LineSearch.Find(query)), iter: 200);

    [Fact]
    public void MoreAnswersBeginWithTheFewer() =>
        Small.Sample(
            query =>
                Assert.Equal(
                    LineSearch.Find(query with { Best = 3 }).Select(line => line.Effort),
                    LineSearch.Find(query with { Best = 8 }).Take(3).Select(line => line.Effort)
                ),
            iter: 200
        );

    [Fact]
    public void RingingNotesNeverMakeALineEasier() =>
        Ringing.Sample(
            query =>
            {
                var free = query with { Best = 1, Notes = [.. query.Notes.Select(note => note with { Rings = 0 })] };
                if (LineSearch.Find(query with { Best = 1 }) is [var line])
                {
                    Assert.True(LineSearch.Find(free)[0].Effort <= line.Effort + Tolerance);
                }
            },
            iter: 300
        );

    [Fact]
    public void AnEmptyLineIsPlayedWithoutEffort()
    {
        var line = Assert.Single(LineSearch.Finger(Neck.Guitar, []));
        Assert.Empty(line);
        Assert.Equal(0, line.Effort);
    }

    [Fact]
    public void AScaleInOnePlaceTakesAFingerForEachFret()
    {
        // G major from the third fret of string 6 in second position, as every method book fingers it.
        var line = Assert.Single(
            LineSearch.Finger(
                Neck.Guitar,
                "6:3 6:5 5:2 5:3 5:5 4:2 4:4 4:5".Split(' ').Select(text => Position.Parse(text))
            )
        );
        Assert.Equal(
            "Middle Little Index Middle Little Index Ring Little",
            string.Join(' ', line.Select(note => note.Finger))
        );
        Assert.All(line, note => Assert.Equal(2, note.Place));
        Assert.Empty(line.Shifts);
    }

    [Fact]
    public void TheFingerThatIsRightAtTheNutMayBeWrongAtTheOctave()
    {
        // A major third up one string: four frets. At fret 1 of 648 mm a small hand shifts for it, at fret 12 it reaches.
        var low = LineSearch.Finger(Neck.Guitar, [new(6, 1), new(6, 5), new(6, 1)], Hand.Small)[0];
        var high = LineSearch.Finger(Neck.Guitar, [new(6, 12), new(6, 16), new(6, 12)], Hand.Small)[0];
        Assert.Equal([1, 2], low.Shifts);
        Assert.Empty(high.Shifts);
    }

    [Fact]
    public void AClosedPositionIsNotScatteredWithOpenStrings()
    {
        // Four strings' worth of A minor up at the octave. B3 and E4 are open strings too, a hand's breadth from nowhere.
        const string text = "5:12 5:14 4:12 4:14 3:12 3:14 2:12 2:15";
        var written = PlayedLine.Parse(text, Neck.Guitar);
        Assert.Equal(text, Positions(written.PlacedBy(Hand.Average)!));

        // Without the term they cost nothing there, and are taken.
        var free = Hand.Average with
        {
            Weights = new() { OpenString = 0 },
        };
        Assert.Contains(written.PlacedBy(free)!, note => note.Position.Fret == 0);
    }

    [Theory]
    [InlineData("3:0 3:2 2:0 2:1 2:3 1:0 1:1 1:3")] // G mixolydian from the open third string
    [InlineData("1:0 1:0 1:1 1:3 1:3 1:1 1:0 2:3 2:1 2:1 2:3 1:0 1:0 2:3 2:3")] // a melody in C around the open first
    [InlineData("6:0 6:3 5:0 5:2 4:0 4:2 3:0 3:2 2:0 2:3 1:0 1:3")] // E minor's five notes through all strings
    public void AMelodyInOpenPositionKeepsItsOpenStrings(string text)
    {
        var line = PlayedLine.Parse(text, Neck.Guitar).PlacedBy(Hand.Average)!;
        Assert.Equal(text, Positions(line));
    }

    [Fact]
    public void OpenStringsCostNothingWhereTheyBegin()
    {
        // At the nut, at the capo, and where the short fifth string of a banjo begins.
        var banjo = new Neck(Tuning.Find("Banjo open G")!, 670);
        foreach (
            var (neck, positions) in new (Neck, Position[])[]
            {
                (Neck.Guitar, [new(2, 1), new(1, 0)]),
                (Neck.Guitar.WithCapo(4), [new(2, 5), new(1, 4)]),
                (banjo, [new(1, 6), new(5, 5)]),
            }
        )
        {
            var terms = new PlayedLine(neck, positions.Select(each => new PlayedNote(each, null))).TermsFor(
                Hand.Average
            );
            Assert.DoesNotContain(terms, term => term.Name == "open string");
        }

        // Eleven frets further up it is the ruler that says how much: from one fingertip to the other.
        var far = new PlayedLine(
            Neck.Guitar,
            [new(new(2, 12), Finger.Index), new(new(1, 0), null), new(new(2, 12), Finger.Index)]
        ).TermsFor(Hand.Average);
        var metres = (BruteForce.Tip(Neck.Guitar, 12) - BruteForce.Tip(Neck.Guitar, 1)) / 1000;
        Assert.Equal(metres, Assert.Single(far, term => term.Name == "open string").Amount, 1e-9);
    }

    [Fact]
    public void APreferredPlaceIsKeptToWhereThePitchesAllowIt()
    {
        var pitches = "C4 D4 E4 F4 G4".Split(' ').Select(text => Pitch.Parse(text));
        foreach (var place in new[] { 1, 5, 8 })
        {
            var line = LineSearch.Find(
                new()
                {
                    Neck = Neck.Guitar,
                    Notes = [.. pitches.Select(pitch => LineNote.Of(pitch, Neck.Guitar))],
                    PreferredPlace = place,
                    Hand = Hand.Average with { Weights = new() { Preference = 200 } },
                }
            )[0];
            Assert.InRange(line.Average(note => note.Place), place - 1, place + 1);
        }
    }

    [Fact]
    public void ALineThatCannotBePlayedSaysWhichNoteAndWhy()
    {
        Assert.Equal(
            new NoLineReason.NowhereOnNeck(1, Neck.Guitar),
            LineSearch.Place(Neck.Guitar, [Pitch.Parse("E4"), Pitch.Parse("E7")]).Reason
        );
        var query = new LineQuery
        {
            Neck = Neck.Guitar,
            Notes = [LineNote.At(new(6, 3)), LineNote.At(new(6, 12))],
            LastPlace = 5,
        };
        var far = Assert.IsType<NoLineReason.OutOfReach>(LineSearch.Find(query).Reason);
        Assert.Equal((1, 1, 5), (far.Note, far.First, far.Last));
        Assert.InRange(far.Excess, 25, 26);
        Assert.Equal(
            new NoLineReason.OnlyOnOpenStrings(0),
            LineSearch.Find(query with { OpenStrings = false, Notes = [LineNote.Of([new(6, 0), new(5, 0)])] }).Reason
        );
        Assert.Equal(
            new NoLineReason.OthersRingOn(1, 1, 22),
            LineSearch
                .Find(
                    query with
                    {
                        LastPlace = 22,
                        Notes = [LineNote.At(new(6, 3)) with { Rings = 1 }, LineNote.At(new(6, 5))],
                    }
                )
                .Reason
        );
        Assert.Throws<ArgumentException>(() => LineSearch.Find(query with { Notes = [LineNote.At(new(7, 1))] }));
        Assert.Throws<ArgumentException>(() => LineSearch.Find(query with { FirstPlace = 6 }));
        Assert.Throws<ArgumentOutOfRangeException>(() => query with { Best = 0 });
    }

    [Fact]
    public void QuestionsAreEqualByValue()
    {
        LineQuery Make() =>
            new() { Neck = Neck.Guitar, Notes = [LineNote.Of(Pitch.Parse("E4"), Neck.Guitar) with { Rings = 1 }] };
        Assert.Equal(Make(), Make());
        Assert.Equal(Make().GetHashCode(), Make().GetHashCode());
        Assert.NotEqual(Make(), Make() with { Notes = [LineNote.Of(Pitch.Parse("E4"), Neck.Guitar)] });
    }

    private static void AreTheFirstOfAll(LineQuery query)
    {
        var all = BruteForce.Lines(query)!;
        var answer = LineSearch.Find(query);
        Assert.Equal(Math.Min(query.Best, all.Count), answer.Count);
        Assert.Equal(answer.Count == 0, answer.Reason is not null);
        Assert.Distinct(answer.Select(BruteForce.Key));
        foreach (var (line, effort) in answer.Zip(all.Values.Order()))
        {
            Assert.Equal(effort, line.Effort, Tolerance);
            Assert.Equal(all[BruteForce.Key(line)], line.Effort, Tolerance);
        }
    }

    private static LineNote Note(Neck neck, int seed, int[] dice)
    {
        var number = 1 + (seed % neck.StringCount);
        var open = neck.OpenFret(number);
        var position = new Position(number, open + (seed / 7 % (neck.Frets - open + 1)));
        return dice[5] < 50 ? LineNote.At(position)
            : dice[5] < 80 ? LineNote.Of(Pitch.FromMidi(neck.MidiNumberAt(position)), neck)
            : LineNote.Of([position, new(1, neck.Frets)]);
    }

    private static string Positions(FingeredLine line) => string.Join(' ', line.Select(note => note.Position));
}
