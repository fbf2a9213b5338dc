using Fractions;
using TheoryKit.Fingering.Hands;
using TheoryKit.Fingering.Zones;
using TheoryKit.Licks.Moves;
using TheoryKit.Licks.Words;
using TheoryKit.Paths;
using TheoryKit.Tests.Paths;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Progressions;
using TheoryKit.Theory.Scales;
using TheoryKit.Tunings.Necks;
using Path = TheoryKit.Paths.Path;

namespace TheoryKit.Licks.Tests.Moves;

public class MovedLickTests
{
    private const int Few = 400;

    [Fact]
    public void An_interval_up_and_down_again_is_the_same_where_nothing_was_lost() =>
        Gen.Select(MovingGens.Any, Gen.Int[-14, 14])
            .Sample(
                static (lick, semitones) =>
                {
                    var interval = Pitch.Parse("C4").To(Pitch.FromMidi(60 + semitones));
                    var there = lick.Transpose(interval);
                    Sane(there);
                    if (there.Remarks.Count == 0)
                    {
                        var back = there.Lick.Transpose(-interval);
                        if (back.Remarks.Count == 0 && !HasHarmonic(lick) && !HasClick(lick))
                        {
                            Assert.Equal(lick, back.Lick);
                        }

                        Assert.Equal(Heard(lick.Path), Heard(back.Lick.Path));
                    }
                },
                iter: Few
            );

    [Fact]
    public void What_is_moved_by_an_interval_sounds_that_far_away_unless_told() =>
        Gen.Select(MovingGens.Any, Gen.Int[-30, 30])
            .Sample(
                static (lick, semitones) =>
                {
                    var moved = lick.Transpose(Pitch.Parse("C4").To(Pitch.FromMidi(60 + semitones)));
                    Sane(moved);
                    foreach (var tone in moved.Tones.Where(static tone => !tone.Before.Has(Technique.Dead)))
                    {
                        var off = tone.SoundedAfter.MidiNumber - tone.SoundedBefore.MidiNumber - semitones;
                        Assert.True(off == 0 || IsTold(moved, tone), $"{tone}; {string.Join(" / ", moved.Remarks)}");
                        if (off == 0 && tone.After.Bend == tone.Before.Bend)
                        {
                            Assert.Equal(tone.FunctionBefore, tone.FunctionAfter);
                        }
                    }
                },
                iter: Few
            );

    [Fact]
    public void Through_all_twelve_keys_and_home_it_is_the_same()
    {
        var lick = Line("4/4, C major: Cmaj7", "3:5 2:5h6 2:8b10 2:8r 1:7 1:8p7 2:8 3:9/7");
        var at = lick;
        foreach (var key in "Db D Eb E F Gb G Ab A Bb B C".Split(' '))
        {
            var moved = at.InKey(Key.Parse($"{key} major"));
            Assert.Empty(moved.Remarks);
            Assert.Equal(
                lick.Path.Notes.Select(lick.Path.FunctionOf),
                moved.Lick.Path.Notes.Select(moved.Lick.Path.FunctionOf)
            );
            at = moved.Lick;
            var direct = lick.InKey(Key.Parse($"{key} major"));
            Assert.Empty(direct.Remarks);
            Assert.Equal(lick, direct.Lick.InKey(Key.Parse("C major")).Lick);
        }

        Assert.Equal(
            Heard(lick.Path).Select(static note => note.Midi % 12),
            Heard(at.Path).Select(static note => note.Midi % 12)
        );
    }

    [Fact]
    public void Through_five_zones_it_is_heard_the_same_and_stays_inside()
    {
        var lick = Line("4/4, C major: Cmaj7", "3:5 2:5 2:8 1:7 1:8 2:8 3:9 3:7");
        var zones = Chord.Parse("Cmaj7").Zones(Neck.Guitar).Take(5).ToList();
        Assert.Equal(5, zones.Count);
        foreach (var zone in zones)
        {
            var moved = lick.InZone(zone);
            Sane(moved);
            Assert.All(
                moved.Lick.Path.Notes,
                note => Assert.True(zone.Window.Contains(note.Position.Fret), $"{zone}: {note}")
            );
            Assert.Equal(
                Heard(lick.Path).Select(static note => note.Midi % 12),
                Heard(moved.Lick.Path).Select(static note => note.Midi % 12)
            );
            Assert.Equal(moved.Lick, moved.Lick.InZone(zone).Lick);
        }
    }

