using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using TheoryKit.Tunings.Necks;
using TheoryKit.Tunings.Strings;
using TheoryKit.Values;

namespace TheoryKit.Tunings.Turns;

/// <summary>
/// How an instrument gets from one tuning to another: for each string what to turn, which way and how far, and in what order.
/// Equal when both tunings are.
/// </summary>
/// <remarks>
/// <para>
/// The order is kind to strings and neck. Strings that go down come first, the longest way first; then those that go up, the
/// shortest way first. So the pull of all strings together is never above what it is before or what it is after, whichever is
/// more, and the string most likely to break is turned last, when nothing else depends on it.
/// </para>
/// <para>Text: both tunings, with a comma and <c>to</c> between them: <c>E2 A2 D3 G3 B3 E4, to D2 A2 D3 G3 B3 E4</c>.</para>
/// </remarks>
[ReadAs("a scordatura")]
[EqualBy(nameof(From), nameof(To), Operators = true)]
public sealed partial class Scordatura : IEquatable<Scordatura>, ISpanParsable<Scordatura>
{
    /// <summary>The highest fret that a check asks to hold, counted from where its string begins.</summary>
    private const int HighestCheck = 12;

    private readonly ImmutableArray<StringTurn> strings; // string 1 first

    /// <summary>The way from one tuning to another.</summary>
    /// <exception cref="ArgumentException">They have not as many strings, or a string begins at another fret: they are
    /// tunings of different instruments.</exception>
    public Scordatura(Tuning from, Tuning to)
    {
        ArgumentNullException.ThrowIfNull(from);
        ArgumentNullException.ThrowIfNull(to);
        if (Difference(from, to) is { } difference)
        {
            throw new ArgumentException($"No turning leads from {from} to {to}: {difference}.", nameof(to));
        }

        (From, To) = (from, to);
        var turns = new StringTurn[from.StringCount];
        for (var number = 1; number <= turns.Length; number++)
        {
            turns[number - 1] = new(number, from[number].Open, to[number].Open);
        }

        // Down before up; down the longest way first, up the shortest: both are the lowest number of semitones first.
        int[] order =
        [
            .. turns
                .Where(static turn => turn.Direction != Turn.Leave)
                .OrderBy(static turn => turn.Semitones)
                .ThenByDescending(static turn => turn.Number)
                .Select(static turn => turn.Number),
        ];
        var right = turns
            .Where(static turn => turn.Direction == Turn.Leave)
            .Select(static turn => turn.Number)
            .ToHashSet();
        foreach (var number in order)
        {
            turns[number - 1] = turns[number - 1] with { Check = CheckOf(number, right) };
            right.Add(number);
        }

        strings = [.. turns];
        Steps = [.. order.Select(number => turns[number - 1])];
    }

    /// <summary>How it is tuned before.</summary>
    public Tuning From { get; }

    /// <summary>How it is to be tuned.</summary>
    public Tuning To { get; }

    /// <summary>What happens to each string, string 1 first.</summary>
    public IReadOnlyList<StringTurn> Strings => strings;

    /// <summary>The strings that are turned, in order.</summary>
    public IReadOnlyList<StringTurn> Steps { get; }

    /// <summary>A string by its number.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is no such string.</exception>
    public StringTurn this[int number]
    {
        get
        {
            ArgumentOutOfRangeException.ThrowIfLessThan(number, 1);
            ArgumentOutOfRangeException.ThrowIfGreaterThan(number, strings.Length);
            return strings[number - 1];
        }
    }

    /// <summary>How far all strings are turned together, in semitones.</summary>
    public int Distance => strings.Sum(static turn => Math.Abs(turn.Semitones));

    /// <summary>The tension of strings that are fitted, in the new tuning against the old.</summary>
    /// <param name="strings">The strings fitted.</param>
    /// <param name="scaleLength">From nut to saddle, in mm.</param>
    /// <param name="limits">Between which tensions a string plays well and lasts; those for the instrument of the set or the tunings if
    /// null.</param>
    /// <exception cref="ArgumentException">The set has not as many strings.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The scale length is beyond the range of <see cref="Neck"/>.</exception>
    public TensionReport Tensions(StringSet strings, double scaleLength, TensionLimits? limits = null)
    {
        var frets = Math.Max(Neck.DefaultFrets, To.Strings.Max(static each => each.Start));
        return new Neck(To, scaleLength, frets).Tensions(strings, From, limits);
    }

    /// <summary>The way back.</summary>
    public Scordatura Back => new(To, From);

    /// <summary>Both tunings, as <see cref="Parse(string, IFormatProvider?)"/> reads them.</summary>
    public override string ToString() => $"{From}, to {To}";

    private static bool Read(ref TextCursor cursor, [MaybeNullWhen(false)] out Scordatura scordatura)
    {
        scordatura = null;
        if (!Tuning.Read(ref cursor, out var from))
        {
            return false;
        }

        if (!cursor.Take(','))
        {
            return cursor.Fail("a comma and the tuning to turn to (as in E2 A2 D3 G3 B3 E4, to D2 A2 D3 G3 B3 E4)");
        }

        cursor.SkipSpaces();
        if (!cursor.Take("to"))
        {
            return cursor.Fail("\"to\" before the tuning to turn to");
        }

        cursor.SkipSpaces();
        var start = cursor.Position;
        if (!Tuning.Read(ref cursor, out var to))
        {
            return false;
        }

        if (Difference(from, to) is { } difference)
        {
            return cursor.Fail(start, $"a tuning of the same instrument ({difference})");
        }

        scordatura = new(from, to);
        return true;
    }

    /// <summary>Why two tunings are not of one instrument; null if they may be.</summary>
    private static string? Difference(Tuning from, Tuning to)
    {
        if (from.StringCount != to.StringCount)
        {
            return $"the first has {from.StringCount} strings, the second {to.StringCount}";
        }

        for (var number = 1; number <= from.StringCount; number++)
        {
            if (from[number].Start != to[number].Start)
            {
                return $"string {number} begins at fret {from[number].Start} in the first, at fret {to[number].Start} in the second";
            }
        }

        return null;
    }

    /// <summary>
    /// How the ear finds a string on those that are right: both open, at the same pitch or octaves apart; else one of them
    /// held, as low as can be.
    /// </summary>
    private TuningCheck? CheckOf(int number, HashSet<int> right)
    {
        var here = To[number];
        var checks =
            from other in right
            let there = To[other]
            let up = here.Open.MidiNumber - there.Open.MidiNumber
            let octaves = up % 12 == 0
            let held = octaves ? 0 : Math.Abs(up)
            let fret = (up > 0 ? there.Start : here.Start) + held
            where held <= HighestCheck && fret <= Position.MaxFret
            orderby held, Math.Abs(up), Math.Abs(other - number), other descending
            select new TuningCheck(
                new(number, here.Start + (up < 0 ? held : 0)),
                new(other, there.Start + (up > 0 ? held : 0)),
                octaves ? up / 12 : 0
            );
        return checks.Select(static check => (TuningCheck?)check).FirstOrDefault();
    }
}
