using System.Diagnostics.CodeAnalysis;
using TheoryKit.Theory.Text;

namespace TheoryKit.Theory;

/// <summary>
/// All sets of pitch classes that are one another transposed or inverted: what major and minor triads have in common. Equal
/// when the prime forms are; ordered by size, then by prime form, member by member. The default value is the class of the
/// empty set. There are 224.
/// </summary>
/// <remarks>
/// Text: the prime form between round brackets, <c>(0 3 7)</c>; any member of the class is read, so <c>(0 4 7)</c> is the same.
/// </remarks>
public readonly struct SetClass : IEquatable<SetClass>, IComparable<SetClass>, ISpanParsable<SetClass>
{
    // Every class, and those with the same interval vector: found once.
    private static readonly Lazy<IReadOnlyList<SetClass>> Every = new(static () =>
        [.. Enumerable.Range(0, 1 << 12).Select(static mask => Of(new((ushort)mask))).Distinct().Order()]
    );

    private static readonly Lazy<ILookup<IntervalVector, SetClass>> ByVector = new(static () =>
        Every.Value.ToLookup(static each => each.IntervalVector)
    );

    private SetClass(PitchClassSet primeForm) => PrimeForm = primeForm;

    /// <summary>The class of a set.</summary>
    public static SetClass Of(PitchClassSet set) => new(set.PrimeForm);

    /// <summary>All 224 classes, in order.</summary>
    public static IReadOnlyList<SetClass> All => Every.Value;

    /// <summary>The prime form, by Rahn's rule: see <see cref="PitchClassSet.PrimeForm"/>.</summary>
    public PitchClassSet PrimeForm { get; }

    /// <summary>How many members each of its sets has, 0 to 12.</summary>
    public int Cardinality => PrimeForm.Count;

    /// <summary>How often each interval class occurs in each of its sets.</summary>
    public IntervalVector IntervalVector => PrimeForm.IntervalVector;

    /// <summary>Whether its sets are some transposition of their own inversion, as a minor seventh chord is and a major triad is not.</summary>
    public bool IsInversionallySymmetrical => InversionalSymmetry > 0;

    /// <summary>How many transpositions map each of its sets onto itself, the one by nothing included.</summary>
    public int TranspositionalSymmetry => PrimeForm.TranspositionalSymmetry;

    /// <summary>How many inversions map each of its sets onto itself.</summary>
    public int InversionalSymmetry => PrimeForm.InversionalSymmetry;

    /// <summary>How many different sets it holds: 24 for most, 12 where inversion adds nothing, 4 for augmented triads.</summary>
    public int SetCount => 2 * 12 / (TranspositionalSymmetry + InversionalSymmetry);

    /// <summary>The class of the complements of its sets.</summary>
    public SetClass Complement => Of(PrimeForm.Complement);

    /// <summary>
    /// The other class with the same interval vector, or null. There is never more than one, and only sets of four to eight
    /// members have one (the Z-relation).
    /// </summary>
    public SetClass? ZPartner
    {
        get
        {
            foreach (var other in ByVector.Value[IntervalVector])
            {
                // The empty set, one note and the sets of eleven and twelve stand alone in their vector or share it trivially.
                if (other != this && other.Cardinality == Cardinality)
                {
                    return other;
                }
            }

            return null;
        }
    }

    /// <summary>Whether some set of the other class lies inside each of its sets.</summary>
    public bool Contains(SetClass other) => PrimeForm.Subsets(other.Cardinality).Any(each => Of(each) == other);

    /// <summary>The classes of the subsets with so many members, in order, each once.</summary>
    /// <param name="cardinality">How many members; any number.</param>
    public IReadOnlyList<SetClass> SubsetClasses(int cardinality) =>
        [.. PrimeForm.Subsets(cardinality).Select(Of).Distinct().Order()];

    /// <inheritdoc/>
    public int CompareTo(SetClass other)
    {
        if (Cardinality != other.Cardinality)
        {
            return Cardinality - other.Cardinality;
        }

        // Of the lowest member that only one of them has, the one that has it comes first.
        var (mine, theirs) = (PrimeForm.Mask, other.PrimeForm.Mask);
        var differing = mine ^ theirs;
        return differing == 0 ? 0 : ((mine & differing & -differing) != 0 ? -1 : 1);
    }

    /// <inheritdoc/>
    public bool Equals(SetClass other) => PrimeForm == other.PrimeForm;

    /// <inheritdoc/>
    public override bool Equals([NotNullWhen(true)] object? obj) => obj is SetClass other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => PrimeForm.GetHashCode();

    /// <summary>Whether the prime forms agree.</summary>
    public static bool operator ==(SetClass left, SetClass right) => left.Equals(right);

    /// <summary>Whether the prime forms differ.</summary>
    public static bool operator !=(SetClass left, SetClass right) => !left.Equals(right);

    /// <summary>Orders by size, then prime form.</summary>
    public static bool operator <(SetClass left, SetClass right) => left.CompareTo(right) < 0;

    /// <summary>Orders by size, then prime form.</summary>
    public static bool operator >(SetClass left, SetClass right) => left.CompareTo(right) > 0;

    /// <summary>Orders by size, then prime form.</summary>
    public static bool operator <=(SetClass left, SetClass right) => left.CompareTo(right) <= 0;

    /// <summary>Orders by size, then prime form.</summary>
    public static bool operator >=(SetClass left, SetClass right) => left.CompareTo(right) >= 0;

    /// <summary>The class as <see cref="Parse(string, IFormatProvider?)"/> reads it, <c>(0 3 7)</c>.</summary>
    public override string ToString() => $"({string.Join(' ', PrimeForm)})";

    /// <summary>The class read from a text.</summary>
    /// <exception cref="FormatException">The text is not a set class; the message says where and what would have worked.</exception>
    public static SetClass Parse(string s, IFormatProvider? provider = null)
    {
        ArgumentNullException.ThrowIfNull(s);
        return Parse(s.AsSpan(), provider);
    }

    /// <inheritdoc cref="Parse(string, IFormatProvider?)"/>
    public static SetClass Parse(ReadOnlySpan<char> s, IFormatProvider? provider = null) =>
        Parsing.Parse<SetClass>(s, "a set class", Read);

    /// <summary>Reads a class; false if the text is none.</summary>
    public static bool TryParse([NotNullWhen(true)] string? s, IFormatProvider? provider, out SetClass result) =>
        TryParse(s.AsSpan(), provider, out result);

    /// <summary>Reads a class; false if the text is none.</summary>
    public static bool TryParse(ReadOnlySpan<char> s, IFormatProvider? provider, out SetClass result) =>
        Parsing.TryParse(s, Read, out result);

    private static bool Read(ref TextCursor cursor, out SetClass setClass)
    {
        var read = PitchClassSet.Read(ref cursor, '(', ')', out var set);
        setClass = Of(set);
        return read;
    }
}
