using System.Globalization;
using TheoryKit.Drawing.Necks;
using TheoryKit.Drawing.Paths;
using TheoryKit.Drawing.Sheets;
using TheoryKit.Drawing.Tab;
using TheoryKit.Drawing.Zones;
using TheoryKit.Paths;
using TheoryKit.Paths.Routes;
using TheoryKit.Paths.Words;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Progressions;
using TheoryKit.Values;

namespace TheoryKit.Drawing.Routes;

/// <summary>The sheet of a route and that of an answer, and how the values of routes are described.</summary>
internal static class RouteSheets
{
    private const int MostInTitle = 8;
    private const int MostWindows = 8;

    public static Description<RoutePlan> Plans { get; } =
        new(new("plan of a route", "plans of routes"), static plan => Printed.Capital(plan.InWords()), []);

    public static Description<RouteWeights> Weights { get; } =
        new(
            new("weights of a route", "weights of routes"),
            static weights => weights == RouteWeights.Default ? "The usual weights of a route" : "Weights of a route",
            [
                new("effort of the hand", static weights => Number(weights.Effort), IsNumber: true),
                new("leap, each semitone", static weights => Number(weights.Leap), IsNumber: true),
                new("a pitch again", static weights => Number(weights.Repeat), IsNumber: true),
                new("a turn", static weights => Number(weights.Turn), IsNumber: true),
                new("off the pace, each metre", static weights => Number(weights.Pace), IsNumber: true),
            ]
        );

    public static Description<RouteCost> Costs { get; } =
        new(
            new("cost of a route", "costs of routes"),
            static cost => $"Cost {Number(cost.Total)}",
            [
                new("fingers", static cost => Number(cost.Effort), IsNumber: true),
                new("shifts", static cost => Number(cost.Shifts), IsNumber: true),
                new("leaps", static cost => Number(cost.Leaps), IsNumber: true),
                new("repeated pitches", static cost => Number(cost.Repeats), IsNumber: true),
                new("turns", static cost => Number(cost.Turns), IsNumber: true),
                new("off the pace", static cost => Number(cost.Pace), IsNumber: true),
            ]
        );

    public static Description<RouteStop> Stops { get; } =
        new(
            new("chord", "chords"),
            static stop => Words.Of(stop.Chord),
            [
                new("at beat", static stop => stop.Span.Start.ToString(), IsNumber: true),
                new("frets", static stop => stop.Window.ToString()),
                new("form", static stop => stop.Form is { } form ? ZoneWords.Short(form) : null),
                new(
                    "enters on",
                    static stop =>
                        new(
                            (Words)$"{stop.Entry.Place.Pitch} ({stop.Entry.Place.Function})",
                            ToneRoles.Of(stop.Entry.Place.Function, stop.Chord.Formula)
                        )
                ),
                new("going", static stop => stop.Direction == Direction.Up ? "up" : "down"),
                new("triad", static stop => stop.Triad is { } triad ? Words.Of(triad.Over(stop.Chord.Root)) : null),
                new("notes", static stop => stop.Notes, IsNumber: true),
                new("cost", static stop => Number(stop.Cost.Total), IsNumber: true),
            ]
        );

    public static Description<RouteQuery> Queries { get; } =
        new(
            new("question for a route", "questions for routes"),
            static query => (Words)$"A route over {Names(query.Changes)}",
            [
                new("plan", static query => query.Plan.InWords()),
                new("times through", static query => query.Times, IsNumber: true),
                new("notes", static query => Notes(query)),
                new("chords start on", static query => query.Targets.Count == 0 ? null : Targets(query)),
                new(
                    "beats ahead",
                    static query =>
                        query.Anticipation == Fractions.Fraction.Zero ? null : query.Anticipation.ToString(),
                    IsNumber: true
                ),
                new("lines through", static query => query.UpperTriads ? "upper triads" : "whole chords"),
                new("neck", static query => Words.Of(query.Neck)),
                new("hand", static query => Words.Of(query.Hand)),
                new("routes asked for", static query => query.Best, IsNumber: true),
            ]
        );

    public static Sheet One(Route route) =>
        new([
            new Block.Title(
                (Words)$"A route over {Names(route.Path.Changes!)}",
                $"{English.Count(route.Path.Notes.Count, "note")}, {English.Count(route.Windows.Count, "zone")}"
            ),
            .. Parts(route),
        ]);

