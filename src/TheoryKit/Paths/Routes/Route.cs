using System.Collections;
using System.Collections.Immutable;
using System.Globalization;
using TheoryKit.Fingering.Hands;
using TheoryKit.Fingering.Zones;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Progressions;
using TheoryKit.Theory.Relations;
using TheoryKit.Values;

namespace TheoryKit.Paths.Routes;

/// <summary>A chord on a route: where it is played and how the line goes through it. Equal when all of that agrees.</summary>
/// <param name="Span">The chord, when it starts and how long it lasts.</param>
/// <param name="Window">The frets.</param>
/// <param name="Form">The form of the zone; null for a window that is not one of the chord's zones.</param>
/// <param name="Shape">The tones that the line goes through, with fingers.</param>
/// <param name="Triad">The triad that the line keeps to; null for the whole chord.</param>
/// <param name="Entry">The tone that it starts on.</param>
/// <param name="Direction">Where the line goes from there.</param>
/// <param name="Notes">How many notes it has.</param>
/// <param name="Cost">What it costs, the way into it included.</param>
[Checked]
public sealed partial record RouteStop(
    ChordSpan Span,
    Window Window,
    Form? Form,
    Shape Shape,
    DegreeChord? Triad,
    ShapeNote Entry,
    Direction Direction,
    int Notes,
    RouteCost Cost
)
{
    /// <summary>The chord.</summary>
    public Chord Chord => Span.Chord!;

    /// <summary>Chord, frets and entry: <c>Gm7 at 3-6 on b3</c>.</summary>
    public override string ToString() => $"{Chord} at {Window} on {Entry.Place.Function}";
}

/// <summary>A line over changes with a zone for every chord. Equal when path and stops are.</summary>
[EqualBy(nameof(stops), nameof(Path))]
public sealed partial class Route : IEquatable<Route>
{
    private readonly ImmutableArray<RouteStop> stops;

    internal Route(Path path, ImmutableArray<RouteStop> stops)
    {
        (Path, this.stops) = (path, stops);
        Cost = stops.Aggregate(default(RouteCost), static (sum, stop) => sum + stop.Cost);
    }

    /// <summary>The notes with positions, fingers, places of the hand and exact time, over the changes.</summary>
    public Path Path { get; }

    /// <summary>The chords in order; those that get no note are left out.</summary>
    public IReadOnlyList<RouteStop> Stops => stops;

    /// <summary>What it costs, term by term.</summary>
    public RouteCost Cost { get; }

    /// <summary>The different windows, in the order in which they come up.</summary>
    public IReadOnlyList<Window> Windows => [.. stops.Select(static stop => stop.Window).Distinct()];

    /// <summary>How many times the hand goes to another window.</summary>
    public int Moves => Enumerable.Range(1, stops.Length - 1).Count(at => stops[at].Window != stops[at - 1].Window);

    /// <summary>The chords with their frets, and the cost.</summary>
    public override string ToString() =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{string.Join(", ", stops.Select(static stop => $"{stop.Chord} {stop.Window}"))}: {Cost}"
        );
}

/// <summary>The best routes, from the least cost; where there is none, why.</summary>
public sealed class RouteAnswer : IReadOnlyList<Route>
{
    private readonly IReadOnlyList<Route> routes;

    internal RouteAnswer(RouteQuery query, IReadOnlyList<Route> routes, NoRouteReason? reason) =>
        (Query, this.routes, Reason) = (query, routes, reason);

    /// <summary>What was asked.</summary>
    public RouteQuery Query { get; }

    /// <inheritdoc/>
    public int Count => routes.Count;

    /// <inheritdoc/>
    public Route this[int index] => routes[Check.Index(index, Count)];

    /// <summary>Why there is none; null where there is a route.</summary>
    public NoRouteReason? Reason { get; }

    /// <inheritdoc/>
    public IEnumerator<Route> GetEnumerator() => routes.GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}
