using TheoryKit.Fingering.Hands;
using TheoryKit.Fingering.Lines;
using TheoryKit.Fingering.Zones;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Relations;

namespace TheoryKit.Paths.Routes;

/// <summary>One way through a chord: a window, its shape, where the line enters and where it goes.</summary>
internal sealed class RouteNode(RouteChoice choice, int entry, Direction direction)
{
    /// <summary>Window and shape.</summary>
    public RouteChoice Choice { get; } = choice;

    /// <summary>The number of the tone that the line enters on.</summary>
    public int Entry { get; } = entry;

    public Direction Direction { get; } = direction;

    /// <summary>The numbers of the tones in the order played.</summary>
    public required int[] Line { get; init; }

    /// <summary>In which direction the line travels at its end.</summary>
    public required Direction Leaving { get; init; }

    /// <summary>What the line costs the hand.</summary>
    public required double Effort { get; init; }

    /// <summary>Whether the line does not say by itself in which direction it goes: it is one note, or repeats one.</summary>
    public bool IsStill => Line.Length == 1 || Choice.Shape.Notes.Count == 1;

    public FingeredNote First => Choice.Notes[Line[0]];

    public FingeredNote Last => Choice.Notes[Line[^1]];

    public int FirstMidi => Choice.Midi[Line[0]];

    public int LastMidi => Choice.Midi[Line[^1]];
}

/// <summary>A window for a chord with its shape there.</summary>
internal sealed class RouteChoice(Window window, Form? form, Shape shape, DegreeChord? triad, int home)
{
    public Window Window { get; } = window;

    public Form? Form { get; } = form;

    public Shape Shape { get; } = shape;

    public DegreeChord? Triad { get; } = triad;

    /// <summary>Where the index finger is at home.</summary>
    public int Home { get; } = home;

    public FingeredNote[] Notes { get; } =
    [.. shape.Notes.Select(note => new FingeredNote(note.Place.Position, note.Finger, home))];

    public int[] Midi { get; } = [.. shape.Notes.Select(static note => note.Place.Pitch.MidiNumber)];
}

/// <summary>What can be played over each chord of a question, and what going from one to the next costs.</summary>
internal sealed class RouteGround
{
    private readonly RouteQuery query;
    private readonly LineSolver line;
    private readonly Dictionary<Chord, IReadOnlyList<RouteChoice>> choices = [];
    private readonly Dictionary<(Chord, int), RouteNode[]> nodes = [];

    public RouteGround(RouteQuery query, IEnumerable<Chord> chords)
    {
        this.query = query;
        Hand = new(query.Neck, query.Hand);
        line = new(Hand);
        var distinct = chords.Distinct().ToList();
        var zones = distinct.ToDictionary(
            static chord => chord,
            chord => chord.Zones(query.Neck, query.Hand).DistinctBy(static zone => zone.Window).ToList()
        );
        var shared = query.Plan.IsOnePlace ? OnePlace(distinct, zones) : null;
        foreach (var chord in distinct)
        {
            choices[chord] =
            [
                .. shared is null
                    ? zones[chord].SelectMany(zone => ChoicesOf(chord, zone.Window, zone.Form))
                    : shared.SelectMany(window =>
                        ChoicesOf(chord, window, zones[chord].Find(zone => zone.Window == window)?.Form)
                    ),
            ];
        }
    }

    public HandOnNeck Hand { get; }

    /// <summary>The ways through a chord with so many notes, in a fixed order.</summary>
    public RouteNode[] Nodes(Chord chord, int count)
    {
        if (!nodes.TryGetValue((chord, count), out var found))
        {
            nodes[(chord, count)] = found = [.. choices[chord].SelectMany(choice => Ways(choice, count))];
        }

        return found;
    }

    /// <summary>Whether a chord has a place at all, whatever the targets.</summary>
    public bool HasPlace(Chord chord) => choices[chord].Count > 0;

    /// <summary>
    /// What going from one chord to the next costs; null if it can't be. The pace is not in it.
    /// </summary>
    public RouteCost? Join(RouteNode from, RouteNode to)
    {
        if (!query.Plan.Allows(from.Choice.Window, from.Choice.Home, to.Choice.Window, to.Choice.Home))
        {
            return null;
        }

        var semitones = to.FirstMidi - from.LastMidi;
        var step =
            semitones == 0 ? from.Leaving
            : semitones > 0 ? Direction.Up
            : Direction.Down;
        if (to.IsStill && to.Direction != step)
        {
            return null;
        }

        var hand = line.StepCost(from.Last, to.First);
        if (double.IsPositiveInfinity(hand))
        {
            return null;
        }

        var turns = (step == from.Leaving ? 0 : 1) + (to.Direction == step ? 0 : 1);
        var shift = Shift(from.Choice.Home, to.Choice.Home);
        return new(
            query.Weights.Effort * (hand - shift),
            query.Weights.Effort * shift,
            query.Weights.Leap * Math.Abs(semitones),
            semitones == 0 ? query.Weights.Repeat : 0,
            query.Weights.Turn * turns,
            0
        );
    }