    public static Sheet Answer(RouteAnswer answer)
    {
        var query = answer.Query;
        var title = new Block.Title(
            (Words)$"Routes over {Names(query.Changes)}",
            (Words)$"{query.Plan.InWords()}, {Notes(query)}{Extras(query)}"
        );
        if (answer.Reason is { } reason)
        {
            return new(
                title,
                new Block.Prose(
                    reason is NoRouteReason.Blocked blocked
                        ? (Words)$"No route: chord {blocked.Index + 1}, {blocked.Chord}, {blocked.Lack.InWords()}"
                        : (Words)$"No route: {Words.Said(reason.InWords)}"
                )
            );
        }

        var blocks = new List<Block> { title };
        if (answer.Count > 1)
        {
            blocks.Add(
                new Block.Table(
                    "The routes, the best first",
                    [
                        new("route", IsNumber: true),
                        "frets, chord by chord",
                        new("shifts", IsNumber: true),
                        new("cost", IsNumber: true),
                    ],
                    [
                        .. answer.Select(
                            static (route, index) =>
                                (IReadOnlyList<Cell>)[index + 1, Windows(route), route.Moves, Number(route.Cost.Total)]
                        ),
                    ]
                )
            );
            blocks.Add(new Block.Heading("The best"));
        }

        blocks.AddRange(Parts(answer[0]));
        return new(blocks);
    }

    public static Block Map(RouteMap map) =>
        new Block.Picture(
            (context, naming) =>
                $"<div class=\"tk-wide\" tabindex=\"0\" role=\"group\" aria-label=\"The route along the neck\">{RouteMapPicture.Write(map, context, naming)}</div>",
            naming => RouteMapText.Write(map.Route, naming)
        );

    private static IEnumerable<Block> Parts(Route route) =>
        [
            new Block.Facts([
                new("cost", Split(route.Cost)),
                new("zones", $"{route.Windows.Count}; {Times(route.Moves)}"),
            ]),
            Map(new(route)),
            new Block.Picture(
                (context, naming) => new TabDrawingRenderer(naming).Html(route.Path.Tab(), context),
                naming => new TabDrawingRenderer(naming).Text(route.Path.Tab())
            ),
            Stops.Table(route.Stops).Blocks.OfType<Block.Table>().Single() with
            {
                Caption = "Chord by chord",
            },
        ];

    private static string Split(RouteCost cost)
    {
        (string Name, double Cost)[] terms =
        [
            ("fingers", cost.Effort),
            ("shifts", cost.Shifts),
            ("leaps", cost.Leaps),
            ("repeated pitches", cost.Repeats),
            ("turns", cost.Turns),
            ("off the pace", cost.Pace),
        ];
        return $"{Number(cost.Total)}: "
            + string.Join(
                ", ",
                terms.Where(static term => term.Cost > 0).Select(static term => $"{term.Name} {Number(term.Cost)}")
            );
    }

    private static string Windows(Route route)
    {
        var shown = string.Join(", ", route.Stops.Take(MostWindows).Select(static stop => stop.Window));
        return route.Stops.Count <= MostWindows ? shown : $"{shown} …";
    }

    private static string Times(int count) =>
        count switch
        {
            0 => "the hand stays",
            1 => "the hand moves once",
            2 => "the hand moves twice",
            _ => $"the hand moves {count} times",
        };

    private static string Notes(RouteQuery query) =>
        query.Rhythm is { } rhythm ? $"rhythm {rhythm}"
        : query.NotesPerChord is { } notes ? $"{English.Count(notes, "note")} per chord"
        : "eighths";

    private static string Targets(RouteQuery query) =>
        English.List(
            query.Targets.Select(static number =>
                number switch
                {
                    1 => "roots",
                    3 => "thirds",
                    5 => "fifths",
                    7 => "sevenths",
                    _ => $"{English.Ordinal(number)}s",
                }
            )
        );

    private static string Extras(RouteQuery query) =>
        (query.Targets.Count == 0 ? "" : $", into {Targets(query)}")
        + (
            query.Anticipation == Fractions.Fraction.Zero
                ? ""
                : $", {query.Anticipation} {(query.Anticipation > Fractions.Fraction.One ? "beats" : "beat")} ahead"
        )
        + (query.UpperTriads ? ", in upper triads" : "");

    private static Words Names(Changes changes)
    {
        var names = changes.Chords.Select(static span => span.Chord).OfType<Chord>().ToList();
        var shown = Words.Join(", ", names.Take(MostInTitle));
        return names.Count <= MostInTitle ? shown : $"{shown} and {names.Count - MostInTitle} more";
    }

    private static string Number(double number) => number.ToString("0.##", CultureInfo.InvariantCulture);
}
