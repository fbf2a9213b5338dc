using TheoryKit.Fingering.Lines;
using TheoryKit.Fingering.Moving;
using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Tests.Fingering.Moving;

public class MovedLineTests
{
    private const double Tolerance = 1e-9;

    /// <summary>Up to five positions on a small neck, and the same strings turned by up to two semitones each.</summary>
    private static readonly Gen<MovedLine> Any = Gen.Select(
        FingeringGens.Neck(4, 5, 7, 9),
        Gen.Select(Gen.Int[1, 4], Gen.Int[0, 9]).Array[1, 5],
        MovedChangesTests.Turns,
        FingeringGens.UsualHand,
        (neck, places, turns, hand) =>
            MovedLine.Of(
                places.Select(place =>
                {
                    var open = neck.OpenFret(place.Item1);
                    return new Position(place.Item1, open + (place.Item2 % (neck.Frets - open + 1)));
                }),
                neck,
                MovedChangesTests.Turned(neck.Tuning, turns),
                hand
            )
    );

    [Fact]
    public void A_position_stays_when_the_same_string_and_fret_sound_the_same_pitch() =>
        Any.Sample(
            moved =>
            {
                foreach (var note in moved.Notes)
                {
                    Assert.Equal(moved.From.MidiNumberAt(note.Before), note.Pitch.MidiNumber);
                    Assert.Equal(moved.To.MidiNumberAt(note.Before) == note.Pitch.MidiNumber, note.Stays);
                    Assert.True(!note.Stays || note.Kept is null || note.Kept == note.Before);
                    foreach (var position in new[] { note.Easiest, note.Kept })
                    {
                        Assert.True(position is null || moved.To.MidiNumberAt(position.Value) == note.Pitch.MidiNumber);
                    }
                }
            },
            iter: 500
        );

    [Fact]
    public void Both_versions_are_the_best_of_all_choices_of_positions() =>
        Any.Sample(
            moved =>
            {
                var everywhere = moved.Notes.Select(note => moved.To.PositionsOf(note.Pitch)).ToArray();
                var keeping = moved
                    .Notes.Select((note, index) => note.Stays ? [note.Before] : everywhere[index])
                    .ToArray();
                Equal(Least(moved, everywhere), moved.Easiest, moved.Reason);
                Equal(Least(moved, keeping), moved.Kept, moved.ReasonKept);
            },
            iter: 200
        );

    [Fact]
    public void To_the_same_tuning_everything_stays() =>
        Any.Sample(
            moved =>
            {
                var same = MovedLine.Of(
                    moved.Notes.Select(static note => note.Before),
                    moved.From,
                    moved.From.Tuning,
                    moved.Hand
                );
                Assert.Equal(same.Notes.Count, same.Staying);
                Assert.Equal(same.Before, same.Kept);
                Assert.Equal(same.ReasonBefore, same.ReasonKept);
            },
            iter: 100
        );

    [Fact]
    public void In_drop_D_notes_on_string_6_lie_two_frets_higher_or_on_another_string()
    {
        Position[] line = [.. "6:3 6:5 5:2 5:3 5:5 6:0".Split(' ').Select(text => Position.Parse(text))];
        var moved = MovedLine.Of(line, Neck.Guitar, Tuning.Find("Drop D")!);
        Assert.Equal([false, false, true, true, true, false], moved.Notes.Select(static note => note.Stays));
        Assert.Equal(3, moved.Staying);
        Assert.Equal(Position.Parse("6:5"), moved.Notes[0].Kept);
        Assert.Equal(Position.Parse("6:2"), moved.Notes[5].Kept);
        var given = MovedLine.Of(moved.Before!, Neck.Guitar, Tuning.Find("Drop D")!);
        Assert.Equal(moved.Notes, given.Notes);
    }

    [Fact]
    public void A_note_below_the_new_tuning_is_named()
    {
        var moved = MovedLine.Of([new(1, 3), new(6, 0)], Neck.Guitar, Tuning.Standard.With(6, Pitch.Parse("F2")));
        Assert.Null(moved.Easiest);
        Assert.Equal(new NoLineReason.NowhereOnNeck(1, moved.To), moved.Reason);
        Assert.All(moved.Notes, static note => Assert.True(note.Easiest is null && note.Kept is null));
    }

    [Fact]
    public void What_can_not_be_moved_is_refused_with_the_reason()
    {
        Assert.Contains(
            "the first has 6 strings, the second 5",
            Assert
                .Throws<ArgumentException>(() => MovedLine.Of([new(1, 3)], Neck.Guitar, Tuning.Find("Banjo")!))
                .Message
        );
        Assert.Throws<ArgumentException>(() => MovedLine.Of(Array.Empty<Position>(), Neck.Guitar, Tuning.Standard));
        Assert.Contains(
            "Note 2 is at 7:1",
            Assert
                .Throws<ArgumentException>(() => MovedLine.Of([new(1, 3), new(7, 1)], Neck.Guitar, Tuning.Standard))
                .Message
        );
    }

    private static void Equal(double least, FingeredLine? line, NoLineReason? reason)
    {
        Assert.Equal(double.IsInfinity(least), line is null);
        Assert.Equal(line is null, reason is not null);
        if (line is not null)
        {
            Assert.Equal(least, line.Effort, Tolerance);
        }
    }

    private static double Least(MovedLine moved, IReadOnlyList<Position>[] choices, params Position[] chosen) =>
        chosen.Length < choices.Length
            ? choices[chosen.Length]
                .Select(position => Least(moved, choices, [.. chosen, position]))
                .DefaultIfEmpty(double.PositiveInfinity)
                .Min()
        : LineSearch.Finger(moved.To, chosen, moved.Hand) is [var best, ..] ? best.Effort
        : double.PositiveInfinity;
}
