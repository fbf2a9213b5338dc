using System.Globalization;
using Fractions;
using TheoryKit.Theory;

namespace TheoryKit.Paths;

/// <summary>What could not be kept when a lick was moved, and what was done instead. Equal when all of that agrees.</summary>
/// <param name="Bar">The bar of the lick before it was moved, from 1; null where it is about the lick as a whole.</param>
/// <param name="Beat">The beat in that bar, from 1; null where it is about the lick as a whole.</param>
/// <param name="Pitch">The note's pitch before it was moved, as it sounded; null where it is about a dead note or the lick as a whole.</param>
/// <param name="Lost">What could not be kept, and why.</param>
/// <param name="Instead">What was done instead.</param>
public sealed record MoveRemark(int? Bar, Fraction? Beat, Pitch? Pitch, string Lost, string Instead)
{
    /// <summary>
    /// A sentence: <c>Bar 2, beat 2 and 1/2: Eb4 loses the slide: both notes are at one fret now; instead the note struck.</c>
    /// </summary>
    public override string ToString() =>
        $"{(Bar is { } bar && Beat is { } beat ? $"{MoveWords.Place(bar, beat)}: {Pitch?.ToString() ?? "the dead note"}" : "The lick")} loses {Lost}; instead {Instead}.";
}

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
    int BarAfter,
    Fraction BeatAfter,
    string Why = "",
    bool IsException = false
)
{
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

    /// <summary>
    /// A sentence: <c>Bar 1, beat 2: E4 (3) becomes Eb4 (b3): the 3 of C7 becomes the b3 of Cm7.</c> Where the time is another:
    /// <c>Bar 1, beat 2, now bar 1, beat 2 and 1/2: E4 (3) stays.</c>
    /// </summary>
    public override string ToString() =>
        $"{MoveWords.Place(Bar, Beat)}{(IsElsewhereInTime ? $", now {MoveWords.Place(BarAfter, BeatAfter, "bar")}" : "")}: "
        + $"{Say(Before, SoundedBefore, FunctionBefore)} {(IsUnchanged ? "stays" : $"becomes {Say(After, SoundedAfter, FunctionAfter)}")}"
        + (Why.Length > 0 ? $": {Why}." : ".");

    private bool IsUnchanged =>
        Before.IsDead
            ? Before.Position.String == After.Position.String
            : SoundedBefore == SoundedAfter && FunctionBefore == FunctionAfter;

    private static string Say(PathNote note, Pitch pitch, Degree? function) =>
        note.IsDead ? $"the dead note on string {note.Position.String}"
        : function is null ? $"{pitch}"
        : $"{pitch} ({function})";
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

    /// <summary>
    /// Every note before and after, in the order of the notes before. One that had to be left out, because no string was free for it,
    /// is a remark only.
    /// </summary>
    public IReadOnlyList<MovedTone> Tones
    {
        get => tones;
        init => tones = value.ToSequence();
    }

    /// <summary>The notes that could not simply keep their function when the lick was refitted.</summary>
    public IEnumerable<MovedTone> Exceptions => tones.Where(static tone => tone.IsException);

    /// <summary>Whether nothing was lost: no remark, and every note kept its function.</summary>
    public bool IsWhole => remarks.Count == 0 && !Exceptions.Any();

    /// <summary>
    /// The name and the move in a line, then the tab, then a line for each remark and for each of the <see cref="Exceptions"/>.
    /// </summary>
    public override string ToString() =>
        string.Join(
            '\n',
            [
                $"{From.Name}, {Move}",
                PlainTab.Write(Lick.Path),
                .. IsWhole ? ["Nothing is lost."] : Enumerable.Empty<string>(),
                .. remarks.Select(static remark => remark.ToString()),
                .. Exceptions.Select(static tone => tone.ToString()),
            ]
        );
}

/// <summary>Places in words.</summary>
internal static class MoveWords
{
    /// <summary><c>Bar 2, beat 2 and 1/2</c>; <c>bar</c> inside a sentence.</summary>
    public static string Place(int bar, Fraction beat, string word = "Bar")
    {
        var whole = Math.Floor(beat.ToDouble());
        var rest = (beat - new Fraction((int)whole)).Reduce();
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{word} {bar}, beat {whole:0}{(rest == Fraction.Zero ? "" : $" and {rest.ToString("G", CultureInfo.InvariantCulture)}")}"
        );
    }
}
