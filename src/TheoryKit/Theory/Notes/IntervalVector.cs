using System.Collections;
using TheoryKit.Values;

namespace TheoryKit.Theory.Notes;

/// <summary>
/// How often each interval class, 1 to 6 semitones either way, occurs between two members of a set. Equal when all six counts
/// are. The default value is all zeros.
/// </summary>
/// <remarks>Text: the six counts between angle brackets, <c>&lt;0 0 1 1 1 0&gt;</c> for a major or a minor triad.</remarks>
[ReadAs("an interval vector")]
[EqualBy(nameof(packed))]
public readonly partial struct IntervalVector
    : IEquatable<IntervalVector>,
        IReadOnlyList<int>,
        ISpanParsable<IntervalVector>
{
    /// <summary>How many interval classes there are: 6.</summary>
    public const int Length = 6;

    /// <summary>The highest count: 12, of every class but the last in the set of all twelve.</summary>
    public const int MaxCount = 12;

    private const int BitsPerCount = 4;
    private readonly int packed;

    /// <summary>The vector of six counts, interval class 1 first.</summary>
    /// <exception cref="ArgumentException">Not six counts.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A count is not 0 to <see cref="MaxCount"/>.</exception>
    public IntervalVector(params ReadOnlySpan<int> counts)
    {
        if (counts.Length != Length)
        {
            throw new ArgumentException(
                $"{counts.Length} counts; there are {Length} interval classes.",
                nameof(counts)
            );
        }

        for (var index = 0; index < Length; index++)
        {
            ArgumentOutOfRangeException.ThrowIfNegative(counts[index], nameof(counts));
            ArgumentOutOfRangeException.ThrowIfGreaterThan(counts[index], MaxCount, nameof(counts));
            packed |= counts[index] << (BitsPerCount * index);
        }
    }

    /// <summary>How often an interval class occurs.</summary>
    /// <param name="intervalClass">1 (minor second, major seventh) to 6 (tritone).</param>
    public int Of(int intervalClass)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(intervalClass, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(intervalClass, Length);
        return (packed >> (BitsPerCount * (intervalClass - 1))) & ((1 << BitsPerCount) - 1);
    }

    /// <summary>The count at a place from 0: that of interval class index + 1.</summary>
    public int this[int index] => Of(Check.Index(index, Length) + 1);

    /// <summary>How many pairs there are in all.</summary>
    public int Total => this.Sum();

    int IReadOnlyCollection<int>.Count => Length;

    /// <summary>The counts, interval class 1 first.</summary>
    public IEnumerator<int> GetEnumerator()
    {
        for (var intervalClass = 1; intervalClass <= Length; intervalClass++)
        {
            yield return Of(intervalClass);
        }
    }

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    /// <summary>The vector as <see cref="Parse(string, IFormatProvider?)"/> reads it.</summary>
    public override string ToString() => $"<{string.Join(' ', this)}>";

    private static bool Read(ref TextCursor cursor, out IntervalVector vector)
    {
        vector = default;
        if (!cursor.Take('<'))
        {
            return cursor.Fail("< and then six counts (as in <0 0 1 1 1 0>)");
        }

        Span<int> counts = stackalloc int[Length];
        for (var index = 0; index < Length; index++)
        {
            var parted = cursor.SkipSpaces();
            var start = cursor.Position;
            if (index > 0 && !parted)
            {
                return cursor.Fail($"white space before count {index + 1} of {Length}");
            }

            if (!cursor.TakeNumber(2, out counts[index]) || counts[index] > MaxCount)
            {
                return cursor.Fail(start, $"count {index + 1} of {Length}, from 0 to {MaxCount}");
            }
        }

        cursor.SkipSpaces();
        if (!cursor.Take('>'))
        {
            return cursor.Fail("> after six counts");
        }

        vector = new(counts);
        return true;
    }
}
