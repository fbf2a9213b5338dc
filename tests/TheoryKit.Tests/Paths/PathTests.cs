using Fractions;
using TheoryKit.Fingering.Hands;
using TheoryKit.Fingering.Lines;
using TheoryKit.Paths;
using TheoryKit.Paths.Timing;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Progressions;
using TheoryKit.Tunings.Necks;
using Path = TheoryKit.Paths.Path;

namespace TheoryKit.Tests.Paths;

public class PathTests
{
    private const int Few = 300;

    [Fact]
    public void Notes_stand_in_order_and_bars_hold_each_once() =>
        PathGens.Any.Sample(
            static path =>
            {
                Assert.All(
                    path.Notes.Zip(path.Notes.Skip(1)),
                    static pair =>
                        Assert.True(
                            (pair.First.Start, -pair.First.Position.String).CompareTo(
                                (pair.Second.Start, -pair.Second.Position.String)
                            ) < 0
                        )
                );
                Assert.Equal(path.Notes, Enumerable.Range(0, path.BarCount).SelectMany(path.InBar));
            },
            iter: Few
        );

    [Fact]
    public void The_order_in_which_notes_are_given_does_not_matter() =>
        PathGens.Any.Sample(
            static path =>
            {
                var again = new Path(path.Neck, path.Notes.Reverse(), path.Time, path.Changes, path.Beats);
                Assert.Equal(path, again);
                Assert.Equal(path.GetHashCode(), again.GetHashCode());
                Assert.NotEqual(path, path.Delay(Fraction.One));
            },
            iter: Few
        );

    [Fact]
    public void Bars_are_as_many_as_the_beats_begin() =>
        PathGens.Any.Sample(
            static path =>
            {
                var bars = 0;
                while (bars * path.Time.Beats < path.Beats)
                {
                    bars++;
                }

                Assert.Equal(bars, path.BarCount);
                Assert.Equal(path.Beats == bars * path.Time.Beats, path.IsWholeBars);
                Assert.True(path.ToWholeBars().IsWholeBars);
                Assert.Equal(path.BarCount, path.ToWholeBars().BarCount);
            },
            iter: Few
        );

    [Fact]
    public void Reversed_twice_is_the_same_but_for_marks_that_join_nothing() =>
        PathGens.Any.Sample(
            static path =>
            {
                // Whether a note ends on the string where this one begins, by looking at all of them.
                bool Joins(PathNote note) =>
                    path.Notes.Any(other => other.Position.String == note.Position.String && other.End == note.Start);
                var expected = path.With(
                    path.Notes.Select(note =>
                        note with
                        {
                            Techniques = InOrder(
                                note.Techniques.Where(technique => !technique.IsJoined || Joins(note))
                            ),
                        }
                    ),
                    beats: path.Beats
                );
                var twice = path.Reverse().Reverse();
                Assert.Equal(
                    expected,
                    twice.With(
                        twice.Notes.Select(static note => note with { Techniques = InOrder(note.Techniques) }),
                        beats: twice.Beats
                    )
                );
                Assert.Equal(path.Beats, path.Reverse().Beats);
                Assert.Equal(
                    path.Notes.Select(note => (path.Beats - note.End).Reduce()).Order(),
                    path.Reverse().Notes.Select(static note => note.Start)
                );
            },
            iter: Few
        );

    private static IReadOnlyList<Technique> InOrder(IEnumerable<Technique> techniques) =>
        [.. Technique.Known.Where(techniques.Contains)];

    [Fact]
    public void One_path_and_then_another_adds_beats_exactly() =>
        Gen.Select(PathGens.Any, PathGens.Any)
            .Sample(
                static (one, other) =>
                {
                    if (one.Neck != other.Neck || one.Time != other.Time)
                    {
                        Assert.Throws<ArgumentException>(() => one.Then(other));
                        return;
                    }

                    one = one.ToWholeBars();
                    var both = one.Then(other);
                    Assert.Equal((one.Beats + other.Beats).Reduce(), both.Beats);
                    Assert.Equal(one.Notes, both.Notes.Take(one.Notes.Count));
                    Assert.Equal(
                        other.Notes.Select(note => note with { Start = note.Start + one.Beats }),
                        both.Notes.Skip(one.Notes.Count)
                    );
                    // Every note keeps its chord, and so what it does.
                    Assert.Equal(
                        one.Notes.Select(one.FunctionOf).Concat(other.Notes.Select(other.FunctionOf)),
                        both.Notes.Select(both.FunctionOf)
                    );
                },
                iter: 2 * Few
            );

