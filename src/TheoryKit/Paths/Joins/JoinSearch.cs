using TheoryKit.Fingering.Hands;
using TheoryKit.Fingering.Zones;
using TheoryKit.Theory.Progressions;
using TheoryKit.Tunings.Necks;
using TheoryKit.Values;

namespace TheoryKit.Paths.Joins;

/// <summary>
/// Joins the shapes of changes in one zone into a line: so many notes of each chord, within it to the next tone in the direction of
/// travel, at the last one back without repeating it, and into the next chord by a <see cref="JoinRule"/>.
/// </summary>
/// <remarks>
/// Where in the changes the line is, on which tone it entered and in which direction it goes on from there decide all that follows, and
/// there are only so many of these states. So the line comes round: after a lead-in it is a cycle. A shape of a single tone repeats it and keeps the
/// direction. Through a chord with no tone here, as through N.C., nothing is played, and the line goes on after it from where it was.
/// </remarks>
public static class JoinSearch
{
    /// <summary>The whole exercise: lead-in and cycle.</summary>
    /// <exception cref="ArgumentException">Neither window nor shapes are given or both; the window is not on the neck or the hand does not
    /// cover it; there is not one shape for each chord; no chord has a tone here; the start is no tone of the first chord; or the notes a beat
    /// don't make a whole number for a chord.</exception>
    public static JoinedChanges Find(JoinQuery query) => Find(query, nameof(query));

    private static JoinedChanges Find(JoinQuery query, string name)
    {
        var (shapes, ground, notes, fingers) = Prepare(query, name);
        return new(query, shapes, ground, notes, ground.Start(query.Start, query.Direction, name), fingers);
    }

    /// <summary>The whole exercise in a window of frets.</summary>
    /// <inheritdoc cref="Find(JoinQuery)"/>
    public static JoinedChanges Find(
        Changes changes,
        Neck neck,
        Window window,
        int notesPerChord,
        JoinRule? rule = null
    ) =>
        Find(
            new()
            {
                Changes = changes,
                Neck = neck,
                Window = window,
                NotesPerChord = notesPerChord,
                Rule = rule ?? JoinRule.Beyond,
            },
            nameof(window)
        );

    /// <summary>The whole exercise in a zone, whatever its chord.</summary>
    /// <inheritdoc cref="Find(JoinQuery)"/>
    public static JoinedChanges Find(Changes changes, Zone zone, int notesPerChord, JoinRule? rule = null)
    {
        ArgumentNullException.ThrowIfNull(zone);
        return Find(
            new()
            {
                Changes = changes,
                Neck = zone.Neck,
                Window = zone.Window,
                Hand = zone.Hand,
                NotesPerChord = notesPerChord,
                Rule = rule ?? JoinRule.Beyond,
            },
            nameof(zone)
        );
    }

    /// <summary>
    /// Every cycle that some start leads into, the longest first; each from the lowest tone of the first chord at which the cycle enters it,
    /// so that nothing leads in. The start and the direction of the query don't matter.
    /// </summary>
    /// <exception cref="ArgumentException">As for <see cref="Find(JoinQuery)"/>.</exception>
    public static IReadOnlyList<JoinedChanges> Cycles(JoinQuery query)
    {
        var (shapes, ground, notes, fingers) = Prepare(query, nameof(query));
        var seen = new int[ground.States];
        var stamp = 1;
        return
        [
            .. Cycles(ground, notes, seen, ref stamp)
                .OrderByDescending(static each => each.Cycle)
                .Select(each => new JoinedChanges(
                    query with
                    {
                        Start = ground.StopOf(each.Start).Shape.Notes[ground.ToneOf(each.Start)].Place.Pitch,
                        Direction = JoinGround.DirectionOf(each.Start),
                    },
                    shapes,
                    ground,
                    notes,
                    each.Start,
                    fingers
                )),
        ];
    }

