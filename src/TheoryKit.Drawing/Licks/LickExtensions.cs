using TheoryKit.Licks;

namespace TheoryKit.Drawing.Licks;

/// <summary>Short ways from a lick to its pictures, for notebooks.</summary>
public static class LickExtensions
{
    /// <summary>The lick with its tab and neck.</summary>
    public static LickDrawing Draw(this Lick lick)
    {
        ArgumentNullException.ThrowIfNull(lick);
        return new(lick);
    }

    /// <summary>The licks one below the other, the same moment at the same place in all of them.</summary>
    /// <exception cref="ArgumentException">There is none, or they are not in one time signature.</exception>
    public static LickComparison Compare(this IEnumerable<Lick> licks) => new(licks);
}
