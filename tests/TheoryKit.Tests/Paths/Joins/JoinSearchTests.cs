using Fractions;
using TheoryKit.Fingering.Hands;
using TheoryKit.Fingering.Zones;
using TheoryKit.Paths;
using TheoryKit.Paths.Joins;
using TheoryKit.Paths.Words;
using TheoryKit.Tests.Fingering;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Progressions;
using TheoryKit.Tunings.Necks;
using Path = TheoryKit.Paths.Path;

namespace TheoryKit.Tests.Paths.Joins;

public class JoiningTests
{
    // A hand that covers any window, so that every zone can be asked for.
    private static readonly Hand Free = new()
    {
        IndexToMiddle = Hand.MaxReach,
        MiddleToRing = Hand.MaxReach,
        RingToLittle = Hand.MaxReach,
        IndexToRing = Hand.MaxReach,
        MiddleToLittle = Hand.MaxReach,
        IndexToLittle = Hand.MaxReach,
    };

    private static readonly Changes KestrelStairs = Changes.Parse("3/4, Eb major: Ebmaj7 | Cm7 | Fm7 | Bb7");
    private static readonly Changes NineTinBoats = Changes.Parse("Gm9 | C13 | Fmaj9 | Dm7");

    private static readonly Gen<Chord?> AChord = Gen.Frequency(
        (1, Gen.Const((Chord?)null)),
        (5, FingeringGens.SmallChord.Select(static chord => (Chord?)chord)),
        (3, Gen.Int[0, 3].Select(static index => NineTinBoats.Chords[index].Chord))
    );

    private static readonly Gen<Changes> AnyChanges = Gen.Select(
        FingeringGens.OneOf("4/4", "3/4", "6/8", "5/4"),
        AChord.Array[1, 3].Array[1, 4],
        Gen.Bool,
        static (time, bars, repeats) =>
        {
            var signature = TimeSignature.Parse(time);
            var all = bars.Select(chords => Bar.Of(signature.Beats, chords)).ToList();
            return new Changes(repeats ? [.. all, all[^1]] : all, signature);
        }
    );

    private static readonly Gen<(Neck Neck, Window Window)> AZone = Gen.Select(
        Gen.OneOf(FingeringGens.Neck(3, 7, 12, 22), Gen.Const(Neck.Guitar)),
        Gen.Int[0, 9],
        Gen.Int[1, 6],
        static (neck, first, width) =>
            (neck, new Window(Math.Max(first, neck.Capo), Math.Min(Math.Max(first, neck.Capo) + width - 1, neck.Frets)))
    );

    private static readonly Gen<JoinRule> ARule = Gen.Int[0, JoinRule.Known.Count - 1]
        .Select(static index => JoinRule.Known[index]);

    private static readonly Gen<JoinQuery> AnyQuery = Gen.Select(
            AnyChanges,
            AZone,
            Gen.Int[1, 17],
            ARule,
            Gen.Int[0, 12],
            Gen.Bool,
            static (changes, zone, notes, rule, start, isDown) =>
            {
                var query = new JoinQuery
                {
                    Changes = changes,
                    Neck = zone.Neck,
                    Window = zone.Window,
                    Hand = Free,
                    NotesPerChord = notes,
                    Rule = rule,
                    Direction = isDown ? Direction.Down : Direction.Up,
                };
                var walker = Walker(query);
                return (
                    Query: start < 6 || walker.Stops == 0
                        ? query
                        : query with
                        {
                            Start = Pitch.FromMidi(walker.FirstTones[start % walker.FirstTones.Length]),
                        },
                    Sounds: walker.Stops > 0 && zone.Window.Last >= Math.Max(1, zone.Neck.Capo + 1)
                );
            }
        )
        .Where(static each => each.Sounds)
        .Select(static each => each.Query);