    [Fact]
    public void To_another_zone_and_back_is_the_same_where_nothing_was_lost() =>
        Gen.Select(MovingGens.Line, Gen.Int[0, 4], Gen.Int[0, 4])
            .Sample(
                static (lick, first, second) =>
                {
                    var zones = AllZones.Value;
                    var start = lick.InZone(zones[first]);
                    Sane(start);
                    var there = start.Lick.InZone(zones[second]);
                    Sane(there);
                    if (there.Remarks.Count == 0 && start.Remarks.Count == 0 && !HasClick(lick))
                    {
                        Assert.Equal(start.Lick, there.Lick.InZone(zones[first]).Lick);
                    }
                },
                iter: Few
            );

    [Fact]
    public void Note_outside_the_zone_is_told_and_no_other() =>
        Gen.Select(MovingGens.Any, Gen.Int[0, 4])
            .Sample(
                static (lick, number) =>
                {
                    var zone = AllZones.Value[number];
                    var moved = lick.InZone(zone);
                    Sane(moved);
                    var outside = moved.Tones.Where(tone => !zone.Window.Contains(tone.After.Position.Fret)).ToList();
                    Assert.Equal(
                        outside.Select(static tone => (tone.Bar, tone.Beat, tone.SoundedBefore)).Order(),
                        moved
                            .Remarks.Where(static remark => remark.Loss is MoveLoss.OutsideZone)
                            .Select(static remark => (remark.Bar!.Value, remark.Beat!.Value, remark.Pitch!.Value))
                            .Order()
                    );
                },
                iter: Few
            );

    [Fact]
    public void On_some_strings_all_that_is_not_there_is_told() =>
        Gen.Select(MovingGens.Line, Gen.Int[1, 62])
            .Sample(
                static (lick, mask) =>
                {
                    var strings = Enumerable.Range(1, 6).Where(number => (mask & (1 << (number - 1))) != 0).ToHashSet();
                    if (strings.Count == 0)
                    {
                        return;
                    }

                    var moved = lick.OnStrings(strings);
                    Sane(moved);
                    foreach (var tone in moved.Tones)
                    {
                        Assert.True(strings.Contains(tone.After.Position.String) || IsTold(moved, tone));
                        Assert.True(
                            tone.SoundedBefore.MidiNumber == tone.SoundedAfter.MidiNumber
                                || tone.Before.Has(Technique.Dead)
                                || IsTold(moved, tone)
                        );
                    }
                },
                iter: Few
            );

    [Theory]
    [InlineData("D2 A2 D3 G3 A3 D4")]
    [InlineData("E2 A2 D3 G3 C4 F4")]
    [InlineData("B1 E2 A2 D3 G3 B3 E4")]
    [InlineData("E1 A1 D2 G2, 864 mm, 20 frets")]
    public void On_another_neck_every_pitch_stays_or_is_told(string neck)
    {
        var to = Neck.Parse(neck);
        var (notes, left) = (0, 0);
        MovingGens.Any.Sample(
            lick =>
            {
                var moved = lick.On(to);
                Sane(moved);

                Interlocked.Add(ref notes, lick.Path.Notes.Count);
                Interlocked.Add(ref left, lick.Path.Notes.Count - moved.Tones.Count);
                var octave = moved.Remarks.Any(static remark => remark.Loss is MoveLoss.OctaveOfAll);
                foreach (var tone in moved.Tones.Where(static tone => !tone.Before.Has(Technique.Dead)))
                {
                    var off = tone.SoundedAfter.MidiNumber - tone.SoundedBefore.MidiNumber;
                    Assert.True(off == 0 || (octave && off % 12 == 0) || IsTold(moved, tone), $"{tone}");
                }

                // Where all of it lies on the new neck, home again it is heard the same.
                if (moved.Remarks.Count == 0)
                {
                    Assert.Equal(Heard(lick.Path), Heard(moved.Lick.On(lick.Path.Neck).Lick.Path));
                }
            },
            iter: Few / 2
        );

        // Chords of four notes in close position need more frets than a hand has on a long neck in fourths; more strings hold them all.
        Assert.InRange(left, 0, to.StringCount == 4 ? notes / 20 : notes / 100);
    }

