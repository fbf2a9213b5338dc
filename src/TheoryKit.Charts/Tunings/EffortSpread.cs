namespace TheoryKit.Charts.Tunings;

/// <summary>How the effort of grips is spread.</summary>
/// <remarks>
/// Quarters and median lie by linear interpolation between the two nearest of the ordered values, at part p of the way from
/// the first to the last. Looked up: R. J. Hyndman and Y. Fan, "Sample quantiles in statistical packages", The American Statistician 50
/// (1996) 361-365; from memory: it is their type 7.
/// </remarks>
/// <param name="Count">How many grips.</param>
/// <param name="Least">The least effort.</param>
/// <param name="LowerQuarter">A quarter of the grips take no more.</param>
/// <param name="Median">Half of the grips take no more.</param>
/// <param name="UpperQuarter">A quarter of the grips take no less.</param>
/// <param name="Most">The most effort.</param>
public sealed record EffortSpread(
    int Count,
    double Least,
    double LowerQuarter,
    double Median,
    double UpperQuarter,
    double Most
)
{
    /// <summary>The spread of these efforts; null where there are none.</summary>
    public static EffortSpread? Of(IEnumerable<double> efforts)
    {
        ArgumentNullException.ThrowIfNull(efforts);
        var ordered = efforts.Order().ToArray();
        return ordered.Length == 0 ? null : new(ordered.Length, ordered[0], At(0.25), At(0.5), At(0.75), ordered[^1]);

        double At(double part)
        {
            var place = part * (ordered.Length - 1);
            var (below, above) = (ordered[(int)place], ordered[(int)Math.Ceiling(place)]);
            return below + ((above - below) * (place - Math.Floor(place)));
        }
    }
}
