using TheoryKit.Tunings.Strings;
using TheoryKit.Tunings.Turns;

namespace TheoryKit.Drawing.Tunings;

/// <summary>Short ways from tunings to their sheets, for notebooks.</summary>
public static class TuningExtensions
{
    /// <summary>The sheet of the retuning, with the tension of the strings fitted before and after.</summary>
    /// <param name="scordatura">What is turned.</param>
    /// <param name="strings">The strings fitted.</param>
    /// <param name="scaleLength">From nut to saddle, in mm.</param>
    /// <param name="limits">Between which tensions a string plays well and lasts; those for the instrument of the set or the tunings
    /// if null.</param>
    /// <exception cref="ArgumentException">The set has not as many strings.</exception>
    public static ScordaturaSheet Fitted(
        this Scordatura scordatura,
        StringSet strings,
        double scaleLength,
        TensionLimits? limits = null
    )
    {
        ArgumentNullException.ThrowIfNull(scordatura);
        return new(scordatura) { Tensions = scordatura.Tensions(strings, scaleLength, limits) };
    }
}