    [Fact]
    public void Repeated_it_is_as_many_times_as_long_with_the_chords_of_each_time() =>
        Gen.Select(PathGens.Any, Gen.Int[1, 4])
            .Sample(
                static (path, times) =>
                {
                    path = path.ToWholeBars();
                    var repeated = path.Repeat(times);
                    Assert.Equal((path.Beats * times).Reduce(), repeated.Beats);
                    Assert.Equal(
                        Enumerable
                            .Repeat(path.Notes.Select(path.FunctionOf).ToList(), times)
                            .SelectMany(static each => each),
                        repeated.Notes.Select(repeated.FunctionOf)
                    );
                },
                iter: Few
            );

    [Fact]
    public void Within_a_bar_other_changes_cannot_begin()
    {
        var bars = Changes.Parse("4/4: C | G7");
        var path = Note("2:1", "C4", 0, 1, bars);
        Assert.Throws<ArgumentException>(() => path.Then(path));
        Assert.Equal(2, path.WithoutChanges().Then(path.WithoutChanges()).Beats);
        Assert.Throws<ArgumentOutOfRangeException>(() => path.Repeat(0));
        Assert.Throws<ArgumentOutOfRangeException>(() => path.Repeat(int.MaxValue));
        Assert.Throws<ArgumentOutOfRangeException>(() => path.Delay(1_000_000_000));
    }

    [Fact]
    public void Up_and_down_again_is_the_same() =>
        Gen.Select(PathGens.Any, Gens.UsualInterval)
            .Sample(
                static (path, interval) =>
                {
                    if (!path.Notes.All(note => Goes(path.Neck, note, interval.Semitones)))
                    {
                        Assert.Throws<ArgumentException>(() => path.Transpose(interval));
                        return;
                    }

                    var moved = path.Transpose(interval);
                    var back = moved.Transpose(-interval);
                    if (!path.Notes.Any(static note => note.Has(Technique.NaturalHarmonic)))
                    {
                        Assert.Equal(path, back);
                    }

                    // A harmonic may come back to another node of its string that sounds the same.
                    Assert.Equal(Sounding(path), Sounding(back));
                    Assert.Equal(path.Notes.Select(Kept), back.Notes.Select(Kept));
                    Assert.Equal(path.Notes.Select(path.FunctionOf), moved.Notes.Select(moved.FunctionOf));

                    static (int, string, int, Fraction, bool) Kept(PathNote note) =>
                        (
                            note.Position.String,
                            string.Join(' ', note.Techniques),
                            note.Bend,
                            note.Start,
                            note.TrillFret is null
                        );
                },
                iter: 2 * Few
            );

    // Whether a note has its fret so many semitones away, a bent one a finger, a trill its other fret, a harmonic its node.
    private static bool Goes(Neck neck, PathNote note, int semitones)
    {
        var (number, fret) = (note.Position.String, note.Position.Fret);
        var open = neck.OpenFret(number);
        if (note.Has(Technique.NaturalHarmonic))
        {
            var sound = Partial(fret - open)!.Value + semitones;
            return semitones == 0
                || Enumerable
                    .Range(open, neck.Frets - open + 1)
                    .Any(other => Partial(other - open) == sound && IsTrilledBeside(other));
        }

        return fret + semitones >= open
            && fret + semitones <= neck.Frets
            && (note.Bend == 0 || fret + semitones > open)
            && IsTrilledBeside(fret + semitones);

        bool IsTrilledBeside(int there) =>
            !note.Has(Technique.Trill)
            || (note.TrillFret - fret + there >= open && note.TrillFret - fret + there <= neck.Frets);

        // In semitones: partials 2 to 6 of a string, where a player touches it.
        static int? Partial(int frets) =>
            frets switch
            {
                12 => 12,
                7 or 19 => 19,
                5 or 24 => 24,
                4 or 9 or 16 or 28 => 28,
                3 => 31,
                _ => null,
            };
    }

    [Fact]
    public void A_finger_is_left_out_where_a_string_becomes_open()
    {
        var path = Note("2:1", "C4", 0, 1);
        path = path.With(path.Notes.Select(static note => note with { Finger = Finger.Index, Place = 1 }));
        var down = path.Transpose(Interval.Parse("-m2"));
        Assert.Null(down.Notes[0].Finger);
        Assert.Null(down.Notes[0].Place);
        var up = path.Transpose(Interval.Parse("M2"));
        Assert.Equal((Finger.Index, 3), (up.Notes[0].Finger!.Value, up.Notes[0].Place!.Value));
    }

