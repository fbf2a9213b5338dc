using System.Text;
using TheoryKit.Values;

namespace TheoryKit.Theory.Notes;

/// <summary>
/// A tone's number against the major scale of the root, with its accidentals: <c>b3</c>, <c>#11</c>, <c>bb7</c>. In a
/// chord it is the tone's function. Equal when written alike (#9 is not b3); ordered by number, then from flat to sharp.
/// The default value is 1.
/// </summary>
/// <remarks>
/// Range: numbers 1 to <see cref="MaxNumber"/>, up to <see cref="MaxAlteration"/> sharps or flats. Text: a run of <c>b</c>
/// or <c>#</c> (also x, ♯, ♭, ♮), then the number; printed with the format "P": <c>♭3</c>.
/// </remarks>
[ReadAs("a degree")]
[EqualBy(nameof(Index))]
[Ordered]
public readonly partial struct Degree : IEquatable<Degree>, IComparable<Degree>, ISpanParsable<Degree>, IFormattable
{
    /// <summary>The highest number: 15, the root two octaves up.</summary>
    public const int MaxNumber = 15;

    /// <summary>The most sharps or flats: 3.</summary>
    public const int MaxAlteration = 3;

    /// <summary>How many degrees there are.</summary>
    internal const int Count = MaxNumber * PerNumber;

    private const int PerNumber = (2 * MaxAlteration) + 1;

    private readonly byte number; // less one, so that the default value is 1
    private readonly sbyte alteration;

    /// <summary>A degree of a number from 1 to 15 and so many sharps (positive) or flats (negative).</summary>
    /// <exception cref="ArgumentOutOfRangeException">Beyond the range given in the remarks on the type.</exception>
    public Degree(int number, int alteration = 0)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(number, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(number, MaxNumber);
        ArgumentOutOfRangeException.ThrowIfLessThan(alteration, -MaxAlteration);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(alteration, MaxAlteration);
        this.number = (byte)(number - 1);
        this.alteration = (sbyte)alteration;
    }

    /// <summary>The root's own degree, 1.</summary>
    public static Degree Root => default;

    /// <summary>The number, 1 to <see cref="MaxNumber"/>.</summary>
    public int Number => number + 1;

    /// <summary>The sharps (positive) or flats (negative).</summary>
    public int Alteration => alteration;

    /// <summary>Semitones above the root.</summary>
    public int Semitones => Diatonic.Semitones(number) + alteration;

    /// <summary>Semitones above the root within one octave, 0 to 11.</summary>
    public int PitchClass => Diatonic.Modulo(Semitones, Diatonic.SemitonesPerOctave);

    /// <summary>The interval from the root.</summary>
    public Interval Interval => new(number, Semitones);

    /// <summary>The same within the octave above the root: #11 becomes #4, 9 becomes 2, 8 becomes 1.</summary>
    public Degree Simple => new((number % Diatonic.StepsPerOctave) + 1, alteration);

    /// <summary>Place among all degrees, 0 to <see cref="Count"/> - 1, in their order.</summary>
    internal int Index => (number * PerNumber) + alteration + MaxAlteration;

    internal static Degree FromIndex(int index) => new((index / PerNumber) + 1, (index % PerNumber) - MaxAlteration);

    /// <inheritdoc/>
    public int CompareTo(Degree other) => Index.CompareTo(other.Index);

    /// <summary>The degree as <see cref="Parse(string, IFormatProvider?)"/> reads it.</summary>
    public override string ToString() => ToString(null, null);

    /// <summary>The degree: "G" (or null) plain, <c>b3</c>; "P" printed, <c>♭3</c>.</summary>
    /// <exception cref="FormatException">Another format.</exception>
    public string ToString(string? format, IFormatProvider? formatProvider = null)
    {
        var text = new StringBuilder(4);
        Write(text, TextFormat.IsPrinted(format));
        return text.ToString();
    }

    internal static bool Read(ref TextCursor cursor, out Degree degree)
    {
        degree = default;
        if (!Accidentals.Read(ref cursor, MaxAlteration, out var alteration))
        {
            return false;
        }

        var start = cursor.Position;
        if (!cursor.TakeNumber(2, out var number) || number is < 1 or > MaxNumber)
        {
            return cursor.Fail(start, $"a number from 1 to {MaxNumber} (as in b3 or #11)");
        }

        degree = new(number, alteration);
        return true;
    }

    internal void Write(StringBuilder text, bool printed)
    {
        Accidentals.Write(text, alteration, printed);
        text.Append(Number);
    }
}
