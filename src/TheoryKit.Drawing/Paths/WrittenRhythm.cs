using System.Numerics;
using Fractions;
using TheoryKit.Paths;
using TheoryKit.Theory;

namespace TheoryKit.Drawing;

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
        foreach (var (start, end) in events)
        {
            Rest(at, start);
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
            // A rest first fills up its beat, so that the beats stay in sight.
            while (from < to)
            {
                var next = (Fraction)(Whole(from) + 1);
                var until = from == Whole(from) || next > to ? to : next;
                foreach (var (start, length, value) in WrittenValue.Split(from, until - from, time))
                {
                    parts.Add(new(start, length, value, true, false));
                }

                from = until;
            }
        }
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
                && Key(parts[last + 1].Start) == Key(parts[first].Start)
                && parts[last + 1].Start == parts[last].End
            )
            {
                last++;
            }

            yield return (first, last - first + 1);
            first = last + 1;
        }

        (BigInteger, BigInteger) Key(Fraction start)
        {
            var bar = Whole(start / time.Beats);
            return (bar, Whole((start - (Fraction)(bar * time.Beats)) / group));
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
                if (sum.Denominator.IsPowerOfTwo)
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
