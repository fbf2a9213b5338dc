using TheoryKit.Values;

namespace TheoryKit.Theory.Notes;

/// <summary>
/// An interval: so many letters and so many semitones, ascending or descending. Equal when both agree (A4 is not d5).
/// The default value is the perfect unison.
/// </summary>
/// <remarks>
/// Range: up to <see cref="MaxSteps"/> letters, augmented or diminished up to <see cref="MaxAlteration"/> times. Text: the
/// quality P, M, m, A or d (A and d as often as needed, <c>AA4</c>), then the number counted from 1; a minus sign in front
/// descends: <c>m3</c>, <c>P5</c>, <c>A4</c>, <c>M9</c>, <c>-m2</c>.
/// </remarks>
[ReadAs("an interval")]
[EqualBy(nameof(steps), nameof(semitones))]
[Ordered]
public readonly partial struct Interval
    : IEquatable<Interval>,
        IComparable<Interval>,
        ISpanParsable<Interval>,
        IFormattable
{
    /// <summary>The most letters an interval spans: 140, which is twenty octaves.</summary>
    public const int MaxSteps = 140;

    /// <summary>The most times an interval is augmented or diminished: 23, as from F with 11 flats to B with 11 sharps.</summary>
    public const int MaxAlteration = (2 * NoteName.MaxAlteration) + 1;

    private readonly short steps;
    private readonly short semitones;

    /// <summary>An interval of <paramref name="steps"/> letters and <paramref name="semitones"/> semitones, both negative when it descends.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Beyond the range given in the remarks on the type.</exception>
    public Interval(int steps, int semitones)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(steps, -MaxSteps);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(steps, MaxSteps);
        if (Shift(steps, semitones) is < -MaxAlteration or > MaxAlteration)
        {
            throw new ArgumentOutOfRangeException(
                nameof(semitones),
                semitones,
                $"{steps} letters and {semitones} semitones differ too much: the interval would be augmented or diminished more than {MaxAlteration} times."
            );
        }

        this.steps = (short)steps;
        this.semitones = (short)semitones;
    }

    /// <summary>P1.</summary>
    public static Interval Unison => default;

    /// <summary>P8.</summary>
    public static Interval Octave { get; } = new(7, 12);

    /// <summary>Letters from the lower to the upper note: 0 for a unison, 2 for a third; negative when descending.</summary>
    public int Steps => steps;

    /// <summary>Semitones; negative when descending.</summary>
    public int Semitones => semitones;

    /// <summary>The number as it is spoken, from 1: 3 for a third, 9 for a ninth; never negative.</summary>
    public int Number => Math.Abs(steps) + 1;

    /// <summary>Whether it goes down.</summary>
    public bool Descends => steps < 0 || (steps == 0 && semitones < 0);

    /// <summary>The quality: P, M, m, or as many A or d as needed.</summary>
    public string Quality
    {
        get
        {
            var shift = Shift(Math.Abs(steps), Descends ? -semitones : semitones);
            if (IsPerfectNumber(steps))
            {
                return shift == 0 ? "P" : new string(shift > 0 ? 'A' : 'd', Math.Abs(shift));
            }

            return shift switch
            {
                0 => "M",
                -1 => "m",
                > 0 => new string('A', shift),
                _ => new string('d', -shift - 1),
            };
        }
    }

    /// <summary>The same within one octave: a tenth becomes a third, an octave stays an octave.</summary>
    public Interval Simple
    {
        get
        {
            var (up, sign) = Descends ? (-this, -1) : (this, 1);
            var octaves = up.steps <= 7 ? 0 : (up.steps - 1) / 7;
            return new(sign * (up.steps - (7 * octaves)), sign * (up.semitones - (12 * octaves)));
        }
    }

    /// <summary>What makes it up to the next octave: a m3 becomes a M6. For an interval within the octave.</summary>
    public Interval Inversion => Descends ? -(-this).Inversion : Octave - Simple;

    /// <summary>Whether it spans more than an octave.</summary>
    public bool IsCompound => Math.Abs(steps) > 7;

    /// <summary>One after the other.</summary>
    public static Interval operator +(Interval left, Interval right) => left.Add(right);

    /// <summary>The first less the second.</summary>
    public static Interval operator -(Interval left, Interval right) => left.Add(right.Negate());

    /// <summary>The same in the other direction.</summary>
    public static Interval operator -(Interval interval) => interval.Negate();

    /// <summary>One after the other.</summary>
    public Interval Add(Interval other) => new(steps + other.steps, semitones + other.semitones);

    /// <summary>The same in the other direction.</summary>
    public Interval Negate() => new(-steps, -semitones);

    /// <inheritdoc/>
    public int CompareTo(Interval other)
    {
        var bySemitones = semitones.CompareTo(other.semitones);
        return bySemitones != 0 ? bySemitones : steps.CompareTo(other.steps);
    }

    /// <inheritdoc/>
    public override int GetHashCode() => (steps * 512) + semitones;

    /// <summary>The interval as <see cref="Parse(string, IFormatProvider?)"/> reads it: <c>m3</c>, <c>-P4</c>.</summary>
    public override string ToString() => $"{(Descends ? "-" : "")}{Quality}{Number}";

    /// <summary>The same text for each format; intervals have no printed signs.</summary>
    /// <exception cref="FormatException">Another format than "G" or "P".</exception>
    public string ToString(string? format, IFormatProvider? formatProvider = null)
    {
        _ = TextFormat.IsPrinted(format);
        return ToString();
    }

    private static bool Read(ref TextCursor cursor, out Interval interval)
    {
        interval = default;
        var descends = cursor.Take('-');
        var (start, quality) = (cursor.Position, cursor.Current);
        if (quality is not ('P' or 'M' or 'm' or 'A' or 'd'))
        {
            return cursor.Fail("a quality: P, M, m, A or d (as in m3, P5, A4; -m3 is down)");
        }

        while (cursor.Take(quality)) { }

        var times = cursor.Position - start;
        if (times > (quality is 'A' or 'd' ? MaxAlteration : 1))
        {
            return cursor.Fail(start, $"P, M or m once, A or d at most {MaxAlteration} times");
        }

        var numberStart = cursor.Position;
        if (!cursor.TakeNumber(3, out var number) || number is < 1 or > MaxSteps + 1)
        {
            return cursor.Fail(numberStart, $"a number from 1 to {MaxSteps + 1}");
        }

        var perfect = IsPerfectNumber(number - 1);
        if (perfect ? quality is 'M' or 'm' : quality is 'P')
        {
            return cursor.Fail(
                start,
                perfect
                    ? $"P, A or d before {number}: it is perfect, not major or minor"
                    : $"M, m, A or d before {number}: it is never perfect"
            );
        }

        var shift = (quality, perfect) switch
        {
            ('A', _) => times,
            ('d', true) => -times,
            ('d', false) => -times - 1,
            ('m', _) => -1,
            _ => 0,
        };
        if (Math.Abs(shift) > MaxAlteration)
        {
            return cursor.Fail(start, $"d at most {MaxAlteration - 1} times before {number}");
        }

        var up = new Interval(number - 1, Diatonic.Semitones(number - 1) + shift);
        interval = descends ? -up : up;
        return true;
    }

    private static bool IsPerfectNumber(int steps) => (Math.Abs(steps) % Diatonic.StepsPerOctave) is 0 or 3 or 4;

    private static int Shift(int steps, int semitones) =>
        steps < 0 ? -semitones - Diatonic.Semitones(-steps) : semitones - Diatonic.Semitones(steps);
}
