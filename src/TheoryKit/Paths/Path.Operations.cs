using Fractions;
using TheoryKit.Fingering.Hands;
using TheoryKit.Fingering.Lines;
using TheoryKit.Fingering.Words;
using TheoryKit.Paths.Timing;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Progressions;
using TheoryKit.Tunings.Necks;
using TheoryKit.Values;

namespace TheoryKit.Paths;

public sealed partial class Path
{
    /// <summary>The same notes under other beats, changes or time, whatever is given.</summary>
    /// <exception cref="ArgumentException">As for the constructor.</exception>
    public Path With(IEnumerable<PathNote>? notes = null, Changes? changes = null, Fraction? beats = null) =>
        changes is not null && changes.Time != Time
            ? throw new ArgumentException(
                $"The path is in {Time}, these changes are in {changes.Time}.",
                nameof(changes)
            )
            : new(Neck, notes ?? this.notes, Time, changes ?? Changes, beats ?? (notes is null ? Beats : null));

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

    /// <summary>The path so many times; at least once. The time is linear in the notes that come of it.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Less, or the path would have more than <see cref="MaxNotes"/> notes or
    /// <see cref="MaxBeats"/> beats.</exception>
    /// <exception cref="InvalidOperationException">It ends within a bar, and its changes would have to begin again there.</exception>
    public Path Repeat(int times)
    {
        var most = Math.Min(
            MaxNotes / Math.Max(1, notes.Length),
            Beats > Fraction.Zero ? (int)(MaxBeats / Beats).ToDecimal() : MaxNotes
        );
        Check.Range(times, 1, Math.Max(1, most));
        if (times == 1 || Beats == Fraction.Zero)
        {
            return this;
        }

        if (Changes is not null && !EndsWithChanges && !IsWholeBars)
        {
            throw new InvalidOperationException(
                $"The changes would have to begin again after {Beats} beats, within a bar of {Time}; fill it up with {nameof(ToWholeBars)}."
            );
        }

        return new(
            Neck,
            Enumerable
                .Range(0, times)
                .SelectMany(round =>
                    notes.Select(note => round == 0 ? note : note with { Start = note.Start + (round * Beats) })
                ),
            Time,
            Changes is null || EndsWithChanges
                ? Changes
                : new(Enumerable.Range(0, times).SelectMany(_ => BarsOf(this)), Time, Changes.Key),
            times * Beats
        );
    }

    /// <summary>Whether the changes come round just where the path ends.</summary>
    private bool EndsWithChanges => Changes is not null && (Beats % Changes.Beats).Reduce() == Fraction.Zero;

    /// <summary>
    /// The path an interval higher or lower on the same strings, with its changes: every fret moves as far, that of a trill's other note
    /// too, and bends stay as wide. A natural harmonic goes to the nearest node of its string that sounds the interval. Fingers stay where no
    /// string becomes open or stops being so, and are left out elsewhere.
    /// </summary>
    /// <remarks>Every technique stays. A lick that is moved looks for other places and says what is lost.</remarks>
    /// <exception cref="ArgumentException">A note would leave the neck, a bent one become an open string, or a natural harmonic has no node
    /// for it; the message says which.</exception>
    public Path Transpose(Interval interval)
    {
        var moved = notes.Select(note =>
        {
            if (note.Has(Technique.NaturalHarmonic))
            {
                return Node(note, interval);
            }

            var fret = note.Position.Fret + interval.Semitones;
            var open = Neck.OpenFret(note.Position.String);
            if (fret < open || fret > Neck.Frets)
            {
                throw new ArgumentException(
                    $"{note}: {interval} away it would be at fret {fret}, which string {note.Position.String} of {Neck} has not.",
                    nameof(interval)
                );
            }

            var trill = note.TrillFret + interval.Semitones;
            if (note.Has(Technique.Trill) && (trill < open || trill > Neck.Frets))
            {
                throw new ArgumentException(
                    $"{note}: {interval} away its trill would be with fret {trill}, which string {note.Position.String} of {Neck} has not.",
                    nameof(interval)
                );
            }

            if (fret == open && note.Techniques.Any(static technique => technique.IsBent))
            {
                throw new ArgumentException(
                    $"{note}: {interval} away it would be an open string, which no finger could bend.",
                    nameof(interval)
                );
            }

            var position = new Position(note.Position.String, fret);
            var (wasOpen, isOpen) = (IsOpen(note.Position), IsOpen(position));
            return note with
            {
                Position = position,
                Pitch = note.Pitch + interval,
                TrillFret = trill,
                Finger = wasOpen == isOpen ? note.Finger : null,
                Place = wasOpen == isOpen && note.Place + interval.Semitones is >= 1 and var place ? place : null,
            };
        });
        return new(Neck, moved, Time, Changes?.Transpose(interval), Beats);
    }

