using Fractions;
using TheoryKit.Fingering.Hands;
using TheoryKit.Paths.Timing;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Progressions;
using TheoryKit.Tunings.Necks;
using TheoryKit.Values;

namespace TheoryKit.Paths.Routes;

/// <summary>What a route is to be: over which changes, where, in what rhythm, by which plan. Equal when all settings are.</summary>
public sealed record RouteQuery
{
    /// <summary>The most notes in a chord: 64.</summary>
    public const int MaxNotes = 64;

    /// <summary>The most times through the changes: 64.</summary>
    public const int MaxTimes = 64;

    /// <summary>The most routes asked for: 100.</summary>
    public const int MaxBest = 100;

    private readonly Sequence<int> targets = new([]);

    /// <summary>The changes.</summary>
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

    /// <summary>The hand; the average one if nothing is said.</summary>
    public Hand Hand
    {
        get;
        init => field = Check.NotNull(value, nameof(Hand));
    } = Hand.Average;

    /// <summary>How the route goes along the neck; anywhere if nothing is said.</summary>
    public RoutePlan Plan
    {
        get;
        init => field = Check.NotNull(value, nameof(Plan));
    } = new RoutePlan.Roam();

    /// <summary>How many times through the changes, 1 to <see cref="MaxTimes"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not as many.</exception>
    public int Times
    {
        get;
        init => field = Checked(value, MaxTimes, nameof(Times));
    } = 1;

    /// <summary>How many equal notes every chord gets, 1 to <see cref="MaxNotes"/>; null for eighths.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not as many.</exception>
    public int? NotesPerChord
    {
        get;
        init => field = value is { } notes ? Checked(notes, MaxNotes, nameof(NotesPerChord)) : null;
    }

    /// <summary>How many equal notes a chord gets: as asked for, or as many eighths as fill it; at least one.</summary>
    internal int NotesOf(ChordSpan span) =>
        NotesPerChord ?? Math.Clamp((int)(span.Length * Changes.Time.BeatLength * 8).ToDecimal(), 1, MaxNotes);

    /// <summary>
    /// The rhythm, in place of <see cref="NotesPerChord"/>: it runs on through the changes, and every note belongs to the chord that it
    /// starts in. Null for equal notes.
    /// </summary>
    public Rhythm? Rhythm { get; init; }

    /// <summary>
    /// What the first note of every chord must be: the numbers of its functions, 3 for a third of any kind, 7 for a seventh. None for any tone.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">A number is not that of a degree, 1 to <see cref="Degree.MaxNumber"/>.</exception>
    public IReadOnlyList<int> Targets
    {
        get => targets;
        init
        {
            ArgumentNullException.ThrowIfNull(value);
            foreach (var number in value)
            {
                Checked(number, Degree.MaxNumber, nameof(Targets));
            }

            targets = value.Distinct().Order().ToSequence();
        }
    }

    /// <summary>
    /// How long before its chord the first note of every chord but the very first sounds, in beats; the notes before it are cut
    /// short or give way.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative.</exception>
    public Fraction Anticipation
    {
        get;
        init =>
            field =
                value >= Fraction.Zero
                    ? value.Reduce()
                    : throw new ArgumentOutOfRangeException(
                        nameof(Anticipation),
                        $"{value}",
                        "A chord is anticipated by 0 beats or more."
                    );
    } = Fraction.Zero;

    /// <summary>
    /// Whether the line through a chord keeps to one triad inside it that stands on another tone than its root, Bb in Gm7; a chord
    /// that has none, such as a triad, is played whole.
    /// </summary>
    public bool UpperTriads { get; init; }

    /// <summary>What smoothness weighs against effort.</summary>
    public RouteWeights Weights
    {
        get;
        init => field = Check.NotNull(value, nameof(Weights));
    } = RouteWeights.Default;

    /// <summary>How many routes to find, the best first, 1 to <see cref="MaxBest"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not as many.</exception>
    public int Best
    {
        get;
        init => field = Checked(value, MaxBest, nameof(Best));
    } = 1;

    private static int Checked(int value, int most, string name) =>
        value >= 1 && value <= most
            ? value
            : throw new ArgumentOutOfRangeException(name, value, $"{name} goes from 1 to {most}.");
}
