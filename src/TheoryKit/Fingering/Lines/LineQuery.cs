using System.Collections.Immutable;
using TheoryKit.Fingering.Hands;
using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Necks;
using TheoryKit.Values;

namespace TheoryKit.Fingering.Lines;

/// <summary>
/// One note of a line that is to be fingered: where it may be played, how long it rings on, and whether the string is that of the note
/// before. Equal when all of that agrees.
/// </summary>
[EqualBy(nameof(rings), nameof(StaysOnString), nameof(Positions))]
public sealed partial record LineNote
{
    private readonly int rings;

    private LineNote(ImmutableArray<Position> positions) => Positions = positions;

    /// <summary>Where it may be played.</summary>
    public ImmutableArray<Position> Positions { get; }

    /// <summary>Through how many of the notes after it this one keeps ringing: its finger stays, and the hand with it.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative.</exception>
    public int Rings
    {
        get => rings;
        init
        {
            ArgumentOutOfRangeException.ThrowIfNegative(value, nameof(Rings));
            rings = value;
        }
    }

    /// <summary>Whether it is played on the string of the note before it, as one that is slid or hammered to has to be.</summary>
    public bool StaysOnString { get; init; }

    /// <summary>A note whose position is given.</summary>
    public static LineNote At(Position position) => new([position]);

    /// <summary>A bare pitch: the solver chooses where among all its positions on the neck.</summary>
    public static LineNote Of(Pitch pitch, Neck neck)
    {
        ArgumentNullException.ThrowIfNull(neck);
        return new([.. neck.PositionsOf(pitch)]);
    }

    /// <summary>A bare pitch that may be played at some of its positions.</summary>
    public static LineNote Of(IEnumerable<Position> positions) => new([.. Check.NotNull(positions)]);
}

/// <summary>What is asked when a line is fingered or placed. Equal when all that is asked is.</summary>
public sealed record LineQuery
{
    /// <summary>The most ways to play a line that are asked for: 1000.</summary>
    public const int MaxBest = 1000;

    private readonly Sequence<LineNote> notes = new([]);

    /// <summary>The notes in order.</summary>
    public required IReadOnlyList<LineNote> Notes
    {
        get => notes;
        init => notes = Check.Items(value, nameof(Notes));
    }

    /// <summary>The neck.</summary>
    public required Neck Neck
    {
        get;
        init => field = Check.NotNull(value, nameof(Neck));
    }

    /// <summary>The hand; the average one unless told.</summary>
    public Hand Hand
    {
        get;
        init => field = Check.NotNull(value, nameof(Hand));
    } = Hand.Average;

    /// <summary>How many answers, from the best on; 1 to <see cref="MaxBest"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is not.</exception>
    public int Best
    {
        get;
        init => field = Check.Range(value, 1, MaxBest, nameof(Best));
    } = 1;

    /// <summary>Whether open strings may be used where there is a choice.</summary>
    public bool OpenStrings { get; init; } = true;

    /// <summary>The lowest place of the hand; at least 1. Behind a capo there is none.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Less.</exception>
    public int FirstPlace
    {
        get;
        init
        {
            ArgumentOutOfRangeException.ThrowIfLessThan(value, 1, nameof(FirstPlace));
            field = value;
        }
    } = 1;

    /// <summary>The highest place of the hand; beyond the neck it is the last fret.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Less than 1.</exception>
    public int LastPlace
    {
        get;
        init
        {
            ArgumentOutOfRangeException.ThrowIfLessThan(value, 1, nameof(LastPlace));
            field = value;
        }
    } = Position.MaxFret;

    /// <summary>The place the player would rather keep to; null for none. Weighed by <see cref="EffortWeights.Preference"/>.</summary>
    public int? PreferredPlace { get; init; }
}