    private PathNote Node(PathNote note, Interval interval)
    {
        if (interval.Semitones == 0)
        {
            return note with { Pitch = note.Pitch + interval };
        }

        var open = Neck.OpenFret(note.Position.String);
        var sound = PathChecks.NodeAbove(note.Position.Fret - open)!.Value.Semitones + interval.Semitones;
        var nodes = Enumerable
            .Range(open, Neck.Frets - open + 1)
            .Where(fret =>
                PathChecks.NodeAbove(fret - open) is { } above
                && above.Semitones == sound
                && (
                    !note.Has(Technique.Trill)
                    || (note.TrillFret + fret - note.Position.Fret is var trill && trill >= open && trill <= Neck.Frets)
                )
            )
            .OrderBy(fret => Math.Abs(fret - note.Position.Fret - interval.Semitones))
            .ToList();
        if (nodes.Count == 0)
        {
            throw new ArgumentException(
                $"{note}: string {note.Position.String} has no node that sounds the natural harmonic {interval} away.",
                nameof(interval)
            );
        }

        var position = new Position(note.Position.String, nodes[0]);
        return note with
        {
            Position = position,
            Pitch =
                position == note.Position ? note.Pitch
                : nodes[0] - note.Position.Fret == interval.Semitones ? note.Pitch + interval
                : Pitch.FromMidi(Neck.MidiNumberAt(position)),
            TrillFret = note.TrillFret + position.Fret - note.Position.Fret,
            Place = null,
        };
    }

    /// <summary>
    /// The notes from the last to the first, each as long as it was. Hammer-ons become pull-offs and the other way round, slides lead back,
    /// slides in become slides out. A note that was a release is struck, pre-bent where a bend was left; bends stay those of their notes.
    /// </summary>
    /// <remarks>Only notes that follow each other on a string at once are joined; where there was a gap, the mark is left out.</remarks>
    public Path Reverse() => Reversed(null).Path;

    internal (Path Path, IReadOnlyList<PathNote> Notes) Reversed(TechniqueFit.Tell? tell)
    {
        var numbers = new Dictionary<PathNote, int>(ReferenceEqualityComparer.Instance);
        for (var index = 0; index < notes.Length; index++)
        {
            numbers[notes[index]] = index;
        }

        var before = TechniqueFit.Before(this);
        var kept = new List<Technique>[notes.Length];
        for (var index = 0; index < notes.Length; index++)
        {
            kept[index] = [];
            foreach (var technique in notes[index].Techniques)
            {
                if (!technique.IsJoined)
                {
                    kept[index].Add(Backwards(technique));
                }
                else if (technique == Technique.Release)
                {
                    tell?.Invoke(
                        index,
                        new TechniqueLoss.Unreleased(ReleaseLack.ComesFirst, IsPreBent: notes[index].Bend > 0)
                    );
                    if (notes[index].Bend > 0 && !notes[index].Techniques.Any(static each => each.IsBent))
                    {
                        kept[index].Add(Technique.PreBend);
                    }
                }
                else if (before[index] is null)
                {
                    tell?.Invoke(index, new TechniqueLoss.Unjoined(technique, JoinLack.NoNote));
                }
            }
        }

        for (var index = 0; index < notes.Length; index++)
        {
            if (before[index] is { } first)
            {
                var joined = notes[index]
                    .Techniques.Where(static technique => technique.IsJoined && technique != Technique.Release)
                    .Select(Backwards);
                kept[numbers[first]].AddRange(joined);
            }
        }

        IReadOnlyList<PathNote> moved =
        [
            .. notes.Select(
                (note, index) => note with { Start = Beats - note.End, Techniques = [.. kept[index].Distinct()] }
            ),
        ];
        return (With(moved, beats: Beats), moved);
    }

    private static Technique Backwards(Technique technique) =>
        technique == Technique.HammerOn ? Technique.PullOff
        : technique == Technique.PullOff ? Technique.HammerOn
        : technique == Technique.SlideInFromBelow ? Technique.SlideOutDown
        : technique == Technique.SlideOutDown ? Technique.SlideInFromBelow
        : technique == Technique.SlideInFromAbove ? Technique.SlideOutUp
        : technique == Technique.SlideOutUp ? Technique.SlideInFromAbove
        : technique;

    /// <summary>The path later by so many beats, with a rest before it.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative, or the path would last more than <see cref="MaxBeats"/> beats.</exception>
    public Path Delay(Fraction beats) =>
        Check.Beats(beats, Fraction.Zero, MaxBeats - Beats) == Fraction.Zero
            ? this
            : With(notes.Select(note => note with { Start = note.Start + beats }), beats: Beats + beats);

