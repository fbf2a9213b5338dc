using Fractions;
using TheoryKit.Theory.Progressions;
using TheoryKit.Values;

namespace TheoryKit.Paths.Timing;

/// <summary>
/// How a length is written: a note value, dots, and the tuplet it stands in. Equal when all of these agree.
/// </summary>
/// <param name="Unit">The note value as a part of a whole note: 1, 2, 4, … 64 for a whole, half, quarter note and so on.</param>
/// <param name="Dots">How many dots: 0, 1 or 2.</param>
/// <param name="Tuplet">How many notes stand in the place of <paramref name="InPlaceOf"/>; 1 for no tuplet.</param>
/// <param name="InPlaceOf">In the place of how many; 1 for no tuplet.</param>
public readonly record struct WrittenValue(int Unit, int Dots = 0, int Tuplet = 1, int InPlaceOf = 1)
{
    /// <summary>The finest value written: a 64th.</summary>
    public const int MaxUnit = 64;

    /// <summary>The most dots: 2.</summary>
    public const int MaxDots = 2;

    /// <summary>The length in whole notes.</summary>
    public Fraction Length =>
        (new Fraction((1 << (Dots + 1)) - 1, Unit << Dots) * new Fraction(InPlaceOf, Tuplet)).Reduce();

    /// <summary>
    /// A length as one value, if it can be: plain, dotted, or in a tuplet of as many as it divides by (3 for a third, 5, 7, 9 and more)
    /// in the place of the next lower power of two; null if it needs several, tied.
    /// </summary>
    /// <param name="wholeNotes">The length in whole notes, more than 0.</param>
    public static WrittenValue? Of(Fraction wholeNotes)
    {
        var length = wholeNotes.Reduce();
        if (length.IsNaN || length <= Fraction.Zero || length > 2 || length.Denominator > MaxUnit * 64)
        {
            return null;
        }

        // What is odd in the denominator is the tuplet.
        var odd = (int)length.Denominator;
        while (odd % 2 == 0)
        {
            odd /= 2;
        }

        var inPlaceOf = 1;
        while (inPlaceOf * 2 <= odd)
        {
            inPlaceOf *= 2;
        }

        var plain = (length * new Fraction(odd, inPlaceOf)).Reduce();
        for (var dots = 0; dots <= MaxDots; dots++)
        {
            // (2^(dots+1) - 1) / (unit * 2^dots)
            var unit = (new Fraction((1 << (dots + 1)) - 1, 1 << dots) / plain).Reduce();
            if (
                unit.Denominator.IsOne
                && unit.Numerator <= MaxUnit
                && System.Numerics.BitOperations.IsPow2((int)unit.Numerator)
            )
            {
                return new((int)unit.Numerator, dots, odd, inPlaceOf);
            }
        }

        return null;
    }

    /// <summary>
    /// A length that starts somewhere in a bar as values tied together: cut at every bar line, then where one value does not do at the
    /// strongest place inside: the middle of the bar, a beat, a half of a beat and so on. A value without a tuplet starts where no
    /// tuplet is open, one in a tuplet stays within a beat or starts at a multiple of itself, so that tuplets come out whole.
    /// </summary>
    /// <param name="start">Where it starts, in beats from the beginning of a bar.</param>
    /// <param name="beats">How long it is, in beats.</param>
    /// <param name="time">The time signature.</param>
    /// <exception cref="ArgumentOutOfRangeException">Start or length is not 0 to <see cref="Path.MaxBeats"/> beats.</exception>
    /// <returns>The parts in order; a part whose length no value writes has none.</returns>
    public static IReadOnlyList<(Fraction Start, Fraction Beats, WrittenValue? Value)> Split(
        Fraction start,
        Fraction beats,
        TimeSignature time
    )
    {
        start = Check.Beats(start, Fraction.Zero, Path.MaxBeats);
        beats = Check.Beats(beats, Fraction.Zero, Path.MaxBeats);
        var parts = new List<(Fraction, Fraction, WrittenValue?)>();
        var end = start + beats;
        while (start < end)
        {
            var bar = start / time.Beats;
            var barStart = new Fraction(System.Numerics.BigInteger.Divide(bar.Numerator, bar.Denominator)) * time.Beats;
            var barEnd = barStart + time.Beats;
            var to = barEnd < end ? barEnd : end;
            Cut(start, to, barStart);
            start = to;
        }

        return parts;

        void Cut(Fraction from, Fraction to, Fraction barStart)
        {
            var value = Of((to - from) * time.BeatLength);
            if (
                (value is { } found && Fits(found, from - barStart, to - barStart))
                || Strongest(from, to, barStart) is not { } middle
            )
            {
                parts.Add((from.Reduce(), (to - from).Reduce(), value));
                return;
            }

            Cut(from, middle, barStart);
            Cut(middle, to, barStart);
        }

        bool Fits(WrittenValue value, Fraction from, Fraction to) =>
            value.Tuplet == 1
                ? (from * time.BeatLength).Reduce().Denominator.IsPowerOfTwo
                : (from / (to - from)).Reduce().Denominator.IsOne || BeatAfter(from) >= to;

        static Fraction BeatAfter(Fraction from) =>
            new(System.Numerics.BigInteger.Divide(from.Numerator, from.Denominator) + 1);

        // A multiple of the coarsest grid that lies inside: half the bar, a beat, and halves of that down to a third of a 64th.
        Fraction? Strongest(Fraction from, Fraction to, Fraction barStart)
        {
            var grid = time.Beats % 2 == 0 ? new Fraction(time.Beats / 2) : Fraction.One;
            for (
                ;
                grid * time.BeatLength >= new Fraction(1, 3 * MaxUnit);
                grid = grid > Fraction.One ? Fraction.One : grid / 2
            )
            {
                var steps = from / grid;
                var next =
                    new Fraction(System.Numerics.BigInteger.Divide(steps.Numerator, steps.Denominator) + 1) * grid;
                if (next >= to)
                {
                    continue;
                }

                // Of several as strong, the last one up to which one value will do.
                var last = next;
                for (var place = next + grid; place < to; place += grid)
                {
                    if (
                        Of((place - from) * time.BeatLength) is { } value
                        && Fits(value, from - barStart, place - barStart)
                    )
                    {
                        last = place;
                    }
                }

                return last;
            }

            return null;
        }
    }

    /// <summary>The value in words: <c>dotted 8th, 3 in the place of 2</c>.</summary>
    public override string ToString()
    {
        var name = Unit switch
        {
            1 => "whole",
            2 => "half",
            4 => "quarter",
            32 => "32nd",
            var unit => $"{unit}th",
        };
        return $"{(Dots == 0 ? "" : Dots == 1 ? "dotted " : "double dotted ")}{name}{(Tuplet == 1 ? "" : $", {Tuplet} in the place of {InPlaceOf}")}";
    }
}
