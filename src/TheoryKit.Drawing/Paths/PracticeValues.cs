using System.Globalization;
using TheoryKit.Drawing.Grips;
using TheoryKit.Drawing.Sheets;
using TheoryKit.Drawing.Tab;
using TheoryKit.Drawing.Zones;
using TheoryKit.Paths.Exercises;
using TheoryKit.Paths.MadeLines;
using TheoryKit.Paths.Words;
using TheoryKit.Theory.Chords;
using TheoryKit.Values;
using Path = TheoryKit.Paths.Path;

namespace TheoryKit.Drawing.Paths;

/// <summary>How drills and what else there is to practise with are described.</summary>
internal static class PracticeValues
{
    private const int MostTempi = 40;

    public static Description<Drill> Drills { get; } =
        new(new("drill", "drills"), static drill => drill.ToString(), []);

    public static Description<AccentPattern> Accents { get; } =
        new(
            new("pattern of accents", "patterns of accents"),
            static pattern => pattern.ToString(),
            [
                new("notes", static pattern => pattern.Count, IsNumber: true),
                new(
                    "louder",
                    static pattern =>
                        English.List(
                            Enumerable
                                .Range(0, pattern.Count)
                                .Where(note => pattern[note])
                                .Select(static note => English.Ordinal(note + 1))
                        )
                            is { Length: > 0 } louder
                            ? louder
                            : "none"
                ),
            ]
        );

    public static Description<RootCycle> Cycles { get; } =
        new(
            new("order of roots", "orders of roots"),
            static cycle => cycle.ToString(),
            [new("semitones above the first", static cycle => string.Join(' ', cycle.Order))]
        );

    public static Description<Picking> Rules { get; } =
        new(new("way of picking", "ways of picking"), static rule => rule.ToString(), []);

    public static Description<PickStroke> Stroke { get; } =
        new(
            new("note", "notes"),
            static stroke => Words.Of(stroke.Note.Pitch),
            [
                new("stroke", static stroke => Sign(stroke.Direction)),
                new("string", static stroke => stroke.Note.Position.String, IsNumber: true),
                new("fret", static stroke => stroke.Note.Position.Fret, IsNumber: true),
                new("starts at beat", static stroke => stroke.Note.Start.ToString(), IsNumber: true),
            ]
        );

    public static Description<TempoLadder> Ladders { get; } =
        new(
            new("ladder of tempi", "ladders of tempi"),
            static ladder => ladder.ToString(),
            [
                new("tempi", static ladder => ladder.Tempi.Count, IsNumber: true),
                new("each played", static ladder => ladder.Repeats == 1 ? "once" : $"{ladder.Repeats} times"),
                new("beats a minute", static ladder => Tempi(ladder)),
            ]
        )
        {
            More = static _ => [new Block.Prose(Cautions.Hands)],
        };

    public static Description<ZoneHinge> Hinges { get; } =
        new(
            new("change of zone", "changes of zone"),
            static hinge => $"note {hinge.Note + 1}",
            [
                new("from", static hinge => ZoneWords.Named(hinge.From.Form)),
                new("frets", static hinge => Words.Of(hinge.From.Window)),
                new("to", static hinge => ZoneWords.Named(hinge.To.Form)),
                new("its frets", static hinge => Words.Of(hinge.To.Window)),
            ]
        );

    public static Description<Approach> Approaches { get; } =
        new(
            new("approach", "approaches"),
            static approach => approach.Name,
            [new("neighbours in order", static approach => English.List(approach.Neighbours.Select(Neighbour)))]
        );

    public static Description<LineRequest> Requests { get; } =
        new(
            new("question for a made line", "questions for made lines"),
            static request => (Words)$"A line over {request.Changes}",
            Asked
        );

