using System.Globalization;
using Fractions;
using TheoryKit.Theory;

namespace TheoryKit.Paths;

/// <summary>What could not be kept when a lick was moved, and what was done instead. Equal when all of that agrees.</summary>
/// <param name="Bar">The bar of the lick before it was moved, from 1; null where it is about the lick as a whole.</param>
/// <param name="Beat">The beat in that bar, from 1; null where it is about the lick as a whole.</param>
/// <param name="Pitch">The note's pitch before it was moved, as it sounded; null where it is about the lick as a whole.</param>
/// <param name="Lost">What could not be kept, and why.</param>
/// <param name="Instead">What was done instead.</param>
public sealed record MoveRemark(int? Bar, Fraction? Beat, Pitch? Pitch, string Lost, string Instead)
{
    /// <summary>The place and the words: <c>bar 2, beat 5/2, Eb4: the slide: both notes are at one fret now; instead the note struck</c>.</summary>
    public override string ToString() =>
        $"{(Where is { Length: > 0 } where ? $"{where}: " : "")}{Lost}; instead {Instead}";

    /// <summary>The note in words; empty for the lick as a whole.</summary>
    internal string Where =>
        Bar is null ? "" : $"bar {Bar}, beat {Beat?.ToString("G", CultureInfo.InvariantCulture)}, {Pitch}";
}

/// <summary>A note of a lick before it was moved and after. Equal when all of that agrees.</summary>
/// <param name="Bar">The bar before it was moved, from 1.</param>
/// <param name="Beat">The beat in that bar before, from 1.</param>
/// <param name="Before">The note before.</param>
/// <param name="SoundedBefore">The pitch that it had in the end, bends and harmonics counted in.</param>
/// <param name="FunctionBefore">What it did over its chord; null where there was none.</param>
/// <param name="After">The note now.</param>
/// <param name="SoundedAfter">The pitch that it has now.</param>
/// <param name="FunctionAfter">What it does now; null where there is no chord.</param>
/// <param name="Why">Why it went there, where it was refitted; else empty.</param>
/// <param name="IsException">Whether it could not simply keep its function: the words say what was done.</param>
public sealed record MovedTone(
    int Bar,
    Fraction Beat,
    PathNote Before,
    Pitch SoundedBefore,
    Degree? FunctionBefore,
    PathNote After,
    Pitch SoundedAfter,
    Degree? FunctionAfter,
    string Why = "",
    bool IsException = false
)
{
    /// <summary>What became of it: <c>bar 1, beat 2: E4 (3) becomes Eb4 (b3): the third of Cm7</c>.</summary>
    public override string ToString() =>
        $"bar {Bar}, beat {Beat.ToString("G", CultureInfo.InvariantCulture)}: {Say(SoundedBefore, FunctionBefore)} becomes {Say(SoundedAfter, FunctionAfter)}"
        + (Why.Length > 0 ? $": {Why}" : "");

    private static string Say(Pitch pitch, Degree? function) => function is null ? $"{pitch}" : $"{pitch} ({function})";
}

/// <summary>
/// A lick that was moved: before, after, note by note, and what could not be kept. Equal when all of that agrees.
/// </summary>
/// <remarks>See the moves on <see cref="Lick"/>: <see cref="Lick.Transpose"/>, <see cref="Lick.InZone"/>, <see cref="Lick.Refit(Chord)"/> and the others.</remarks>
public sealed record MovedLick
{
    private readonly Sequence<MoveRemark> remarks = new([]);
    private readonly Sequence<MovedTone> tones = new([]);

    /// <summary>The lick before.</summary>
    public required Lick From { get; init; }

    /// <summary>The lick now, with the name and all else that it had.</summary>
    public required Lick Lick { get; init; }

    /// <summary>What was done, in a few words: "to the zone 5-8".</summary>
    public string Move { get; init; } = "";

    /// <summary>What could not be kept, in the order of the notes; what is about all of it first. Empty where all was.</summary>
    public IReadOnlyList<MoveRemark> Remarks
    {
        get => remarks;
        init => remarks = value.ToSequence();
    }

    /// <summary>Every note before and after, in the order of the notes before.</summary>
    public IReadOnlyList<MovedTone> Tones
    {
        get => tones;
        init => tones = value.ToSequence();
    }

    /// <summary>The notes that could not simply keep their function when the lick was refitted.</summary>
    public IEnumerable<MovedTone> Exceptions => tones.Where(static tone => tone.IsException);

    /// <summary>Whether nothing was lost: no remark, and every note kept its function.</summary>
    public bool IsWhole => remarks.Count == 0 && !Exceptions.Any();

    /// <summary>The name, the move, and how much of it could not be kept.</summary>
    public override string ToString() =>
        $"{From.Name} {Move}: "
        + (
            remarks.Count == 0
                ? "all techniques kept"
                : string.Create(CultureInfo.InvariantCulture, $"{remarks.Count} remarks")
        )
        + (
            Exceptions.Count() is > 0 and var count
                ? string.Create(CultureInfo.InvariantCulture, $", {count} notes with another function")
                : ""
        );
}