    /// <summary>How long the cycles are in several zones and for several numbers of notes.</summary>
    /// <param name="changes">The changes.</param>
    /// <param name="neck">The neck.</param>
    /// <param name="windows">The frets of the zones; those of the zones of the first chord if null.</param>
    /// <param name="fewest">The fewest notes per chord.</param>
    /// <param name="most">The most.</param>
    /// <param name="rule">How chords are joined; <see cref="JoinRule.Beyond"/> if null.</param>
    /// <param name="hand">The hand; the average one if null.</param>
    /// <param name="starts">Where each exercise starts.</param>
    /// <param name="cancellation">Ends the search.</param>
    /// <exception cref="ArgumentOutOfRangeException">The notes are not 1 to <see cref="JoinQuery.MaxNotes"/>, the fewest first.</exception>
    /// <exception cref="ArgumentException">A window is not on the neck or the hand does not cover it, or the changes have no chord.</exception>
    /// <exception cref="OperationCanceledException">The search was cancelled.</exception>
    public static JoinTable Table(
        Changes changes,
        Neck neck,
        IEnumerable<Window>? windows = null,
        int fewest = 2,
        int most = 16,
        JoinRule? rule = null,
        Hand? hand = null,
        JoinStarts starts = JoinStarts.LowestRoot,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(changes);
        ArgumentNullException.ThrowIfNull(neck);
        ArgumentOutOfRangeException.ThrowIfLessThan(fewest, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(most, fewest);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(most, JoinQuery.MaxNotes);
        var first =
            changes.Chords.Select(static span => span.Chord).FirstOrDefault(static chord => chord is not null)
            ?? throw new ArgumentException($"The changes {changes} have no chord.", nameof(changes));
        windows ??= first.Zones(neck, hand).Select(static zone => zone.Window).Distinct();
        return new(
            changes,
            neck,
            [.. windows],
            fewest,
            most,
            rule ?? JoinRule.Beyond,
            hand ?? Hand.Average,
            Check.Defined(starts),
            cancellation
        );
    }

    /// <summary>The cycles of a ground: the start of each, the lowest of its entries into the first chord, and how many chords it has.</summary>
    internal static List<(int Start, int Cycle)> Cycles(
        JoinGround ground,
        ReadOnlySpan<int> notes,
        int[] seen,
        ref int stamp
    )
    {
        // A cycle passes the first chord, so each has a start that lies on it.
        var found = new List<(int Start, int Cycle)>();
        var known = new HashSet<int>();
        var way = new List<int>();
        for (var start = 0; start < 2 * ground.Stops[0].Tones.Length; start++)
        {
            if (
                ground.Settle(start, notes) == start
                && !known.Contains(start)
                && ground.Walk(start, notes, way, seen, ref stamp) == 0
            )
            {
                found.Add((start, way.Count));
                known.UnionWith(way);
            }
        }

        return found;
    }

    private static (IReadOnlyList<Shape?>, JoinGround, int[], JoinShapes) Prepare(JoinQuery query, string name)
    {
        ArgumentNullException.ThrowIfNull(query, name);
        var fingers = new JoinShapes(query.Neck, query.Hand);
        var shapes = (query.Window, query.Shapes) switch
        {
            ({ } window, null) => fingers.In(query.Changes, window, name),
            (null, { } given) when given.Count == query.Changes.Chords.Count => given,
            (null, { } given) => throw new ArgumentException(
                $"The changes have {query.Changes.Chords.Count} chords, N.C. among them, but {given.Count} shapes are given; each has one, or null.",
                name
            ),
            _ => throw new ArgumentException("Chords are joined either in a window or over given shapes.", name),
        };
        foreach (var place in shapes.SelectMany(static shape => shape?.Places ?? []))
        {
            if (!query.Neck.Has(place.Position) || query.Neck.MidiNumberAt(place.Position) != place.Pitch.MidiNumber)
            {
                throw new ArgumentException(
                    $"A shape has {place.Pitch} at {place.Position}, where the neck {query.Neck} has it not.",
                    name
                );
            }
        }

        var ground = new JoinGround(query.Changes, shapes, query.Rule);
        if (ground.Stops.Count == 0)
        {
            throw new ArgumentException(
                query.Window is { } frets
                    ? $"No chord of these changes has a tone at frets {frets} of the neck {query.Neck}."
                    : "No chord of these changes has a shape.",
                name
            );
        }

        return (shapes, ground, [.. ground.Stops.Select(stop => query.NotesIn(stop.Span, name))], fingers);
    }
}