    [Fact]
    public void A_string_more_leaves_all_where_it_was_counted_from_the_thin_side()
    {
        var lick = Line("4/4: Cmaj7", "3:5 2:5h6 2:8b10 2:8r 1:7 1:8p7 2:8 3:9/7");
        var moved = lick.On(Neck.Parse("B1 E2 A2 D3 G3 B3 E4"));
        Assert.Empty(moved.Remarks);
        Assert.Equal(
            lick.Path.Notes.Select(static note => note.Position),
            moved.Lick.Path.Notes.Select(static note => note.Position)
        );
        Assert.Equal(lick, moved.Lick.On(Neck.Guitar).Lick);
    }

    [Fact]
    public void A_hand_gives_fingers_to_every_fretted_note() =>
        MovingGens.Line.Sample(
            static lick =>
            {
                var moved = lick.For(Hand.Large);
                Sane(moved);
                if (!moved.Remarks.Any(static remark => remark.Loss is MoveLoss.FingersOfHand))
                {
                    Assert.All(
                        moved.Lick.Path.Notes,
                        static note => Assert.Equal(note.Position.Fret == 0, note.Finger is null)
                    );
                }
            },
            iter: Few / 2
        );

    [Fact]
    public void Later_and_earlier_again_is_the_same() =>
        Gen.Select(MovingGens.Any, PathGens.Length)
            .Sample(
                static (lick, beats) =>
                {
                    var moved = lick.Displaced(beats);
                    Sane(moved);
                    Assert.Empty(moved.Remarks);
                    Assert.Equal(lick, moved.Lick.Displaced(-beats).Lick);
                },
                iter: Few
            );