    [Fact]
    public void LeadInAndCycleAreThoseOfPlayingOnUntilAStateReturns() =>
        AnyQuery.Sample(static query =>
        {
            var joined = JoinSearch.Find(query);
            var walker = Walker(query);
            var seen = new Dictionary<(int, int, Direction), int>();
            foreach (var chord in walker.Walk(query.Start?.MidiNumber, query.Direction))
            {
                if (seen.TryGetValue(chord.State, out var first))
                {
                    Assert.Equal((first, seen.Count - first), (joined.LeadIn.Chords, joined.Cycle.Chords));
                    break;
                }

                seen.Add(chord.State, seen.Count);
            }

            Assert.Equal(walker.States, joined.States);
            Assert.True(joined.LeadIn.Chords + joined.Cycle.Chords <= walker.States);
        });

    [Fact]
    public void TheExerciseGoesOnAsPlayedNoteByNoteFarBeyondTheCycle() =>
        AnyQuery.Sample(static query =>
        {
            var joined = JoinSearch.Find(query);
            var sounds = joined.Path.Notes.Select(static note => note.Pitch.MidiNumber).ToArray();
            Assert.Equal(joined.LeadIn.Notes + joined.Cycle.Notes, sounds.Length);
            var played = 0;
            foreach (
                var note in Walker(query)
                    .Walk(query.Start?.MidiNumber, query.Direction)
                    .Take(joined.LeadIn.Chords + (4 * joined.Cycle.Chords) + 7)
                    .SelectMany(static chord => chord.Notes)
            )
            {
                var at =
                    played < sounds.Length
                        ? played
                        : joined.LeadIn.Notes + ((played - joined.LeadIn.Notes) % joined.Cycle.Notes);
                Assert.Equal(note, sounds[at]);
                played++;
            }
        });

    [Fact]
    public void TheLoopIsTheCycleFromABeginningOfTheChangesOn() =>
        AnyQuery.Sample(static query =>
        {
            var joined = JoinSearch.Find(query);
            var stops = Walker(query).Stops;
            var rounds = (joined.LeadIn.Chords + stops - 1) / stops;
            var expected = Walker(query)
                .Walk(query.Start?.MidiNumber, query.Direction)
                .Skip(rounds * stops)
                .Take(2 * joined.Cycle.Chords)
                .SelectMany(static chord => chord.Notes);
            var loop = joined.Loop.Repeat(2);
            Assert.Equal(expected, loop.Notes.Select(static note => note.Pitch.MidiNumber));
            Assert.Equal(joined.Cycle.Beats * 2, loop.Beats);
            Assert.True((joined.Cycle.Beats / query.Changes.Beats).Reduce().Denominator.IsOne);
        });

    [Fact]
    public void TheNotesOfEveryChordFillItsTimeAndEveryBarAddsUp() =>
        AnyQuery.Sample(static query =>
        {
            var joined = JoinSearch.Find(query);
            var path = joined.Path;
            Assert.Equal((joined.LeadIn.Beats + joined.Cycle.Beats).Reduce(), path.Beats);
            Assert.Equal(joined.Cycle.Bars * query.Changes.Time.Beats, joined.Cycle.Beats);
            var silent = query
                .Changes.Chords.Where((_, index) => joined.Shapes[index] is null)
                .Aggregate(Fraction.Zero, static (sum, span) => sum + span.Length);
            Assert.Equal(
                (joined.Cycle.Beats * (1 - (silent / query.Changes.Beats))).Reduce(),
                path.Notes.Skip(joined.LeadIn.Notes)
                    .Aggregate(Fraction.Zero, static (sum, note) => (sum + note.Length).Reduce())
            );
            for (var bar = 0; bar < path.BarCount; bar++)
            {
                var at = (Fraction)(bar * path.Time.Beats);
                foreach (var note in path.InBar(bar))
                {
                    var span = query.Changes.At((note.Start % query.Changes.Beats).Reduce());
                    Assert.NotNull(span.Chord);
                    Assert.Equal((span.Length / query.NotesPerChord).Reduce(), note.Length);
                    at = (at < note.Start ? Silence(query, joined, at, note.Start) : at) + note.Length;
                }

                var end = (Fraction)((bar + 1) * path.Time.Beats);
                end = end < path.Beats ? end : path.Beats;
                Assert.Equal(end, (at < end ? Silence(query, joined, at, end) : at).Reduce());
            }
        });