    [Fact]
    public void Later_by_some_beats_every_note_is() =>
        Gen.Select(PathGens.Any, PathGens.Length)
            .Sample(
                static (path, beats) =>
                {
                    var later = path.Delay(beats);
                    Assert.Equal((path.Beats + beats).Reduce(), later.Beats);
                    Assert.Equal(
                        path.Notes.Select(note => (note.Start + beats).Reduce()),
                        later.Notes.Select(static note => note.Start)
                    );
                },
                iter: Few
            );

    [Fact]
    public void Another_rhythm_keeps_order_pitches_and_what_starts_together() =>
        Gen.Select(PathGens.Any, PathGens.Rhythm)
            .Sample(
                static (path, rhythm) =>
                {
                    var moved = path.InRhythm(rhythm);
                    Assert.Equal(
                        path.Notes.Select(static note => (note.Pitch, note.Position)),
                        moved.Notes.Select(static note => (note.Pitch, note.Position))
                    );
                    var groups = path.Notes.GroupBy(static note => note.Start).ToList();
                    var strokes = rhythm.Strokes().Take(groups.Count).ToList();
                    Assert.Equal(
                        groups.Zip(strokes).SelectMany(static pair => pair.First.Select(_ => pair.Second)),
                        moved.Notes.Select(static note => new Stroke(
                            note.Start,
                            note.Length,
                            note.Has(Technique.Accent)
                        ))
                    );
                    Assert.Equal(moved.Notes.Select(static note => note.End).DefaultIfEmpty().Max(), moved.Beats);
                },
                iter: Few
            );

    [Fact]
    public void What_a_note_does_is_as_far_above_the_root_as_it_sounds() =>
        PathGens.Any.Sample(
            static path =>
            {
                foreach (var note in path.Notes)
                {
                    // The chord counted out bar by bar.
                    Chord? expected = null;
                    if (path.Changes is { } changes)
                    {
                        var (bar, beat) = (0, note.Start);
                        while (beat >= path.Time.Beats)
                        {
                            (bar, beat) = (bar + 1, beat - path.Time.Beats);
                        }

                        expected = changes.Bars[bar % changes.Bars.Count].Chords.Last(span => span.Start <= beat).Chord;
                    }

                    Assert.Equal(expected, path.ChordAt(note.Start));
                    var isClick = note.Has(Technique.Dead);
                    Assert.Equal(expected is null || isClick, path.FunctionOf(note) is null);
                    if (expected is not null && !isClick)
                    {
                        Assert.Equal(
                            (path.SoundingPitch(note).PitchClass - expected.Root.PitchClass + 12) % 12,
                            path.FunctionOf(note)!.Value.PitchClass
                        );
                    }
                }
            },
            iter: Few
        );

    [Fact]
    public void A_tone_of_the_chord_is_named_as_the_chord_names_it()
    {
        var bars = Changes.Parse("4/4: C13#11");
        Assert.Equal("13", Function(Note("1:5", "A4", 0, 1, bars)));
        Assert.Equal("#11", Function(Note("1:2", "F#4", 0, 1, bars)));

        static string Function(Path path) => $"{path.FunctionOf(path.Notes[0])}";
    }

    [Fact]
    public void On_some_strings_the_pitches_stay() =>
        PathGens.Line.Sample(
            static path =>
            {
                var strings = new HashSet<int> { 1, 2, 3 };
                if (
                    path.Notes.Any(note =>
                        !Enumerable
                            .Range(1, 3)
                            .SelectMany(number => Enumerable.Range(0, 23).Select(fret => new Position(number, fret)))
                            .Any(position => CanLie(path, note, position))
                    )
                )
                {
                    Assert.Throws<ArgumentException>(() => path.OnStrings(strings));
                    return;
                }

                var moved = path.OnStrings(strings);
                Assert.All(moved.Notes, note => Assert.Contains(note.Position.String, strings));

                // A click keeps the pitch of its fret, even one at a node.
                Assert.Equal(
                    path.Notes.Select(note => Pitched(path, note)),
                    moved.Notes.Select(note => Pitched(moved, note))
                );
                static (int, Fraction, Fraction) Pitched(Path path, PathNote note) =>
                    (
                        (note.Has(Technique.Dead) ? note.Pitch : path.SoundingPitch(note)).MidiNumber,
                        note.Start,
                        note.Length
                    );
                Assert.Equal(path.Beats, moved.Beats);
            },
            iter: Few
        );

