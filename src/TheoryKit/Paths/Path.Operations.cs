using Fractions;
using TheoryKit.Fingering;
using TheoryKit.Theory;
using TheoryKit.Tunings;

namespace TheoryKit.Paths;

public sealed partial class Path
{
    /// <summary>The same notes under other beats, changes or time, whatever is given.</summary>
    /// <exception cref="ArgumentException">As for the constructor.</exception>
    public Path With(IEnumerable<PathNote>? notes = null, Changes? changes = null, Fraction? beats = null) =>
        new(Neck, notes ?? this.notes, Time, changes ?? Changes, beats ?? (notes is null ? Beats : null));

    /// <summary>The same notes over no changes.</summary>
    public Path WithoutChanges() => new(Neck, notes, Time, null, Beats);

    /// <summary>The same path with rests up to the end of its last bar.</summary>
    public Path ToWholeBars() => With(beats: (Fraction)(BarCount * Time.Beats));

    /// <summary>This path and then another. Changes go on with each; where only one has some, the other is over no chord.</summary>
    /// <exception cref="ArgumentException">The necks or the times differ, or this path does not end with a bar while the changes would
    /// have to change there.</exception>
    public Path Then(Path next)
    {
        ArgumentNullException.ThrowIfNull(next);
        if (next.Neck != Neck || next.Time != Time)
        {
            throw new ArgumentException(
                $"A path on {Neck} in {Time} can't go on with one on {next.Neck} in {next.Time}.",
                nameof(next)
            );
        }

        return new(
            Neck,
            [.. notes, .. next.notes.Select(note => note with { Start = note.Start + Beats })],
            Time,
            ChangesThen(next),
            Beats + next.Beats
        );
    }

    /// <summary>The path so many times; at least once.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Less.</exception>
    public Path Repeat(int times)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(times, 1);
        var path = this;
        for (var count = 1; count < times; count++)
        {
            path = path.Then(this);
        }

