using Fractions;
using TheoryKit.Theory;

namespace TheoryKit.Paths;

/// <summary>What a note becomes over another chord, and why.</summary>
internal readonly record struct Refitted(Pitch Pitch, string Why, bool IsException = false);

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
/// Roots go the short way: up to a fourth up, else down; an octave from there where that keeps the line together (<see cref="OctavesOf"/>).
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
        octaves = OctavesOf();
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
    /// <param name="tell">Who is told where a bend or trill could not go where its function went.</param>
    public List<WantedNote> Wanted(TechniqueFit.Tell tell)
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
                var fitted = Bent(wanted, index, aim.MidiNumber - above, tell);
                wanted[index] = fitted with { Trill = Trilled(each, note, fitted.Pitch.MidiNumber, index, tell) };
            }
        }

        return wanted;
    }

    /// <summary>The pitch of the fret and the bend that sound what is aimed at.</summary>
    private WantedNote Bent(List<WantedNote> wanted, int index, int aim, TechniqueFit.Tell tell)
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
            tell(
                index,
                "the pitch that the release comes down to: the fret of the bend has another function now",
                kept == 0 ? "the bend let go wholly" : $"{kept} cents left of the bend"
            );
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
        if (Tone(note, note.Pitch) is { IsException: false, Pitch: var start })
        {
            var amount = (100 * (aim - start.MidiNumber)) + rest;
            if (amount > 0 && amount <= Math.Max(note.Bend, 400))
            {
                return each with { Pitch = start, Bend = amount };
            }

            tell(
                index,
                $"the pitch that the bend begins with: from {start} to {sounded[index].Pitch} it would be {amount} cents",
                $"a bend of {note.Bend} cents from another fret"
            );
        }

        return each with
        {
            Pitch = Spelled(note.Start, aim - (note.Bend / 100)),
        };
    }

    private int? Trilled(WantedNote each, PathNote note, int fret, int index, TechniqueFit.Tell tell)
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

        tell(
            index,
            "the other note of the trill: it would be the same or on the other side",
            "one as far away as before"
        );
        return trill;
    }

    private Pitch Spelled(Fraction beat, int midiNumber) =>
        NewChordAt(beat)?.Spell(midiNumber) ?? Pitch.FromMidi(midiNumber);

    private Chord? NewChordAt(Fraction beat) => to.At((beat % to.Beats).Reduce()).Chord;

    private Interval RootShift(Fraction beat) =>
        path.ChordAt(beat) is { } from && NewChordAt(beat) is { } chord
            ? Shift(from.Root, chord.Root) + Octaves(beat)
            : default;

    private Interval Octaves(Fraction beat)
    {
        var span = octaves.FindIndex(each => beat < each.End);
        return span < 0 ? default : new(7 * octaves[span].Octaves, 12 * octaves[span].Octaves);
    }

    /// <summary>
    /// How many octaves from the short way each chord goes. Over one chord that replaces two a fourth apart, each going its own short way,
    /// a step of the line would become a leap. So the sum of all ways, and twice what each differs from the one before, is least; a note that
    /// leaves the neck counts as an octave.
    /// </summary>
    private List<(Fraction End, int Octaves)> OctavesOf()
    {
        int[] choices = [0, -1, 1];
        var strings = Enumerable.Range(1, path.Neck.StringCount).ToList();
        var lowest = strings.Min(number => path.Neck.MidiNumberAt(new(number, path.Neck.OpenFret(number))));
        var highest = strings.Max(number => path.Neck.MidiNumberAt(new(number, path.Neck.Frets)));
        var spans = new List<(Fraction End, int[] Froms)>();
        var costs = new int[choices.Length];
        int[]? last = null;
        for (var beat = Fraction.Zero; beat < path.Beats; beat = spans[^1].End)
        {
            var (old, now) = (EndOf(path.Changes!, beat), EndOf(to, beat));
            var end = old < now ? old : now;
            var shift =
                path.ChordAt(beat) is { } from && NewChordAt(beat) is { } chord
                    ? Shift(from.Root, chord.Root).Semitones
                    : (int?)null;

            var pitches = path
                .Notes.Where(note => note.Start >= beat && note.Start < end)
                .Select(static note => note.Pitch.MidiNumber)
                .ToList();

            // Where there is no chord nothing moves.
            int[] ways = [.. choices.Select(choice => shift + (12 * choice) ?? 0)];
            var froms = new int[choices.Length];
            var next = new int[choices.Length];
            for (var at = 0; at < ways.Length; at++)
            {
                var way = ways[at];
                var beyond = 12 * pitches.Count(pitch => pitch + way < lowest || pitch + way > highest);
                var (before, steps) = (last, costs);
                froms[at] = Enumerable
                    .Range(0, ways.Length)
                    .MinBy(other => steps[other] + (before is null ? 0 : 2 * Math.Abs(way - before[other])));
                next[at] =
                    steps[froms[at]]
                    + (before is null ? 0 : 2 * Math.Abs(way - before[froms[at]]))
                    + Math.Abs(way)
                    + beyond;
            }

            spans.Add((end, froms));
            (costs, last) = (next, ways);
        }

        var found = new List<(Fraction End, int Octaves)>(spans.Count);
        var best = Enumerable.Range(0, costs.Length).MinBy(choice => costs[choice]);
        for (var at = spans.Count - 1; at >= 0; at--)
        {
            found.Add((spans[at].End, choices[best]));
            best = spans[at].Froms[best];
        }

        found.Reverse();
        return found;

        static Fraction EndOf(Changes changes, Fraction beat)
        {
            var at = (beat % changes.Beats).Reduce();
            return (beat + changes.At(at).End - at).Reduce();
        }
    }

    /// <summary>The short way from a root to another: up to a fourth up, else down.</summary>
    internal static Interval Shift(NoteName from, NoteName to)
    {
        var steps = Diatonic.Modulo((int)to.Letter - (int)from.Letter, Diatonic.StepsPerOctave);
        var natural = Diatonic.Semitones(steps);
        var semitones = to.PitchClass - from.PitchClass;
        semitones += 12 * (int)Math.Round((natural - semitones) / 12.0);
        var up = new Interval(steps, semitones);
        return steps <= 3 ? up : up - Interval.Octave;
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
            return new(
                pitch,
                before is null && after is null ? "there is no chord"
                    : before is null ? "there was no chord before: the pitch stays"
                    : "there is no chord now: the pitch stays",
                before is null != after is null
            );
        }

        var (from, chord) = (SoundsOf(before, false), SoundsOf(after, true));
        var above = Above(before, pitch);
        if (from.ToneAt(above) is { } tone)
        {
            return FitTone(pitch, tone, from, chord, "");
        }

        if (Anticipated(note) is { } change && path.ChordAt(change) is { } next && NewChordAt(change) is { } newNext)
        {
            var ahead = SoundsOf(next, false);
            if (ahead.ToneAt(Above(next, pitch)) is { } early)
            {
                return FitTone(pitch, early, ahead, SoundsOf(newNext, true), $", anticipating {newNext}");
            }
        }

        if (pitch.PitchClass == before.Bass.PitchClass && after.Bass != after.Root)
        {
            var shift = Shift(before.Bass, after.Bass);
            return new(
                Pitch.Nearest(after.Bass, pitch.MidiNumber + shift.Semitones),
                $"the bass of {before} becomes the bass of {after}"
            );
        }

        return from.ColourAt(above) is { } colour ? FitColour(pitch, colour, from, chord) : null;
    }

    private static Refitted FitTone(Pitch pitch, Degree tone, ChordSounds from, ChordSounds to, string more)
    {
        var number = tone.Simple.Number;
        var same = to.Tones(number).ToList();
        if (same.Count > 0)
        {
            var (there, isAlike) = Nearest(same, tone);
            var isChoice = !isAlike && (same.Count > 1 || from.Tones(number).Count() > 1);
            return At(
                pitch,
                tone,
                there,
                from,
                to,
                isChoice
                    ? $"the {tone} of {from.Chord} is one of several there or in {to.Chord}; the nearest is the {there}{more}"
                    : $"the {tone} of {from.Chord} {(tone == there ? "stays" : "becomes")} the {there} of {to.Chord}{more}",
                isChoice
            );
        }

        if (number == 3 && Suspended(to) is { } suspended)
        {
            return At(
                pitch,
                tone,
                suspended,
                from,
                to,
                $"{to.Chord} has no third; the {suspended} stands in its place{more}",
                true
            );
        }

        if (Suspended(from) == tone && to.Tones(3).ToList() is { Count: > 0 } thirds)
        {
            return At(
                pitch,
                tone,
                thirds[0],
                from,
                to,
                $"the suspended {tone} resolves to the {thirds[0]} of {to.Chord}{more}",
                true
            );
        }

        return to.Scale.WithNumber(number) is { } colour
            ? At(
                pitch,
                tone,
                Named(to.Chord, colour),
                from,
                to,
                $"{to.Chord} has no {Ordinal(tone.Number)}; its scale has the {Named(to.Chord, colour)}{more}",
                true
            )
            : Without(pitch, tone, from, to, more);
    }

    private static Refitted FitColour(Pitch pitch, Degree colour, ChordSounds from, ChordSounds to)
    {
        var name = Named(from.Chord, colour);
        var same = to.Tones(colour.Number).ToList();
        if (same.Count > 0)
        {
            var (there, isAlike) = Nearest(same, colour);
            var isChoice = !isAlike && same.Count > 1;
            return At(
                pitch,
                colour,
                there,
                from,
                to,
                isChoice
                    ? $"{to.Chord} has more than one {Ordinal(colour.Number)}; the nearest to {name} is the {there}"
                    : $"the {name} over {from.Chord} is the {there} of {to.Chord}",
                isChoice
            );
        }

        if (to.Scale.WithNumber(colour.Number) is not { } scale)
        {
            return Without(pitch, colour, from, to, "");
        }

        var (now, isSame) = (Named(to.Chord, scale), colour == scale);
        var wasOutside = IsOutside(from.Chord, colour);
        return !IsOutside(to.Chord, scale)
            ? At(
                pitch,
                colour,
                now,
                from,
                to,
                $"the {name} over {from.Chord} {(isSame ? "stays" : "follows the scale:")} {now} over {to.Chord}"
            )
            : At(
                pitch,
                colour,
                now,
                from,
                to,
                $"the {name} over {from.Chord} {(isSame ? "stays" : "becomes")} {now} over {to.Chord}, {(wasOutside ? "no colour tone there either" : "where it is no colour tone but clashes")}",
                !wasOutside
            );
    }

    private static bool IsOutside(Chord chord, Degree degree) =>
        ToneRoles.Over(degree, chord.Formula) == ToneRole.Other;

    /// <summary>What becomes of a number that neither the new chord nor its scale has.</summary>
    private static Refitted Without(Pitch pitch, Degree degree, ChordSounds from, ChordSounds to, string more)
    {
        var name = Named(from.Chord, degree);
        return to.InsteadOf(degree) is { } other
            ? At(
                pitch,
                degree,
                other,
                from,
                to,
                $"{to.Chord} and its scale have no {Ordinal(name.Number)}; the nearest to {name} is the {Named(to.Chord, other)}{more}",
                true
            )
            : At(
                pitch,
                degree,
                degree,
                from,
                to,
                $"{to.Chord} and its scale have no {Ordinal(name.Number)}; as far above the root as it was",
                true
            );
    }

    private static Refitted At(
        Pitch pitch,
        Degree before,
        Degree after,
        ChordSounds from,
        ChordSounds to,
        string why,
        bool isException = false
    )
    {
        var midi =
            pitch.MidiNumber
            + Shift(from.Chord.Root, to.Chord.Root).Semitones
            + after.Simple.Semitones
            - before.Simple.Semitones;
        return new(Pitch.Nearest(to.Chord.Root.Add(after), midi), why, isException);
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
                $"it stays {(Math.Abs(distance) == 1 ? "a semitone" : "a whole tone")} {(distance < 0 ? "below" : "above")} its target, {aim.Name} now"
            );
        }

        var kept = pitch + RootShift(note.Start);
        return new(
            Math.Abs(kept.Name.Alteration) > 2 ? Spelled(note.Start, kept.MidiNumber) : kept,
            $"it is of neither chord nor scale and leads to no note near; as far above the root as it was",
            true
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

    private static (Degree There, bool IsAlike) Nearest(List<Degree> same, Degree tone)
    {
        var there = same.MinBy(each =>
            (Math.Abs(each.Simple.Semitones - tone.Simple.Semitones), each.Simple.Semitones)
        );
        return (there, there.PitchClass == tone.PitchClass);
    }

    private static Degree? Suspended(ChordSounds of) =>
        of.Tones(3).Any() ? null
        : of.Chord.Formula.Contains(new Degree(4)) ? new Degree(4)
        : of.Chord.Formula.Contains(new Degree(2)) ? new Degree(2)
        : null;

    /// <summary>Over a seventh chord 2, 4 and 6 are called 9, 11 and 13.</summary>
    private static Degree Named(Chord chord, Degree degree) =>
        degree.Number is 2 or 4 or 6 && chord.Formula.Any(static tone => tone.Number >= 7)
            ? new(degree.Number + 7, degree.Alteration)
            : degree;

    private static string Ordinal(int number) =>
        number switch
        {
            1 => "root",
            2 => "second",
            3 => "third",
            4 => "fourth",
            5 => "fifth",
            6 => "sixth",
            7 => "seventh",
            9 => "ninth",
            11 => "eleventh",
            13 => "thirteenth",
            _ => $"{number}th",
        };

    private static int Above(Chord chord, Pitch pitch) => pitch.PitchClass - chord.Root.PitchClass;
}