    [Fact]
    public void Earlier_than_its_beginning_is_refused_with_words()
    {
        var lick = Line("4/4: C", "3:5 2:5");
        Assert.Contains(
            "0 beats in",
            Assert.Throws<ArgumentOutOfRangeException>(() => lick.Displaced(-1)).Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Reversed_twice_it_is_heard_the_same() =>
        MovingGens.Any.Sample(
            static lick =>
            {
                var twice = lick.Reversed().Lick.Reversed();
                Sane(twice);
                Assert.Equal(Heard(lick.Path), Heard(twice.Lick.Path));
                if (!lick.Path.Notes.Any(static note => note.Has(Technique.Release)))
                {
                    Assert.Equal(lick, twice.Lick);
                }
            },
            iter: Few
        );

    [Fact]
    public void In_another_rhythm_nothing_is_lost_where_it_has_no_rests() =>
        Gen.Select(MovingGens.Any, PathGens.Rhythm)
            .Sample(
                static (lick, rhythm) =>
                {
                    var moved = lick.InRhythm(rhythm);
                    Sane(moved);
                    if (!rhythm.ToString().Contains('r', StringComparison.Ordinal))
                    {
                        Assert.Empty(moved.Remarks);
                    }

                    Assert.Equal(
                        lick.Path.Notes.Select(static note => note.Position),
                        moved.Tones.Select(static tone => tone.After.Position)
                    );
                },
                iter: Few
            );

    public static TheoryData<string, string, string, MoveLoss?> Kept { get; } =
        new()
        {
            // A hammer-on between frets of one string stays; where the string has no room for it, it is struck.
            { "2:5 2:8h", "3:9 3:12h", "OnStrings 3", null },
            { "1:0 1:1h", "2:5 2:6h", "OnStrings 2", null },
            // A pull-off to an open string that is fretted now.
            { "1:3 1:0p", "2:8 2:5p", "OnStrings 2", null },
            // From an open string every fret is in reach, from a fretted one not: 1:17 and 1:7 are 190 mm apart.
            { "1:10 1:0p", "1:17 1:7", "Transpose P5", Of(new TechniqueLoss.OutOfReach(Technique.PullOff, 17, 7)) },
            // Vibrato needs a finger.
            { "1:1~", "1:0", "Transpose -m2", Of(new TechniqueLoss.NoFret(Technique.Vibrato, FretLack.Open)) },
            // A slide to what is an open string now.
            {
                "1:3 1:1/",
                "1:2 1:0",
                "Transpose -m2",
                Of(new TechniqueLoss.Unjoined(Technique.Slide, JoinLack.OpenString))
            },
            // A bend keeps its amount where it can, on another string where it has to.
            {
                "2:1b2",
                "3:4b2",
                "Transpose -m2",
                new MoveLoss.OffItsString(2, StringLack.Finger, Pitch.Parse("B3"), new(3, 4))
            },
            // A trill moves along.
            { "2:5tr7", "2:7tr9", "Transpose M2", null },
            // A natural harmonic has no node a step higher: artificial, an octave below what sounds (E3 at 6:12, so F#3, fretted at F#2).
            { "6:12<>", "6:2[]", "Transpose M2", new MoveLoss.Harmonic(Pitch.Parse("F#3"), IsArtificial: true) },
            { "6:12<>", "6:5<>", "Transpose P8", null },
            // A release follows its bend.
            { "2:8b2 2:8r", "3:12b2 3:12r", "OnStrings 3", null },
            // Clicks keep their string, on the open string too.
            { "3:5 4:0x 3:7", "3:7 4:0x 3:9", "Transpose M2", null },
            { "3:5 4:5x 3:7", "3:7 4:7x 3:9", "Transpose M2", null },
        };

    private static MoveLoss.OfTechnique Of(TechniqueLoss loss) => new(loss);

    [Theory]
    [MemberData(nameof(Kept), DisableDiscoveryEnumeration = true)]
    public void Techniques_are_kept_or_told(string before, string after, string move, MoveLoss? told)
    {
        var lick = Line("4/4: C", before);
        var moved = move.Split(' ') is ["OnStrings", var number]
            ? lick.OnStrings(new HashSet<int> { int.Parse(number) })
            : lick.Transpose(Interval.Parse(move.Split(' ')[1]));
        Sane(moved);
        Assert.Equal(after, Written(moved.Lick.Path));
        Assert.Equal(told is null ? [] : [told], moved.Remarks.Select(static remark => remark.Loss));
    }

    [Fact]
    public void Chords_keep_their_notes_apart() =>
        Gen.Select(MovingGens.Any, Gen.Int[0, 4])
            .Sample(
                static (lick, zone) =>
                {
                    // Not even a path could have two notes on one string; what is checked is that all of them are there.
                    var moved = lick.InZone(AllZones.Value[zone]);
                    Sane(moved);
                    Assert.Equal(
                        moved.Tones.Select(static tone => tone.Before.Start),
                        moved.Lick.Path.Notes.Select(static note => note.Start)
                    );
                },
                iter: Few / 2
            );

    [Fact]
    public void Chords_of_six_notes_leave_out_two_on_four_strings_and_keep_every_tone_and_the_highest_part()
    {
        var lick = Lick.Parse(
            """
            name: Six strings
            changes: G

            e|-3---|
            B|-0---|
            G|-0---|
            D|-0---|
            A|-2---|
            E|-3---|
               1
            """
        );
        var moved = lick.On(Neck.Parse("E1 A1 D2 G2, 864 mm, 20 frets"));
        Sane(moved);
        Assert.Equal(4, moved.Tones.Count);
        Assert.Contains(moved.Tones, static tone => tone.SoundedBefore == Pitch.Parse("G4"));

        // All three tones of G are still there.
        Assert.Equal(3, moved.Tones.Select(static tone => tone.SoundedAfter.PitchClass).Distinct().Count());
        AssertInReach(moved);
    }

    [Fact]
    public void Chords_stay_in_reach_of_the_hand() =>
        Gen.Select(MovingGens.Any, Gen.Int[-12, 12], Gen.Int[0, 4])
            .Sample(
                static (lick, semitones, zone) =>
                {
                    AssertInReach(lick.Transpose(Pitch.Parse("C4").To(Pitch.FromMidi(60 + semitones))));
                    AssertInReach(lick.InZone(AllZones.Value[zone]));
                    AssertInReach(lick.On(Neck.Parse("D2 A2 D3 G3 A3 D4")));
                },
                iter: Few / 4
            );

    // No hand of the library's spans seven frets from the third one on; the chords of these tests span three.
    private static void AssertInReach(MovedLick moved)
    {
        foreach (var group in moved.Lick.Path.Notes.GroupBy(static note => note.Start))
        {
            var frets = group
                .Select(static note => note.Position.Fret)
                .Where(static fret => fret > 0)
                .DefaultIfEmpty()
                .ToList();
            Assert.True(frets.Max() - frets.Min() < 7, $"{moved}");
        }
    }

    [Fact]
    public void Notes_are_left_out_hardly_ever_where_there_are_strings_enough()
    {
        var (notes, left) = (0, 0);
        Gen.Select(MovingGens.Any, Gen.Int[0, 4])
            .Sample(
                (lick, zone) =>
                {
                    var moved = lick.InZone(AllZones.Value[zone]);
                    Interlocked.Add(ref notes, lick.Path.Notes.Count);
                    Interlocked.Add(ref left, lick.Path.Notes.Count - moved.Tones.Count);
                },
                iter: Few
            );
        Assert.InRange(left, 0, notes / 100);
    }

    [Fact]
    public void A_moved_lick_says_the_move_and_a_sentence_for_each_loss()
    {
        var moved = Line("4/4: C", "1:3 1:1/ 1:5").Transpose(Interval.Parse("-m2"));
        Assert.Equal(
            [
                "by hand, by -m2",
                "Bar 1, beat 1 and 1/2: F4 loses the slide: one of the notes is an open string now; instead the note struck.",
            ],
            moved.InWords()
        );
        Assert.Equal(
            ["by hand, by M2", "Nothing is lost."],
            Line("4/4: C", "1:3").Transpose(Interval.Parse("M2")).InWords()
        );
    }

    [Fact]
    public void To_its_own_changes_it_is_the_same() =>
        MovingGens.Any.Sample(
            static lick =>
            {
                var moved = lick.Refit(lick.Path.Changes!);
                Sane(moved);
                Assert.Equal(lick, moved.Lick);
                Assert.Empty(moved.Remarks);
            },
            iter: Few
        );

    [Fact]
    public void To_a_chord_of_its_kind_it_is_transposed() =>
        Gen.Select(
                MovingGens.Of(Neck.Guitar, false, Gen.Const(Changes.Parse("4/4: Cmaj7"))),
                Gen.Int[0, 11].Select(static root => "C Db D Eb E F F# G Ab A Bb B".Split(' ')[root])
            )
            .Sample(
                static (lick, root) =>
                {
                    var moved = lick.Refit(Chord.Parse($"{root}maj7"));
                    Sane(moved);
                    foreach (var tone in moved.Tones.Where(static tone => !tone.Before.Has(Technique.Dead)))
                    {
                        Assert.True(
                            (
                                tone.SoundedAfter.MidiNumber
                                - tone.SoundedBefore.MidiNumber
                                - NoteName.Parse(root).PitchClass
                            ) % 12
                                == 0,
                            $"{tone}"
                        );
                    }
                },
                iter: Few
            );

    [Theory]
    // Third and seventh follow the chord, the rest stays.
    [InlineData("4/4: C7", "2:5 1:3 1:6 1:10", "4/4: Cm7", "Eb4 G4 Bb4 D5")]
    [InlineData("4/4: C7", "2:5 1:3 1:6 1:10", "4/4: Cmaj7", "E4 G4 B4 D5")]
    // A semitone below its target it stays one: D#4 to the 3, D4 to the b3.
    [InlineData("4/4: C7", "2:4 2:5", "4/4: Cm7", "D4 Eb4")]
    // A bend begins and ends with its function: from the 9 to the 3, over the minor chord from the 9 to the b3.
    [InlineData("4/4: C7", "2:3b2", "4/4: Cm7", "Eb4")]
    // Dm7 goes a step down to C, so G7 goes a fifth down rather than a fourth up: D4 D4 becomes C4 G3, not C4 G4.
    [InlineData(
        "4/4: Dm7 | G7",
        "2:6 2:3 2:6 2:3 2:6 2:3 2:6 2:3 2:3 2:6",
        "4/4: Cm7",
        "Eb4 C4 Eb4 C4 Eb4 C4 Eb4 C4 G3 Bb3"
    )]
    public void Function_by_function(string changes, string notes, string to, string expected)
    {
        var moved = Line(changes, notes).Refit(Changes.Parse(to));
        Sane(moved);
        Assert.Equal(expected, string.Join(' ', moved.Tones.Select(static tone => tone.SoundedAfter)));
        Assert.Empty(moved.Exceptions);
        Assert.All(moved.Tones, static tone => Assert.NotNull(tone.Why));
    }

    [Theory]
    // No chord with #5 has a natural 13 beside it: it is the #5 then.
    [InlineData("C7", "A", "E7alt", "C", false)]
    [InlineData("C7", "A", "G7b9#5", "Eb", false)]
    [InlineData("C7", "A", "E7#9b13", "C", true)]
    // The diminished scale of whole tones and semitones in turn: 9, 11, b13.
    [InlineData("A7", "B", "Bdim7", "C#", true)]
    [InlineData("A7", "F#", "Bdim7", "G", true)]
    [InlineData("Am7", "D", "Bdim7", "E", true)]
    [InlineData("Am7", "B", "Bm7b5", "C#", true)]
    [InlineData("Am7", "B", "C7", "D", true)]
    [InlineData("Am7", "F#", "C7", "A", true)]
    // The natural 4 stays by usage, and is told where it clashes.
    [InlineData("Am7", "D", "C7", "F", false)]
    [InlineData("Am7", "D", "Cmaj7#5", "F#", true)]
    [InlineData("Am7", "B", "C7#5", "D", true)]
    [InlineData("Am7", "B", "C7#5#9", "D#", true)]
    [InlineData("Am7", "D", "Cm7", "F", true)]
    public void Colour_tones_follow_the_usual_scale(string chord, string note, string to, string expected, bool isWhole)
    {
        var tone = Assert.Single(
            Alone(Chord.Parse(chord), NoteName.Parse(note).PitchClass).Refit(Chord.Parse(to)).Tones
        );
        Assert.True(NoteName.Parse(expected).PitchClass == tone.SoundedAfter.PitchClass, $"{tone}");
        Assert.True(isWhole != tone.IsException, $"{tone}");
    }

    [Theory]
    // In C major a semitone above E: a clash, and told. In F major a whole tone above D: a ninth.
    [InlineData("Am7", "B", "4/4, C major: Em7", "F", false)]
    [InlineData("Am7", "B", "4/4, F major: Dm7", "E", true)]
    [InlineData("Am7", "B", "4/4: Em7", "F#", true)]
    public void In_a_key_colour_tones_are_those_of_the_key(
        string chord,
        string note,
        string to,
        string expected,
        bool isWhole
    )
    {
        var tone = Assert.Single(
            Alone(Chord.Parse(chord), NoteName.Parse(note).PitchClass).Refit(Changes.Parse(to)).Tones
        );
        Assert.True(NoteName.Parse(expected).PitchClass == tone.SoundedAfter.PitchClass, $"{tone}");
        Assert.True(isWhole != tone.IsException, $"{tone}");
    }

    [Fact]
    public void Colour_tones_stay_colour_or_are_told()
    {
        var from = new[] { "C7", "Cmaj7", "Cm7", "C7#11", "C7b9", "Cm6", "Cm7b5", "Cdim7", "C7alt", "C", "C7sus4" };
        foreach (var chord in from.Select(static symbol => Chord.Parse(symbol)))
        {
            foreach (var above in Enumerable.Range(0, 12))
            {
                var lick = Alone(chord, above);
                foreach (var quality in ChordQuality.Known)
                {
                    var tone = Assert.Single(lick.Refit(new Chord(chord.Root, quality.Formula)).Tones);
                    var (before, after) = (
                        ToneRoles.Over(tone.FunctionBefore!.Value, chord.Formula),
                        ToneRoles.Over(tone.FunctionAfter!.Value, quality.Formula)
                    );
                    Assert.True(
                        after != ToneRole.Other || tone.IsException || before == ToneRole.Other,
                        $"{chord} to {quality}: {tone}"
                    );
                    if (tone.Why is RefitReason.Colour)
                    {
                        Assert.True(after != ToneRole.Other, $"{chord} to {quality}: {tone}");
                    }

                    // No major third over a chord that has a minor one.
                    var (minor, major) = (quality.Formula.At(3), quality.Formula.At(4));
                    Assert.True(
                        minor?.Number != 3
                            || major is not null
                            || tone.IsException
                            || (tone.SoundedAfter.PitchClass + 12 - chord.Root.PitchClass) % 12 != 4,
                        $"{chord} to {quality}: {tone}"
                    );
                }
            }
        }
    }

    [Theory]
    [InlineData("4:7 4:8h", true)]
    [InlineData("4:8 4:7p", false)]
    public void A_note_that_its_run_takes_out_of_the_zone_says_so(string notes, bool isFirst)
    {
        // A3 lies at fret 7 of string 4 and Bb3 at fret 3 of string 3, but no string has both within frets 3 to 7.
        var zone = Chord.Parse("Gm9").Zones(Neck.Guitar).First(static zone => zone.Window is { First: 3, Last: 7 });
        var moved = Line("4/4: Gm7", notes).InZone(zone);
        Sane(moved);
        var pitch = Pitch.Parse("Bb3");
        PlaceLack why = isFirst
            ? new PlaceLack.JoinedBy(Technique.HammerOn, pitch)
            : new PlaceLack.JoinedTo(Technique.PullOff, pitch);
        Assert.Contains(moved.Remarks, remark => remark.Loss is MoveLoss.OutsideZone outside && outside.Why == why);
    }

    /// <summary>One note for a bar.</summary>
    private static Lick Alone(Chord chord, int pitchClass)
    {
        var sound = 60 + pitchClass;
        var note = new PathNote
        {
            Position = Neck.Guitar.PositionsOf(Pitch.FromMidi(sound))[0],
            Pitch = chord.Spell(sound),
            Length = 4,
        };
        var changes = Changes.Parse($"4/4: {chord}");
        return new() { Name = "by hand", Path = new Path(Neck.Guitar, [note], changes.Time, changes) };
    }

    [Fact]
    public void Without_a_key_it_says_what_to_do()
    {
        var lick = Line("4/4: C", "3:5");
        Assert.Contains(
            "WithKey",
            Assert.Throws<InvalidOperationException>(() => lick.InKey(Key.Parse("D major"))).Message,
            StringComparison.Ordinal
        );
        Assert.Contains(
            "move it there first",
            Assert
                .Throws<ArgumentException>(() => lick.On(Neck.Guitar.WithCapo(2)).Lick.InZone(AllZones.Value[0]))
                .Message,
            StringComparison.Ordinal
        );
        Assert.Throws<ArgumentException>(() => lick.OnStrings(new HashSet<int>()));
        Assert.Throws<ArgumentException>(() => lick.OnStrings(new HashSet<int> { 7 }));
        Assert.Throws<ArgumentOutOfRangeException>(() => lick.InOctave(11));
    }

    internal static readonly Lazy<IReadOnlyList<Zone>> AllZones = new(static () =>
        [.. Chord.Parse("Am7").Zones(Neck.Guitar).Take(5)]
    );

    /// <summary>What holds for every moved lick.</summary>
    internal static void Sane(MovedLick moved)
    {
        // A note that is left out is told of.
        var before = moved.Tones.Select(static tone => tone.Before).ToHashSet(ReferenceEqualityComparer.Instance);
        Assert.Equal(moved.Tones.Count, before.Count);
        Assert.Equal(moved.From.Path.Notes.Where(before.Contains), moved.Tones.Select(static tone => tone.Before));
        Assert.Equal(
            moved.From.Path.Notes.Count - before.Count,
            moved.Remarks.Count(static remark => remark.Loss is MoveLoss.LeftOut)
        );
        Assert.Equal(
            moved.Lick.Path.Notes.OrderBy(static note => note.ToString(), StringComparer.Ordinal),
            moved
                .Tones.Select(static tone => tone.After)
                .OrderBy(static note => note.ToString(), StringComparer.Ordinal)
        );

        // A technique that is gone or new is told of, note by note.
        foreach (var tone in moved.Tones)
        {
            var (had, has) = (
                tone.Before.Techniques.Where(static each => each != Technique.Accent),
                tone.After.Techniques.Where(static each => each != Technique.Accent)
            );
            if (moved.Move is not LickMove.Backwards && !had.SequenceEqual(has))
            {
                Assert.True(
                    IsTold(moved, tone),
                    $"{tone.Before} ({string.Join(", ", had)}) is {tone.After} ({string.Join(", ", has)}); {string.Join(" / ", moved.Remarks)}"
                );
            }
        }
    }

    internal static bool IsTold(MovedLick moved, MovedTone tone) =>
        moved.Remarks.Any(remark =>
            remark.Bar == tone.Bar
            && remark.Beat == tone.Beat
            && remark.Pitch == (tone.Before.IsDead ? null : tone.SoundedBefore)
        );

    internal static IEnumerable<(int Midi, int Bend, Fraction Start, Fraction Length)> Heard(Path path) =>
        path
            .Notes.Where(static note => !note.Has(Technique.Dead))
            .Select(note => (path.SoundingPitch(note).MidiNumber, note.Bend % 100, note.Start, note.Length))
            .Order();

    // A click at the end of the neck has no fret to go to and stays; it sounds the same wherever it is.
    private static bool HasClick(Lick lick) => lick.Path.Notes.Any(static note => note.Has(Technique.Dead));

    private static bool HasHarmonic(Lick lick) =>
        lick.Path.Notes.Any(static note => note.Has(Technique.NaturalHarmonic));

    /// <summary>
    /// Eighths, "string:fret" and then: h, p, / to join it to the one before, r for a release, bN for a bend by N semitones, ~, x, &lt;&gt;, [], trN;
    /// "5h6" is two notes.
    /// </summary>
    internal static Lick Line(string changes, string notes)
    {
        var over = Changes.Parse(changes);
        var at = Fraction.Zero;
        var made = new List<PathNote>();
        foreach (var token in notes.Split(' '))
        {
            var (number, rest) = (int.Parse(token[..1]), token[2..]);
            var pieces = System.Text.RegularExpressions.Regex.Matches(rest, @"^(\d+)(?:([hp/])(\d+))?(.*)$")[0].Groups;
            Add(int.Parse(pieces[1].Value), pieces[2].Success ? "" : pieces[4].Value);
            if (pieces[2].Success)
            {
                Add(int.Parse(pieces[3].Value), pieces[2].Value);
            }

            void Add(int fret, string how)
            {
                var bend = how.StartsWith('b')
                    ? int.Parse(how[1..]) is var amount && amount > 4
                        ? 100 * (amount - fret)
                        : 100 * amount
                    : 0;
                Technique? technique = how switch
                {
                    "" => null,
                    "h" => Technique.HammerOn,
                    "p" => Technique.PullOff,
                    "/" => Technique.Slide,
                    "r" => Technique.Release,
                    "~" => Technique.Vibrato,
                    "x" => Technique.Dead,
                    "<>" => Technique.NaturalHarmonic,
                    "[]" => Technique.ArtificialHarmonic,
                    _ when how.StartsWith("tr", StringComparison.Ordinal) => Technique.Trill,
                    _ => Technique.Bend,
                };
                var sound = Neck.Guitar.MidiNumberAt(new(number, fret));
                made.Add(
                    new()
                    {
                        Position = new(number, fret),
                        Pitch = over.At((at % over.Beats).Reduce()).Chord?.Spell(sound) ?? Pitch.FromMidi(sound),
                        Start = at,
                        Length = new(1, 2),
                        Techniques = technique is null ? [] : [technique],
                        Bend = bend,
                        TrillFret = technique == Technique.Trill ? int.Parse(how[2..]) : null,
                    }
                );
                at += new Fraction(1, 2);
            }
        }

        return new() { Name = "by hand", Path = new Path(Neck.Guitar, made, over.Time, over).ToWholeBars() };
    }

    /// <summary>The notes as <see cref="Line"/> takes them, each for itself.</summary>
    internal static string Written(Path path) =>
        string.Join(
            ' ',
            path.Notes.Select(static note =>
                $"{note.Position}"
                + string.Concat(
                    note.Techniques.Select(technique =>
                        technique == Technique.HammerOn ? "h"
                        : technique == Technique.PullOff ? "p"
                        : technique == Technique.Slide ? "/"
                        : technique == Technique.Release ? "r"
                        : technique == Technique.Bend ? $"b{note.Bend / 100}"
                        : technique == Technique.Trill ? $"tr{note.TrillFret}"
                        : technique.Sign
                    )
                )
            )
        );
}
