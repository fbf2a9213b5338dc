using TheoryKit.Fingering.Hands;
using TheoryKit.Values;

namespace TheoryKit.Paths.Routes;

/// <summary>How a route goes along the neck. A new way to go is a nested record here. Equal when kind and settings are.</summary>
[Checked]
public abstract partial record RoutePlan
{
    private RoutePlan() { }

    /// <summary>How many different windows the route goes through at least.</summary>
    internal virtual int Zones => 1;

    /// <summary>After how many times through the changes the hand has arrived; null for all of them.</summary>
    internal virtual int? Times => null;

    /// <summary>Whether every chord is played in one and the same window.</summary>
    internal virtual bool IsOnePlace => false;

    /// <summary>Whether a chord may be played in a window.</summary>
    internal virtual bool Allows(Window window, int chord, int arrival) => true;

    /// <summary>Whether the hand may go from one window, and the fret where it is at home there, to the next.</summary>
    internal virtual bool Allows(Window from, int home, Window to, int next) => true;

    /// <summary>How far in mm the hand is from where an even climb would have it; 0 where there is none.</summary>
    internal virtual double Behind(HandOnNeck hand, Window window, int chord, int arrival) => 0;

    /// <summary>Everything in one window of frets.</summary>
    /// <param name="Place">The window; null for the best of those that the chords' zones have, one in which every shape is
    /// complete where there is such.</param>
    public sealed partial record Stay(Window? Place = null) : RoutePlan
    {
        internal override bool IsOnePlace => true;

        internal override bool Allows(Window from, int home, Window to, int next) => from == to;
    }

    /// <summary>
    /// From one fret to another, up or down the neck: the first chord's window holds the first fret, the last one's the other, and
    /// in between the index finger's home never goes back. The climb is drawn to an even pace by <see cref="RouteWeights.Pace"/>.
    /// </summary>
    /// <param name="From">A fret of the first window.</param>
    /// <param name="Goal">A fret of the last window.</param>
    public sealed partial record Climb(int From, int Goal) : RoutePlan
    {
        private readonly int? by;

        /// <summary>After how many times through the changes the hand has arrived, where it then stays by the goal; null for all of them.</summary>
        /// <exception cref="ArgumentOutOfRangeException">Less than 1.</exception>
        public int? By
        {
            get => by;
            init =>
                by = value is not < 1
                    ? value
                    : throw new ArgumentOutOfRangeException(
                        nameof(By),
                        value,
                        "A climb arrives after one time through the changes or more."
                    );
        }

        internal override int? Times => By;

        internal override bool Allows(Window window, int chord, int arrival) =>
            (chord > 0 || window.Contains(From)) && (chord < arrival || window.Contains(Goal));

        internal override bool Allows(Window from, int home, Window to, int next) =>
            Goal >= From ? next >= home : next <= home;

        internal override double Behind(HandOnNeck hand, Window window, int chord, int arrival)
        {
            var (start, end) = (Tip(hand, From), Tip(hand, Goal));
            var part = arrival == 0 ? 1 : Math.Min(1, (double)chord / arrival);
            return Math.Abs(hand.Tip(hand.Home(window)) - (start + ((end - start) * part)));
        }

        private static double Tip(HandOnNeck hand, int fret) =>
            hand.Tip(Math.Clamp(fret, hand.LowestFret, hand.Neck.Frets));
    }

    /// <summary>Anywhere.</summary>
    /// <param name="MinZones">How many different windows it goes through at least, 1 to <see cref="MaxZones"/>.</param>
    public sealed partial record Roam(int MinZones = 1) : RoutePlan
    {
        /// <summary>The most windows that can be asked for: 8. The work grows with the number of sets of so many windows.</summary>
        public const int MaxZones = 8;

        /// <summary>How many different windows it goes through at least.</summary>
        /// <exception cref="ArgumentOutOfRangeException">Less than 1 or more than <see cref="MaxZones"/>.</exception>
        public int MinZones { get; init; } =
            MinZones is >= 1 and <= MaxZones
                ? MinZones
                : throw new ArgumentOutOfRangeException(
                    nameof(MinZones),
                    MinZones,
                    $"A route goes through at least 1 to {MaxZones} zones."
                );

        internal override int Zones => MinZones;
    }
}
