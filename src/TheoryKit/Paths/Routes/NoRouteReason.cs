using TheoryKit.Fingering.Hands;
using TheoryKit.Theory.Chords;
using TheoryKit.Values;

namespace TheoryKit.Paths.Routes;

/// <summary>Why there is no route: most often the first chord that none gets to, and what it lacks. Equal when kind and figures are.</summary>
[Checked]
public abstract partial record NoRouteReason
{
    private NoRouteReason() { }

    /// <summary>No chord gets a note.</summary>
    public sealed record NoNotes : NoRouteReason;

    /// <summary>The chords' zones don't make as many different windows.</summary>
    /// <param name="Windows">How many are asked for.</param>
    /// <param name="Chords">How many chords there are.</param>
    public sealed partial record TooFewWindows(int Windows, int Chords) : NoRouteReason;

    /// <summary>No route gets to a chord.</summary>
    /// <param name="Index">Which, from 0.</param>
    /// <param name="Chord">The chord.</param>
    /// <param name="Lack">What it lacks.</param>
    public sealed partial record Blocked(int Index, Chord Chord, ChordLack Lack) : NoRouteReason;
}

/// <summary>What a chord lacks for a route. Equal when kind and figures are.</summary>
[Checked]
public abstract partial record ChordLack
{
    private ChordLack() { }

    /// <summary>A shape at the frets asked for.</summary>
    /// <param name="Window">The frets.</param>
    public sealed partial record ShapeAt(Window Window) : ChordLack;

    /// <summary>A zone on the neck.</summary>
    public sealed record Zone : ChordLack;

    /// <summary>A shape with one of the targets to start on.</summary>
    public sealed record Target : ChordLack
    {
        private readonly Sequence<int> numbers;

        internal Target(IEnumerable<int> numbers) => this.numbers = numbers.ToSequence();

        /// <summary>The numbers of the degrees asked for.</summary>
        public IReadOnlyList<int> Numbers => numbers;
    }

    /// <summary>A shape in which the fingers reach from tone to tone.</summary>
    public sealed record Reach : ChordLack;

    /// <summary>A zone that the plan leaves it.</summary>
    /// <param name="Plan">The plan.</param>
    public sealed partial record ZoneInPlan(RoutePlan Plan) : ChordLack;
}