    private static IReadOnlyList<Trait<LineRequest>> Asked =>
        [
            new("seed", static request => request.Seed.ToString(CultureInfo.InvariantCulture), IsNumber: true),
            new("neck", static request => Words.Of(request.Neck)),
            new("frets", static request => request.Window is { } window ? Words.Of(window) : "all"),
            new("from", static request => request.Lowest is { } low ? Words.Of(low) : null),
            new("up to", static request => request.Highest is { } high ? Words.Of(high) : null),
            new("through the changes", static request => request.Times == 1 ? "once" : $"{request.Times} times"),
            new("notes in a bar", static request => Density(request)),
            new("figures", static request => string.Join(", ", request.Figures)),
            new("targets", static request => English.List(request.Targets.Select(static number => $"{number}"))),
            new("approaches", static request => Approached(request)),
            new("passing tones", static request => request.Passing ? "yes" : "no"),
        ];

    /// <summary>A path seen from the picking hand: its tab, and the strokes of each bar.</summary>
    public static Sheet Strokes(PickStrokes strokes)
    {
        var path = strokes.Path;
        var blocks = new List<Block>
        {
            new Block.Title($"Strokes of {English.Count(path.Notes.Count, "note")}", strokes.Rule.ToString()),
            new Block.Facts([
                new("down", Count(strokes, PickDirection.Down)),
                new("up", Count(strokes, PickDirection.Up)),
                new("sounding on", Count(strokes, null)),
            ]),
        };
        if (path.Notes.Count == 0)
        {
            return new(blocks);
        }

        blocks.Add(Tab(path));
        blocks.Add(
            new Block.Table(
                "Strokes bar by bar",
                [new("bar", IsNumber: true), "strokes"],
                [
                    .. strokes
                        .GroupBy(stroke => (int)Math.Floor((stroke.Note.Start / path.Time.Beats).ToDouble()))
                        .Select(bar =>
                            (IReadOnlyList<Cell>)
                                [
                                    bar.Key + 1,
                                    string.Join(
                                        ' ',
                                        bar.DistinctBy(static stroke => stroke.Note.Start)
                                            .Select(static stroke => Sign(stroke.Direction))
                                    ),
                                ]
                        ),
                ]
            )
        );
        return new(blocks);
    }

    /// <summary>A chord through all its zones.</summary>
    public static Sheet Travel(ZoneTravel travel)
    {
        var blocks = new List<Block>
        {
            new Block.Title(
                Words.Of(travel.Zones[0].Chord),
                $"through {English.Count(travel.Zones.Count, "zone")}, {(travel.IsDown ? "down" : "up")} the neck"
            ),
            new Block.Facts([
                new("notes", travel.Path.Notes.Count),
                new("bars", travel.Path.BarCount),
                new("effort", GripWords.Effort(travel.Effort)),
            ]),
            Tab(travel.Path),
        };
        if (travel.Hinges.Count > 0)
        {
            blocks.Add(
                new Block.Table(
                    "Where it goes from a zone to the next",
                    [new("note", IsNumber: true), new("bar", IsNumber: true), "after", "with", "to the zone", "frets"],
                    [
                        .. travel.Hinges.Select(hinge =>
                        {
                            var (before, note) = (travel.Path.Notes[hinge.Note - 1], travel.Path.Notes[hinge.Note]);
                            return (IReadOnlyList<Cell>)
                                [
                                    hinge.Note + 1,
                                    (int)Math.Floor((note.Start / travel.Path.Time.Beats).ToDouble()) + 1,
                                    new Cell($"{before.Pitch} on string {before.Position.String}"),
                                    new Cell($"{note.Pitch} on string {note.Position.String}"),
                                    ZoneWords.Named(hinge.To.Form),
                                    new Cell(Words.Of(hinge.To.Window)),
                                ];
                        }),
                    ]
                )
            );
        }

        blocks.Add(new Block.Prose(Cautions.Hands));
        return new(blocks);
    }