    [Fact]
    public void EveryNoteLiesInTheZoneAsTheShapeOfItsChordHasItOrLeadsByASemitone() =>
        AnyQuery.Sample(static query =>
        {
            var joined = JoinSearch.Find(query);
            var path = joined.Path;
            for (var index = 0; index < path.Notes.Count; index++)
            {
                var note = path.Notes[index];
                Assert.True(query.Window!.Value.Contains(note.Position.Fret));
                Assert.Equal(note.Position.Fret == query.Neck.OpenFret(note.Position.String), note.Finger is null);
                Assert.Equal(Math.Max(query.Neck.Capo + 1, query.Window.Value.First), note.Place);
                var span = query.Changes.At((note.Start % query.Changes.Beats).Reduce());
                var shape = joined.Shapes[query.Changes.Chords.ToList().IndexOf(span)]!;
                if (
                    !shape.Notes.Any(tone =>
                        tone.Place.Position == note.Position
                        && tone.Place.Pitch == note.Pitch
                        && tone.Finger == note.Finger
                    )
                )
                {
                    Assert.Equal(JoinRule.SemitoneApproach, query.Rule);
                    var next = path.Notes[index + 1 < path.Notes.Count ? index + 1 : joined.LeadIn.Notes];
                    Assert.Equal(1, Math.Abs(next.Pitch.MidiNumber - note.Pitch.MidiNumber));
                    Assert.Equal(
                        new JoinReason.LeadsInto(next.Pitch, note.Pitch.MidiNumber < next.Pitch.MidiNumber),
                        note.Why
                    );
                }
            }
        });

    [Fact]
    public void ChordsAndWaysAreTheWalkersAndJoinsAreCountedOut() =>
        AnyQuery.Sample(static query =>
        {
            var joined = JoinSearch.Find(query);
            var played = Walker(query)
                .Walk(query.Start?.MidiNumber, query.Direction)
                .Take(joined.LeadIn.Chords + joined.Cycle.Chords)
                .ToList();
            Assert.Equal(
                played.Select(static chord =>
                    (chord.Notes[0], chord.Direction, chord.Way, chord.Last, chord.Approach, chord.Notes.Length)
                ),
                joined.Chords.Select(static chord =>
                    (
                        chord.Entry.Pitch.MidiNumber,
                        chord.Direction,
                        chord.Way,
                        chord.Last.Pitch.MidiNumber,
                        chord.Approach?.MidiNumber,
                        chord.Notes
                    )
                )
            );
            var cycle = played.Skip(joined.LeadIn.Chords).ToList();
            Assert.Equal(cycle.Count(static chord => chord.Joined == JoinWay.WentOn), joined.WentOn);
            Assert.Equal(cycle.Count(static chord => chord.Joined == JoinWay.Turned), joined.Turned);
            Assert.Equal(cycle.Count(static chord => chord.Joined == JoinWay.Held), joined.Held);
            Assert.Equal(cycle.Count(static chord => chord.Approach is not null), joined.Approached);
            Assert.Equal(joined.Cycle.Chords, joined.Joins.Sum(static join => join.Count));

            // The same joins, counted by the pitch classes of the last note and of the entry.
            var chords = joined
                .Shapes.Select((shape, index) => (shape, query.Changes.Chords[index].Chord!))
                .Where(static each => each.shape is not null)
                .Select(static each => each.Item2)
                .ToList();
            var counted = cycle
                .GroupBy(chord =>
                    (
                        From: chords[chord.Stop],
                        Out: chord.Last % 12,
                        To: chords[(chord.Stop + 1) % chords.Count],
                        In: chord.Entered % 12,
                        chord.Joined
                    )
                )
                .ToDictionary(static group => group.Key, static group => group.Count());
            var told = joined
                .Joins.GroupBy(static join =>
                    (
                        join.From,
                        Out: (join.From.Root.PitchClass + join.FromFunction.PitchClass) % 12,
                        join.To,
                        In: (join.To.Root.PitchClass + join.ToFunction.PitchClass) % 12,
                        join.Way
                    )
                )
                .ToDictionary(static group => group.Key, static group => group.Sum(static join => join.Count));
            Assert.Equal(counted, told);
        });

