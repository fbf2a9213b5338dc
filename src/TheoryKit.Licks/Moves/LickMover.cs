using Fractions;
using TheoryKit.Fingering.Hands;
using TheoryKit.Fingering.Zones;
using TheoryKit.Paths;
using TheoryKit.Paths.Timing;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Progressions;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Licks.Moves;

/// <summary>Moves a lick and keeps account of what is lost.</summary>
internal sealed class LickMover
{
    // As far apart as chords may move for a refitted lick to stay on its strings: a hand's breadth.
    private const int MostApart = 3;

    private readonly Lick lick;
    private readonly Path path;
    private readonly MoveAccount account;
    private readonly NotePlacing placing;

    public LickMover(Lick lick)
    {
        (this.lick, path) = (lick, lick.Path);
        account = new(path);
        placing = new(path, account);
    }

    public bool CanGoAlong(Interval interval) =>
        KeptStrings.Of(path.Neck, [.. WantedNote.Of(path).Select(each => each.Moved(interval))]) is not null;

    public MovedLick Along(Interval interval, Changes? changes, LickMove move)
    {
        var wanted = WantedNote.Of(path).ConvertAll(each => each.Moved(interval));
        return KeptOrPlaced(wanted, changes, move);
    }

    public MovedLick InZone(Zone zone)
    {
        var neck = zone.Neck;
        int Outside(Position position) =>
            Math.Max(0, Math.Max(zone.Window.First - position.Fret, position.Fret - zone.Window.Last));
        var (octaves, wanted) = placing.Octave(neck, each => each.Places(neck).Where(place => Outside(place) == 0));
        var hand = new HandOnNeck(neck, zone.Hand);
        Folded(octaves, OctaveLack.Zone);
        wanted = placing.OnNeck(neck, wanted, path.Changes);
        var placed = placing.Found(
            neck,
            zone.Hand,
            wanted,
            notes => new(neck, zone.Hand, notes) { Outside = Outside, Preferred = hand.Home(zone.Window) }
        );
        for (var index = 0; index < wanted.Count; index++)
        {
            if (!wanted[index].IsLeftOut && Outside(placed.Positions[index]) is > 0 and var frets)
            {
                var at = placed.Positions[index];
                account.Tell(
                    index,
                    new MoveLoss.OutsideZone(
                        zone.Window,
                        WhyOutside(index),
                        at,
                        frets,
                        IsOpen: at.Fret == neck.OpenFret(at.String)
                    )
                );
            }
        }

        return Made(neck, wanted, placed, path.Changes, new LickMove.ToZone(zone));

        PlaceLack WhyOutside(int index)
        {
            if (!wanted[index].Places(neck).Exists(place => Outside(place) == 0))
            {
                return new PlaceLack.NotThere();
            }

            bool IsBeside(int? other) =>
                other is { } at && placed.Positions[at].String == placed.Positions[index].String;
            var next = wanted.FindIndex(each => each.Before == index);
            return IsBeside(wanted[index].Before)
                    ? new PlaceLack.JoinedTo(How(wanted[index].Note), wanted[wanted[index].Before!.Value].Pitch)
                : next >= 0 && IsBeside(next) ? new PlaceLack.JoinedBy(How(wanted[next].Note), wanted[next].Pitch)
                : new PlaceLack.NotFree();
        }

        static Technique How(PathNote note) =>
            new[] { Technique.HammerOn, Technique.PullOff, Technique.Slide }.FirstOrDefault(
                note.Has,
                Technique.Release
            );
    }

    public MovedLick OnStrings(IReadOnlySet<int> strings, Hand? hand)
    {
        var wanted = placing.OnNeck(path.Neck, WantedNote.Of(path), path.Changes);

        // Clicks go to the nearest of the strings.
        wanted = wanted.ConvertAll(each =>
            each.IsDead && !each.IsHeld
                ? each with
                {
                    Note = each.Note with
                    {
                        Position = new(
                            strings.MinBy(number => (Math.Abs(number - each.Note.Position.String), number)),
                            each.Note.Position.Fret
                        ),
                    },
                }
                : each
        );
        var placed = placing.Found(
            path.Neck,
            hand ?? Hand.Average,
            wanted,
            notes =>
                new(path.Neck, hand ?? Hand.Average, notes)
                {
                    Outside = position => strings.Contains(position.String) ? 0 : Position.MaxFret,
                }
        );
        for (var index = 0; index < wanted.Count; index++)
        {
            if (!wanted[index].IsLeftOut && !strings.Contains(placed.Positions[index].String))
            {
                var isThere = wanted[index].Places(path.Neck).Exists(place => strings.Contains(place.String));
                account.Tell(
                    index,
                    new MoveLoss.OffStrings(
                        strings,
                        isThere ? new PlaceLack.NotFree() : new PlaceLack.NotThere(),
                        placed.Positions[index].String
                    )
                );
            }
        }

        return Made(path.Neck, wanted, placed, path.Changes, new LickMove.ToStrings(strings));
    }

