using TheoryKit.Fingering.Grips;
using TheoryKit.Fingering.Hands;
using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Necks;
using TheoryKit.Tunings.Strings;
using TheoryKit.Values;

namespace TheoryKit.Fingering.Retuning;

/// <summary>What is asked of <see cref="TuningSearch"/>. Equal when all that is asked is.</summary>
public sealed record TuningQuery
{
    /// <summary>No string is retuned by more semitones: 12.</summary>
    public const int MaxWithin = 12;

    /// <summary>No more tunings are asked for: 1000.</summary>
    public const int MaxBest = 1000;

    /// <summary>No more tunings are gone through: 2^40, about 1.1e12.</summary>
    public const long MaxSpace = 1L << 40;

    private readonly Sequence<WeightedChord> chords = new([]);
    private readonly Sequence<TuningRequirement> requirements = new([]);
    private readonly Sequence<Pitch> line = new([]);

    /// <summary>The neck, in the tuning from which the strings are retuned.</summary>
    public required Neck Base
    {
        get;
        init => field = Check.NotNull(value, nameof(Base));
    }

    /// <summary>The chords that are to be held with little effort, each with its weight.</summary>
    public required IReadOnlyList<WeightedChord> Chords
    {
        get => chords;
        init => chords = Check.Items(value, nameof(Chords));
    }

    /// <summary>By how many semitones a string is retuned at most, either way; 0 to <see cref="MaxWithin"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is not.</exception>
    public int Within
    {
        get;
        init
        {
            field = value is >= 0 and <= MaxWithin
                ? value
                : throw new ArgumentOutOfRangeException(
                    nameof(Within),
                    value,
                    $"A string can be retuned by 0 to {MaxWithin} semitones, not by {value}."
                );
        }
    } = 2;

    /// <summary>How many tunings are asked for, the best ones; 1 to <see cref="MaxBest"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is not.</exception>
    public int Best
    {
        get;
        init => field = Check.Range(value, 1, MaxBest, nameof(Best));
    } = 5;

    /// <summary>The hand; the average one unless told.</summary>
    public Hand Hand
    {
        get;
        init => field = Check.NotNull(value, nameof(Hand));
    } = Hand.Average;

    /// <summary>What is asked of every grip.</summary>
    public GripLimits Limits
    {
        get;
        init => field = Check.NotNull(value, nameof(Limits));
    } = GripLimits.Default;

    /// <summary>What a tuning must have.</summary>
    public IReadOnlyList<TuningRequirement> Requirements
    {
        get => requirements;
        init => requirements = Check.Items(value, nameof(Requirements));
    }

    /// <summary>The strings fitted: then only tunings count in which each is within <see cref="TensionLimits"/>. Null for any.</summary>
    public StringSet? Strings { get; init; }

    /// <summary>Between which tensions a string has to be; counts only where the <see cref="Strings"/> are told. Those for the instrument of
    /// the strings, else of the tuning now, where nothing else is said.</summary>
    public TensionLimits TensionLimits
    {
        get => field ?? TensionLimits.For(Strings, Base.Tuning);
        init;
    }

    /// <summary>A line that is to be played with little effort too; empty for none.</summary>
    public IReadOnlyList<Pitch> Line
    {
        get => line;
        init => line = Check.Items(value, nameof(Line));
    }

    /// <summary>How much the effort of the line counts against that of the chords; not negative, at most <see cref="WeightedChord.MaxWeight"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is not.</exception>
    public double LineWeight
    {
        get;
        init =>
            field = value is >= 0 and <= WeightedChord.MaxWeight
                ? value
                : throw new ArgumentOutOfRangeException(
                    nameof(LineWeight),
                    value,
                    FormattableString.Invariant(
                        $"The weight of the line is not negative and at most {WeightedChord.MaxWeight:N0}."
                    )
                );
    } = 1;

    /// <summary>Throws where what is asked contradicts itself or the neck.</summary>
    internal void Validate()
    {
        ArgumentNullException.ThrowIfNull(Base);
        ArgumentNullException.ThrowIfNull(Hand);
        ArgumentNullException.ThrowIfNull(Limits);
        if (Strings is not null && Strings.Count != Base.StringCount)
        {
            throw new ArgumentException(
                $"The set has {Strings.Count} strings, the neck {Base.StringCount}: {Base.Tuning}.",
                nameof(Strings)
            );
        }

        if (chords.Count == 0 && line.Count == 0)
        {
            throw new ArgumentException("Nothing to play: give the chords of the tune, or a line.", nameof(Chords));
        }

        if (Math.Pow((2 * Within) + 1, Base.StringCount) > MaxSpace)
        {
            throw new ArgumentException(
                $"Within {Within} semitones of {Base.StringCount} strings there are more than a million million tunings; ask for fewer semitones.",
                nameof(Within)
            );
        }

        Limits.Validate(Base);
        var may = Enumerable.Range(1, Base.StringCount).Count(Limits.MaySound);
        if (chords.Count > 0 && Limits.MinSounding > may)
        {
            throw new ArgumentException(
                may == Base.StringCount
                    ? $"At least {Limits.MinSounding} strings are asked to sound; the neck has {may}: {Base.Tuning}."
                    : $"At least {Limits.MinSounding} strings are asked to sound; only {may} may.",
                nameof(GripLimits.MinSounding)
            );
        }

        foreach (var requirement in requirements)
        {
            requirement.Validate(Base);
        }
    }
}
