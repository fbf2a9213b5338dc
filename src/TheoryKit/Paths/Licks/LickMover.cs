using System.Globalization;
using Fractions;
using TheoryKit.Fingering;
using TheoryKit.Theory;
using TheoryKit.Tunings;

namespace TheoryKit.Paths;

/// <summary>Moves a lick and keeps account of what is lost.</summary>
internal sealed class LickMover(Lick lick)
{
    // As far apart as chords may move for a refitted lick to stay on its strings: a hand's breadth.
    private const int MostApart = 3;

    private readonly Path path = lick.Path;
    private readonly List<MoveRemark> whole = [];
    private readonly List<(int Note, MoveRemark Remark)> remarks = [];

    public bool CanGoAlong(Interval interval) =>
        Kept(path.Neck, [.. WantedNote.Of(path).Select(each => each.Moved(interval))]) is not null;

    public MovedLick Along(Interval interval, Changes? changes, string move)
    {
        var wanted = WantedNote.Of(path).ConvertAll(each => each.Moved(interval));
        return KeptOrPlaced(wanted, changes, move);
    }

    public MovedLick InZone(Zone zone)
    {
        var neck = zone.Neck;
        int Outside(Position position) =>
            Math.Max(0, Math.Max(zone.Window.First - position.Fret, position.Fret - zone.Window.Last));
        var (octaves, wanted) = Octave(neck, each => each.Places(neck).Where(place => Outside(place) == 0));
        var hand = new HandOnNeck(neck, zone.Hand);
        Folded(octaves, "it would leave the zone by more notes");
        wanted = OnNeck(neck, wanted, path.Changes);
        var placed = Found(
            neck,
            zone.Hand,
            wanted,
            notes => new(neck, zone.Hand, notes) { Outside = Outside, Preferred = hand.Home(zone.Window) }
        );
        for (var index = 0; index < wanted.Count; index++)
        {
            if (!wanted[index].IsLeftOut && Outside(placed.Positions[index]) is > 0 and var frets)
            {
                Tell(
                    index,
                    $"its place in the zone at {Frets(zone.Window)}{WhyOutside(index)}",
                    placed.Positions[index] is var at && at.Fret == neck.OpenFret(at.String)
                        ? $"the open string {at.String}"
                        : $"fret {at.Fret} of string {at.String}, {frets} {(frets == 1 ? "fret" : "frets")} outside"
                );
            }
        }

        return Made(neck, wanted, placed, path.Changes, $"to the zone at {Frets(zone.Window)}");

        string WhyOutside(int index)
        {
            if (!wanted[index].Places(neck).Exists(place => Outside(place) == 0))
            {
                return ": it does not lie there";
            }

            bool IsBeside(int? other) =>
                other is { } at && placed.Positions[at].String == placed.Positions[index].String;
            var next = wanted.FindIndex(each => each.Before == index);
            return IsBeside(wanted[index].Before)
                    ? $": it is {Joined(wanted[index].Note)} {wanted[wanted[index].Before!.Value].Pitch}, on one string"
                : next >= 0 && IsBeside(next)
                    ? $": {wanted[next].Pitch} is {Joined(wanted[next].Note)} it, on one string"
                : ": it is not free beside what it is joined to or sounds with";
        }

        static string Joined(PathNote note) =>
            note.Has(Technique.HammerOn) ? "hammered on from"
            : note.Has(Technique.PullOff) ? "pulled off from"
            : note.Has(Technique.Slide) ? "slid into from"
            : "let go from";
    }

    public MovedLick OnStrings(IReadOnlySet<int> strings, Hand? hand)
    {
        var names = string.Join(", ", strings.Order());
        var wanted = OnNeck(path.Neck, WantedNote.Of(path), path.Changes);

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
        var placed = Found(
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
                Tell(
                    index,
                    (strings.Count == 1 ? $"string {names}" : $"the strings {names}")
                        + (
                            !wanted[index].Places(path.Neck).Exists(place => strings.Contains(place.String))
                                ? strings.Count == 1
                                    ? ": it does not lie on it"
                                    : ": it lies on none of them"
                                : ": it is not free beside what it is joined to or sounds with"
                        ),
                    $"string {placed.Positions[index].String}"
                );
            }
        }