    [Fact]
    public void Placed_it_lies_where_the_solver_of_lines_puts_it() =>
        PathGens.Line.Sample(
            static path =>
            {
                path = path.With(path.Notes.Select(static note => Plain(note)), beats: path.Beats);
                var answer = LineSearch.Place(path.Neck, path.Notes.Select(static note => note.Pitch), Hand.Large);
                Assert.NotEmpty(answer);
                var placed = path.Placed(Hand.Large);
                Assert.Equal(
                    answer[0].Select(static note => (note.Position, note.Finger, (int?)note.Place)),
                    placed.Notes.Select(static note => (note.Position, note.Finger, note.Place))
                );
                Assert.Equal(Sounding(path), Sounding(placed));
                var fingered = path.Fingered();
                Assert.Equal(
                    path.Notes.Select(static note => note.Position),
                    fingered.Notes.Select(static note => note.Position)
                );
            },
            iter: Few
        );

    [Fact]
    public void Chords_are_not_placed_as_lines()
    {
        var grip = new Path(Neck.Guitar, [Tone("2:1", "C4", 0, 1), Tone("3:0", "G3", 0, 1)], TimeSignature.Common);
        Assert.Contains(
            "sounds together",
            Assert.Throws<ArgumentException>(() => grip.Placed()).Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void What_cannot_be_is_refused_with_its_reason()
    {
        Refused("not on the neck", () => Note("7:1", "C4", 0, 1));
        Refused("this position sounds", () => Note("2:1", "D4", 0, 1));
        Refused("sounds until beat 2", () => new(Neck.Guitar, [Tone("2:1", "C4", 0, 2), Tone("2:3", "D4", 1, 1)]));
        Refused("its last note ends at beat 2", () => new(Neck.Guitar, [Tone("2:1", "C4", 0, 2)], beats: 1));
        Refused("its changes in 3/4", () => new(Neck.Guitar, [], TimeSignature.Common, Changes.Parse("3/4: C")));
        Assert.Throws<ArgumentOutOfRangeException>(() => Tone("2:1", "C4", -1, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Tone("2:1", "C4", 0, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => Note("2:1", "C4", 0, 1).ChordAt(-1));

        static void Refused(string why, Func<Path> make) =>
            Assert.Contains(why, Assert.Throws<ArgumentException>(make).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_respelled_pitch_has_its_place()
    {
        var path = Note("2:2", "Db4", 0, 1);
        Assert.Equal("Db4", $"{path.Notes[0].Pitch}");
        Assert.Equal("Eb4", $"{path.Transpose(Interval.Parse("M2")).Notes[0].Pitch}");
    }

    [Fact]
    public void A_path_without_notes_is_one()
    {
        var path = new Path(Neck.Guitar, []);
        Assert.Equal((0, 0), (path.BarCount, path.Notes.Count));
        Assert.Equal(path, path.Reverse());
        Assert.Equal(path, path.Then(path));
        Assert.Equal(path, path.InRhythm(Rhythm.Parse("1")));
        Assert.Equal(path, path.Placed());
    }

    private static IEnumerable<(int Midi, Fraction Start, Fraction Length)> Sounding(Path path) =>
        path.Notes.Select(note => (path.SoundingPitch(note).MidiNumber, note.Start, note.Length));

    private static PathNote Plain(PathNote note) => note with { Techniques = [], Bend = 0, TrillFret = null };

    // Whether the note sounds the same there, said once more in the plainest way.
    private static bool CanLie(Path path, PathNote note, Position position)
    {
        var neck = path.Neck;
        if (!neck.Has(position))
        {
            return false;
        }

        var other = note.TrillFret - note.Position.Fret + position.Fret;
        if (other < neck.OpenFret(position.String) || other > neck.Frets)
        {
            return false;
        }

        if (note.Has(Technique.NaturalHarmonic) && !note.Has(Technique.Dead))
        {
            return (position.Fret - neck.OpenFret(position.String))
                    is 3
                        or 4
                        or 5
                        or 7
                        or 9
                        or 12
                        or 16
                        or 19
                        or 24
                        or 28
                && path.SoundingPitch(note).MidiNumber
                    == path.SoundingPitch(
                        note with
                        {
                            Position = position,
                            Pitch = Pitch.FromMidi(neck.MidiNumberAt(position)),
                        }
                    ).MidiNumber;
        }

        return neck.MidiNumberAt(position) == note.Pitch.MidiNumber
            && (note.Bend == 0 || position.Fret > neck.OpenFret(position.String));
    }

    private static Path Note(string position, string pitch, int start, int length, Changes? changes = null) =>
        new(Neck.Guitar, [Tone(position, pitch, start, length)], changes?.Time, changes);

    private static PathNote Tone(string position, string pitch, int start, int length) =>
        new()
        {
            Position = Position.Parse(position),
            Pitch = Pitch.Parse(pitch),
            Start = start,
            Length = length,
        };
}
