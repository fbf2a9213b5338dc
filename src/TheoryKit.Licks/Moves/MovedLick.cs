using Fractions;
using TheoryKit.Paths;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Values;

namespace TheoryKit.Licks.Moves;

/// <summary>What could not be kept when a lick was moved, and where. Equal when all of that agrees.</summary>
/// <param name="Bar">The bar of the lick before it was moved, from 1; null where it is about the lick as a whole.</param>
/// <param name="Beat">The beat in that bar, from 1; null where it is about the lick as a whole.</param>
/// <param name="Pitch">The note's pitch before it was moved, as it sounded; null where it is about a dead note or the lick as a whole.</param>
/// <param name="Loss">What could not be kept, and what was done instead.</param>
[Checked]
public sealed partial record MoveRemark(int? Bar, Fraction? Beat, Pitch? Pitch, MoveLoss Loss);

/// <summary>A note of a lick before it was moved and after. Equal when all of that agrees.</summary>
/// <param name="Bar">The bar before it was moved, from 1.</param>
/// <param name="Beat">The beat in that bar before, from 1.</param>
/// <param name="Before">The note before.</param>
/// <param name="SoundedBefore">The pitch that it had in the end, bends and harmonics counted in.</param>
/// <param name="FunctionBefore">What it did over its chord; null where there was none, and for a dead note.</param>
/// <param name="After">The note now.</param>
/// <param name="SoundedAfter">The pitch that it has now.</param>
/// <param name="FunctionAfter">What it does now; null where there is no chord, and for a dead note.</param>
/// <param name="BarAfter">The bar that it is in now, from 1.</param>
/// <param name="BeatAfter">The beat in that bar now, from 1.</param>
/// <param name="Why">Why it went there, where it was refitted; else null, and for a dead note.</param>
[Checked]
public sealed partial record MovedTone(
    int Bar,
    Fraction Beat,
    PathNote Before,
    Pitch SoundedBefore,
    Degree? FunctionBefore,
    PathNote After,
    Pitch SoundedAfter,
    Degree? FunctionAfter,
    int BarAfter,
    Fraction BeatAfter,
    RefitReason? Why = null
)
{
    /// <summary>Whether it could not simply keep its function when it was refitted.</summary>
    public bool IsException => Why is { IsException: true };

    /// <summary>The note now.</summary>
    public PathNote After
    {
        get;
        init => field = Check.NotNull(value, nameof(After));
    } = Check.NotNull(After);

    /// <summary>The note before.</summary>
    public PathNote Before
    {
        get;
        init => field = Check.NotNull(value, nameof(Before));
    } = Check.NotNull(Before);

    /// <summary>Whether it is in another bar or on another beat now.</summary>
    public bool IsElsewhereInTime => (Bar, Beat) != (BarAfter, BeatAfter);

    /// <summary>
    /// Whether it does what it did: the same function, or, where neither had a chord, the same pitch in any octave; a quarter tone above
    /// it where it was. A dead note does nothing else.
    /// </summary>
    public bool DoesTheSame =>
        Before.IsDead
        || (
            FunctionBefore == FunctionAfter
            && Before.Bend % 100 == After.Bend % 100
            && (FunctionBefore is not null || SoundedBefore.PitchClass == SoundedAfter.PitchClass)
        );

    /// <summary>Whether it is what it was: its pitch and function, or a dead note on its string.</summary>
    internal bool IsUnchanged =>
        Before.IsDead
            ? Before.Position.String == After.Position.String
            : SoundedBefore == SoundedAfter && FunctionBefore == FunctionAfter;
}

/// <summary>
/// A lick that was moved: before, after, note by note, and what could not be kept. Equal when all of that agrees.
/// </summary>
/// <remarks>See the moves on <see cref="Lick"/>: <see cref="LickMoves.Transpose"/>, <see cref="LickMoves.InZone"/>, <see cref="LickMoves.Refit(Lick, Chord)"/> and the others.</remarks>
public sealed record MovedLick
{
    private readonly Sequence<MoveRemark> remarks = new([]);
    private readonly Sequence<MovedTone> tones = new([]);

    /// <summary>The lick before.</summary>
    public required Lick From
    {
        get;
        init => field = Check.NotNull(value, nameof(From));
    }

    /// <summary>The lick now, with the name and all else that it had.</summary>
    public required Lick Lick
    {
        get;
        init => field = Check.NotNull(value, nameof(Lick));
    }

    /// <summary>What was done; null where that is not told.</summary>
    public LickMove? Move { get; init; }

    /// <summary>What could not be kept, in the order of the notes; what is about all of it first. Empty where all was.</summary>
    public IReadOnlyList<MoveRemark> Remarks
    {
        get => remarks;
        init => remarks = Check.Items(value, nameof(Remarks));
    }

    /// <summary>
    /// Every note before and after, in the order of the notes before. One that had to be left out, because no string was free for it,
    /// is a remark only.
    /// </summary>
    public IReadOnlyList<MovedTone> Tones
    {
        get => tones;
        init => tones = Check.Items(value, nameof(Tones));
    }

    /// <summary>The notes that could not simply keep their function when the lick was refitted.</summary>
    public IEnumerable<MovedTone> Exceptions => tones.Where(static tone => tone.IsException);

    /// <summary>Whether nothing was lost: no remark, and every note kept its function.</summary>
    public bool IsWhole => remarks.Count == 0 && !Exceptions.Any();

    /// <summary>The lick now.</summary>
    public override string ToString() => Lick.ToString();
}