    [Fact]
    public void PossibleJoinsAreThoseOfEveryToneAndDirectionThatCanBeArrivedAt() =>
        AnyQuery.Sample(static query =>
        {
            var (joined, walker) = (JoinSearch.Find(query), Walker(query));
            var possible = walker.PossibleJoins();
            var made = walker
                .Walk(query.Start?.MidiNumber, query.Direction)
                .Skip(joined.LeadIn.Chords)
                .Take(joined.Cycle.Chords)
                .Select(static chord => (chord.Stop, chord.Last % 12, chord.Entered % 12))
                .ToHashSet();
            Assert.Equal(possible.Count, joined.PossibleJoins);
            Assert.Equal(possible.Except(made).Count(), joined.Missed.Count);
            Assert.Equal(possible.IsSubsetOf(made), joined.VisitsEveryJoin);
            if (query.NotesPerChord > 1)
            {
                Assert.Subset(possible, made);
            }
        });

    [Fact]
    public void EveryStartLeadsIntoOneOfTheCycles() =>
        AnyQuery.Sample(
            static query =>
            {
                var cycles = JoinSearch.Cycles(query);
                Assert.All(cycles, static cycle => Assert.Equal(0, cycle.LeadIn.Chords));
                Assert.All(cycles, static cycle => Assert.Equal(cycle, JoinSearch.Find(cycle.Query)));
                Assert.Equal(cycles.OrderByDescending(static cycle => cycle.Cycle.Chords), cycles);
                var walker = Walker(query);
                var states = cycles
                    .Select(cycle =>
                        walker
                            .Walk(cycle.Start.Pitch.MidiNumber, cycle.Query.Direction)
                            .Take(cycle.Cycle.Chords)
                            .Select(static chord => chord.State)
                            .ToHashSet()
                    )
                    .ToList();
                foreach (var start in walker.FirstTones)
                {
                    foreach (var direction in new[] { Direction.Up, Direction.Down })
                    {
                        var far = walker.Walk(start, direction).Skip(walker.States).First().State;
                        Assert.Single(states, cycle => cycle.Contains(far));
                    }
                }
            },
            iter: 200
        );

    [Fact]
    public void OneChordComesRoundAsTravellingToAndFroDoes() =>
        // m tones to and fro come round after 2(m - 1) steps, n notes a chord take n of them: so many chords until both agree.
        Gen.Select(FingeringGens.SmallChord, AZone, Gen.Int[2, 17])
            .Where(static each => JoinWalker.TonesOf(each.Item2.Neck, each.Item2.Window, each.Item1).Length > 1)
            .Where(static each => each.Item2.Window.Last > each.Item2.Neck.Capo)
            .Sample(
                static (chord, zone, notes) =>
                {
                    var tones = JoinWalker.TonesOf(zone.Neck, zone.Window, chord).Length;
                    var joined = JoinSearch.Find(
                        new()
                        {
                            Changes = new([Bar.Of(4, chord)]),
                            Neck = zone.Neck,
                            Window = zone.Window,
                            Hand = Free,
                            NotesPerChord = notes,
                        }
                    );
                    var round = 2 * (tones - 1);
                    Assert.Equal(0, joined.LeadIn.Chords);
                    Assert.Equal(
                        round / (int)System.Numerics.BigInteger.GreatestCommonDivisor(round, notes),
                        joined.Cycle.Chords
                    );
                    Assert.Equal(joined.Cycle.Chords, joined.WentOn + joined.Turned);
                }
            );

    [Fact]
    public void KestrelStairsInThreesByHand()
    {
        // Worked out with pencil and paper from the tones at frets 5 to 8.
        var joined = JoinSearch.Find(KestrelStairs, Neck.Guitar, new(5, 8), 3);
        Assert.Equal(
            "Eb3 G3 Bb3 | C4 Eb4 G4 | C5 F4 Eb4 | D4 Bb3 Ab3 | G3 Eb3 D3 | C3 Bb2 C3 | "
                + "Eb3 F3 Ab3 | Bb3 D4 F4 | G4 Bb4 G4 | Eb4 C4 Bb3 | Ab3 F3 Eb3 | D3 Bb2 D3",
            Bars(joined.Path)
        );
        Assert.Equal("lead-in: 0 chords, 0 bars, 0 notes; cycle: 12 chords, 12 bars, 36 notes", joined.InWords());
        Assert.Equal((12, 0, 0), (joined.WentOn, joined.Turned, joined.Held));
        Assert.Equal(joined.Path, joined.Loop);
        // Into Cm7 from the fifth of Ebmaj7, from its seventh and from its third.
        Assert.Equal(
            "3 of Ebmaj7 to b3 of Cm7, once; 5 of Ebmaj7 to 1 of Cm7, once; 7 of Ebmaj7 to 1 of Cm7, once",
            string.Join(
                "; ",
                joined
                    .Joins.Where(static join => join.To == KestrelStairs.Chords[1].Chord)
                    .Select(static join => join.InWords())
            )
        );
    }