        return Made(
            path.Neck,
            wanted,
            placed,
            path.Changes,
            strings.Count == 1 ? $"to string {names}" : $"to strings {names}"
        );
    }

    public MovedLick On(Neck neck, Hand? hand)
    {
        var (octaves, wanted) = Octave(neck, each => each.Places(neck));
        Folded(octaves, "more of its notes would lie beyond the neck");
        wanted = OnNeck(neck, wanted, path.Changes);
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
                Name(neck)
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
        if (placed is null || (placed.Fingers is null && OutOfReach(neck, fingers, wanted, placed.Positions) >= 0))
        {
            placed = Found(neck, fingers, wanted, notes => new(neck, fingers, notes));
        }

        return Made(neck, wanted, placed, path.Changes, Name(neck));

        string Name(Neck to) => to.Tuning == path.Neck.Tuning ? "to another neck" : $"to {to.Tuning}";
    }

    public MovedLick For(Hand hand)
    {
        var wanted = WantedNote.Of(path);
        IReadOnlyList<Position> positions = [.. path.Notes.Select(static note => note.Position)];
        if (WantedPlaces.Fingers(path.Neck, hand, wanted, positions) is { } fingers)
        {
            return Made(path.Neck, wanted, new(positions, fingers), path.Changes, "for this hand", hand);
        }

        var placed = Found(path.Neck, hand, wanted, notes => new(path.Neck, hand, notes));
        if (placed.Fingers is null)
        {
            Whole(
                "its fingers: this hand can hold it neither there nor elsewhere",
                "the positions as they were, without fingers"
            );
            return Made(path.Neck, wanted, new(positions, null), path.Changes, "for this hand");
        }

        Whole("its positions: this hand can't play them one after the other", "others, with the least effort");
        return Made(path.Neck, wanted, placed, path.Changes, "for this hand", hand);
    }

    public MovedLick Refit(Changes changes, string move)
    {
        var refitting = new Refitting(path, changes);
        return KeptOrPlaced(refitting.Wanted(Tell), changes, move, refitting.Sounded);
    }

    public MovedLick Reversed()
    {
        var reversed = path.Reversed(Tell);
        return Answer(reversed.Path, reversed.Notes, "backwards");
    }

    public MovedLick Displaced(Fraction beats)
    {
        IReadOnlyList<PathNote> moved = [.. path.Notes.Select(note => note with { Start = note.Start + beats })];
        var end = (path.Beats + beats).Reduce();
        return Answer(
            path.With(moved, beats: end),
            moved,
            beats == Fraction.Zero
                ? "where it is"
                : string.Create(
                    CultureInfo.InvariantCulture,
                    $"{beats.Abs()} {(beats.Abs() > Fraction.One ? "beats" : "beat")} {(beats > Fraction.Zero ? "later" : "earlier")}"
                )
        );
    }

    public MovedLick InRhythm(Rhythm rhythm)
    {
        var moved = path.InRhythm(rhythm, Tell);
        return Answer(moved.Path, moved.Notes, $"in the rhythm {rhythm}");
    }

    private static string Frets(Window window) =>
        window.Width == 1 ? $"fret {window.First}" : $"frets {window.First} to {window.Last}";

    /// <summary>On the same strings where all frets are there, else placed anew.</summary>
    private MovedLick KeptOrPlaced(
        List<WantedNote> wanted,
        Changes? changes,
        string move,
        IReadOnlyList<Refitted>? reasons = null
    )
    {
        var neck = path.Neck;
        var kept = Kept(neck, wanted);
        (int Index, string Why)? missing = null;
        if (kept is null)
        {
            // What has no place at all is changed first: the rest may stay then.
            var asked = wanted;
            wanted = OnNeck(neck, wanted, changes);
            kept = Kept(neck, wanted);
            var lost = Enumerable
                .Range(0, wanted.Count)
                .FirstOrDefault(index => KeptAt(neck, wanted[index]) is null, -1);
            missing = lost < 0 ? null : (lost, WhyNotKept(neck, wanted[lost]));
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
                    && (shifts.Distinct().Count() <= 1 || OutOfReach(neck, Hand.Average, wanted, kept) < 0)
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
            wanted = OnNeck(neck, wanted, changes);
        }

        var placed = Found(neck, Hand.Average, wanted, notes => new(neck, Hand.Average, notes));
        if (missing is { } first && !wanted[first.Index].IsLeftOut)
        {
            Tell(
                first.Index,
                $"string {path.Notes[first.Index].Position.String}, {first.Why}",
                $"all notes placed anew: it is at fret {placed.Positions[first.Index].Fret} of string {placed.Positions[first.Index].String}"
            );
        }
        else if (missing is not null)
        {
            Whole("its strings: one of its notes does not lie on its own", "all notes placed anew");
        }
        else
        {
            Whole("its strings: on them its notes would lie too far apart", "all notes placed anew");
        }

        return Made(neck, wanted, placed, changes, move, reasons: reasons);
    }

    /// <summary>Every note on the string that it was on; null if one has no place there.</summary>
    private static List<Position>? Kept(Neck neck, List<WantedNote> wanted)
    {
        var kept = new List<Position>(wanted.Count);
        foreach (var each in wanted)
        {
            if (KeptAt(neck, each) is not { } position)
            {
                return null;
            }

            kept.Add(position);
        }

        return kept;
    }

    private static Position? KeptAt(Neck neck, WantedNote wanted)
    {
        var (number, fret) = (wanted.Note.Position.String, wanted.Note.Position.Fret);
        var moved = fret + wanted.Pitch.MidiNumber - wanted.Note.Pitch.MidiNumber;
        if (wanted.Harmonic is not null)
        {
            var nodes = wanted.Places(neck).FindAll(node => node.String == number);
            return nodes.Count == 0 ? null
                : nodes.Contains(wanted.Note.Position) ? wanted.Note.Position
                : nodes.MinBy(node => (Math.Abs(node.Fret - moved), node.Fret));
        }

        if (wanted.IsDead && !wanted.IsHeld)
        {
            // A click on an open string stays one.
            moved = fret == neck.OpenFret(number) ? fret : moved;
            moved = Math.Clamp(moved, neck.OpenFret(number), neck.Frets);
        }

        return
            moved is >= 0 and <= Position.MaxFret
            && new Position(number, moved) is var position
            && wanted.Fits(neck, position)
            ? position
            : null;
    }

    /// <summary>Why a note has no place on the string that it was on.</summary>
    private static string WhyNotKept(Neck neck, WantedNote wanted)
    {
        var (number, fret) = (wanted.Note.Position.String, wanted.Note.Position.Fret);
        var moved = fret + wanted.Pitch.MidiNumber - wanted.Note.Pitch.MidiNumber;
        return wanted.Harmonic is { } sound ? $"which has no node that sounds {sound}"
            : moved < neck.OpenFret(number) ? "which does not go so low"
            : moved > neck.Frets ? "which does not go so high"
            : wanted.IsHeld && moved == neck.OpenFret(number) ? "which would be open there and can't be bent"
            : "which has no fret there for the other note of the trill";
    }

    /// <summary>
    /// The octaves away at which most notes are as asked; of equals the fewest, then down. A note that would lie nowhere counts as three
    /// that are not as asked, because it would have to leave the line.
    /// </summary>
    /// <param name="neck">The neck.</param>
    /// <param name="places">Where a note would be as asked.</param>
    private (int Octaves, List<WantedNote> Wanted) Octave(Neck neck, Func<WantedNote, IEnumerable<Position>> places)
    {
        var own = WantedNote.Of(path);
        var best = (Octaves: 0, Wanted: own, Good: Goodness(own));
        foreach (var octaves in NearOctaves)
        {
            if (best.Good == own.Count)
            {
                break;
            }

            if (own.Exists(each => !each.HasOctave(octaves)))
            {
                continue;
            }

            var moved = own.ConvertAll(each => each.InOctave(octaves));
            var good = Goodness(moved);
            if (good > best.Good)
            {
                best = (octaves, moved, good);
            }
        }

        return (best.Octaves, best.Wanted);

        int Goodness(List<WantedNote> notes) =>
            CountPlaced(notes, places) - (2 * notes.Count(each => each.Places(neck).Count == 0));
    }

    /// <summary>How many notes have a place, each of those that sound together on a string of its own.</summary>
    private static int CountPlaced(List<WantedNote> wanted, Func<WantedNote, IEnumerable<Position>> places)
    {
        var placed = 0;
        var sounding = new List<(WantedNote Note, HashSet<int> Strings)>();
        foreach (var each in wanted)
        {
            sounding.RemoveAll(other => other.Note.Note.End <= each.Note.Start);
            sounding.Add((each, [.. places(each).Select(static position => position.String)]));
            if (Matches(sounding))
            {
                placed++;
            }
            else
            {
                sounding.RemoveAt(sounding.Count - 1);
            }
        }

        return placed;

        static bool Matches(List<(WantedNote Note, HashSet<int> Strings)> notes)
        {
            var noteOn = new Dictionary<int, int>();
            return Enumerable.Range(0, notes.Count).All(note => Match(note, []));

            // An augmenting path: whoever has the string already looks for another.
            bool Match(int note, HashSet<int> tried) =>
                notes[note]
                    .Strings.Any(number =>
                    {
                        if (!tried.Add(number) || (noteOn.TryGetValue(number, out var other) && !Match(other, tried)))
                        {
                            return false;
                        }

                        noteOn[number] = note;
                        return true;
                    });
        }
    }

    private void Folded(int octaves, string why)
    {
        if (octaves != 0)
        {
            Whole($"its octave: {why}", Octaves(octaves));
        }
    }

    /// <summary>"an octave higher".</summary>
    internal static string Octaves(int octaves) =>
        $"{(Math.Abs(octaves) == 1 ? "an octave" : $"{Math.Abs(octaves)} octaves")} {(octaves > 0 ? "higher" : "lower")}";

    private static readonly int[] NearOctaves = [-1, 1, -2, 2, -3, 3, -4, 4, -5, 5, -6, 6, -7, 7, -8, 8];

    /// <summary>Notes that lie nowhere on a neck as they are wanted, so that they do.</summary>
    private List<WantedNote> OnNeck(Neck neck, List<WantedNote> wanted, Changes? changes)
    {
        var there = wanted.ToList();
        for (var index = 0; index < there.Count; index++)
        {
            var each = there[index];
            if (each.Places(neck).Count > 0)
            {
                continue;
            }

            if (each.Harmonic is { } sound)
            {
                there[index] = each = Plain(neck, each, sound, index, changes);
            }
            else if (each.IsHeld && each.Bend >= 100 && !each.Note.Has(Technique.Release))
            {
                // Too low to be bent: the pitch that it is bent to may lie on the neck.
                var aim = each with
                {
                    Pitch = Spelled(changes, each.Note, each.Pitch.MidiNumber + (each.Bend / 100)),
                    Bend = 0,
                    IsHeld = false,
                    Note = each.Note with
                    {
                        Techniques = [.. each.Note.Techniques.Where(static one => !one.IsBent)],
                        Bend = 0,
                    },
                };
                if (aim.Places(neck).Count > 0)
                {
                    Tell(
                        index,
                        "the bend: no fret of the neck sounds what it begins with",
                        $"{aim.Pitch} without a bend"
                    );
                    there[index] = each = aim;
                }
            }

            if (each.Places(neck).Count > 0)
            {
                continue;
            }

            if (each.Trill is not null)
            {
                var held = each with { Trill = null };
                if (held.Places(neck).Count > 0)
                {
                    there[index] = held; // the trill goes where it is fitted, and is told of there
                    continue;
                }
            }

            foreach (var octaves in NearOctaves.Where(each.HasOctave))
            {
                var moved = each.InOctave(octaves);
                if (moved.Places(neck).Count > 0)
                {
                    Tell(
                        index,
                        $"its octave: {each.Pitch} does not lie on the neck",
                        $"{moved.Pitch}, {Octaves(octaves)}"
                    );
                    there[index] = moved;
                    break;
                }
            }
        }

        return there;
    }

    /// <summary>A natural harmonic without a node: artificial an octave below if it can be, else plain.</summary>
    private WantedNote Plain(Neck neck, WantedNote each, Pitch sound, int index, Changes? changes)
    {
        var others = each.Note.Techniques.Where(static one => one != Technique.NaturalHarmonic);
        var artificial = each with
        {
            Harmonic = null,
            Pitch = Spelled(changes, each.Note, sound.MidiNumber - 12),
            Note = each.Note with
            {
                Techniques =
                [
                    .. others.Where(static one => one != Technique.ArtificialHarmonic),
                    Technique.ArtificialHarmonic,
                ],
            },
        };
        if (artificial.Places(neck).Count > 0)
        {
            Tell(index, $"the natural harmonic: no open string sounds {sound} at a node", "an artificial harmonic");
            return artificial;
        }

        Tell(index, $"the natural harmonic: no open string sounds {sound} at a node", "a plain note");
        return artificial with { Pitch = sound, Note = each.Note with { Techniques = [.. others] } };
    }

    /// <summary>
    /// Places for all notes. Where notes that are struck together would not each have a string, or no hand would reach them, one of them
    /// goes some octaves away, where the lowest and the highest stay what they are, or is left out: of the inner ones first, then the
    /// lowest, then the highest.
    /// </summary>
    private PlacedNotes Found(
        Neck neck,
        Hand hand,
        List<WantedNote> wanted,
        Func<List<WantedNote>, WantedPlaces> places
    )
    {
        while (true)
        {
            if (Try(wanted, out var stuck, out var isFar) is { } placed)
            {
                return placed;
            }

            var start = wanted[stuck].Note.Start;
            var ways = Ways(stuck).ToList();
            var (octaves, index) = ways.Where(way => Reaches(way) is not { } next || wanted[next].Note.Start > start)
                .Concat(ways.Where(way => way.Octaves == 0 && Reaches(way) > stuck))
                .FirstOrDefault((Octaves: 0, Index: stuck));
            var why = isFar
                ? "no hand reaches all that is struck with it"
                : "the notes that sound with it would not each have a string";
            var changed = With(wanted[index], octaves);
            Tell(
                index,
                $"{(octaves == 0 ? "its place" : "its octave")}: {why}",
                octaves == 0 ? "the others without it" : $"{changed.Pitch}, {Octaves(octaves)}"
            );
            wanted[index] = changed;

            // The note that is stuck then; null for none.
            int? Reaches((int Octaves, int Index) way)
            {
                var with = wanted.ToList();
                with[way.Index] = With(with[way.Index], way.Octaves);
                return Try(with, out var next, out _) is null ? next : null;
            }
        }

        PlacedNotes? Try(List<WantedNote> notes, out int stuck, out bool isFar)
        {
            var found = places(notes).Find(out stuck);
            isFar = found is not null;
            if (found is not null)
            {
                stuck = found.Fingers is null ? OutOfReach(neck, hand, notes, found.Positions) : -1;
            }

            return stuck < 0 ? found : null;
        }

        IEnumerable<(int Octaves, int Index)> Ways(int stuck)
        {
            var together = Enumerable
                .Range(0, wanted.Count)
                .Where(index => !wanted[index].IsLeftOut && wanted[index].Note.Start == wanted[stuck].Note.Start)
                .OrderBy(index => wanted[index].Pitch.MidiNumber)
                .ToList();
            var (lowest, highest) = (together[0], together[^1]);
            together = [.. together.Skip(1).SkipLast(1), .. together.Take(1), .. together.Skip(1).TakeLast(1)];
            // A click has no octave to go to.
            foreach (var index in together.Where(index => !wanted[index].IsDead))
            {
                foreach (var octaves in NearOctaves.Where(wanted[index].HasOctave))
                {
                    var moved = With(wanted[index], octaves);
                    if (
                        moved.Places(neck).Count > 0
                        && !wanted.Exists(other => IsDoubled(other, moved))
                        && IsBetween(moved.Pitch, index)
                    )
                    {
                        yield return (octaves, index);
                    }
                }
            }

            foreach (
                var index in together.OrderBy(index =>
                    !together.Exists(other =>
                        other != index && wanted[other].Pitch.Name.PitchClass == wanted[index].Pitch.Name.PitchClass
                    )
                )
            )
            {
                yield return (0, index);
            }

            // What is heard most, the lowest and the highest part, stays what it is.
            bool IsBetween(Pitch moved, int index) =>
                (index == lowest || moved.MidiNumber > wanted[lowest].Pitch.MidiNumber)
                && (index == highest || moved.MidiNumber < wanted[highest].Pitch.MidiNumber)
                && together.TrueForAll(other =>
                    other == index
                    || (index != lowest || moved.MidiNumber < wanted[other].Pitch.MidiNumber)
                        && (index != highest || moved.MidiNumber > wanted[other].Pitch.MidiNumber)
                );
        }

        static WantedNote With(WantedNote note, int octaves) =>
            octaves == 0 ? note with { IsLeftOut = true } : note.InOctave(octaves);

        static bool IsDoubled(WantedNote one, WantedNote other) =>
            !one.IsLeftOut
            && one.Note.Start < other.Note.End
            && other.Note.Start < one.Note.End
            && one.Pitch.MidiNumber == other.Pitch.MidiNumber;
    }

    /// <summary>
    /// The first note that the hand can't reach with those that are struck with it; -1 for none. What it could not reach where the lick
    /// came from is the player's own affair.
    /// </summary>
    private int OutOfReach(Neck neck, Hand hand, List<WantedNote> wanted, IReadOnlyList<Position> positions)
    {
        var (now, before) = (new HandOnNeck(neck, hand), new HandOnNeck(path.Neck, hand));
        for (var index = 1; index < wanted.Count; index++)
        {
            for (var other = index - 1; other >= 0 && wanted[other].Note.Start == wanted[index].Note.Start; other--)
            {
                if (
                    !wanted[index].IsLeftOut
                    && !wanted[other].IsLeftOut
                    && !now.Holds(positions[index], positions[other])
                    && before.Holds(path.Notes[index].Position, path.Notes[other].Position)
                )
                {
                    return index;
                }
            }
        }

        return -1;
    }

    private static Pitch Spelled(Changes? changes, PathNote note, int midiNumber) =>
        changes?.At((note.Start % changes.Beats).Reduce()).Chord?.Spell(midiNumber) ?? Pitch.Simplest(midiNumber);

    private bool HasFingers => path.Notes.Any(static note => note.Finger is not null);

    private IReadOnlyList<Finger?>? OldFingers =>
        HasFingers ? [.. path.Notes.Select(static note => note.Finger)] : null;

    private MovedLick Made(
        Neck neck,
        List<WantedNote> wanted,
        PlacedNotes placed,
        Changes? changes,
        string move,
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
                Pitch = sounds == each.Pitch.MidiNumber ? each.Pitch : Spelled(changes, each.Note, sounds),
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
            Whole("its fingers: the hand of the move does not reach all of it", "no fingers");
        }

        moved = TechniqueFit.FitThere(path, neck, moved, Tell);
        return Answer(new(neck, moved.OfType<PathNote>(), path.Time, changes, path.Beats), moved, move, reasons);
    }

    private MovedLick Answer(
        Path to,
        IReadOnlyList<PathNote?> notes,
        string move,
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
            Remarks = [.. whole, .. remarks.OrderBy(static each => each.Note).Select(static each => each.Remark)],
            Tones =
            [
                .. path
                    .Notes.Select((before, index) => (Before: before, Note: notes[index], Index: index))
                    .Where(static each => each.Note is not null)
                    .Select(each =>
                    {
                        var (before, index) = (each.Before, each.Index);
                        var after = found[(each.Note!.Start.Reduce(), each.Note.Position.String)];
                        var (bar, beat) = Place(before);
                        var (barAfter, beatAfter) = Place(after);
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
                            before.IsDead ? "" : reasons?[index].Why ?? "",
                            !before.IsDead && (reasons?[index].IsException ?? false)
                        );
                    }),
            ],
        };
    }

    private (int Bar, Fraction Beat) Place(PathNote note)
    {
        var bar = (int)Math.Floor((note.Start / path.Time.Beats).ToDouble());
        return (bar + 1, (note.Start - (bar * path.Time.Beats) + 1).Reduce());
    }

    private void Whole(string lost, string instead) => whole.Add(new(null, null, null, lost, instead));

    private void Tell(int note, string lost, string instead)
    {
        var told = path.Notes[note];
        var (bar, beat) = Place(told);
        remarks.Add((note, new(bar, beat, told.IsDead ? null : path.SoundingPitch(told), lost, instead)));
    }
}
