using System.Numerics;
using Fractions;
using TheoryKit.Paths.Timing;
using TheoryKit.Theory.Progressions;

namespace TheoryKit.Drawing.Tab;

/// <summary>A note value of a written rhythm, or a rest.</summary>
/// <param name="Start">When it starts, in beats.</param>
/// <param name="Beats">How long it is, in beats.</param>
/// <param name="Value">How that is written; null where no value writes it.</param>
/// <param name="IsRest">Whether nothing is struck.</param>
/// <param name="IsTied">Whether it goes on from the one before.</param>
internal sealed record RhythmPart(Fraction Start, Fraction Beats, WrittenValue? Value, bool IsRest, bool IsTied)
{
    public Fraction End => (Start + Beats).Reduce();
}

/// <summary>
/// The rhythm of a path in one row: what starts together is one event, which lasts until the next one starts or the last of
/// its notes ends. Cut at bar lines, with rests between, beamed within the beat.
/// </summary>
internal static class WrittenRhythm
{
    /// <summary>The parts of events in order, with rests up to an end.</summary>
    public static IReadOnlyList<RhythmPart> Of(
        IEnumerable<(Fraction Start, Fraction End)> events,
        Fraction beats,
        TimeSignature time
    )
    {
        var parts = new List<RhythmPart>();
        var at = Fraction.Zero;
        var all = events.ToList();
        var filled = FilledBars(all, time);
        foreach (var (start, end) in all)
        {
            Rest(at, start);
            if (filled.TryGetValue(Whole(start / time.Beats), out var equal))
            {
                parts.Add(new(start.Reduce(), (end - start).Reduce(), equal, false, false));
                at = end;
                continue;
            }

            var isTied = false;
            foreach (var (from, length, value) in WrittenValue.Split(start, end - start, time))
            {
                parts.Add(new(from, length, value, false, isTied));
                isTied = true;
            }

            at = end;
        }

        Rest(at, beats);
        return parts;

        void Rest(Fraction from, Fraction to)
        {
            foreach (var (start, length, value) in Rests(from, to, time))
            {
                parts.Add(new(start, length, value, true, false));
            }
        }
    }

    /// <summary>
    /// A silence as rests that keep the pulses in sight: a whole bar is one rest; otherwise each rest is the longest one that stands at a
    /// multiple of itself, from half a bar down to a pulse, a beat and halves of that. Only a pulse of three beats is dotted.
    /// </summary>
    private static IEnumerable<(Fraction Start, Fraction Beats, WrittenValue? Value)> Rests(
        Fraction from,
        Fraction to,
        TimeSignature time
    )
    {
        while (from < to)
        {
            var bar = (Fraction)(Whole(from / time.Beats) * time.Beats);
            var place = from - bar;
            var left = (to < bar + time.Beats ? to : bar + time.Beats) - from;
            if (left == time.Beats)
            {
                yield return (from.Reduce(), left, WrittenValue.Of(left * time.BeatLength));
                from += left;
                continue;
            }

            var beat = (Fraction)(Whole(place) + 1) - place;
            var inBeat = left < beat ? left : beat;
            if (inBeat < Fraction.One && !(IsHalved(place) && IsHalved(place + inBeat)))
            {
                // Part of a tuplet.
                foreach (var part in WrittenValue.Split(from, inBeat, time))
                {
                    yield return part;
                }

                from += inBeat;
                continue;
            }

            var length = RestLengths(time)
                .FirstOrDefault(
                    each => each.Length <= left && (place / each.Grid).Reduce().Denominator.IsOne,
                    (Length: inBeat, Grid: inBeat)
                )
                .Length;
            yield return (from.Reduce(), length.Reduce(), WrittenValue.Of(length * time.BeatLength));
            from += length;
        }
    }

    private static bool IsHalved(Fraction place) => place.Reduce().Denominator.IsPowerOfTwo;

    /// <summary>The lengths of rests, longest first, and what they stand at multiples of, in beats.</summary>
    private static IEnumerable<(Fraction Length, Fraction Grid)> RestLengths(TimeSignature time)
    {
        var pulse = time.IsCompound ? 3 : 1;
        for (var pulses = time.Pulses; pulses > 1 && pulses % 2 == 0; )
        {
            pulses /= 2;
            if (WrittenValue.Of(pulses * pulse * time.BeatLength) is { } value && value.Dots == (pulse == 3 ? 1 : 0))
            {
                yield return (pulses * pulse, pulses * pulse);
            }
        }

        if (time.IsCompound)
        {
            yield return (3, 3);
            yield return (2, 3);
        }
        else if (time.Unit >= 8)
        {
            yield return (2, 2);
        }

        for (var length = Fraction.One; length * time.BeatLength >= new Fraction(1, WrittenValue.MaxUnit); length /= 2)
        {
            yield return (length, length);
        }
    }

