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
        var (octaves, wanted) = Octave(
            neck,
            each => each.Places(neck) is { Count: > 0 } places && places.Exists(place => Outside(place) == 0)
        );
        var hand = new HandOnNeck(neck, zone.Hand);
        Folded(octaves, "it would leave the zone by more notes");
        wanted = OnNeck(neck, wanted);
        var places = new WantedPlaces(neck, zone.Hand, wanted)
        {
            Outside = Outside,
            Preferred = hand.Home(zone.Window),
        };
        var placed = Found(places);
        for (var index = 0; index < wanted.Count; index++)
        {
            if (Outside(placed.Positions[index]) is > 0 and var frets)
            {
                Tell(
                    index,
                    $"its place in the zone at {Frets(zone.Window)}",
                    $"fret {placed.Positions[index].Fret} of string {placed.Positions[index].String}, {frets} {(frets == 1 ? "fret" : "frets")} outside"
                );
            }
        }

        return Made(neck, wanted, placed, path.Changes, $"to the zone at {Frets(zone.Window)}");
    }

    public MovedLick OnStrings(IReadOnlySet<int> strings, Hand? hand)
    {
        var names = string.Join(", ", strings.Order());
        var wanted = OnNeck(path.Neck, WantedNote.Of(path));

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
        var places = new WantedPlaces(path.Neck, hand ?? Hand.Average, wanted)
        {
            Outside = position => strings.Contains(position.String) ? 0 : Position.MaxFret,
        };
        var placed = Found(places);
        for (var index = 0; index < wanted.Count; index++)
        {
            if (!strings.Contains(placed.Positions[index].String))
            {
                Tell(
                    index,
                    $"the strings {names}: it lies on none of them, or not beside the others",
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
        var (octaves, wanted) = Octave(neck, each => each.Places(neck).Count > 0);
        Folded(octaves, "more of its notes would lie beyond the neck");
        wanted = OnNeck(neck, wanted);
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
        var easiest = new WantedPlaces(neck, hand ?? Hand.Average, wanted);
        return Made(neck, wanted, kept.Find() ?? Found(easiest), path.Changes, Name(neck));

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

        var placed = Found(new(path.Neck, hand, wanted));
        if (placed.Fingers is null)
        {
            Whole(
                "fingers: this hand can hold it neither there nor elsewhere",
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
        if (kept is not null)
        {
            var shifts = kept.Select((position, index) => position.Fret - path.Notes[index].Position.Fret).ToList();
            if (shifts.Count == 0 || shifts.Max() - shifts.Min() <= MostApart)
            {
                var fingers =
                    shifts.Distinct().Count() <= 1 ? OldFingers
                    : HasFingers ? WantedPlaces.Fingers(neck, Hand.Average, wanted, kept)
                    : null;
                return Made(neck, wanted, new(kept, fingers), changes, move, reasons: reasons);
            }
        }

        wanted = OnNeck(neck, wanted);
        var placed = Found(new(neck, Hand.Average, wanted));
        if (kept is null)
        {
            var first = Enumerable.Range(0, wanted.Count).FirstOrDefault(index => KeptAt(neck, wanted[index]) is null);
            Tell(
                first,
                $"string {path.Notes[first].Position.String}, which does not have its new fret or what it needs there",
                $"all notes placed anew: it is at fret {placed.Positions[first].Fret} of string {placed.Positions[first].String}"
            );
        }
        else
        {
            Whole($"its strings: the chords move apart by more than {MostApart} frets", "all notes placed anew");
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
            moved = Math.Clamp(moved, neck.OpenFret(number), neck.Frets);
        }

        return
            moved is >= 0 and <= Position.MaxFret
            && new Position(number, moved) is var position
            && wanted.Fits(neck, position)
            ? position
            : null;
    }

    /// <summary>The octaves away at which most notes are as asked; of equals the fewest, then down.</summary>
    private (int Octaves, List<WantedNote> Wanted) Octave(Neck neck, Func<WantedNote, bool> isGood)
    {
        var own = WantedNote.Of(path);
        var best = (Octaves: 0, Wanted: own, Good: own.Count(isGood));
        foreach (var octaves in new[] { -1, 1, -2, 2, -3, 3, -4, 4 })
        {
            if (best.Good == own.Count)
            {
                break;
            }

            var moved = own.ConvertAll(each => each.Moved(new(7 * octaves, 12 * octaves)));
            var good = moved.Count(isGood);
            if (good > best.Good)
            {
                best = (octaves, moved, good);
            }
        }

        return (best.Octaves, best.Wanted);
    }

    private void Folded(int octaves, string why)
    {
        if (octaves != 0)
        {
            Whole(
                $"its octave: {why}",
                $"{Math.Abs(octaves)} {(Math.Abs(octaves) == 1 ? "octave" : "octaves")} {(octaves > 0 ? "higher" : "lower")}"
            );
        }
    }

    /// <summary>Notes that lie nowhere on a neck as they are wanted, so that they do.</summary>
    private List<WantedNote> OnNeck(Neck neck, List<WantedNote> wanted)
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
                there[index] = each = Plain(neck, each, sound, index);
            }
            else if (each.IsHeld && each.Bend >= 100 && !each.Note.Has(Technique.Release))
            {
                // Too low to be bent: the pitch that it is bent to may lie on the neck.
                var aim = each with
                {
                    Pitch = Pitch.FromMidi(each.Pitch.MidiNumber + (each.Bend / 100)),
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

            foreach (var octaves in new[] { -1, 1, -2, 2, -3, 3, -4, 4, -5, 5, -6, 6, -7, 7, -8, 8 })
            {
                var moved = each.Moved(new(7 * octaves, 12 * octaves));
                if (moved.Places(neck).Count > 0)
                {
                    Tell(
                        index,
                        $"its octave: {each.Pitch} does not lie on the neck",
                        $"{moved.Pitch}, {Math.Abs(octaves)} {(Math.Abs(octaves) == 1 ? "octave" : "octaves")} {(octaves > 0 ? "higher" : "lower")}"
                    );
                    there[index] = moved;
                    break;
                }
            }
        }

        return there;
    }

    /// <summary>A natural harmonic without a node: artificial an octave below if it can be, else plain.</summary>
    private WantedNote Plain(Neck neck, WantedNote each, int sound, int index)
    {
        var others = each.Note.Techniques.Where(static one => one != Technique.NaturalHarmonic);
        var artificial = each with
        {
            Harmonic = null,
            Pitch = Pitch.FromMidi(sound - 12),
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
            Tell(
                index,
                $"the natural harmonic: no open string sounds {Pitch.FromMidi(sound)} at a node",
                "an artificial harmonic"
            );
            return artificial;
        }

        Tell(index, $"the natural harmonic: no open string sounds {Pitch.FromMidi(sound)} at a node", "a plain note");
        return artificial with { Pitch = Pitch.FromMidi(sound), Note = each.Note with { Techniques = [.. others] } };
    }

    private PlacedNotes Found(WantedPlaces places) =>
        places.Find()
        ?? throw new ArgumentException(
            $"\"{lick.Name}\" sounds notes together that lie on too few strings of the neck to be played at once there."
        );

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
        var moved = new PathNote[wanted.Count];
        for (var index = 0; index < moved.Length; index++)
        {
            var (each, position) = (wanted[index], placed.Positions[index]);
            var sounds = neck.MidiNumberAt(position);
            moved[index] = each.Note with
            {
                Position = position,
                Pitch =
                    sounds == each.Pitch.MidiNumber ? each.Pitch
                    : changes is null ? Pitch.FromMidi(sounds)
                    : changes.At((each.Note.Start % changes.Beats).Reduce()).Chord?.Spell(sounds)
                        ?? Pitch.FromMidi(sounds),
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

        moved = TechniqueFit.Fit(path, neck, moved, Tell);
        return Answer(new(neck, moved, path.Time, changes, path.Beats), moved, move, reasons);
    }

    private MovedLick Answer(
        Path to,
        IReadOnlyList<PathNote> notes,
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
                .. path.Notes.Select(
                    (before, index) =>
                    {
                        var after = found[(notes[index].Start.Reduce(), notes[index].Position.String)];
                        var (bar, beat) = Place(before);
                        return new MovedTone(
                            bar,
                            beat,
                            before,
                            path.SoundingPitch(before),
                            path.FunctionOf(before),
                            after,
                            now.Path.SoundingPitch(after),
                            now.Path.FunctionOf(after),
                            before.Has(Technique.Dead) ? "" : reasons?[index].Why ?? "",
                            !before.Has(Technique.Dead) && (reasons?[index].IsException ?? false)
                        );
                    }
                ),
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
        var (bar, beat) = Place(path.Notes[note]);
        remarks.Add((note, new(bar, beat, path.SoundingPitch(path.Notes[note]), lost, instead)));
    }
}
