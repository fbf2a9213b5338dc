using System.Collections;
using System.Text;
using TheoryKit.Theory.Notes;
using TheoryKit.Values;

namespace TheoryKit.Theory.Chords;

/// <summary>
/// A set of degrees in order, <c>1 b3 5 b7</c>: what a chord or a scale is made of, whatever its root. Equal when the
/// degrees are the same, spelling included. The default value is the empty formula.
/// </summary>
/// <remarks>
/// A formula needs no root (<c>3 b7 9</c> is one). Text: degrees separated by white space or commas, in any order; written
/// in order with spaces, the empty formula as <c>()</c>; printed with the format "P": <c>1 ♭3 5 ♭7</c>.
/// </remarks>
[ReadAs("a formula")]
[EqualBy(nameof(bits))]
public readonly partial struct Formula
    : IEquatable<Formula>,
        IReadOnlyList<Degree>,
        ISpanParsable<Formula>,
        IFormattable
{
    // One bit per degree, so that equality, membership and set operations are single instructions.
    private readonly UInt128 bits;

    private Formula(UInt128 bits) => this.bits = bits;

    /// <summary>A formula of these degrees, in any order.</summary>
    /// <exception cref="ArgumentException">A degree occurs twice.</exception>
    public Formula(IEnumerable<Degree> degrees)
    {
        ArgumentNullException.ThrowIfNull(degrees);
        foreach (var degree in degrees)
        {
            if ((bits & Bit(degree)) != 0)
            {
                throw new ArgumentException($"{degree} occurs twice; a formula has each degree once.", nameof(degrees));
            }

            bits |= Bit(degree);
        }
    }

    /// <summary>The formula with no degree.</summary>
    public static Formula Empty => default;

    /// <summary>How many degrees it has.</summary>
    public int Count => (int)UInt128.PopCount(bits);

    /// <summary>Its tones as pitch classes counted from the root.</summary>
    public PitchClassSet PitchClasses
    {
        get
        {
            var mask = 0;
            for (var rest = bits; rest != 0; rest &= rest - 1)
            {
                mask |= 1 << Degree.FromIndex((int)UInt128.TrailingZeroCount(rest)).PitchClass;
            }

            return new((ushort)mask);
        }
    }

    /// <summary>The degree at a place, from 0.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There are fewer degrees.</exception>
    public Degree this[int index]
    {
        get
        {
            ArgumentOutOfRangeException.ThrowIfNegative(index);
            ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(index, Count);
            var rest = bits;
            for (; index > 0; index--)
            {
                rest &= rest - 1;
            }

            return Degree.FromIndex((int)UInt128.TrailingZeroCount(rest));
        }
    }

    /// <summary>Whether the degree is in it, spelled like that.</summary>
    public bool Contains(Degree degree) => (bits & Bit(degree)) != 0;

    /// <summary>Whether every degree of <paramref name="other"/> is in it, spelled like that.</summary>
    public bool Contains(Formula other) => (other.bits & ~bits) == 0;

    /// <summary>The degree with that number, or null; the lowest where there are several (b9 of b9 and #9).</summary>
    public Degree? WithNumber(int number)
    {
        foreach (var degree in this)
        {
            if (degree.Number == number)
            {
                return degree;
            }
        }

        return null;
    }

    /// <summary>The degree that sounds so many semitones above the root, octaves aside, or null; the lowest where there are several.</summary>
    /// <param name="semitones">Any number; counted modulo 12.</param>
    public Degree? At(int semitones)
    {
        var pitchClass = Diatonic.Modulo(semitones, Diatonic.SemitonesPerOctave);
        foreach (var degree in this)
        {
            if (degree.PitchClass == pitchClass)
            {
                return degree;
            }
        }

        return null;
    }

    /// <summary>This formula and the degree.</summary>
    public Formula With(Degree degree) => new(bits | Bit(degree));

    /// <summary>This formula without the degree.</summary>
    public Formula Without(Degree degree) => new(bits & ~Bit(degree));

    /// <summary>The degrees in either.</summary>
    public Formula Union(Formula other) => new(bits | other.bits);

    /// <summary>The degrees in both, spelled alike.</summary>
    public Formula Intersect(Formula other) => new(bits & other.bits);

    /// <summary>The degrees of this one that the other has not, spelled like that.</summary>
    public Formula Except(Formula other) => new(bits & ~other.bits);

    /// <summary>The same with every degree brought into the octave above the root; 9 becomes 2.</summary>
    public Formula Simple
    {
        get
        {
            var simple = default(UInt128);
            foreach (var degree in this)
            {
                simple |= Bit(degree.Simple);
            }

            return new(simple);
        }
    }

    /// <summary>The tones over a root, in the formula's order.</summary>
    /// <exception cref="OverflowException">A tone would need too many accidentals.</exception>
    public IReadOnlyList<NoteName> Tones(NoteName root)
    {
        var tones = new NoteName[Count];
        var index = 0;
        foreach (var degree in this)
        {
            tones[index++] = root.Add(degree);
        }

        return tones;
    }

    /// <summary>The degrees in order.</summary>
    public Enumerator GetEnumerator() => new(bits);

    IEnumerator<Degree> IEnumerable<Degree>.GetEnumerator() => GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    /// <summary>The formula as <see cref="Parse(string, IFormatProvider?)"/> reads it.</summary>
    public override string ToString() => ToString(null, null);

    /// <summary>The formula: "G" (or null) plain, <c>1 b3 5</c>; "P" printed, <c>1 ♭3 5</c>.</summary>
    /// <exception cref="FormatException">Another format.</exception>
    public string ToString(string? format, IFormatProvider? formatProvider = null)
    {
        var printed = TextFormat.IsPrinted(format);
        if (bits == 0)
        {
            return "()";
        }

        var text = new StringBuilder();
        foreach (var degree in this)
        {
            if (text.Length > 0)
            {
                text.Append(' ');
            }

            degree.Write(text, printed);
        }

        return text.ToString();
    }

    /// <summary>Reads degrees up to the end of the text or a closing bracket.</summary>
    internal static bool Read(ref TextCursor cursor, out Formula formula)
    {
        formula = default;
        cursor.SkipSpaces();
        if (cursor.Take("()"))
        {
            cursor.SkipSpaces();
            return true;
        }

        while (true)
        {
            var start = cursor.Position;
            if (!Degree.Read(ref cursor, out var degree))
            {
                return false;
            }

            if (formula.Contains(degree))
            {
                return cursor.Fail(start, $"another degree: {degree} is there already");
            }

            formula = formula.With(degree);
            var parted = cursor.SkipSpaces();
            if (cursor.Take(','))
            {
                parted = true;
                cursor.SkipSpaces();
            }
            else if (cursor.AtEnd || cursor.Current == ']')
            {
                return true;
            }

            if (!parted)
            {
                return cursor.Fail("white space or a comma between degrees");
            }
        }
    }

    private static UInt128 Bit(Degree degree) => UInt128.One << degree.Index;

    /// <summary>Goes over the degrees of a formula in order.</summary>
    public struct Enumerator : IEnumerator<Degree>
    {
        private readonly UInt128 all;
        private UInt128 rest;

        internal Enumerator(UInt128 bits) => all = rest = bits;

        /// <inheritdoc/>
        public Degree Current { get; private set; }

        readonly object IEnumerator.Current => Current;

        /// <inheritdoc/>
        public bool MoveNext()
        {
            if (rest == 0)
            {
                return false;
            }

            Current = Degree.FromIndex((int)UInt128.TrailingZeroCount(rest));
            rest &= rest - 1;
            return true;
        }

        /// <inheritdoc/>
        public void Reset() => rest = all;

        /// <inheritdoc/>
        public readonly void Dispose() { }
    }
}