    /// <summary>
    /// How the notes of bars are written that are filled by equal ones only dots could write, 8 in 3/4: as a tuplet of the whole bar.
    /// </summary>
    private static Dictionary<BigInteger, WrittenValue> FilledBars(
        IEnumerable<(Fraction Start, Fraction End)> events,
        TimeSignature time
    )
    {
        var found = new Dictionary<BigInteger, WrittenValue>();
        if (time.IsCompound)
        {
            return found;
        }

        foreach (var bar in events.GroupBy(each => Whole(each.Start / time.Beats)))
        {
            var notes = bar.ToList();
            var length = new Fraction(time.Beats, notes.Count).Reduce();
            var start = (Fraction)(bar.Key * time.Beats);
            if (
                notes.Count > time.Beats
                && WrittenValue.Of(length * time.BeatLength) is { Dots: > 0, Tuplet: 1 }
                && notes
                    .Index()
                    .All(each =>
                        each.Item.Start == start + (each.Index * length)
                        && each.Item.End == start + ((each.Index + 1) * length)
                    )
            )
            {
                // As many plain notes as fill the bar, the most that are fewer than these.
                for (var unit = WrittenValue.MaxUnit; unit >= time.Unit; unit /= 2)
                {
                    var plain = time.Beats * unit / time.Unit;
                    if (plain < notes.Count)
                    {
                        found[bar.Key] = new(unit, 0, notes.Count, plain);
                        break;
                    }
                }
            }
        }

        return found;
    }

    /// <summary>The events of a path: what starts together.</summary>
    public static IEnumerable<(Fraction Start, Fraction End)> Events(TheoryKit.Paths.Path path)
    {
        var groups = path.Notes.GroupBy(static note => note.Start).ToList();
        for (var index = 0; index < groups.Count; index++)
        {
            var end = groups[index].Select(static note => note.End).Max();
            if (index + 1 < groups.Count && groups[index + 1].Key < end)
            {
                end = groups[index + 1].Key;
            }

            yield return (groups[index].Key, end);
        }
    }

    /// <summary>Runs of parts under one beam, or with a flag where the run is a single one; each as first index and count.</summary>
    public static IEnumerable<(int First, int Count)> Beams(IReadOnlyList<RhythmPart> parts, TimeSignature time)
    {
        var group = Group(time);
        var groups = BigInteger.Max(1, Whole(time.Beats / group));
        var tuplets = new int[parts.Count];
        foreach (var ((first, count), index) in Tuplets(parts, time).Select(static (run, index) => (run, index)))
        {
            // A tuplet that goes over several groups has a beam of its own.
            if (Bar(parts[first].Start) != Bar(parts[first + count - 1].Start))
            {
                tuplets.AsSpan(first, count).Fill(index + 1);
            }
        }

        for (var first = 0; first < parts.Count; )
        {
            if (!IsBeamed(parts[first]))
            {
                first++;
                continue;
            }

            var last = first;
            while (
                last + 1 < parts.Count
                && IsBeamed(parts[last + 1])
                && Key(last + 1) == Key(first)
                && parts[last + 1].Start == parts[last].End
            )
            {
                last++;
            }

            yield return (first, last - first + 1);
            first = last + 1;
        }

        (int, BigInteger, BigInteger) Key(int index)
        {
            var (bar, place) = Bar(parts[index].Start);
            return tuplets[index] > 0 ? (tuplets[index], bar, 0) : (0, bar, place);
        }

        // What is left over at the end of a bar goes with the last group: 2 + 2 + 3.
        (BigInteger, BigInteger) Bar(Fraction start)
        {
            var bar = Whole(start / time.Beats);
            return (bar, BigInteger.Min(Whole((start - (Fraction)(bar * time.Beats)) / group), groups - 1));
        }
    }

    /// <summary>Runs of parts that make up one tuplet, each as first index and count.</summary>
    public static IEnumerable<(int First, int Count)> Tuplets(IReadOnlyList<RhythmPart> parts, TimeSignature time)
    {
        for (var first = 0; first < parts.Count; )
        {
            if (parts[first].Value is not { Tuplet: > 1 } value)
            {
                first++;
                continue;
            }

            var (count, sum) = (0, Fraction.Zero);
            while (
                first + count < parts.Count
                && parts[first + count].Value is { } next
                && (next.Tuplet, next.InPlaceOf) == (value.Tuplet, value.InPlaceOf)
            )
            {
                sum = (sum + next.Length).Reduce();
                count++;
                if (
                    value.Tuplet % 2 == 1
                        ? sum.Denominator.IsPowerOfTwo
                        : sum == new Fraction(value.InPlaceOf, value.Unit).Reduce()
                )
                {
                    break;
                }
            }

            yield return (first, count);
            first += count;
        }
    }

    /// <summary>The whole number below or at a fraction that is not negative.</summary>
    public static BigInteger Whole(Fraction value) => BigInteger.Divide(value.Numerator, value.Denominator);

    private static bool IsBeamed(RhythmPart part) => !part.IsRest && part.Value is { Unit: >= 8 };

    /// <summary>What one beam may span, in beats: a felt pulse, or a quarter note.</summary>
    private static Fraction Group(TimeSignature time) =>
        time.IsCompound || (time.Beats == 3 && time.Unit >= 8) ? 3
        : time.Unit <= 4 ? new Fraction(time.Unit, 4)
        : new Fraction(time.Unit / 4);
}
