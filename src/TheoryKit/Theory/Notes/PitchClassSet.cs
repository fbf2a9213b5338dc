using System.Collections;
using System.Numerics;
using TheoryKit.Values;

namespace TheoryKit.Theory.Notes;

/// <summary>
/// A set of pitch classes, 0 (C, or the root it is counted from) to 11. Equal when the members are. The default value is the empty set.
/// </summary>
[ReadAs("a set of pitch classes")]
[EqualBy(nameof(mask))]
public readonly partial struct PitchClassSet : IEquatable<PitchClassSet>, IReadOnlyCollection<int>
{
    private readonly ushort mask;

    /// <summary>A set from a mask: bit n stands for pitch class n.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A bit above the twelfth is set.</exception>
    public PitchClassSet(ushort mask)
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThan(mask, 0xFFF);
        this.mask = mask;
    }

    /// <summary>The mask: bit n stands for pitch class n.</summary>
    public int Mask => mask;

    /// <summary>How many members it has.</summary>
    public int Count => BitOperations.PopCount(mask);

    /// <summary>Whether <paramref name="pitchClass"/> (counted modulo 12) is a member.</summary>
    public bool Contains(int pitchClass) => (mask & (1 << Diatonic.Modulo(pitchClass, 12))) != 0;

    /// <summary>Whether all members of <paramref name="other"/> are members.</summary>
    public bool Contains(PitchClassSet other) => (other.mask & ~mask) == 0;

    /// <summary>The members, ascending.</summary>
    public IEnumerator<int> GetEnumerator()
    {
        for (var pitchClass = 0; pitchClass < 12; pitchClass++)
        {
            if ((mask & (1 << pitchClass)) != 0)
            {
                yield return pitchClass;
            }
        }
    }

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}
