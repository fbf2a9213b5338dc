using System.Numerics;
using Fractions;
using TheoryKit.Theory.Notes;
using TheoryKit.Values;

namespace TheoryKit.Theory.Progressions;

/// <summary>
/// A time signature: how many beats a bar has and which note is a beat, <c>3/4</c>. A beat here is always the lower
/// number's note, in 6/8 an eighth; the felt <see cref="Pulses"/> of 6/8 are two. Equal when both numbers agree (3/4 is not
/// 6/8). The default value is 4/4.
/// </summary>
/// <remarks>
/// Range: 1 to <see cref="MaxBeats"/> beats of a whole note down to a 64th. Text: the two numbers with a slash.
/// </remarks>
[ReadAs("a time signature")]
[EqualBy(nameof(beats), nameof(unitLog))]
public readonly partial struct TimeSignature : IEquatable<TimeSignature>, ISpanParsable<TimeSignature>, IFormattable
{
    /// <summary>The most beats in a bar: 64.</summary>
    public const int MaxBeats = 64;

    /// <summary>The shortest beat: a 64th.</summary>
    public const int MaxUnit = 64;

    // Kept as the difference to 4/4, so that the default value is that.
    private readonly sbyte beats;
    private readonly sbyte unitLog;

    /// <summary>A time signature.</summary>
    /// <param name="beats">Beats in a bar, 1 to <see cref="MaxBeats"/>.</param>
    /// <param name="unit">The note that is a beat: 1, 2, 4, 8, 16, 32 or 64.</param>
    /// <exception cref="ArgumentOutOfRangeException">Beyond these.</exception>
    public TimeSignature(int beats, int unit)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(beats, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(beats, MaxBeats);
        if (!IsUnit(unit))
        {
            throw new ArgumentOutOfRangeException(nameof(unit), unit, $"A beat is {Units} of a whole note.");
        }

        this.beats = (sbyte)(beats - 4);
        unitLog = (sbyte)(BitOperations.Log2((uint)unit) - 2);
    }

    /// <summary>4/4.</summary>
    public static TimeSignature Common => default;

    /// <summary>3/4.</summary>
    public static TimeSignature Waltz { get; } = new(3, 4);

    /// <summary>Beats in a bar, the upper number.</summary>
    public int Beats => beats + 4;

    /// <summary>The note that is a beat, the lower number: 4 for a quarter.</summary>
    public int Unit => 1 << (unitLog + 2);

    /// <summary>The length of a beat in whole notes.</summary>
    public Fraction BeatLength => new(1, Unit);

    /// <summary>The length of a bar in whole notes.</summary>
    public Fraction BarLength => new(Beats, Unit);

    /// <summary>The length of a bar in quarter notes.</summary>
    public Fraction QuartersPerBar => new(4 * Beats, Unit);

    /// <summary>Whether beats are felt in threes: 6, 9, 12, … beats.</summary>
    public bool IsCompound => Beats > 3 && Beats % 3 == 0;

    /// <summary>How many pulses are felt in a bar: a third of the beats in a compound time, else all of them.</summary>
    public int Pulses => IsCompound ? Beats / 3 : Beats;

    /// <summary>
    /// Where a bar has weight, in beats from its beginning: every pulse of a compound time (0 and 3 in 6/8); else the first of each group
    /// of pulses, groups of two where the number is even (0 and 2 in 4/4, 0 in 2/4), and a group of three before groups of two where it is
    /// odd (0 in 3/4, 0 and 3 in 5/4, 0, 3 and 5 in 7/8).
    /// </summary>
    public IReadOnlyList<int> StrongBeats
    {
        get
        {
            var time = this;
            return [.. Enumerable.Range(0, Beats).Where(beat => time.IsStrong(beat))];
        }
    }

    /// <summary>Whether a beat, counted from the beginning of the bar, is one of <see cref="StrongBeats"/>.</summary>
    public bool IsStrong(Fraction beat)
    {
        var reduced = beat.Reduce();
        return reduced.Denominator.IsOne
            && reduced >= Fraction.Zero
            && reduced < Beats
            && IsStrong((int)reduced.Numerator);
    }

    internal bool IsStrong(int beat) =>
        IsCompound ? beat % 3 == 0
        : Beats % 2 == 0 ? beat % 2 == 0
        : beat == 0 || (beat % 2 == 1 && beat is >= 3 && beat < Beats);

    private const string Units = "1, 1/2, 1/4, 1/8, 1/16, 1/32 or 1/64";

    /// <inheritdoc/>
    public override int GetHashCode() => (beats * 8) + unitLog;

    /// <summary>The signature as <see cref="Parse(string, IFormatProvider?)"/> reads it, <c>3/4</c>.</summary>
    public override string ToString() => $"{Beats}/{Unit}";

    /// <summary>The same text for each format.</summary>
    /// <exception cref="FormatException">Another format than "G" or "P".</exception>
    public string ToString(string? format, IFormatProvider? formatProvider = null)
    {
        _ = TextFormat.IsPrinted(format);
        return ToString();
    }

    internal static bool Read(ref TextCursor cursor, out TimeSignature time)
    {
        time = default;
        var start = cursor.Position;
        if (!cursor.TakeNumber(2, out var beats) || beats is < 1 or > MaxBeats)
        {
            return cursor.Fail(start, $"the beats of a bar, 1 to {MaxBeats} (as in 3/4)");
        }

        if (!cursor.Take('/'))
        {
            return cursor.Fail("a slash after the beats (as in 3/4)");
        }

        start = cursor.Position;
        if (!cursor.TakeNumber(2, out var unit) || !IsUnit(unit))
        {
            return cursor.Fail(start, "the note that is a beat: 1, 2, 4, 8, 16, 32 or 64 (as in 3/4)");
        }

        time = new(beats, unit);
        return true;
    }

    private static bool IsUnit(int unit) => unit is > 0 and <= MaxUnit && BitOperations.IsPow2(unit);
}
