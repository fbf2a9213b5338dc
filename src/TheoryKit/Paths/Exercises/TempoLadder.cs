using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using TheoryKit.Paths.Sounding;
using TheoryKit.Values;

namespace TheoryKit.Paths.Exercises;

/// <summary>
/// Tempi to practise one after the other, from the first to the last: so many beats a minute more each time, or so many times as
/// fast. The last is always the one asked for. Equal when all that is written is.
/// </summary>
/// <remarks>
/// Text: <c>60 to 120 by 5</c> or <c>60 to 120 by *1.05</c>, and after a comma how often each is played, unless once: <c>60 to
/// 120 by 5, 3 times</c>. Tempi are 1 to 1000 beats a minute and steps up to 1000, factors more than 1 and at most 10, all with up to
/// three decimals; up to <see cref="MaxRungs"/> tempi. It also goes down: <c>120 to 60 by 5</c>.
/// </remarks>
[ReadAs("a ladder of tempi")]
[EqualBy(nameof(From), nameof(To), nameof(By), nameof(IsFactor), nameof(Repeats))]
public sealed partial class TempoLadder : IEquatable<TempoLadder>, ISpanParsable<TempoLadder>
{
    /// <summary>The most tempi: 1000.</summary>
    public const int MaxRungs = 1000;

    /// <summary>The most times that each is played: 100.</summary>
    public const int MaxRepeats = 100;

    private const int Decimals = 3;
    private const decimal MinTempo = 1;
    private const decimal MaxTempo = 1000;
    private const decimal MaxFactor = 10;

    private readonly Sequence<decimal> tempi;

    private TempoLadder(decimal from, decimal to, decimal by, bool isFactor, int repeats, List<decimal> tempi)
    {
        (From, To, By, IsFactor, Repeats) = (from, to, by, isFactor, repeats);
        this.tempi = tempi.ToSequence();
    }

    /// <summary>The first tempo, in beats a minute.</summary>
    public decimal From { get; }

    /// <summary>The last tempo.</summary>
    public decimal To { get; }

    /// <summary>How many beats a minute lie between one tempo and the next, or the factor.</summary>
    public decimal By { get; }

    /// <summary>Whether <see cref="By"/> is a factor.</summary>
    public bool IsFactor { get; }

    /// <summary>How often each tempo is played.</summary>
    public int Repeats { get; }

    /// <summary>The tempi in order, each once; those of a factor rounded to a hundredth.</summary>
    public IReadOnlyList<decimal> Tempi => tempi;

    /// <summary>Tempi the same number of beats a minute apart.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Something is out of the range that is written above.</exception>
    public static TempoLadder ByStep(decimal from, decimal to, decimal step, int repeats = 1) =>
        Make(from, to, step, false, repeats) ?? throw OutOfRange(from, to, repeats, nameof(step));

    /// <summary>Tempi each the same number of times as fast as the one before.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Something is out of the range that is written above.</exception>
    public static TempoLadder ByFactor(decimal from, decimal to, decimal factor, int repeats = 1) =>
        Make(from, to, factor, true, repeats) ?? throw OutOfRange(from, to, repeats, nameof(factor));

    /// <summary>How long a path takes, played at every tempo as often as said, in seconds, without pauses.</summary>
    public double SecondsOf(Path path)
    {
        ArgumentNullException.ThrowIfNull(path);
        return tempi.Sum(tempo => new Performance(path, (double)tempo).Seconds * Repeats);
    }

    /// <summary>The ladder as <see cref="Parse(string, IFormatProvider?)"/> reads it.</summary>
    public override string ToString() =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{From:0.###} to {To:0.###} by {(IsFactor ? "*" : "")}{By:0.###}{(Repeats > 1 ? $", {Repeats} times" : "")}"
        );

