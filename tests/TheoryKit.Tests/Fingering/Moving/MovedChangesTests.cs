using TheoryKit.Fingering.Grips;
using TheoryKit.Fingering.Hands;
using TheoryKit.Fingering.Moving;
using TheoryKit.Tests.Fingering.Grips;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Progressions;
using TheoryKit.Tunings.Necks;
using TheoryKit.Tunings.Turns;

namespace TheoryKit.Tests.Fingering.Moving;

public class MovedChangesTests
{
    private const double Tolerance = 1e-9;

    /// <summary>For each of five strings by how much it is turned; most stay.</summary>
    internal static readonly Gen<int[]> Turns = Gen.Select(
        Gen.Int[0, 3],
        Gen.Int[-2, 2],
        (kind, turn) => kind == 0 ? turn : 0
    ).Array[5];

    /// <summary>Changes of one to three chords on a small neck, and the same strings turned by up to two semitones each.</summary>
    private static readonly Gen<MovedChanges> Any = Gen.Select(
        FingeringGens.SmallChord.Array[1, 3],
        FingeringGens.Tuning(4, 5),
        Turns,
        Gen.OneOf(FingeringGens.UsualHand, FingeringGens.Hand),
        Gen.Bool,
        (chords, tuning, turns, hand, anyBass) =>
            MovedChanges.Of(
                chords,
                new Neck(tuning, frets: 5),
                Turned(tuning, turns),
                hand,
                new GripLimits { AnyBass = anyBass }
            )
    );

    internal static Tuning Turned(Tuning tuning, int[] turns) =>
        new(
            tuning
                .Strings.Select(
                    (each, index) =>
                        new TuningString(
                            turns[index] == 0 ? each.Open : Pitch.FromMidi(each.Open.MidiNumber + turns[index]),
                            each.Start
                        )
                )
                .Reverse()
        );

    [Fact]
    public void A_grip_can_stay_exactly_when_its_frets_sound_the_chord()
    {
        var (staying, moving) = (0, 0);
        Any.Sample(
            moved =>
            {
                foreach (var each in moved.Grips.Where(static each => each.Before is not null))
                {
                    Assert.Equal(Sounds(moved, each), each.CanStay);
                    Assert.Equal(each.CanStay, each.Reason is null);
                    _ = each.CanStay ? Interlocked.Increment(ref staying) : Interlocked.Increment(ref moving);
                    if (each.Same is { } same)
                    {
                        Assert.Equal(Frets(each.Before!), Frets(same));
                        Assert.Equal(each.Before!.Grip, same.Grip);
                        Assert.Equal(each.Before.Effort, same.Effort, Tolerance);
                        Assert.True(each.Kept is null || each.Kept.Equals(same));
                    }
                }
            },
            iter: 300
        );
        Assert.True(staying > 20 && moving > 20, $"{staying} stay, {moving} move: too few of one kind.");
    }

    [Fact]
    public void A_position_stays_when_it_sounds_the_same_pitch_and_must_move_when_it_sounds_no_tone() =>
        Any.Sample(
            moved =>
            {
                foreach (var each in moved.Grips.Where(static each => each.Before is not null))
                {
                    Assert.Equal(each.Before!.Grip.Positions, each.Positions.Select(static p => p.Position));
                    var tones = each.Chord.Tones.Append(each.Chord.Bass).Select(static tone => tone.PitchClass);
                    foreach (var position in each.Positions)
                    {
                        var turn = moved.Scordatura[position.Position.String];
                        Assert.Equal(moved.From.MidiNumberAt(position.Position), position.Before.MidiNumber);
                        Assert.Equal(position.Before.MidiNumber + turn.Semitones, position.After.MidiNumber);
                        Assert.Equal(turn.Direction == Turn.Leave, position.Stays);
                        Assert.Equal(!tones.Contains(position.After.PitchClass), position.MustMove);
                    }

                    Assert.True(!each.CanStay || each.Positions.All(static position => !position.MustMove));
                }
            },
            iter: 200
        );

    [Fact]
    public void Both_versions_are_the_best_of_all_choices_that_they_have() =>
        Any.Sample(
            moved =>
            {
                var answers = moved
                    .Grips.Select(each => GripSearch.Find(moved.Limits.For(each.Chord, moved.To, moved.Hand)).ToArray())
                    .ToArray();
                if (
                    answers.Any(static answer => answer.Length == 0)
                    || answers.Aggregate(1.0, static (product, answer) => product * answer.Length) > 5_000
                )
                {
                    return;
                }

                Assert.Equal(Least(moved, answers), moved.Easiest.Cost, Tolerance);
                Assert.Equal(
                    GripProgressionTests.Cost(moved.Hand.Weights, moved.Easiest.Grips),
                    moved.Easiest.Cost,
                    Tolerance
                );
                ChordGrip[][] keeping =
                [
                    .. moved.Grips.Select(
                        (each, index) =>
                            each.Before is not null && Sounds(moved, each)
                                ? answers[index].Where(grip => Frets(grip).SequenceEqual(Frets(each.Before))).ToArray()
                                : answers[index]
                    ),
                ];
                Assert.Equal(Least(moved, keeping), moved.Kept.Cost, Tolerance);
                Assert.True(moved.Easiest.Cost <= moved.Kept.Cost + Tolerance);
            },
            iter: 200
        );

