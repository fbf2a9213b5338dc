using TheoryKit.Values;

namespace TheoryKit.Theory.Notes;

/// <summary>
/// All sets of pitch classes that are one another transposed or inverted: what major and minor triads have in common. Equal
/// when the prime forms are; ordered by size, then by prime form, member by member. The default value is the class of the
/// empty set. There are 224.
/// </summary>
/// <remarks>
/// Text: the prime form between round brackets, <c>(0 3 7)</c>; any member of the class is read, so <c>(0 4 7)</c> is the same.
/// </remarks>
[ReadAs("a set class")]
[EqualBy(nameof(PrimeForm))]
[Ordered]
public readonly partial struct SetClass : IEquatable<SetClass>, IComparable<SetClass>, ISpanParsable<SetClass>
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

    /// <summary>The class as <see cref="Parse(string, IFormatProvider?)"/> reads it, <c>(0 3 7)</c>.</summary>
    public override string ToString() => $"({string.Join(' ', PrimeForm)})";

    private static bool Read(ref TextCursor cursor, out SetClass setClass)
    {
        var read = PitchClassSet.Read(ref cursor, '(', ')', out var set);
        setClass = Of(set);
        return read;
    }
}
