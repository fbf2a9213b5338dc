using TheoryKit.Fingering.Hands;
using TheoryKit.Fingering.Lines;
using TheoryKit.Fingering.Zones;
using TheoryKit.Paths;
using TheoryKit.Paths.Routes;
using TheoryKit.Tests.Fingering;
using TheoryKit.Theory.Chords;

namespace TheoryKit.Tests.Paths.Routes;

/// <summary>Every route there is: each choice of window, entry and direction for each chord tried, its cost added up by the definitions.</summary>
internal static class RouteBruteForce
{
    public sealed record Way(Window Window, Shape Shape, int Entry, Direction Direction);

    /// <summary>The least cost by windows and positions.</summary>
    /// <param name="query">Equal notes, no triads.</param>
    /// <param name="windows">By chord the windows that come into question.</param>
    public static Dictionary<string, double> All(RouteQuery query, Func<Chord, IEnumerable<(Window, Shape)>> windows)
    {
        var chords = Enumerable
            .Range(0, query.Times)
            .SelectMany(time => query.Changes.Chords.Select(span => (Time: time, Chord: span.Chord!)))
            .ToList();
        var ways = chords.ConvertAll(each => windows(each.Chord).SelectMany(one => WaysOf(query, one)).ToList());
        var found = new Dictionary<string, double>();
        Go([]);
        return found;

        void Go(List<Way> chosen)
        {
            if (chosen.Count < chords.Count)
            {
                foreach (var way in ways[chosen.Count])
                {
                    if (chosen.Count == 0 || IsAllowed(query, chosen[^1].Window, way.Window))
                    {
                        chosen.Add(way);
                        Go(chosen);
                        chosen.RemoveAt(chosen.Count - 1);
                    }
                }

                return;
            }

            if (
                Fits(query, chords.ConvertAll(static each => each.Time), chosen)
                && Cost(query, chords.ConvertAll(static each => each.Time), chosen) is { } cost
            )
            {
                var key = Key(
                    chosen.Select(static way => way.Window),
                    chosen.SelectMany(way =>
                        Line(way, query.NotesPerChord!.Value).Notes.Select(note => note.Place.Position.ToString())
                    )
                );
                found[key] = Math.Min(cost, found.GetValueOrDefault(key, double.PositiveInfinity));
            }
        }
    }

    public static string Key(IEnumerable<Window> windows, IEnumerable<string> positions) =>
        $"{string.Join(' ', windows)} | {string.Join(' ', positions)}";

    private static IEnumerable<Way> WaysOf(RouteQuery query, (Window Window, Shape Shape) one) =>
        from entry in Enumerable.Range(0, one.Shape.Notes.Count)
        where query.Targets.Count == 0 || query.Targets.Contains(one.Shape.Notes[entry].Place.Function.Number)
        from direction in new[] { Direction.Up, Direction.Down }
        select new Way(one.Window, one.Shape, entry, direction);

    private static int Home(RouteQuery query, Window window) => Math.Max(query.Neck.Capo + 1, window.First);

    private static bool IsAllowed(RouteQuery query, Window from, Window to) =>
        query.Plan switch
        {
            RoutePlan.Stay => from == to,
            RoutePlan.Climb climb when climb.Goal >= climb.From => Home(query, to) >= Home(query, from),
            RoutePlan.Climb => Home(query, to) <= Home(query, from),
            _ => true,
        };

    private static int Arrival(RoutePlan.Climb climb, RouteQuery query, List<int> times) =>
        times.FindLastIndex(time => time < (climb.By ?? query.Times));

    private static bool Fits(RouteQuery query, List<int> times, List<Way> ways) =>
        query.Plan switch
        {
            RoutePlan.Climb climb => ways[0].Window.Contains(climb.From)
                && ways.Skip(Arrival(climb, query, times)).All(way => way.Window.Contains(climb.Goal)),
            RoutePlan.Roam roam => ways.Select(static way => way.Window).Distinct().Count() >= roam.MinZones,
            _ => true,
        };

    /// <summary>The notes of a chord and where the line goes after them.</summary>
    private static (List<ShapeNote> Notes, int Going) Line(Way way, int count)
    {
        var tones = way.Shape.Notes;
        var (at, going) = (way.Entry, way.Direction == Direction.Up ? 1 : -1);
        var notes = new List<ShapeNote> { tones[at] };
        while (notes.Count < count)
        {
            if (tones.Count > 1)
            {
                going = at + going < 0 || at + going >= tones.Count ? -going : going;
                at += going;
            }

            notes.Add(tones[at]);
        }

        return (notes, going);
    }

    private static double? Cost(RouteQuery query, List<int> times, List<Way> ways)
    {
        var like = new LineQuery
        {
            Neck = query.Neck,
            Hand = query.Hand,
            Notes = [],
        };
        var (sum, before, going) = (0.0, default(FingeredNote?), 0);
        var pitch = 0;
        for (var index = 0; index < ways.Count; index++)
        {
            var way = ways[index];
            var (notes, leaving) = Line(way, query.NotesPerChord!.Value);
            var isStill = notes.Count == 1 || way.Shape.Notes.Count == 1;
            var direction = way.Direction == Direction.Up ? 1 : -1;
            var first = notes[0].Place.Pitch.MidiNumber;
            if (index == 0 && isStill && direction < 0)
            {
                return null;
            }

            if (index > 0)
            {
                var step = Math.Sign(first - pitch);
                step = step == 0 ? going : step;
                if (isStill && direction != step)
                {
                    return null;
                }

                // At its last tone a line can't but go the other way.
                var really = isStill ? direction : Math.Sign(notes[1].Place.Pitch.MidiNumber - first);
                sum +=
                    (query.Weights.Leap * Math.Abs(first - pitch))
                    + (first == pitch ? query.Weights.Repeat : 0)
                    + (step != going ? query.Weights.Turn : 0)
                    + (really != step ? query.Weights.Turn : 0);
            }

            foreach (var note in notes)
            {
                var played = new FingeredNote(note.Place.Position, note.Finger, Home(query, way.Window));
                sum += query.Weights.Effort * BruteForce.NoteCost(like, played);
                sum += before is { } from ? query.Weights.Effort * BruteForce.StepCost(like, from, played) : 0;
                before = played;
            }

            if (query.Plan is RoutePlan.Climb climb)
            {
                var (start, end) = (
                    BruteForce.Tip(query.Neck, Math.Max(climb.From, query.Neck.Capo + 1)),
                    BruteForce.Tip(query.Neck, Math.Max(climb.Goal, query.Neck.Capo + 1))
                );
                var arrival = Arrival(climb, query, times);
                var part = arrival == 0 ? 1 : Math.Min(1, index / (double)arrival);
                var even = start + (part * (end - start));
                sum += query.Weights.Pace * Math.Abs(BruteForce.Tip(query.Neck, Home(query, way.Window)) - even) / 1000;
            }

            (going, pitch) = (leaving, notes[^1].Place.Pitch.MidiNumber);
        }

        return double.IsInfinity(sum) ? null : sum;
    }
}
