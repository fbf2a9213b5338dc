using System.Collections.Immutable;
using TheoryKit.Fingering.Hands;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Fingering.Grips;

/// <summary>Which open strings a grip may use.</summary>
public enum OpenStrings
{
    /// <summary>Open strings or held ones, whatever serves.</summary>
    Allowed,

    /// <summary>No open string: the grip can be moved along the neck.</summary>
    None,

    /// <summary>Open strings only, nothing held.</summary>
    Only,
}

/// <summary>
/// The limits of a grip, whatever the chord, the neck and the hand. Every property narrows the answer; the defaults are
/// common practice. Equal when all that is asked is.
/// </summary>
public record GripLimits
{
    private readonly ushort? strings; // a bit for each string, so that limits are equal by value

    /// <summary>Common practice.</summary>
    public static GripLimits Default { get; } = new();

    /// <summary>
    /// The tones that may be left out; null for common practice, <see cref="CommonlyOptional"/>. Tones that are not in the
    /// chord do not count. Of two tones that sound alike (b3 and #9) neither may be left out unless both may.
    /// </summary>
    public Formula? Optional { get; init; }

    /// <summary>Whether any tone of the chord may be lowest. Then <see cref="GripQuery.Bass"/> does not count, nor a slash bass that is no tone.</summary>
    public bool AnyBass { get; init; }

    /// <summary>The strings that may sound; null for all.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A string is not 1 to <see cref="Position.MaxString"/>.</exception>
    public IReadOnlySet<int>? Strings
    {
        get => strings is { } bits ? NumbersOf(bits) : null;
        init => strings = value is null ? null : BitsOf(value);
    }

    /// <summary>Whether every string that may sound must.</summary>
    public bool AllStrings { get; init; }

    /// <summary>The fewest strings that sound; at least 1.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Less.</exception>
    public int MinSounding
    {
        get;
        init => field = AtLeast(1, value, nameof(MinSounding));
    } = 3;

    /// <summary>The most strings that sound; at least 1.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Less.</exception>
    public int MaxSounding
    {
        get;
        init => field = AtLeast(1, value, nameof(MaxSounding));
    } = Position.MaxString;

    /// <summary>The lowest fret that may be held; at least 1.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Less.</exception>
    public int FirstFret
    {
        get;
        init => field = AtLeast(1, value, nameof(FirstFret));
    } = 1;

    /// <summary>The highest fret that may be held, at least 1; null, or beyond the neck, for the last of the neck.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Less.</exception>
    public int? LastFret
    {
        get;
        init => field = value is { } fret ? AtLeast(1, fret, nameof(LastFret)) : null;
    }

    /// <summary>Which open strings may sound.</summary>
    public OpenStrings OpenStrings { get; init; }

    /// <summary>Whether a string may stay silent between two that sound.</summary>
    public bool InnerMutes { get; init; }

    /// <summary>The most fingers used, the thumb counted: 0 for open strings alone, 5 for no limit.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative.</exception>
    public int MaxFingers
    {
        get;
        init => field = AtLeast(0, value, nameof(MaxFingers));
    } = 5;

    /// <summary>
    /// The tones that may be left out by common practice: in a chord of four tones and more the perfect fifth, of six and
    /// more also the ninth, of seven also the eleventh; where there are two fifths or two ninths (an altered dominant has b5 and
    /// #5, b9 and #9), each of them. The third and the seventh stay.
    /// </summary>
    public static Formula CommonlyOptional(Formula formula)
    {
        var optional = Formula.Empty;
        ReadOnlySpan<(int Size, Degree Tone)> order = [(4, new(5)), (6, new(9)), (7, new(11))];
        foreach (var (size, tone) in order)
        {
            if (formula.Count >= size && formula.Contains(tone))
            {
                optional = optional.With(tone);
            }
        }

        foreach (var degree in formula)
        {
            if (degree.Number is 5 or 9 && formula.Count(other => other.Number == degree.Number) > 1)
            {
                optional = optional.With(degree);
            }
        }

        return optional;
    }

    /// <summary>Whether a string may sound.</summary>
    internal bool MaySound(int number) => strings is not { } bits || (bits & (1 << number)) != 0;

    /// <summary>The same question for a chord on a neck.</summary>
    /// <param name="chord">The chord.</param>
    /// <param name="neck">The neck.</param>
    /// <param name="hand">The hand; the average one if null.</param>
    public GripQuery For(Chord chord, Neck neck, Hand? hand = null) =>
        new(this)
        {
            Chord = chord,
            Neck = neck,
            Hand = hand ?? Hand.Average,
        };

    /// <summary>Throws where the limits contradict themselves or the neck.</summary>
    internal void Validate(Neck neck)
    {
        ArgumentNullException.ThrowIfNull(neck);
        if (MinSounding > MaxSounding)
        {
            throw new ArgumentException(
                $"At least {MinSounding} strings but at most {MaxSounding} are asked to sound.",
                nameof(MinSounding)
            );
        }

        if (LastFret < FirstFret)
        {
            throw new ArgumentException(
                $"The lowest fret asked for, {FirstFret}, is above the highest, {LastFret}.",
                nameof(FirstFret)
            );
        }

        if (FirstFret > neck.Frets)
        {
            throw new ArgumentException(
                $"The lowest fret asked for, {FirstFret}, is not on a neck of {neck.Frets}.",
                nameof(FirstFret)
            );
        }

        if (strings is { } bits && (bits == 0 || NumbersOf(bits).Max > neck.StringCount))
        {
            throw new ArgumentException(
                bits == 0
                    ? "No string may sound: ask for strings, or for null, which is all of them."
                    : $"String {NumbersOf(bits).Max} is asked for on a neck of {neck.StringCount} strings.",
                nameof(Strings)
            );
        }

        if (!Enum.IsDefined(OpenStrings))
        {
            throw new ArgumentException($"{OpenStrings} is no use of open strings.", nameof(OpenStrings));
        }
    }

    private static ushort BitsOf(IReadOnlySet<int> numbers)
    {
        var bits = 0;
        foreach (var number in numbers)
        {
            bits |= number is >= 1 and <= Position.MaxString
                ? 1 << number
                : throw new ArgumentOutOfRangeException(
                    nameof(Strings),
                    number,
                    $"A string is 1 to {Position.MaxString}."
                );
        }

        return (ushort)bits;
    }

    private static ImmutableSortedSet<int> NumbersOf(ushort bits) =>
        [.. Enumerable.Range(1, Position.MaxString).Where(number => (bits & (1 << number)) != 0)];

    private static int AtLeast(int least, int value, string name) =>
        value >= least
            ? value
            : throw new ArgumentOutOfRangeException(name, value, $"At least {least} has to be asked for, not {value}.");
}