    /// <summary>A made line: what was asked, the tab, and note by note why it is there.</summary>
    public static Sheet Made(MadeLine made)
    {
        var path = made.Path;
        var blocks = new List<Block>
        {
            new Block.Title(
                (Words)$"A line over {made.Request.Changes}",
                $"{English.Count(path.Notes.Count, "note")}, seed {made.Request.Seed.ToString(CultureInfo.InvariantCulture)}"
            ),
        };
        blocks.Add(Requests.Card(made.Request).Blocks.OfType<Block.Facts>().First());
        if (path.Notes.Count == 0)
        {
            return new(blocks);
        }

        blocks.Add(Tab(path));
        blocks.Add(
            new Block.Table(
                "Why each note is there",
                [
                    new("no.", IsNumber: true),
                    new("bar", IsNumber: true),
                    new("beat", IsNumber: true),
                    "note",
                    "function",
                    new("string", IsNumber: true),
                    new("fret", IsNumber: true),
                    "why",
                ],
                [
                    .. path.Notes.Select(
                        (note, index) =>
                        {
                            var bar = (int)Math.Floor((note.Start / path.Time.Beats).ToDouble());
                            var function = path.FunctionOf(note);
                            return (IReadOnlyList<Cell>)
                                [
                                    index + 1,
                                    bar + 1,
                                    Beat(note.Start - (bar * path.Time.Beats) + 1),
                                    new Cell(Words.Of(note.Pitch)),
                                    function is { } degree
                                        ? new Cell(
                                            Words.Of(degree),
                                            ToneRoles.Over(degree, path.ChordAt(note.Start)!.Formula)
                                        )
                                        : "",
                                    note.Position.String,
                                    note.Position.Fret,
                                    new Cell(note.Why is { } why ? Words.Said(why.InWords) : Words.None),
                                ];
                        }
                    ),
                ]
            )
        );
        return new(blocks);
    }

    private static Block.Picture Tab(Path path) =>
        new(
            (context, naming) => new TabDrawingRenderer(naming).Html(path.Tab(), context),
            naming => new TabDrawingRenderer(naming).Text(path.Tab())
        );

    /// <summary>A beat as it is counted: 1, 2 1/2.</summary>
    private static string Beat(Fractions.Fraction beat)
    {
        var (whole, rest) = (Math.Floor(beat.ToDouble()), beat.Reduce());
        rest = (rest - (int)whole).Reduce();
        return rest.IsZero ? $"{(int)whole}" : $"{(int)whole}\u00a0{rest.ToString()}";
    }

    private static string Sign(PickDirection? direction) =>
        direction switch
        {
            PickDirection.Down => "down",
            PickDirection.Up => "up",
            _ => "·",
        };

    private static int Count(PickStrokes strokes, PickDirection? direction) =>
        strokes
            .DistinctBy(static stroke => (stroke.Note.Start, stroke.Direction))
            .Count(stroke => stroke.Direction == direction);

    private static string Tempi(TempoLadder ladder)
    {
        var all = ladder.Tempi.Select(static tempo => tempo.ToString("0.###", CultureInfo.InvariantCulture)).ToList();
        return all.Count <= MostTempi ? string.Join(' ', all) : $"{string.Join(' ', all.Take(MostTempi))} … {all[^1]}";
    }

    private static string Density(LineRequest request) =>
        request is { FewestPerBar: 0, MostPerBar: LineRequest.MaxPerBar } ? "as the figures give"
        : request.MostPerBar == LineRequest.MaxPerBar ? $"{request.FewestPerBar} or more"
        : request.FewestPerBar == request.MostPerBar ? $"{request.FewestPerBar}"
        : $"{request.FewestPerBar} to {request.MostPerBar}";

    private static string Approached(LineRequest request)
    {
        if (request.Approaches.Count == 0 || request.Approached == 0)
        {
            return "none";
        }

        var part = (100 * request.Approached).ToString("0", CultureInfo.InvariantCulture);
        var ways = request.Approaches.Count == Approach.Known.Count ? "any" : string.Join(", ", request.Approaches);
        return $"{ways}, to {part}\u00a0% of the targets";
    }

    private static string Neighbour(Neighbour neighbour) =>
        neighbour switch
        {
            TheoryKit.Paths.MadeLines.Neighbour.SemitoneBelow => "the semitone below",
            TheoryKit.Paths.MadeLines.Neighbour.SemitoneAbove => "the semitone above",
            TheoryKit.Paths.MadeLines.Neighbour.WholeToneBelow => "the whole tone below",
            TheoryKit.Paths.MadeLines.Neighbour.WholeToneAbove => "the whole tone above",
            TheoryKit.Paths.MadeLines.Neighbour.ScaleToneBelow => "the scale tone below",
            _ => "the scale tone above",
        };
}
