using Fractions;
using TheoryKit.Fingering.Hands;
using TheoryKit.Fingering.Zones;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Progressions;
using TheoryKit.Tunings.Necks;
using TheoryKit.Values;

namespace TheoryKit.Paths.Joins;

/// <summary>
/// What a line through changes that stays in one zone is asked to be: the chords, where their tones lie, how many notes each chord gets and
/// how it goes from chord to chord. Equal when all settings are.
/// </summary>
public sealed record JoinQuery
{
    /// <summary>The most notes that a chord gets: 64.</summary>
    public const int MaxNotes = 64;

    private readonly int notesPerChord = 8;
    private readonly Fraction? notesPerBeat;
    private readonly Sequence<Shape?>? shapes;

    /// <summary>The changes, gone through again and again.</summary>
    public required Changes Changes
    {
        get;
        init => field = Check.NotNull(value, nameof(Changes));
    }

    /// <summary>The neck.</summary>
    public required Neck Neck
    {
        get;
        init => field = Check.NotNull(value, nameof(Neck));
    }

    /// <summary>The frets in which the tones of every chord are taken, each pitch at one position: the chord's shape there.</summary>
    public Window? Window { get; init; }

    /// <summary>
    /// The shapes themselves, one for each of the chords of the changes, in place of a window; null where a chord is to be silent.
    /// </summary>
    public IReadOnlyList<Shape?>? Shapes
    {
        get => shapes;
        init => shapes = value?.ToSequence();
    }

    /// <summary>The hand that finds the shapes of a window.</summary>
    public Hand Hand
    {
        get;
        init => field = Check.NotNull(value, nameof(Hand));
    } = Hand.Average;

    /// <summary>How many notes every chord gets, 1 to <see cref="MaxNotes"/>; 8 if nothing is said.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not as many.</exception>
    public int NotesPerChord
    {
        get => notesPerChord;
        init
        {
            ArgumentOutOfRangeException.ThrowIfLessThan(value, 1, nameof(NotesPerChord));
            ArgumentOutOfRangeException.ThrowIfGreaterThan(value, MaxNotes, nameof(NotesPerChord));
            notesPerChord = value;
        }
    }

    /// <summary>How many notes every beat gets, in place of <see cref="NotesPerChord"/>, so that a longer chord gets more; null for no such.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not more than 0.</exception>
    public Fraction? NotesPerBeat
    {
        get => notesPerBeat;
        init =>
            notesPerBeat =
                value <= Fraction.Zero
                    ? throw new ArgumentOutOfRangeException(
                        nameof(NotesPerBeat),
                        $"{value}",
                        "There are more than 0 notes a beat."
                    )
                    : value?.Reduce();
    }

    /// <summary>How chords are joined.</summary>
    public JoinRule Rule
    {
        get;
        init => field = Check.NotNull(value, nameof(Rule));
    } = JoinRule.Beyond;

    /// <summary>
    /// The tone of the first chord to start on, by sound; if null its lowest root, and where the zone has no root its lowest tone.
    /// </summary>
    public Pitch? Start { get; init; }

    /// <summary>In which direction to start.</summary>
    public Direction Direction
    {
        get;
        init => field = Check.Defined(value, nameof(Direction));
    }

    /// <summary>How many notes a chord gets.</summary>
    /// <exception cref="ArgumentException">The notes a beat don't make a whole number, or more than <see cref="MaxNotes"/>.</exception>
    internal int NotesIn(ChordSpan span, string name)
    {
        if (NotesPerBeat is not { } perBeat)
        {
            return NotesPerChord;
        }

        var notes = (perBeat * span.Length).Reduce();
        return notes.Denominator.IsOne && notes <= MaxNotes
            ? (int)notes.Numerator
            : throw new ArgumentException(
                $"{perBeat} notes a beat give {span.Chord} {notes} notes in its {span.Length} beats; a chord gets 1 to {MaxNotes}, and a whole number.",
                name
            );
    }
}
