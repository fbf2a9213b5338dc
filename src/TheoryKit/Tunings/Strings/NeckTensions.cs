using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Tunings.Strings;

/// <summary>The shortcut from a neck to what its strings pull.</summary>
public static class NeckTensions
{
    /// <summary>What each string pulls when it is in tune, capo or not, and what is amiss.</summary>
    /// <param name="neck">The neck.</param>
    /// <param name="strings">The strings fitted, as many as the neck has.</param>
    /// <param name="reference">A tuning to compare with, on the same strings.</param>
    /// <param name="limits">Between which tensions strings are comfortable; if null, those for the instrument that the set, else the
    /// tuning, else the reference is known for (<see cref="TensionLimits.For(StringSet?, IEnumerable{Tuning?})"/>).</param>
    /// <param name="a4">The frequency of A4 in Hz; 440 by ISO 16.</param>
    /// <exception cref="ArgumentException">The set or the reference has another number of strings.</exception>
    public static TensionReport Tensions(
        this Neck neck,
        StringSet strings,
        Tuning? reference = null,
        TensionLimits? limits = null,
        double a4 = Pitch.StandardA4
    )
    {
        ArgumentNullException.ThrowIfNull(neck);
        ArgumentNullException.ThrowIfNull(strings);
        return new(neck, strings, reference, limits ?? TensionLimits.For(strings, neck.Tuning, reference), a4);
    }
}
