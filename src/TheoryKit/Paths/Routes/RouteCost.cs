using System.Globalization;

namespace TheoryKit.Paths.Routes;

/// <summary>What a route costs, term by term, each weighted by <see cref="RouteWeights"/>; their sum is what is least.</summary>
/// <param name="Effort">The fingers: setting, spreading, crossing strings, letting go and rolling, as for any line.</param>
/// <param name="Shifts">The hand's shifts between chords.</param>
/// <param name="Leaps">The semitones from chord to chord.</param>
/// <param name="Repeats">Pitches that sound again at a change.</param>
/// <param name="Turns">Turns of the line at a change.</param>
/// <param name="Pace">Being off an even climb.</param>
public readonly record struct RouteCost(
    double Effort,
    double Shifts,
    double Leaps,
    double Repeats,
    double Turns,
    double Pace
)
{
    /// <summary>The sum.</summary>
    public double Total => Effort + Shifts + Leaps + Repeats + Turns + Pace;

    /// <summary>Term by term.</summary>
    public static RouteCost operator +(RouteCost one, RouteCost other) =>
        new(
            one.Effort + other.Effort,
            one.Shifts + other.Shifts,
            one.Leaps + other.Leaps,
            one.Repeats + other.Repeats,
            one.Turns + other.Turns,
            one.Pace + other.Pace
        );

    /// <summary>Term by term.</summary>
    public static RouteCost Add(RouteCost one, RouteCost other) => one + other;

    /// <summary>The sum.</summary>
    public override string ToString() => Total.ToString("0.##", CultureInfo.InvariantCulture);
}