    public MovedLick On(Neck neck, Hand? hand)
    {
        LickMove move = neck.Tuning == path.Neck.Tuning ? new LickMove.ToNeck(neck) : new LickMove.ToTuning(neck);
        var (octaves, wanted) = placing.Octave(neck, each => each.Places(neck));
        Folded(octaves, OctaveLack.Neck);
        wanted = placing.OnNeck(neck, wanted, path.Changes);
        bool Stays(int index) =>
            octaves == 0
            && path.Notes[index].Position is var at
            && neck.Has(at)
            && neck.MidiNumberAt(at) == path.Neck.MidiNumberAt(at)
            && neck.OpenFret(at.String) == path.Neck.OpenFret(at.String)
            && wanted[index].Fits(neck, at);
        var stays = Enumerable.Range(0, wanted.Count).Select(Stays).ToList();
        if (stays.TrueForAll(static each => each))
        {
            return Made(
                neck,
                wanted,
                new([.. path.Notes.Select(static note => note.Position)], OldFingers),
                path.Changes,
                move
            );
        }

        // A run moves as one: what is joined to a note that moves moves too.
        for (var index = 0; index < wanted.Count; index++)
        {
            if (wanted[index].Before is { } before && stays[before] != stays[index])
            {
                for (int? at = index; at is { } note; at = wanted[note].Before)
                {
                    stays[note] = false;
                }
            }
        }

        var kept = new WantedPlaces(neck, hand ?? Hand.Average, wanted)
        {
            Fixed = index => stays[index] ? path.Notes[index].Position : null,
        };
        var fingers = hand ?? Hand.Average;
        var placed = kept.Find(out _);
        if (
            placed is null
            || (placed.Fingers is null && placing.OutOfReach(neck, fingers, wanted, placed.Positions) >= 0)
        )
        {
            placed = placing.Found(neck, fingers, wanted, notes => new(neck, fingers, notes));
        }

        return Made(neck, wanted, placed, path.Changes, move);
    }

    public MovedLick For(Hand hand)
    {
        var move = new LickMove.ForHand(hand);
        var wanted = WantedNote.Of(path);
        IReadOnlyList<Position> positions = [.. path.Notes.Select(static note => note.Position)];
        if (WantedPlaces.Fingers(path.Neck, hand, wanted, positions) is { } fingers)
        {
            return Made(path.Neck, wanted, new(positions, fingers), path.Changes, move, hand);
        }

        var placed = placing.Found(path.Neck, hand, wanted, notes => new(path.Neck, hand, notes));
        if (placed.Fingers is null)
        {
            account.Whole(new MoveLoss.FingersOfHand());
            return Made(path.Neck, wanted, new(positions, null), path.Changes, move);
        }

        account.Whole(new MoveLoss.PositionsOfHand());
        return Made(path.Neck, wanted, placed, path.Changes, move, hand);
    }

    public MovedLick Refit(Changes changes, LickMove move)
    {
        var refitting = new Refitting(path, changes);
        return KeptOrPlaced(refitting.Wanted(account), changes, move, refitting.Sounded);
    }

    public MovedLick Reversed()
    {
        var reversed = path.Reversed(account.Tell);
        return Answer(reversed.Path, reversed.Notes, new LickMove.Backwards());
    }

    public MovedLick Displaced(Fraction beats)
    {
        IReadOnlyList<PathNote> moved = [.. path.Notes.Select(note => note with { Start = note.Start + beats })];
        var end = (path.Beats + beats).Reduce();
        return Answer(path.With(moved, beats: end), moved, new LickMove.ByBeats(beats));
    }

    public MovedLick InRhythm(Rhythm rhythm)
    {
        var moved = path.InRhythm(rhythm, account.Tell);
        return Answer(moved.Path, moved.Notes, new LickMove.ToRhythm(rhythm));
    }

    private void Folded(int octaves, OctaveLack why)
    {
        if (octaves != 0)
        {
            account.Whole(new MoveLoss.OctaveOfAll(octaves, why));
        }
    }

