namespace TheoryKit.Values;

/// <summary>
/// Numbers that look random and are the same for a seed wherever they are made: SplitMix64. Looked up: Steele, Lea and Flood,
/// "Fast splittable pseudorandom number generators", OOPSLA 2014, 453-472; the multipliers and shifts in other implementations of it. Derived: the
/// step, 2^64 over the golden ratio rounded down, which is odd. One for each use; not safe on several threads.
/// </summary>
internal sealed class SplitMix64(ulong seed)
{
    private ulong state = seed;

    /// <summary>The next 64 bits.</summary>
    public ulong Next()
    {
        state = unchecked(state + 0x9E3779B97F4A7C15);
        var mixed = unchecked((state ^ (state >> 30)) * 0xBF58476D1CE4E5B9);
        mixed = unchecked((mixed ^ (mixed >> 27)) * 0x94D049BB133111EB);
        return mixed ^ (mixed >> 31);
    }

    /// <summary>A number from 0 up to, but not with, 1: the upper 53 bits.</summary>
    public double NextPart() => (Next() >> 11) * (1.0 / (1UL << 53));

    /// <summary>A number from 0 up to, but not with, a limit.</summary>
    public int Below(int limit)
    {
        // Those beyond the last whole multiple would favour the low numbers.
        var beyond = ulong.MaxValue - (ulong.MaxValue % (ulong)limit);
        ulong bits;
        do
        {
            bits = Next();
        } while (bits >= beyond);

        return (int)(bits % (ulong)limit);
    }

    /// <summary>One of some weights, none negative and not all zero, as often as it weighs.</summary>
    public int Pick(ReadOnlySpan<double> weights)
    {
        var sum = 0.0;
        foreach (var weight in weights)
        {
            sum += weight;
        }

        var (at, last) = (NextPart() * sum, 0);
        for (var index = 0; index < weights.Length; index++)
        {
            if (weights[index] <= 0)
            {
                continue;
            }

            last = index;
            at -= weights[index];
            if (at < 0)
            {
                break;
            }
        }

        return last;
    }

    /// <summary>Puts a list in a new order (Fisher and Yates).</summary>
    public void Shuffle<T>(IList<T> list)
    {
        for (var index = list.Count - 1; index > 0; index--)
        {
            var other = Below(index + 1);
            (list[index], list[other]) = (list[other], list[index]);
        }
    }
}
