using Fractions;
using TheoryKit.Paths;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Progressions;

namespace TheoryKit.Licks.Moves;

/// <summary>What a note becomes over another chord, and why.</summary>
internal readonly record struct Refitted(Pitch Pitch, RefitReason Why);

/// <summary>Fits the notes of a path to other changes, function by function.</summary>
/// <remarks>
/// Read at the pitch that sounds in the end, against the chord at the note's start, in this order:
/// <list type="number">
/// <item>A tone of the chord becomes the tone of the new chord with its number: a 3 stays a 3, as b3 where the new chord has that. Where the new
/// chord has two of that number, the one that sounds alike, else the nearest, told as an exception. Where it has none: the suspended
/// 4 or 2 for a 3 and the other way round, else what its scale has there; both exceptions.</item>
/// <item>A tone that is not of its chord but of the next one, at most half a beat before that begins and sounding up to it, anticipates, and is fitted
/// to the new chord there.</item>
/// <item>The bass of a slash chord becomes the new one's.</item>
/// <item>A tone of the chord's scale (<see cref="ChordSounds"/>) is a colour tone: it becomes what the new chord or its scale has with its number.
/// An exception where that is none of the tones that colour the new chord (<see cref="ToneRoles.Over"/>) while it coloured the old one, or where
/// neither has the number: then the nearest colour or fifth.</item>
/// <item>Any other tone that lies at most a whole tone from the next note, or from the one after (an enclosure), approaches it: it keeps that
/// distance and side.</item>
/// <item>What is left stays as far above the root as it was; an exception.</item>
/// </list>
/// Roots go the short way: up to a fourth up, else down; an octave from there where that keeps the line together (<see cref="OctaveWays"/>).
/// Where there is no chord, before or now, the pitch stays.
/// </remarks>
internal sealed class Refitting
{
    private static readonly Fraction HalfBeat = new(1, 2);

    private readonly Path path;
    private readonly Changes to;
    private readonly Dictionary<(Chord, bool), ChordSounds> sounds = [];
    private readonly Refitted[] sounded;
    private readonly List<(Fraction End, int Octaves)> octaves;

    public Refitting(Path path, Changes to)
    {
        (this.path, this.to) = (path, to);
        octaves = OctaveWays.Of(path, to);
        sounded = new Refitted[path.Notes.Count];
        var open = new List<int>();
        for (var index = 0; index < sounded.Length; index++)
        {
            var note = path.Notes[index];
            if (Tone(note, path.SoundingPitch(note)) is { } refitted)
            {
                sounded[index] = refitted;
            }
            else
            {
                open.Add(index);
            }
        }

        // What leads somewhere is known when its target is, which comes later.
        for (var at = open.Count - 1; at >= 0; at--)
        {
            sounded[open[at]] = Led(open[at]);
        }
    }

    /// <summary>What each note becomes at the pitch that sounds in the end.</summary>
    public IReadOnlyList<Refitted> Sounded => sounded;

    /// <summary>The notes as they are wanted over the new changes.</summary>
    /// <param name="account">Told where a bend or trill could not go where its function went.</param>
    public List<WantedNote> Wanted(MoveAccount account)
    {
        var wanted = WantedNote.Of(path);
        for (var index = 0; index < wanted.Count; index++)
        {
            var (each, note) = (wanted[index], path.Notes[index]);
            var aim = sounded[index].Pitch;
            if (each.IsDead)
            {
                wanted[index] = each with { Pitch = note.Pitch + RootShift(note.Start) };
            }
            else if (each.Harmonic is not null)
            {
                wanted[index] = each with { Harmonic = aim };
            }
            else
            {
                var above = note.Has(Technique.ArtificialHarmonic) ? 12 : 0;
                var fitted = Bent(wanted, index, aim.MidiNumber - above, account);
                wanted[index] = fitted with { Trill = Trilled(each, note, fitted.Pitch.MidiNumber, index, account) };
            }
        }

        return wanted;
    }