    [Fact]
    public void To_the_same_tuning_everything_stays() =>
        Gen.Select(FingeringGens.SmallChord.Array[1, 3], FingeringGens.Tuning(4, 5))
            .Sample(
                (chords, tuning) =>
                {
                    var moved = MovedChanges.Of(chords, new Neck(tuning, frets: 5), tuning);
                    if (moved.Before.Grips.Count == 0)
                    {
                        Assert.Equal(moved.Before.Reason, moved.Easiest.Reason);
                        Assert.Equal(0, moved.Staying);
                        return;
                    }

                    Assert.Equal(chords.Length, moved.Staying);
                    Assert.Equal(moved.Before.Grips, moved.Kept.Grips);
                    Assert.Equal(moved.Before.Cost, moved.Kept.Cost, Tolerance);
                    Assert.Equal(moved.Before.Cost, moved.Easiest.Cost, Tolerance);
                    Assert.Empty(moved.Scordatura.Steps);
                },
                iter: 100
            );

    [Fact]
    public void Every_string_a_semitone_down_makes_a_grip_another_chord_so_all_must_move()
    {
        var moved = MovedChanges.Of(
            Changes.Parse("4/4, F major: Gm9 | C13 | Fmaj9 | Dm7 | %"),
            Neck.Guitar,
            Tuning.Find("Half step down")!
        );
        Assert.Equal(["Gm9", "C13", "Fmaj9", "Dm7"], moved.Grips.Select(static each => each.Chord.ToString()));
        Assert.Equal(0, moved.Staying);
        Assert.Equal(moved.Easiest.Grips, moved.Kept.Grips);
        Assert.All(moved.Grips, static each => Assert.NotNull(each.Reason));
    }

    [Fact]
    public void In_drop_D_what_leaves_string_6_alone_stays_and_what_holds_it_moves()
    {
        Chord[] chords = [Chord.Parse("Am"), Chord.Parse("G"), Chord.Parse("Dm")];
        var limits = new GripLimits { LastFret = 5 };
        var before = new[] { "x 0 2 2 1 0", "3 2 0 0 0 3", "x x 0 2 3 1" };
        var grips = chords.Zip(
            before,
            (chord, text) => GripSearch.Find(limits.For(chord, Neck.Guitar)).First(grip => Text(grip) == text)
        );
        var moved = MovedChanges.Of(grips, Tuning.Find("Drop D")!, limits: limits);
        Assert.Equal([true, false, true], moved.Grips.Select(static each => each.CanStay));
        Assert.Equal(
            [new ForeignTone(new(6, 3), IsOpen: false, Pitch.Parse("F2"))],
            Assert.IsType<MustMoveReason.ForeignTones>(moved.Grips[1].Reason).Tones
        );
        Assert.Equal(before[0], Text(moved.Kept.Grips[0]));
        Assert.Equal(before[2], Text(moved.Kept.Grips[2]));
        Assert.Equal(GripProgressionTests.Cost(Hand.Average.Weights, [.. grips]), moved.Before.Cost, Tolerance);
    }

    [Fact]
    public void What_can_not_be_moved_is_refused_with_the_reason()
    {
        Chord[] chord = [Chord.Parse("G")];
        var ukulele = Tuning.Find("Ukulele")!;
        Assert.Contains(
            "the first has 6 strings, the second 4",
            Assert.Throws<ArgumentException>(() => MovedChanges.Of(chord, Neck.Guitar, ukulele)).Message
        );
        Assert.Throws<ArgumentException>(() => MovedChanges.Of(Array.Empty<Chord>(), Neck.Guitar, Tuning.Standard));
        Assert.Throws<ArgumentException>(() => MovedChanges.Of(Array.Empty<ChordGrip>(), Tuning.Standard));
        var elsewhere = chord[0].Grips(new(Tuning.Find("Drop D")!))[0];
        Assert.Contains(
            "more than one neck",
            Assert
                .Throws<ArgumentException>(() =>
                    MovedChanges.Of([chord[0].Grips(Neck.Guitar)[0], elsewhere], Tuning.Standard)
                )
                .Message
        );
    }

    private static string Text(ChordGrip grip) =>
        string.Join(' ', Frets(grip).Reverse().Select(static fret => fret?.ToString() ?? "x"));

    private static IEnumerable<int?> Frets(ChordGrip grip) => grip.Grip.Strings.Select(static each => each.Fret);

    /// <summary>By pitch classes alone: all sounding strings give tones of the chord, none that is required is missing, the bass is right.</summary>
    private static bool Sounds(MovedChanges moved, MovedGrip each)
    {
        var chord = each.Chord;
        var sounds = each.Before!.Grip.Positions.Select(moved.To.MidiNumberAt).Order().ToList();
        var tones = chord.Tones.Select(static tone => tone.PitchClass).ToHashSet();
        var isForeign = !tones.Contains(chord.Bass.PitchClass) && !moved.Limits.AnyBass;
        var upper = isForeign ? sounds.Skip(1) : sounds;
        var optional = GripLimits.CommonlyOptional(chord.Formula);
        var required = chord.Formula.Where(degree => !optional.Contains(degree));
        return (moved.Limits.AnyBass || sounds[0] % 12 == chord.Bass.PitchClass)
            && upper.All(sound => tones.Contains(sound % 12))
            && required.All(degree => upper.Any(sound => sound % 12 == chord.Root.Add(degree).PitchClass));
    }

    private static double Least(MovedChanges moved, ChordGrip[][] choices, params ChordGrip[] chosen) =>
        chosen.Length == choices.Length
            ? GripProgressionTests.Cost(moved.Hand.Weights, chosen)
            : choices[chosen.Length].Min(grip => Least(moved, choices, [.. chosen, grip]));
}