    /// <summary>On the same strings where all frets are there, else placed anew.</summary>
    private MovedLick KeptOrPlaced(
        List<WantedNote> wanted,
        Changes? changes,
        LickMove move,
        IReadOnlyList<Refitted>? reasons = null
    )
    {
        var neck = path.Neck;
        var kept = KeptStrings.Of(neck, wanted);
        (int Index, StringLack Lack, Pitch Sound)? missing = null;
        if (kept is null)
        {
            // What has no place at all is changed first: the rest may stay then.
            wanted = placing.OnNeck(neck, wanted, changes);
            kept = KeptStrings.Of(neck, wanted);
            var lost = Enumerable
                .Range(0, wanted.Count)
                .FirstOrDefault(index => KeptStrings.At(neck, wanted[index]) is null, -1);
            missing =
                lost < 0
                    ? null
                    : (lost, KeptStrings.Lack(neck, wanted[lost]), wanted[lost].Harmonic ?? wanted[lost].Pitch);
        }

        if (kept is not null)
        {
            // Clicks are played with whatever hand is near.
            var shifts = Enumerable
                .Range(0, kept.Count)
                .Where(index => !wanted[index].IsDead)
                .Select(index => kept[index].Fret - path.Notes[index].Position.Fret)
                .ToList();
            if (
                shifts.Count == 0
                || (
                    shifts.Max() - shifts.Min() <= MostApart
                    && (shifts.Distinct().Count() <= 1 || placing.OutOfReach(neck, Hand.Average, wanted, kept) < 0)
                )
            )
            {
                var fingers =
                    shifts.Distinct().Count() <= 1 ? OldFingers
                    : HasFingers ? WantedPlaces.Fingers(neck, Hand.Average, wanted, kept)
                    : null;
                return Made(neck, wanted, new(kept, fingers), changes, move, reasons: reasons);
            }
        }

        if (missing is null)
        {
            wanted = placing.OnNeck(neck, wanted, changes);
        }

        var placed = placing.Found(neck, Hand.Average, wanted, notes => new(neck, Hand.Average, notes));
        if (missing is { } first && !wanted[first.Index].IsLeftOut)
        {
            account.Tell(
                first.Index,
                new MoveLoss.OffItsString(
                    path.Notes[first.Index].Position.String,
                    first.Lack,
                    first.Sound,
                    placed.Positions[first.Index]
                )
            );
        }
        else
        {
            account.Whole(new MoveLoss.OffItsStrings(missing is null ? StringsLack.Reach : StringsLack.Note));
        }

        return Made(neck, wanted, placed, changes, move, reasons: reasons);
    }

    private bool HasFingers => path.Notes.Any(static note => note.Finger is not null);

    private IReadOnlyList<Finger?>? OldFingers =>
        HasFingers ? [.. path.Notes.Select(static note => note.Finger)] : null;

    private MovedLick Made(
        Neck neck,
        List<WantedNote> wanted,
        PlacedNotes placed,
        Changes? changes,
        LickMove move,
        Hand? asked = null,
        IReadOnlyList<Refitted>? reasons = null
    )
    {
        var moved = new PathNote?[wanted.Count];
        for (var index = 0; index < moved.Length; index++)
        {
            if (wanted[index].IsLeftOut)
            {
                continue;
            }

            var (each, position) = (wanted[index], placed.Positions[index]);
            var sounds = neck.MidiNumberAt(position);
            moved[index] = each.Note with
            {
                Position = position,
                Pitch = sounds == each.Pitch.MidiNumber ? each.Pitch : NotePlacing.Spelled(changes, each.Note, sounds),
                Bend = each.Bend,
                TrillFret = position.Fret + each.Trill,
                Finger =
                    (HasFingers || asked is not null) && position.Fret != neck.OpenFret(position.String)
                        ? placed.Fingers?[index]
                        : null,
                Place = null,
            };
        }

        if (asked is null && HasFingers && placed.Fingers is null)
        {
            account.Whole(new MoveLoss.FingersOfMove());
        }

        moved = TechniqueFit.FitThere(path, neck, moved, account.Tell);
        return Answer(new(neck, moved.OfType<PathNote>(), path.Time, changes, path.Beats), moved, move, reasons);
    }

    private MovedLick Answer(
        Path to,
        IReadOnlyList<PathNote?> notes,
        LickMove move,
        IReadOnlyList<Refitted>? reasons = null
    )
    {
        var now = lick with { Path = to };
        var found = now.Path.Notes.ToDictionary(static note => (note.Start, note.Position.String));
        return new()
        {
            From = lick,
            Lick = now,
            Move = move,
            Remarks = [.. account.Remarks],
            Tones =
            [
                .. path
                    .Notes.Select((before, index) => (Before: before, Note: notes[index], Index: index))
                    .Where(static each => each.Note is not null)
                    .Select(each =>
                    {
                        var (before, index) = (each.Before, each.Index);
                        var after = found[(each.Note!.Start.Reduce(), each.Note.Position.String)];
                        var (bar, beat) = MoveAccount.Place(path, before);
                        var (barAfter, beatAfter) = MoveAccount.Place(path, after);
                        return new MovedTone(
                            bar,
                            beat,
                            before,
                            path.SoundingPitch(before),
                            path.FunctionOf(before),
                            after,
                            now.Path.SoundingPitch(after),
                            now.Path.FunctionOf(after),
                            barAfter,
                            beatAfter,
                            before.IsDead ? null : reasons?[index].Why
                        );
                    }),
            ],
        };
    }
}