    /// <summary>The pitch of the fret and the bend that sound what is aimed at.</summary>
    private WantedNote Bent(List<WantedNote> wanted, int index, int aim, MoveAccount account)
    {
        var (each, note) = (wanted[index], path.Notes[index]);
        var rest = note.Bend % 100;
        if (note.Has(Technique.Release) && each.Before is { } before)
        {
            // The string comes down at the fret at which it was bent, whatever that has become.
            var held = wanted[before];
            var let =
                sounded[index].Pitch.MidiNumber == held.Pitch.MidiNumber
                    ? sounded[index].Pitch
                    : Spelled(note.Start, held.Pitch.MidiNumber);
            var left = (100 * (aim - held.Pitch.MidiNumber)) + rest;
            if (left >= 0 && left < held.Bend)
            {
                return each with { Pitch = let, Bend = left };
            }

            var kept = Math.Clamp(note.Bend, 0, Math.Max(0, held.Bend - PathNote.BendStep));
            account.Tell(index, new MoveLoss.ReleaseEnd(kept));
            return each with { Pitch = let, Bend = kept };
        }

        if (note.Bend < 100)
        {
            return each with
            {
                Pitch = note.Has(Technique.ArtificialHarmonic)
                    ? sounded[index].Pitch - Interval.Octave
                    : sounded[index].Pitch,
            };
        }

        // Where the bend begins keeps its function too; the amount follows.
        if (Tone(note, note.Pitch) is { Why.IsException: false, Pitch: var start })
        {
            var amount = (100 * (aim - start.MidiNumber)) + rest;
            if (amount > 0 && amount <= Math.Max(note.Bend, 400))
            {
                return each with { Pitch = start, Bend = amount };
            }

            account.Tell(index, new MoveLoss.BendStart(start, sounded[index].Pitch, amount, note.Bend));
        }

        return each with
        {
            Pitch = Spelled(note.Start, aim - (note.Bend / 100)),
        };
    }

    private int? Trilled(WantedNote each, PathNote note, int fret, int index, MoveAccount account)
    {
        if (each.Trill is not { } trill)
        {
            return null;
        }

        var pitch = note.Pitch.MidiNumber + trill;
        var other = Tone(note, path.ChordAt(note.Start)?.Spell(pitch) ?? Pitch.FromMidi(pitch));
        if (other is not { } refitted)
        {
            return trill;
        }

        var now = refitted.Pitch.MidiNumber - fret;
        if (Math.Sign(now) == Math.Sign(trill))
        {
            return now;
        }

        account.Tell(index, new MoveLoss.TrillNote());
        return trill;
    }

    private Pitch Spelled(Fraction beat, int midiNumber) =>
        NewChordAt(beat)?.Spell(midiNumber) ?? Pitch.FromMidi(midiNumber);

    private Chord? NewChordAt(Fraction beat) => to.At((beat % to.Beats).Reduce()).Chord;

    private Interval RootShift(Fraction beat) =>
        path.ChordAt(beat) is { } from && NewChordAt(beat) is { } chord
            ? ToneFit.Shift(from.Root, chord.Root) + Octaves(beat)
            : default;

    private Interval Octaves(Fraction beat)
    {
        var span = octaves.FindIndex(each => beat < each.End);
        return span < 0 ? default : new(7 * octaves[span].Octaves, 12 * octaves[span].Octaves);
    }

    private ChordSounds SoundsOf(Chord chord, bool isNew)
    {
        if (!sounds.TryGetValue((chord, isNew), out var found))
        {
            sounds[(chord, isNew)] = found = ChordSounds.Of(chord, isNew ? to.Key : path.Changes?.Key);
        }

        return found;
    }

    /// <summary>What a tone of the chord, of the next one or of the scale becomes; null for any other.</summary>
    private Refitted? Tone(PathNote note, Pitch pitch)
    {
        var isNamed = path.ChordAt(note.Start) is not null && NewChordAt(note.Start) is not null;
        return ToneNear(note, pitch) is { } near
            ? near with
            {
                Pitch = isNamed ? near.Pitch + Octaves(note.Start) : near.Pitch,
            }
            : null;
    }