    private static ArgumentOutOfRangeException OutOfRange(decimal from, decimal to, int repeats, string by) =>
        new(
            !IsTempo(from) ? nameof(from)
                : !IsTempo(to) ? nameof(to)
                : repeats is < 1 or > MaxRepeats ? nameof(repeats)
                : by,
            $"Tempi are {MinTempo} to {MaxTempo} beats a minute, steps more than 0 and at most {MaxTempo}, factors more than 1 and at most "
                + $"{MaxFactor}, with up to {Decimals} decimals; there are up to {MaxRungs} tempi, each played 1 to {MaxRepeats} times."
        );

    private static TempoLadder? Make(decimal from, decimal to, decimal by, bool isFactor, int repeats)
    {
        if (
            !IsTempo(from)
            || !IsTempo(to)
            || !IsExact(by)
            || (isFactor ? by is <= 1 or > MaxFactor : by is <= 0 or > MaxTempo)
            || repeats is < 1 or > MaxRepeats
        )
        {
            return null;
        }

        var tempi = new List<decimal> { from };
        for (var next = from; next != to; )
        {
            next = isFactor ? (from < to ? next * by : next / by) : next + (from < to ? by : -by);
            if (from < to ? next >= to : next <= to)
            {
                next = to;
            }

            if (tempi.Count == MaxRungs)
            {
                return null;
            }

            var tempo = isFactor && next != to ? Math.Round(next, 2) : next;
            if (tempo != tempi[^1])
            {
                tempi.Add(tempo);
            }
        }

        return new(from, to, by, isFactor, repeats, tempi);
    }

    private static bool IsTempo(decimal tempo) => tempo is >= MinTempo and <= MaxTempo && IsExact(tempo);

    private static bool IsExact(decimal number) => Math.Round(number, Decimals) == number;

    private static bool Read(ref TextCursor cursor, [MaybeNullWhen(false)] out TempoLadder ladder)
    {
        ladder = null;
        var start = cursor.Position;
        if (!ReadNumber(ref cursor, out var from) || !IsTempo(from))
        {
            return cursor.Fail(start, "the first tempo, 1 to 1000 beats a minute (as in 60 to 120 by 5)");
        }

        if (!cursor.Take(" to "))
        {
            return cursor.Fail("\" to \" and the last tempo (as in 60 to 120 by 5)");
        }

        start = cursor.Position;
        if (!ReadNumber(ref cursor, out var to) || !IsTempo(to))
        {
            return cursor.Fail(start, "the last tempo, 1 to 1000 beats a minute");
        }

        if (!cursor.Take(" by "))
        {
            return cursor.Fail("\" by \" and a step (by 5) or a factor (by *1.05)");
        }

        start = cursor.Position;
        var isFactor = cursor.Take('*');
        if (!ReadNumber(ref cursor, out var by))
        {
            return cursor.Fail("a step in beats a minute, or * and a factor");
        }

        var repeats = 1;
        if (cursor.Take(", "))
        {
            var count = cursor.Position;
            if (!cursor.TakeNumber(3, out repeats) || repeats is < 1 or > MaxRepeats || !cursor.Take(" times"))
            {
                return cursor.Fail(count, $"how often each is played, 1 to {MaxRepeats} (as in 3 times)");
            }
        }

        ladder = Make(from, to, by, isFactor, repeats);
        return ladder is not null
            || cursor.Fail(
                start,
                $"a step of more than 0 and at most {MaxTempo}, or a factor of more than 1 and at most {MaxFactor}, that makes at most {MaxRungs} tempi"
            );
    }

    private static bool ReadNumber(ref TextCursor cursor, out decimal number)
    {
        number = 0;
        if (!cursor.TakeNumber(4, out var whole))
        {
            return false;
        }

        number = whole;
        if (!cursor.Take('.'))
        {
            return true;
        }

        var start = cursor.Position;
        if (!cursor.TakeNumber(Decimals, out var part))
        {
            return false;
        }

        number += new decimal(part) / (decimal)Math.Pow(10, cursor.Position - start);
        return true;
    }
}