    /// <summary>What a way through a chord costs by itself.</summary>
    public RouteCost Own(RouteNode node, int chord, int arrival) =>
        new(
            query.Weights.Effort * node.Effort,
            0,
            0,
            0,
            0,
            query.Weights.Pace * query.Plan.Behind(Hand, node.Choice.Window, chord, arrival) / 1000
        );

    private double Shift(int from, int to)
    {
        var weights = query.Hand.Weights;
        return from == to
            ? 0
            : weights.Shift + (weights.ShiftDistance * Math.Abs(Hand.Tip(from) - Hand.Tip(to)) / 1000);
    }

    /// <summary>The windows that all chords share: the one asked for, or those of their zones, where every shape is complete if there is such.</summary>
    private List<Window> OnePlace(IReadOnlyList<Chord> chords, Dictionary<Chord, List<Zone>> zones)
    {
        if (query.Plan is RoutePlan.Stay { Place: { } place })
        {
            return [place];
        }

        var windows = zones
            .Values.SelectMany(static each => each)
            .Select(static zone => zone.Window)
            .Distinct()
            .OrderBy(static window => window.First)
            .ThenBy(static window => window.Last)
            .ToList();
        var shapes = chords.Select(chord => new WindowShapes(line, chord.Root, chord.Formula)).ToList();
        var complete = windows.Where(window => shapes.TrueForAll(each => each.In(window) is { IsComplete: true }));
        return complete.ToList() is { Count: > 0 } found ? found : windows;
    }

    private IEnumerable<RouteChoice> ChoicesOf(Chord chord, Window window, Form? form)
    {
        var home = Hand.Home(window);
        var triads = query.UpperTriads
            ? chord.Formula.Relations().Triads.Where(static triad => triad.On.PitchClass != 0).ToList()
            : [];
        if (triads.Count == 0)
        {
            return new WindowShapes(line, chord.Root, chord.Formula).In(window) is { } shape
                ? [new(window, form, shape, null, home)]
                : [];
        }

        return triads
            .Select(triad =>
                (
                    triad,
                    Shape: new WindowShapes(
                        line,
                        chord.Root,
                        new(triad.Functions.Select(static tone => tone.Outer))
                    ).In(window)
                )
            )
            .Where(static each => each.Shape is not null)
            .Select(each => new RouteChoice(window, form, each.Shape!, each.triad, home));
    }

    private IEnumerable<RouteNode> Ways(RouteChoice choice, int count)
    {
        var tones = choice.Shape.Notes;
        for (var entry = 0; entry < tones.Count; entry++)
        {
            if (query.Targets.Count > 0 && !query.Targets.Contains(tones[entry].Place.Function.Number))
            {
                continue;
            }

            foreach (var direction in Enum.GetValues<Direction>())
            {
                // At its last tone a line can only turn: the other direction would be the same line again.
                var isStill = count == 1 || tones.Count == 1;
                if (!isStill && entry == (direction == Direction.Up ? tones.Count - 1 : 0))
                {
                    continue;
                }

                var (steps, leaving) = Walk(tones.Count, entry, direction, count);
                var effort = Effort(choice, steps);
                if (!double.IsPositiveInfinity(effort))
                {
                    yield return new(choice, entry, direction)
                    {
                        Line = steps,
                        Leaving = leaving,
                        Effort = effort,
                    };
                }
            }
        }
    }

    /// <summary>Steps through so many tones, turning round at the last ones without repeating them.</summary>
    private static (int[] Line, Direction Leaving) Walk(int tones, int entry, Direction direction, int count)
    {
        var line = new int[count];
        line[0] = entry;
        for (var index = 1; index < count; index++)
        {
            if (tones == 1)
            {
                line[index] = entry;
                continue;
            }

            if (line[index - 1] == (direction == Direction.Up ? tones - 1 : 0))
            {
                direction = direction == Direction.Up ? Direction.Down : Direction.Up;
            }

            line[index] = line[index - 1] + (direction == Direction.Up ? 1 : -1);
        }

        return (line, direction);
    }

    private double Effort(RouteChoice choice, int[] steps)
    {
        var effort = 0.0;
        for (var index = 0; index < steps.Length; index++)
        {
            var note = choice.Notes[steps[index]];
            effort += line.NoteCost(note.Position, note.Finger, note.Place);
            if (index > 0)
            {
                effort += line.StepCost(choice.Notes[steps[index - 1]], note);
            }
        }

        return effort;
    }
}