    /// <summary>The same, all roots going the short way.</summary>
    private Refitted? ToneNear(PathNote note, Pitch pitch)
    {
        var (before, after) = (path.ChordAt(note.Start), NewChordAt(note.Start));
        if (before is null || after is null)
        {
            return new(pitch, new RefitReason.NoChord(Before: before is not null, Now: after is not null));
        }

        var (from, chord) = (SoundsOf(before, false), SoundsOf(after, true));
        var above = Above(before, pitch);
        if (from.ToneAt(above) is { } tone)
        {
            return ToneFit.OfTone(pitch, tone, from, chord, isEarly: false);
        }

        if (Anticipated(note) is { } change && path.ChordAt(change) is { } next && NewChordAt(change) is { } newNext)
        {
            var ahead = SoundsOf(next, false);
            if (ahead.ToneAt(Above(next, pitch)) is { } early)
            {
                return ToneFit.OfTone(pitch, early, ahead, SoundsOf(newNext, true), isEarly: true);
            }
        }

        if (pitch.PitchClass == before.Bass.PitchClass && after.Bass != after.Root)
        {
            var shift = ToneFit.Shift(before.Bass, after.Bass);
            return new(
                Pitch.Nearest(after.Bass, pitch.MidiNumber + shift.Semitones),
                new RefitReason.Bass(before, after)
            );
        }

        return from.ColourAt(above) is { } colour ? ToneFit.OfColour(pitch, colour, from, chord) : null;
    }

    /// <summary>What is no tone of chord or scale: led by where it goes.</summary>
    private Refitted Led(int index)
    {
        var note = path.Notes[index];
        var pitch = path.SoundingPitch(note);
        if (!note.IsDead && Target(index) is { } target)
        {
            var other = path.SoundingPitch(path.Notes[target]);
            var distance = pitch.MidiNumber - other.MidiNumber;
            var aim = sounded[target].Pitch;
            var moved = aim + (pitch - other);
            return new(
                Math.Abs(moved.Name.Alteration) > 1 ? Spelled(note.Start, moved.MidiNumber) : moved,
                new RefitReason.Leading(distance, aim.Name)
            );
        }

        var kept = pitch + RootShift(note.Start);
        return new(
            Math.Abs(kept.Name.Alteration) > 2 ? Spelled(note.Start, kept.MidiNumber) : kept,
            new RefitReason.Unled()
        );
    }

    /// <summary>The note that another approaches: the next, or the one after that, at most a whole tone away.</summary>
    private int? Target(int index)
    {
        var note = path.Notes[index];
        var pitch = path.SoundingPitch(note).MidiNumber;
        var (groups, start, end) = (0, note.Start, note.End);
        (int Index, int Distance)? best = null;
        for (var later = index + 1; later < path.Notes.Count; later++)
        {
            var other = path.Notes[later];
            if (other.IsDead || other.Start == note.Start)
            {
                continue;
            }

            if (other.Start > start)
            {
                groups++;
                if (best is not null || groups > 2 || other.Start > end + Fraction.One)
                {
                    break;
                }

                start = other.Start;
            }

            end = other.End > end ? other.End : end;
            var distance = Math.Abs(path.SoundingPitch(other).MidiNumber - pitch);
            if (distance is 1 or 2 && (best is null || distance < best.Value.Distance))
            {
                best = (later, distance);
            }
        }

        return best?.Index;
    }

    /// <summary>The beat of the change that a note sounds up to and comes just before; null for none.</summary>
    private Fraction? Anticipated(PathNote note)
    {
        var changes = path.Changes!;
        var at = (note.Start % changes.Beats).Reduce();
        var change = (note.Start + changes.At(at).End - at).Reduce();
        return change - note.Start <= HalfBeat && note.End >= change ? change : null;
    }

    private static int Above(Chord chord, Pitch pitch) => pitch.PitchClass - chord.Root.PitchClass;
}
