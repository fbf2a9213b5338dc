using System.Runtime.CompilerServices;

namespace TheoryKit.Paths.Routes;

/// <summary>
/// What a route's smoothness weighs against the effort of the hand, whose own weights are those of <see cref="TheoryKit.Fingering.Hands.EffortWeights"/>; 1
/// is the effort of setting down one strong finger. Chosen: teaching practice put in numbers, no measurement. Equal when all are.
/// </summary>
public sealed record RouteWeights
{
    /// <summary>No weight is more: 1000.</summary>
    public const double MaxWeight = 1000;

    /// <summary>The weights used if nothing is said.</summary>
    public static RouteWeights Default { get; } = new();

    /// <summary>The hand's effort and its shifts: 1.</summary>
    public double Effort
    {
        get;
        init => field = Checked(value);
    } = 1;

    /// <summary>Every semitone from the last note of a chord to the first of the next: two of them weigh as much as a finger.</summary>
    public double Leap
    {
        get;
        init => field = Checked(value);
    } = 0.5;

    /// <summary>The same pitch again at a change: as much as a leap of four semitones, so that a line moves on by step where it can.</summary>
    public double Repeat
    {
        get;
        init => field = Checked(value);
    } = 2;

    /// <summary>Each time that the line turns at a change: the step into the chord against the travel before, and the travel after against that step.</summary>
    public double Turn
    {
        get;
        init => field = Checked(value);
    } = 1;

    /// <summary>
    /// The hand being off an even climb while a chord is played, by one metre: 20 mm, about half a zone, weigh as much as a shift.
    /// </summary>
    public double Pace
    {
        get;
        init => field = Checked(value);
    } = 100;

    private static double Checked(double value, [CallerMemberName] string name = "") =>
        value is >= 0 and <= MaxWeight
            ? value
            : throw new ArgumentOutOfRangeException(name, value, $"{name} is a weight, 0 to {MaxWeight}.");
}