    /// <summary>
    /// The same notes one after the other in another rhythm, which is repeated as often as needed; notes that start together stay together.
    /// Accents of the rhythm replace those of the notes. After a rest a note that was joined to the one before is struck, a release pre-bent where
    /// a bend was left.
    /// </summary>
    public Path InRhythm(Rhythm rhythm) => InRhythm(rhythm, null).Path;

    internal (Path Path, IReadOnlyList<PathNote> Notes) InRhythm(Rhythm rhythm, TechniqueFit.Tell? tell)
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

        IReadOnlyList<PathNote> fitted = TechniqueFit.Fit(this, Neck, moved, tell);
        return (With(fitted, beats: beats), fitted);
    }

    /// <summary>
    /// The same pitches on some strings only, placed anew with the least effort; for paths of one note at a time. Joined notes stay on one string
    /// where one of these has them all, bent notes are fretted, harmonics go to a node that sounds the same; techniques that the place does not
    /// allow are left out. A lick that is moved says which.
    /// </summary>
    /// <exception cref="ArgumentException">The path sounds notes together, or a note can't be played there; the message says which and
    /// why.</exception>
    public Path OnStrings(IReadOnlySet<int> strings, Hand? hand = null)
    {
        ArgumentNullException.ThrowIfNull(strings);
        var wanted = WantedNote.Of(this);
        var places = wanted.ConvertAll(each => each.PlacesAtPitch(Neck, strings.Contains));
        if (places.FindIndex(static each => each.Count == 0) is >= 0 and var missing)
        {
            var note = notes[missing];
            throw new ArgumentException(
                strings.Count == 0
                    ? "A path is played on one string or more; none is given."
                    : $"{note}: {note.Pitch} lies on none of the strings {string.Join(", ", strings.Order())} so that it could be played like that.",
                nameof(strings)
            );
        }

        return Played(wanted, places, hand, $"on strings {string.Join(", ", strings.Order())}");
    }

    /// <summary>
    /// The same pitches with strings, frets and fingers chosen anew for the least effort; for paths of one note at a time. For techniques see
    /// <see cref="OnStrings"/>.
    /// </summary>
    /// <exception cref="ArgumentException">The path sounds notes together, or a note can't be played; the message says which and why.</exception>
    public Path Placed(Hand? hand = null)
    {
        var wanted = WantedNote.Of(this);
        return Played(
            wanted,
            wanted.ConvertAll(each => each.PlacesAtPitch(Neck, static _ => true)),
            hand,
            "on this neck"
        );
    }

    /// <summary>The same positions with the fingers of least effort; for paths of one note at a time.</summary>
    /// <exception cref="ArgumentException">The path sounds notes together, or the hand can't play it; the message says where and why.</exception>
    public Path Fingered(Hand? hand = null) =>
        Played(
            WantedNote.Of(this),
            [.. notes.Select(static note => new List<Position> { note.Position })],
            hand,
            "at these positions"
        );

    private Path Played(List<WantedNote> wanted, List<List<Position>> places, Hand? hand, string where)
    {
        for (var index = 1; index < notes.Length; index++)
        {
            if (notes[index].Start == notes[index - 1].Start)
            {
                throw new ArgumentException(
                    $"{notes[index]}: it sounds together with {notes[index - 1]}; a line has one note at a time.",
                    nameof(hand)
                );
            }
        }

        var stays = WantedPlaces.StayOnString(wanted, places);
        var answer = LineSearch.Find(
            new()
            {
                Neck = Neck,
                Hand = hand ?? Hand.Average,
                Notes = [.. places.Select((each, index) => LineNote.Of(each) with { StaysOnString = stays[index] })],
            }
        );
        if (answer.Count == 0)
        {
            throw new ArgumentException($"This path can't be played {where}: {answer.Reason?.InWords()}", nameof(hand));
        }

        var moved = notes
            .Select(
                (note, index) =>
                    note with
                    {
                        Position = answer[0][index].Position,
                        Pitch =
                            Neck.MidiNumberAt(answer[0][index].Position) is var sound && sound == note.Pitch.MidiNumber
                                ? note.Pitch
                                : Pitch.FromMidi(sound),
                        TrillFret = answer[0][index].Position.Fret + wanted[index].Trill,
                        Finger = answer[0][index].Finger,
                        Place = answer[0][index].Place,
                    }
            )
            .ToList();
        return With(TechniqueFit.Fit(this, Neck, moved), beats: Beats);
    }

    private bool IsOpen(Position position) => position.Fret == Neck.OpenFret(position.String);

    private Changes? ChangesThen(Path next)
    {
        if (Beats == Fraction.Zero || (Changes == next.Changes && (Changes is null || EndsWithChanges)))
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
    }

    private static IEnumerable<Bar> BarsOf(Path path) =>
        Enumerable
            .Range(0, path.BarCount)
            .Select(bar => path.Changes?.Bars[bar % path.Changes.Bars.Count] ?? Bar.Of(path.Time.Beats, [null]));
}