        return path;
    }

    /// <summary>
    /// The path an interval higher or lower on the same strings, with its changes: every fret moves as far. Fingers stay where no
    /// string becomes open or stops being so, and are left out elsewhere.
    /// </summary>
    /// <exception cref="ArgumentException">A note would leave the neck; the message says which.</exception>
    public Path Transpose(Interval interval)
    {
        var moved = notes.Select(note =>
        {
            var fret = note.Position.Fret + interval.Semitones;
            if (fret < Neck.OpenFret(note.Position.String) || fret > Neck.Frets)
            {
                throw new ArgumentException(
                    $"{note}: {interval} away it would be at fret {fret}, which string {note.Position.String} of {Neck} has not.",
                    nameof(interval)
                );
            }

            var position = new Position(note.Position.String, fret);
            var (wasOpen, isOpen) = (IsOpen(note.Position), IsOpen(position));
            return note with
            {
                Position = position,
                Pitch = note.Pitch + interval,
                Finger = wasOpen == isOpen ? note.Finger : null,
                Place = wasOpen == isOpen && note.Place + interval.Semitones is >= 1 and var place ? place : null,
            };
        });
        return new(Neck, moved, Time, Changes?.Transpose(interval), Beats);
    }

    /// <summary>The notes from the last to the first, each as long as it was. Techniques that join a note to the one before are left out.</summary>
    public Path Reverse() =>
        With(
            notes.Select(note =>
                note with
                {
                    Start = Beats - note.End,
                    Techniques = [.. note.Techniques.Where(static technique => !technique.IsJoined)],
                }
            ),
            beats: Beats
        );

    /// <summary>The path later by so many beats, with a rest before it.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative.</exception>
    public Path Delay(Fraction beats) =>
        beats < Fraction.Zero
            ? throw new ArgumentOutOfRangeException(nameof(beats), $"{beats}", "A path is delayed by 0 beats or more.")
            : With(notes.Select(note => note with { Start = note.Start + beats }), beats: Beats + beats);

    /// <summary>
    /// The same notes one after the other in another rhythm, which is repeated as often as needed; notes that start together stay together.
    /// Accents of the rhythm replace those of the notes.
    /// </summary>
    public Path InRhythm(Rhythm rhythm)
    {
        ArgumentNullException.ThrowIfNull(rhythm);
        var groups = notes.GroupBy(static note => note.Start).ToList();
        var events = rhythm.Strokes().GetEnumerator();
        var moved = new List<PathNote>();
        var beats = Fraction.Zero;
        foreach (var group in groups)
        {
            events.MoveNext();
            var stroke = events.Current;
            foreach (var note in group)
            {
                var techniques = note.Techniques.Where(static technique => technique != Technique.Accent);
                moved.Add(
                    note with
                    {
                        Start = stroke.Start,
                        Length = stroke.Length,
                        Techniques = stroke.IsAccented ? [.. techniques, Technique.Accent] : [.. techniques],
                    }
                );
            }

            beats = stroke.Start + stroke.Length;
        }

        return With(moved, beats: beats);
    }

    /// <summary>
    /// The same pitches on some strings only, placed anew with the least effort; for paths of one note at a time.
    /// </summary>
    /// <exception cref="ArgumentException">The path sounds notes together, or a note can't be played there; the message says which and
    /// why.</exception>
    public Path OnStrings(IReadOnlySet<int> strings, Hand? hand = null)
    {
        ArgumentNullException.ThrowIfNull(strings);
        foreach (var note in notes)
        {
            if (!Neck.PositionsOf(note.Pitch).Any(position => strings.Contains(position.String)))
            {
                throw new ArgumentException(
                    strings.Count == 0
                        ? "A path is played on one string or more; none is given."
                        : $"{note}: {note.Pitch} lies on none of the strings {string.Join(", ", strings.Order())}.",
                    nameof(strings)
                );
            }
        }

        return Played(
            note => [.. Neck.PositionsOf(note.Pitch).Where(position => strings.Contains(position.String))],
            hand,
            $"on strings {string.Join(", ", strings.Order())}"
        );
    }

    /// <summary>The same pitches with strings, frets and fingers chosen anew for the least effort; for paths of one note at a time.</summary>
    /// <exception cref="ArgumentException">The path sounds notes together, or a note can't be played; the message says which and why.</exception>
    public Path Placed(Hand? hand = null) => Played(note => Neck.PositionsOf(note.Pitch), hand, "on this neck");

    /// <summary>The same positions with the fingers of least effort; for paths of one note at a time.</summary>
    /// <exception cref="ArgumentException">The path sounds notes together, or the hand can't play it; the message says where and why.</exception>
    public Path Fingered(Hand? hand = null) => Played(static note => [note.Position], hand, "at these positions");

    private Path Played(Func<PathNote, IReadOnlyList<Position>> positions, Hand? hand, string where)
    {
        for (var index = 1; index < notes.Length; index++)
        {
            if (notes[index].Start == notes[index - 1].Start)
            {
                throw new ArgumentException(
                    $"{notes[index]}: it sounds together with {notes[index - 1]}; a line has one note at a time."
                );
            }
        }

        var answer = Lines.Find(
            new()
            {
                Neck = Neck,
                Hand = hand ?? Hand.Average,
                Notes = [.. notes.Select(note => LineNote.Of(positions(note)))],
            }
        );
        return answer.Count == 0
            ? throw new ArgumentException($"This path can't be played {where}: {answer.Reason}")
            : With(
                notes.Zip(
                    answer[0],
                    static (note, found) =>
                        note with
                        {
                            Position = found.Position,
                            Finger = found.Finger,
                            Place = found.Place,
                        }
                ),
                beats: Beats
            );
    }

    private bool IsOpen(Position position) => position.Fret == Neck.OpenFret(position.String);

    private Changes? ChangesThen(Path next)
    {
        if (
            Beats == Fraction.Zero
            || (Changes == next.Changes && (Changes is null || (Beats % Changes.Beats).Reduce() == Fraction.Zero))
        )
        {
            return next.Changes;
        }

        if (next.Beats == Fraction.Zero)
        {
            return Changes;
        }

        if (!IsWholeBars)
        {
            throw new ArgumentException(
                $"The changes would have to change after {Beats} beats, within a bar of {Time}; fill it up with {nameof(ToWholeBars)}.",
                nameof(next)
            );
        }

        return new(BarsOf(this).Concat(BarsOf(next)), Time, Changes?.Key ?? next.Changes?.Key);

        static IEnumerable<Bar> BarsOf(Path path) =>
            Enumerable
                .Range(0, path.BarCount)
                .Select(bar => path.Changes?.Bars[bar % path.Changes.Bars.Count] ?? Bar.Of(path.Time.Beats, [null]));
    }
}