    [Fact]
    public void TheVariantsByHand()
    {
        Assert.StartsWith(
            // Bb3 is a tone of Cm7 too, and so on: held wherever there is one.
            "Eb3 G3 Bb3 | Bb3 C4 Eb4 | Eb4 F4 C5 | Bb4 F4 D4 | ",
            Bars(Find(JoinRule.CommonTone)),
            StringComparison.Ordinal
        );
        Assert.StartsWith(
            // Bb3 is two semitones below C4 and three above G3; G4 two above F4 and five below C5; C4 as far from Bb3 as from D4, and the
            // line is travelling down; so again F3 from Eb3 and G3.
            "Eb3 G3 Bb3 | C4 Eb4 G4 | F4 Eb4 C4 | Bb3 Ab3 F3 | Eb3 D3 Bb2 | ",
            Bars(Find(JoinRule.Nearest)),
            StringComparison.Ordinal
        );
        Assert.StartsWith(
            // B3 would lead up to C4, but no string has it at frets 5 to 8, nor Db3 that would lead down to C3. B4 leads up to C5 and D3 up
            // to Eb3. Eb4 and Ab3 are a semitone above the next tone as it is.
            "Eb3 G3 Bb3 | C4 Eb4 B4 | C5 F4 Eb4 | D4 Bb3 Ab3 | G3 Eb3 D3 | C3 Bb2 D3 | Eb3 ",
            Bars(Find(JoinRule.SemitoneApproach)),
            StringComparison.Ordinal
        );

        static Path Find(JoinRule rule) => JoinSearch.Find(KestrelStairs, Neck.Guitar, new(5, 8), 3, rule).Path;
    }

    [Fact]
    public void EveryNoteSaysWhyItIsThereWhereThereIsSomethingToSay()
    {
        var notes = JoinSearch.Find(KestrelStairs, Neck.Guitar, new(5, 8), 3).Path.Notes;
        Assert.Equal(new JoinReason.Start(Chord.Parse("Ebmaj7")), notes[0].Why);
        Assert.Null(notes[1].Why);
        Assert.Equal(
            new JoinReason.Entry(Chord.Parse("Cm7"), Pitch.Parse("Bb3"), JoinWay.WentOn, IsAbove: true),
            notes[3].Why
        );
        Assert.Equal(new JoinReason.Turned(AtTop: true), notes[7].Why);
        Assert.Equal(new JoinReason.Turned(AtTop: false), notes[17].Why);
    }

