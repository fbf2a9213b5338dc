using TheoryKit.Fingering.Hands;
using TheoryKit.Paths.Timing;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Progressions;
using TheoryKit.Theory.Relations;
using TheoryKit.Theory.Scales;
using TheoryKit.Tunings.Necks;
using TheoryKit.Values;

namespace TheoryKit.Paths.MadeLines;

/// <summary>What is asked of a line that is made over changes. Equal when all of it is.</summary>
public sealed record LineRequest
{
    /// <summary>The most bars that a line is made for: 1000.</summary>
    public const int MaxBars = 1000;

    /// <summary>The most notes in a bar: 128.</summary>
    public const int MaxPerBar = 128;

    /// <summary>The most figures: 64.</summary>
    public const int MaxFigures = 64;

    private readonly Sequence<Rhythm> figures = UsualFigures;
    private readonly Sequence<int> targets = new([3, 7]);
    private readonly Sequence<Approach> approaches = new(Approach.Known);

    private static Sequence<Rhythm> UsualFigures { get; } =
        new(
            new[] { "1", "1/2 1/2", "r1/2 1/2", "3/2 1/2", "1/3 1/3 1/3", "1/2 1 1/2" }.Select(static text =>
                Rhythm.Parse(text)
            )
        );

    /// <summary>The neck.</summary>
    public required Neck Neck
    {
        get;
        init => field = Check.NotNull(value, nameof(Neck));
    }

    /// <summary>The changes that the line is played over.</summary>
    public required Changes Changes
    {
        get;
        init => field = Check.NotNull(value, nameof(Changes));
    }

    /// <summary>The hand that plays it; the average one unless told.</summary>
    public Hand Hand
    {
        get;
        init => field = Check.NotNull(value, nameof(Hand));
    } = Hand.Average;

    /// <summary>The frets that it keeps to; the whole neck if null.</summary>
    public Window? Window { get; init; }

    /// <summary>The lowest pitch by sound; as low as there are frets if null.</summary>
    public Pitch? Lowest { get; init; }

    /// <summary>The highest pitch by sound; as high as there are frets if null.</summary>
    public Pitch? Highest { get; init; }

    /// <summary>What decides between the lines that there could be: the same for the same line, on any machine.</summary>
    public ulong Seed { get; init; }

    /// <summary>How often it goes through the changes; 1 unless told.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Less than 1 or more than <see cref="MaxBars"/>.</exception>
    public int Times
    {
        get;
        init => field = Between(value, 1, MaxBars, nameof(Times));
    } = 1;

    /// <summary>The fewest notes in a bar; bars with no chord in some part have as many as come.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative, or more than <see cref="MaxPerBar"/>.</exception>
    public int FewestPerBar
    {
        get;
        init => field = Between(value, 0, MaxPerBar, nameof(FewestPerBar));
    }

    /// <summary>The most notes in a bar.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative, or more than <see cref="MaxPerBar"/>.</exception>
    public int MostPerBar
    {
        get;
        init => field = Between(value, 0, MaxPerBar, nameof(MostPerBar));
    } = MaxPerBar;

    /// <summary>
    /// The figures of which the rhythm is made, in beats of the changes; together they fill each bar. A few usual ones of one or two
    /// beats unless told.
    /// </summary>
    /// <exception cref="ArgumentException">None, or more than <see cref="MaxFigures"/>.</exception>
    public IReadOnlyList<Rhythm> Figures
    {
        get => figures;
        init =>
            figures = Check.Items(value, nameof(Figures)) is { Count: > 0 and <= MaxFigures } all
                ? all.Distinct().ToSequence()
                : throw new ArgumentException($"A line needs 1 to {MaxFigures} figures of rhythm.", nameof(Figures));
    }

    /// <summary>
    /// The numbers of the chord tones wanted where a chord begins: 3 and 7 unless told. A 6 stands in for a missing 7, a 4 or a 2 for a
    /// missing 3; a chord that has none of them gives any of its tones.
    /// </summary>
    /// <exception cref="ArgumentException">A number that is not 1 to 7, or none.</exception>
    public IReadOnlyList<int> Targets
    {
        get => targets;
        init =>
            targets =
                value is { Count: > 0 } && value.All(static number => number is >= 1 and <= 7)
                    ? value.Distinct().Order().ToSequence()
                    : throw new ArgumentException(
                        "Targets are one or more numbers of chord tones, 1 to 7; a 9 is a 2.",
                        nameof(Targets)
                    );
    }

    /// <summary>The ways in which a target is approached; all known ones unless told, none for chord tones alone.</summary>
    public IReadOnlyList<Approach> Approaches
    {
        get => approaches;
        init => approaches = Check.Items(value, nameof(Approaches)).Distinct().ToSequence();
    }

    /// <summary>The part of the targets that are approached, if there is room before them: each is drawn by itself, 0 for never to 1 for always; 0.75 unless told.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Less or more.</exception>
    public double Approached
    {
        get;
        init =>
            field = value is >= 0 and <= 1
                ? value
                : throw new ArgumentOutOfRangeException(
                    nameof(Approached),
                    value,
                    "The part of the targets that are approached is 0 to 1."
                );
    } = 0.75;

    /// <summary>Whether a tone of the scale may stand between two tones of a chord, a step from each, off the beat; true unless told.</summary>
    public bool Passing { get; init; } = true;

    /// <summary>The functions of a chord that are wanted where it begins.</summary>
    public Formula TargetsOf(Chord chord)
    {
        ArgumentNullException.ThrowIfNull(chord);
        var found = Formula.Empty;
        foreach (var number in Targets)
        {
            foreach (
                var stand in (ReadOnlySpan<int>)(
                    number == 3 ? [3, 4, 2]
                    : number == 7 ? [7, 6]
                    : [number]
                )
            )
            {
                var there = chord.Formula.Where(degree => degree.Simple.Number == stand).ToList();
                if (there.Count > 0)
                {
                    there.ForEach(degree => found = found.With(degree));
                    break;
                }
            }
        }

        return found.Count > 0 ? found : chord.Formula;
    }

    /// <summary>
    /// The scale that neighbours and passing tones of a chord are taken from: the key's where it holds the chord, else the first around its
    /// formula; null if there is none.
    /// </summary>
    public Scale? ScaleOf(Chord chord)
    {
        ArgumentNullException.ThrowIfNull(chord);
        var plain = new Chord(chord.Root, chord.Formula);
        if (Changes.Key is { } key && key.Scale.Contains(plain))
        {
            return key.Scale;
        }

        return chord.Formula.Relations().Scales is [var first, ..] ? new(chord.Root, first.Type) : null;
    }

    private static int Between(int value, int least, int most, string name)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(value, least, name);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(value, most, name);
        return value;
    }
}
