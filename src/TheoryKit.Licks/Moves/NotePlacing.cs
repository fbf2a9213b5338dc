using TheoryKit.Fingering.Hands;
using TheoryKit.Paths;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Progressions;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Licks.Moves;

/// <summary>Finds places for the notes of a path that is moved; what has none as it is wanted is changed until it has.</summary>
internal sealed class NotePlacing(Path path, MoveAccount account)
{
    private static readonly int[] NearOctaves = [-1, 1, -2, 2, -3, 3, -4, 4, -5, 5, -6, 6, -7, 7, -8, 8];

    /// <summary>
    /// The octaves away at which most notes are as asked; of equals the fewest, then down. A note that would lie nowhere counts as three
    /// that are not as asked, because it would have to leave the line.
    /// </summary>
    /// <param name="neck">The neck.</param>
    /// <param name="places">Where a note would be as asked.</param>
    public (int Octaves, List<WantedNote> Wanted) Octave(Neck neck, Func<WantedNote, IEnumerable<Position>> places)
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

    /// <summary>Notes that lie nowhere on a neck as they are wanted, so that they do.</summary>
    public List<WantedNote> OnNeck(Neck neck, List<WantedNote> wanted, Changes? changes)
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
                    account.Tell(index, new MoveLoss.Bend(aim.Pitch));
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
                    account.Tell(index, new MoveLoss.OffNeck(each.Pitch, moved.Pitch, octaves));
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
            account.Tell(index, new MoveLoss.Harmonic(sound, IsArtificial: true));
            return artificial;
        }

        account.Tell(index, new MoveLoss.Harmonic(sound, IsArtificial: false));
        return artificial with { Pitch = sound, Note = each.Note with { Techniques = [.. others] } };
    }

    /// <summary>
    /// Places for all notes. Where notes that are struck together would not each have a string, or no hand would reach them, one of them
    /// goes some octaves away, where the lowest and the highest stay what they are, or is left out: of the inner ones first, then the
    /// lowest, then the highest.
    /// </summary>
    public PlacedNotes Found(Neck neck, Hand hand, List<WantedNote> wanted, Func<List<WantedNote>, WantedPlaces> places)
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
            var why = isFar ? CrowdLack.Reach : CrowdLack.Strings;
            var changed = With(wanted[index], octaves);
            account.Tell(
                index,
                octaves == 0 ? new MoveLoss.LeftOut(why) : new MoveLoss.Crowded(why, changed.Pitch, octaves)
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
    public int OutOfReach(Neck neck, Hand hand, List<WantedNote> wanted, IReadOnlyList<Position> positions)
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

    public static Pitch Spelled(Changes? changes, PathNote note, int midiNumber) =>
        changes?.At((note.Start % changes.Beats).Reduce()).Chord?.Spell(midiNumber) ?? Pitch.Simplest(midiNumber);
}