    [Fact]
    public void ANoteABeatGivesLongerChordsMore()
    {
        var changes = Changes.Parse("4/4: Fm7 / Bb7 / | Ebmaj7");
        var joined = JoinSearch.Find(
            new()
            {
                Changes = changes,
                Neck = Neck.Guitar,
                Window = new(5, 8),
                NotesPerBeat = 2,
            }
        );
        Assert.Equal([4, 4, 8], joined.Chords.Take(3).Select(static chord => chord.Notes));
        Assert.All(joined.Path.Notes, static note => Assert.Equal(new Fraction(1, 2), note.Length));
        var uneven = Assert.Throws<ArgumentException>(() =>
            JoinSearch.Find(
                new()
                {
                    Changes = changes,
                    Neck = Neck.Guitar,
                    Window = new(5, 8),
                    NotesPerBeat = new Fraction(3, 4),
                }
            )
        );
        Assert.Contains("give Fm7 3/2 notes in its 2 beats", uneven.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void NotesABeatAreWalkedAsNotesAChordAre() =>
        Gen.Select(AnyQuery, Gen.Int[1, 4])
            .Sample(
                static (query, perBeat) =>
                {
                    // As many notes a beat as make whole numbers for every chord.
                    var parts = query.Changes.Chords.Aggregate(
                        System.Numerics.BigInteger.One,
                        static (all, span) =>
                            all
                            / System.Numerics.BigInteger.GreatestCommonDivisor(all, span.Length.Denominator)
                            * span.Length.Denominator
                    );
                    var asked = query with { NotesPerBeat = new Fraction(perBeat * parts, 1) };
                    if (query.Changes.Chords.Any(span => asked.NotesPerBeat * span.Length > JoinQuery.MaxNotes))
                    {
                        return;
                    }

                    var joined = JoinSearch.Find(asked);
                    var expected = new JoinWalker(
                        query.Changes,
                        query.Neck,
                        query.Window!.Value,
                        span => (int)(asked.NotesPerBeat!.Value * span.Length).Reduce().Numerator,
                        query.Rule
                    )
                        .Walk(query.Start?.MidiNumber, query.Direction)
                        .Take(joined.LeadIn.Chords + joined.Cycle.Chords)
                        .SelectMany(static chord => chord.Notes);
                    Assert.Equal(expected, joined.Path.Notes.Select(static note => note.Pitch.MidiNumber));
                    Assert.All(
                        joined.Path.Notes,
                        note => Assert.Equal(new Fraction(1, perBeat * parts).Reduce(), note.Length)
                    );
                }
            );

    [Fact]
    public void SilenceIsKeptAndTheLineGoesOnFromWhereItWas()
    {
        var joined = JoinSearch.Find(Changes.Parse("3/4: N.C. | Ebmaj7 | N.C. | Cm7"), Neck.Guitar, new(5, 8), 3);
        Assert.Equal(3, joined.Path.Notes[0].Start);
        Assert.StartsWith(" | Eb3 G3 Bb3 |  | C4 Eb4 G4", Bars(joined.Path), StringComparison.Ordinal);
        Assert.Empty(joined.Silent);
        Assert.Equal(2 * joined.Cycle.Chords, joined.Cycle.Bars);
    }

    [Fact]
    public void ShapesMayBeGivenChordByChord()
    {
        var changes = Changes.Parse("3/4: Ebmaj7 | Cm7 | N.C.");
        var neck = Neck.Guitar;
        var shape = ShapeRule.NotesPerString(2).LayOut(neck, NoteName.Parse("Eb"), Formula.Parse("1 3 5 7"), 3);
        var other = ShapeRule.AlongString(1).LayOut(neck, NoteName.Parse("C"), Formula.Parse("1 b3 5 b7"), 3);
        Assert.NotNull(shape);
        Assert.NotNull(other);
        var query = new JoinQuery
        {
            Changes = changes,
            Neck = neck,
            Shapes = [shape, other, null],
            NotesPerChord = 4,
            Rule = JoinRule.SemitoneApproach,
        };
        var joined = JoinSearch.Find(query);
        Assert.Equal(query, joined.Query with { });
        foreach (var note in joined.Path.Notes.Where(static note => note.Why is not JoinReason.LeadsInto))
        {
            var of = joined.Path.ChordAt(note.Start) == changes.Chords[0].Chord ? shape : other;
            Assert.Contains(note.Position, of.Places.Select(static place => place.Position));
        }

        Assert.Throws<ArgumentException>(() => JoinSearch.Find(query with { Shapes = [shape] }));
        Assert.Throws<ArgumentException>(() => JoinSearch.Find(query with { Shapes = [null, null, null] }));
        Assert.Throws<ArgumentException>(() => JoinSearch.Find(query with { Window = new(5, 8) }));
        Assert.Throws<ArgumentException>(() => JoinSearch.Find(query with { Shapes = null }));
        Assert.Throws<ArgumentException>(() =>
            JoinSearch.Find(query with { Neck = neck.With(Tuning.Parse("D2 A2 D3 G3 A3 D4")) })
        );
    }

    [Fact]
    public void WhatCannotBePlayedSaysWhy()
    {
        Assert.Contains(
            "does not cover frets 1-9",
            Message(
                new()
                {
                    Changes = KestrelStairs,
                    Neck = Neck.Guitar,
                    Window = new(1, 9),
                }
            ),
            StringComparison.Ordinal
        );
        Assert.Contains(
            "Frets 20-23 are not on the neck",
            Message(
                new()
                {
                    Changes = KestrelStairs,
                    Neck = Neck.Guitar,
                    Window = new(20, 23),
                }
            ),
            StringComparison.Ordinal
        );
        Assert.Contains(
            "Ebmaj7 has no E3 here to start on; it has Bb2 D3 Eb3 G3 Bb3 D4 Eb4 G4 Bb4",
            Message(
                new()
                {
                    Changes = KestrelStairs,
                    Neck = Neck.Guitar,
                    Window = new(5, 8),
                    Start = Pitch.Parse("E3"),
                }
            ),
            StringComparison.Ordinal
        );
        Assert.Contains(
            "No chord of these changes has a tone at frets 5-8",
            Message(
                new()
                {
                    Changes = Changes.Parse("N.C."),
                    Neck = Neck.Guitar,
                    Window = new(5, 8),
                }
            ),
            StringComparison.Ordinal
        );
        Assert.Throws<ArgumentOutOfRangeException>(() => JoinSearch.Find(KestrelStairs, Neck.Guitar, new(5, 8), 0));

        static string Message(JoinQuery query) =>
            Assert.Throws<ArgumentException>(() => JoinSearch.Find(query)).Message;
    }

    [Fact]
    public void RulesAreFoundByTheirNames()
    {
        Assert.Equal(JoinRule.Known.Count, JoinRule.Known.Select(static rule => rule.Name).Distinct().Count());
        Assert.All(
            JoinRule.Known,
            static rule => Assert.Equal(rule, JoinRule.Find($" {rule.Name.ToUpperInvariant()}"))
        );
        Assert.Null(JoinRule.Find("as you like it"));
    }

    [Fact]
    public void TheTableHasTheCyclesOfEveryZoneAndNumberOfNotes()
    {
        Window[] windows = [.. Enumerable.Range(1, 12).Select(static fret => new Window(fret, fret + 3))];
        foreach (var rule in JoinRule.Known)
        {
            var table = JoinSearch.Table(NineTinBoats, Neck.Guitar, windows, 1, 16, rule);
            Assert.Equal(12 * 16, table.Cells.Count());
            foreach (var cell in table.Cells)
            {
                var joined = JoinSearch.Find(NineTinBoats, Neck.Guitar, cell.Window, cell.NotesPerChord, rule);
                Agree(joined, cell);
                Assert.Equal(joined, table.Exercise(cell));
            }

            Assert.Equal(table.Cells.Max(static cell => cell.Cycle), table.Longest!.Cycle);
            Assert.True(table.VisitingEveryJoin is null or { VisitsEveryJoin: true });
        }
    }

    [Fact]
    public void TheSearchOverStartsFindsTheBestOfEveryStart()
    {
        Window[] windows = [new(2, 5), new(5, 8), new(9, 12)];
        foreach (var starts in new[] { JoinStarts.LongestCycle, JoinStarts.MostJoins })
        {
            var table = JoinSearch.Table(KestrelStairs, Neck.Guitar, windows, 2, 9, starts: starts);
            foreach (var cell in table.Cells)
            {
                Agree(table.Exercise(cell), cell);
                Assert.Equal(0, cell.LeadIn);
                var all = (
                    from tone in JoinSearch.Find(KestrelStairs, Neck.Guitar, cell.Window, cell.NotesPerChord).Shapes[
                        0
                    ]!.Places
                    from direction in new[] { Direction.Up, Direction.Down }
                    select JoinSearch.Find(
                        new()
                        {
                            Changes = KestrelStairs,
                            Neck = Neck.Guitar,
                            Window = cell.Window,
                            NotesPerChord = cell.NotesPerChord,
                            Start = tone.Pitch,
                            Direction = direction,
                        }
                    )
                ).ToList();
                if (starts == JoinStarts.LongestCycle)
                {
                    Assert.Equal(all.Max(static joined => joined.Cycle.Chords), cell.Cycle);
                }
                else
                {
                    Assert.Equal(all.Max(static joined => joined.PossibleJoins - joined.Missed.Count), cell.Joins);
                }
            }
        }
    }

    [Fact]
    public void AZoneWithNoToneHasNoCellAndTheZonesAreThoseOfTheFirstChordUnlessGiven()
    {
        var neck = new Neck(Tuning.Parse("C3 C4 C5"));
        var table = JoinSearch.Table(Changes.Parse("C5 | F5"), neck, [new(3, 4), new(4, 5)]);
        Assert.Null(table[0, 0]);
        Assert.NotNull(table[1, 0]);
        Assert.Equal(
            NineTinBoats.Chords[0].Chord!.Zones(Neck.Guitar).Select(static zone => zone.Window).Distinct(),
            JoinSearch.Table(NineTinBoats, Neck.Guitar).Windows
        );
        Assert.Throws<ArgumentException>(() => JoinSearch.Table(Changes.Parse("N.C."), neck));
        Assert.Throws<ArgumentOutOfRangeException>(() => JoinSearch.Table(NineTinBoats, neck, fewest: 4, most: 3));
    }

    [Fact]
    public void AFewExercisesOfAZoneMakeAllTheJoinsThatAnyOfItsExercisesMakes()
    {
        Window[] windows = [new(2, 5), new(5, 8), new(9, 12)];
        foreach (var starts in Enum.GetValues<JoinStarts>())
        {
            var table = JoinSearch.Table(NineTinBoats, Neck.Guitar, windows, 2, 9, starts: starts);
            for (var row = 0; row < windows.Length; row++)
            {
                var few = table.Covering(row);
                Assert.Equal(Made(Enumerable.Range(0, 8).Select(column => table[row, column]!)), Made(few));
                Assert.Equal(few.Count, few.Distinct().Count());
                Assert.All(
                    few.SkipLast(1),
                    (cell, index) => Assert.True(Made(few.Take(index + 1)).Count < Made(few).Count)
                );
            }

            // The four chords have four roots, which tell the changes apart.
            SortedSet<(int, int, int)> Made(IEnumerable<JoinCell> cells) =>
                [
                    .. cells
                        .Select(table.Exercise)
                        .SelectMany(static joined =>
                            joined.Joins.Select(join =>
                                (join.From.Root.PitchClass, join.FromFunction.PitchClass, join.ToFunction.PitchClass)
                            )
                        ),
                ];
        }

        Assert.Empty(JoinSearch.Table(Changes.Parse("C5"), new(Tuning.Parse("C3 C4 C5")), [new(3, 4)]).Covering(0));
    }

    private static void Agree(JoinedChanges joined, JoinCell cell)
    {
        Assert.Equal((joined.LeadIn.Chords, joined.Cycle.Chords), (cell.LeadIn, cell.Cycle));
        Assert.Equal(joined.Start.Pitch, cell.Start);
        Assert.Equal(joined.PossibleJoins, cell.PossibleJoins);
        Assert.Equal(joined.PossibleJoins - joined.Missed.Count, cell.Joins);
        Assert.Equal(joined.VisitsEveryJoin, cell.VisitsEveryJoin);
        Assert.Equal(joined.Cycle.Notes, cell.CycleNotes);
    }

    private static JoinWalker Walker(JoinQuery query) =>
        new(query.Changes, query.Neck, query.Window!.Value, _ => query.NotesPerChord, query.Rule);

    /// <summary>Goes on through chords that are silent; the beat at which that ends.</summary>
    private static Fraction Silence(JoinQuery query, JoinedChanges joined, Fraction from, Fraction to)
    {
        while (from < to)
        {
            var span = query.Changes.At((from % query.Changes.Beats).Reduce());
            Assert.Null(joined.Shapes[query.Changes.Chords.ToList().IndexOf(span)]);
            from = (from + span.Length).Reduce();
        }

        return from;
    }

    private static string Bars(Path path) =>
        string.Join(
            " | ",
            Enumerable
                .Range(0, path.BarCount)
                .Select(bar => string.Join(' ', path.InBar(bar).Select(static note => note.Pitch)))
        );
}
