using System.Text;
using TheoryKit.Values;

namespace TheoryKit.Theory.Notes;

/// <summary>
/// A note name: a letter and its accidentals, without an octave. Two names are equal when they are spelled alike (F# is
/// not Gb; see <see cref="IsEnharmonicTo"/>). The default value is C.
/// </summary>
/// <remarks>
/// Range: every letter with up to <see cref="MaxAlteration"/> sharps or flats. Text: an uppercase or lowercase letter A to
/// G, then a run of <c>#</c> or <c>b</c> (also <c>x</c>, ♯, ♭, ♮, 𝄪, 𝄫); written with <c>#</c> and <c>b</c>, or as printed
/// with the format "P". In other languages with a <see cref="NoteNaming"/> as the format provider.
/// </remarks>
[ReadAs("a note name")]
[EqualBy(nameof(letter), nameof(alteration))]
public readonly partial struct NoteName : IEquatable<NoteName>, ISpanParsable<NoteName>, IFormattable
{
    /// <summary>The most sharps or flats a name can have: 11. Past that it would come round to the same key.</summary>
    public const int MaxAlteration = 11;

    private readonly sbyte letter;
    private readonly sbyte alteration;

    /// <summary>A note name of a letter and a number of sharps (positive) or flats (negative).</summary>
    /// <exception cref="ArgumentOutOfRangeException">No such letter, or more than <see cref="MaxAlteration"/> accidentals.</exception>
    public NoteName(Letter letter, int alteration = 0)
    {
        ArgumentOutOfRangeException.ThrowIfNegative((int)letter, nameof(letter));
        ArgumentOutOfRangeException.ThrowIfGreaterThan((int)letter, (int)Letter.B, nameof(letter));
        ArgumentOutOfRangeException.ThrowIfLessThan(alteration, -MaxAlteration);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(alteration, MaxAlteration);
        this.letter = (sbyte)letter;
        this.alteration = (sbyte)alteration;
    }

    /// <summary>The letter.</summary>
    public Letter Letter => (Letter)letter;

    /// <summary>The sharps (positive) or flats (negative).</summary>
    public int Alteration => alteration;

    /// <summary>The pitch class, 0 (C) to 11 (B).</summary>
    public int PitchClass => Diatonic.Modulo(Diatonic.Semitones(letter) + alteration, Diatonic.SemitonesPerOctave);

    /// <summary>Place on the line of fifths: C is 0, G 1, F -1, F# 6, Gb -6. A key's sharps are its tonic's place.</summary>
    public int Fifths
    {
        get
        {
            ReadOnlySpan<sbyte> naturals = [0, 2, 4, -1, 1, 3, 5];
            return naturals[letter] + (7 * alteration);
        }
    }

    /// <summary>All 21 names with at most one accidental, by letter: C, C#, Cb, D, …</summary>
    public static IReadOnlyList<NoteName> Common { get; } =
    [
        .. from letter in Enum.GetValues<Letter>()
        from alteration in new[] { 0, 1, -1 }
        select new NoteName(letter, alteration),
    ];

    /// <summary>The names read from a text, separated by white space or commas.</summary>
    /// <exception cref="FormatException">Some part is not a note name.</exception>
    public static IReadOnlyList<NoteName> ParseList(string text, IFormatProvider? provider = null)
    {
        ArgumentNullException.ThrowIfNull(text);
        return Parsing.ParseList<NoteName>(text, "a list of note names", Read, provider);
    }

    /// <summary>The name of the note <paramref name="interval"/> above this one (below, if it descends).</summary>
    /// <exception cref="OverflowException">It would need more than <see cref="MaxAlteration"/> accidentals.</exception>
    public static NoteName operator +(NoteName note, Interval interval) => note.Add(interval);

    /// <summary>The name of the note <paramref name="interval"/> below.</summary>
    /// <exception cref="OverflowException">It would need more than <see cref="MaxAlteration"/> accidentals.</exception>
    public static NoteName operator -(NoteName note, Interval interval) => note.Add(-interval);

    /// <summary>The name of the note <paramref name="interval"/> above this one (below, if it descends).</summary>
    /// <exception cref="OverflowException">It would need more than <see cref="MaxAlteration"/> accidentals.</exception>
    public NoteName Add(Interval interval)
    {
        var steps = letter + interval.Steps;
        var above = Diatonic.Semitones(letter) + alteration + interval.Semitones - Diatonic.Semitones(steps);
        return Math.Abs(above) <= MaxAlteration
            ? new((Letter)Diatonic.Modulo(steps, Diatonic.StepsPerOctave), above)
            : throw new OverflowException(
                $"{this} and {interval} need {Math.Abs(above)} accidentals; the most is {MaxAlteration}."
            );
    }

    /// <summary>The tone of <paramref name="degree"/> over this root: its letter is that of the degree, its accidentals follow.</summary>
    /// <exception cref="OverflowException">It would need more than <see cref="MaxAlteration"/> accidentals.</exception>
    public NoteName Add(Degree degree) => Add(degree.Interval);

    /// <summary>The smallest ascending interval from this name to <paramref name="other"/>, less than an octave in letters.</summary>
    public Interval To(NoteName other)
    {
        var steps = Diatonic.Modulo(other.letter - letter, Diatonic.StepsPerOctave);
        return new(
            steps,
            Diatonic.Semitones(letter + steps) - Diatonic.Semitones(letter) + other.alteration - alteration
        );
    }

    /// <summary>Whether both sound the same key of a keyboard.</summary>
    public bool IsEnharmonicTo(NoteName other) => PitchClass == other.PitchClass;

    /// <summary>
    /// The spelling of the same pitch class with the fewest accidentals. Where a sharp and a flat do equally well, a name
    /// with sharps gets the sharp, any other the flat.
    /// </summary>
    public NoteName Simplest()
    {
        var (target, sharpSide) = (PitchClass, alteration > 0);
        return Enum.GetValues<Letter>()
            .Select(candidate =>
                (
                    Letter: candidate,
                    Alteration: Diatonic.Modulo(target - Diatonic.Semitones((int)candidate) + 5, 12) - 5
                )
            )
            .OrderBy(candidate => Math.Abs(candidate.Alteration))
            .ThenBy(candidate => candidate.Alteration > 0 != sharpSide)
            .ThenBy(candidate => candidate.Letter)
            .Select(candidate => new NoteName(candidate.Letter, candidate.Alteration))
            .First();
    }

    /// <inheritdoc/>
    public override int GetHashCode() => (letter * 32) + alteration;

    /// <summary>The name as <see cref="Parse(string, IFormatProvider?)"/> reads it.</summary>
    public override string ToString() => ToString(null, null);

    /// <summary>The name: "G" (or null) plain, <c>Bb</c>; "P" printed, <c>B♭</c>; in the language of a <see cref="NoteNaming"/>.</summary>
    /// <exception cref="FormatException">Another format.</exception>
    public string ToString(string? format, IFormatProvider? formatProvider = null)
    {
        var text = new StringBuilder(4);
        Write(text, TextFormat.IsPrinted(format), NoteNaming.Of(formatProvider));
        return text.ToString();
    }

    /// <summary>Reads the longest name that begins here, in the language of the cursor.</summary>
    internal static bool Read(ref TextCursor cursor, out NoteName note) => cursor.Naming().Read(ref cursor, out note);

    internal void Write(StringBuilder text, bool printed, NoteNaming? naming = null) =>
        (naming ?? NoteNaming.English).Write(text, this, printed);
}
