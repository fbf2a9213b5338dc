using TheoryKit.Theory;
using TheoryKit.Tunings;

namespace TheoryKit.Fingering;

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

/// <summary>What is asked of a grip. Every property narrows the answer; the defaults are common practice.</summary>
public sealed record GripQuery
{
    /// <summary>The chord that is to sound.</summary>
    public required Chord Chord { get; init; }

    /// <summary>Where.</summary>
    public required Neck Neck { get; init; }

    /// <summary>By which hand; the average one unless told.</summary>
    public Hand Hand { get; init; } = Hand.Average;

    /// <summary>
    /// The tones that may be left out; null for common practice: in a chord of four tones and more the perfect fifth, of
    /// six and more also the ninth, of seven also the eleventh. The third and the seventh stay.
    /// </summary>
    public Formula? Optional { get; init; }

    /// <summary>The lowest note asked for; null for the chord's own bass. See <see cref="AnyBass"/>.</summary>
    public NoteName? Bass { get; init; }

    /// <summary>Whether any tone may be lowest. Then <see cref="Bass"/> does not count.</summary>
    public bool AnyBass { get; init; }

    /// <summary>The highest pitch asked for, as for a melody; null for any.</summary>
    public Pitch? Top { get; init; }

    /// <summary>The strings that may sound; null for all.</summary>
    public IReadOnlySet<int>? Strings { get; init; }

    /// <summary>Whether each of <see cref="Strings"/> must sound.</summary>
    public bool AllStrings { get; init; }

    /// <summary>The fewest strings that sound.</summary>
    public int MinSounding { get; init; } = 3;

    /// <summary>The most strings that sound.</summary>
    public int MaxSounding { get; init; } = Position.MaxString;

    /// <summary>The lowest fret that may be held.</summary>
    public int FirstFret { get; init; } = 1;

    /// <summary>The highest fret that may be held; null for the last of the neck.</summary>
    public int? LastFret { get; init; }

    /// <summary>Which open strings may sound.</summary>
    public OpenStrings OpenStrings { get; init; }

    /// <summary>Whether a string may stay silent between two that sound.</summary>
    public bool InnerMutes { get; init; }

    /// <summary>The most fingers used, the thumb counted.</summary>
    public int MaxFingers { get; init; } = 5;

    /// <summary>The tones that may be left out by common practice.</summary>
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

        return optional;
    }
}
