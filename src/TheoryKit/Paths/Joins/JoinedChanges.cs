using System.Collections.Immutable;
using Fractions;
using TheoryKit.Fingering.Hands;
using TheoryKit.Fingering.Lines;
using TheoryKit.Fingering.Zones;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Progressions;
using TheoryKit.Tunings.Necks;
using TheoryKit.Values;

namespace TheoryKit.Paths.Joins;

/// <summary>
/// A line that goes through changes in one zone until it comes round: what leads in, and the cycle, exactly. Equal when the questions are.
/// </summary>
[EqualBy(nameof(Query))]
public sealed partial class JoinedChanges : IEquatable<JoinedChanges>
{
    private readonly JoinGround ground;
    private readonly int[] notes; // by place that sounds
    private readonly ImmutableArray<int> way; // the states of lead-in and cycle
    private readonly JoinShapes fingers;
    private readonly Lazy<Path> path;
    private readonly Lazy<Path> loop;
    private readonly Lazy<ImmutableArray<JoinedChord>> chords;
    private readonly Lazy<(ImmutableArray<Join> Made, ImmutableArray<Join> Missed)> joins;

    internal JoinedChanges(
        JoinQuery query,
        IReadOnlyList<Shape?> shapes,
        JoinGround ground,
        int[] notes,
        int start,
        JoinShapes fingers
    )
    {
        Query = query;
        Shapes = [.. shapes];
        (this.ground, this.notes, this.fingers) = (ground, notes, fingers);
        var states = new List<int>();
        var stamp = 1;
        var leadIn = ground.Walk(start, notes, states, new int[ground.States], ref stamp);
        way = [.. states];
        LeadIn = Extent(0, leadIn, leadIn == 0 ? Fraction.Zero : BeatOf(leadIn));
        Cycle = Extent(leadIn, way.Length, (Fraction)((way.Length - leadIn) / Stops * query.Changes.Beats));
        path = new(() => PathOf(0, way.Length, Fraction.Zero, LeadIn.Beats + Cycle.Beats));
        loop = new(() =>
        {
            var round = (LeadIn.Chords + Stops - 1) / Stops;
            return PathOf(round * Stops, Cycle.Chords, (Fraction)(round * query.Changes.Beats), Cycle.Beats);
        });
        chords = new(() => [.. Enumerable.Range(0, way.Length).Select(ChordAt)]);
        joins = new(FindJoins);
    }

    /// <summary>What was asked.</summary>
    public JoinQuery Query { get; }

    /// <summary>The shape of each chord of the changes; null where nothing is played: at N.C., or where the chord has no tone here.</summary>
    public ImmutableArray<Shape?> Shapes { get; }

    /// <summary>The chords of the changes that have no tone here and are passed over in silence; N.C. is not among them.</summary>
    public IReadOnlyList<ChordSpan> Silent =>
        [.. Query.Changes.Chords.Where((span, index) => span.Chord is not null && Shapes[index] is null)];

    /// <summary>What is played before the cycle begins.</summary>
    public JoinExtent LeadIn { get; }

    /// <summary>What is repeated from then on for ever.</summary>
    public JoinExtent Cycle { get; }

    /// <summary>How many states there are: places in the changes, tones to enter on, two directions. Lead-in and cycle have no more chords.</summary>
    public int States => ground.States;

    /// <summary>The first note.</summary>
    public Place Start => PlaceOf(way[0]);

    /// <summary>The whole exercise: lead-in and the cycle once, over the changes from their beginning. The notes of a chord fill its time.</summary>
    public Path Path => path.Value;

    /// <summary>
    /// The cycle by itself, to be repeated: from the first beginning of the changes that lies in it. As many notes as <see cref="Cycle"/>.
    /// </summary>
    public Path Loop => loop.Value;

    /// <summary>The chords of lead-in and cycle in order.</summary>
    public IReadOnlyList<JoinedChord> Chords => chords.Value;

    /// <summary>The joins that the cycle makes, that from its end to its beginning among them: in the order of the changes, the most frequent first.</summary>
    public IReadOnlyList<Join> Joins => joins.Value.Made;

    /// <summary>The joins that there are and that the cycle leaves out.</summary>
    public IReadOnlyList<Join> Missed => joins.Value.Missed;

    /// <summary>
    /// How many joins there are in this zone by this rule: at each change, every pair of functions that a line makes which arrives at some
    /// tone of the old chord in some direction by a step within the shape.
    /// </summary>
    public int PossibleJoins => ground.Joins;

    /// <summary>Whether the cycle makes every join that there is.</summary>
    public bool VisitsEveryJoin => Missed.Count == 0;

    /// <summary>How many times in the cycle the line goes on in its direction at a change.</summary>
    public int WentOn => Count(JoinWay.WentOn);

    /// <summary>How many times it turns there.</summary>
    public int Turned => Count(JoinWay.Turned);

    /// <summary>How many times it stays on a pitch.</summary>
    public int Held => Count(JoinWay.Held);

    /// <summary>How many times in the cycle the last note of a chord gives way to one that leads into the next.</summary>
    public int Approached => Chords.Skip(LeadIn.Chords).Count(static chord => chord.Approach is not null);

    private int Stops => ground.Stops.Count;

    /// <summary>The chords of lead-in and cycle: <c>0+12</c>.</summary>
    public override string ToString() => $"{LeadIn.Chords}+{Cycle.Chords}";

    /// <summary>The state with which a chord is entered, however far on.</summary>
    private int StateAt(int index) =>
        way[index < way.Length ? index : LeadIn.Chords + ((index - LeadIn.Chords) % Cycle.Chords)];

    private int NotesAt(int index) => notes[index % Stops];

    private JoinGround.Stop StopAt(int index) => ground.Stops[index % Stops];

    private Fraction BeatOf(int index) => (StopAt(index).Span.Start + (index / Stops * Query.Changes.Beats)).Reduce();

    private Place PlaceOf(int state) => ground.StopOf(state).Shape.Notes[ground.ToneOf(state)].Place;

    private JoinExtent Extent(int from, int to, Fraction beats)
    {
        var count = 0;
        for (var index = from; index < to; index++)
        {
            count += NotesAt(index);
        }

        return new(to - from, count, beats.Reduce(), (beats / Query.Changes.Time.Beats).Reduce());
    }

    private int Count(JoinWay asked) =>
        way.Skip(LeadIn.Chords)
            .Count(state => ground.WayFrom(ground.Last(state, ground.NotesAt(state, notes))) == asked);

    private JoinedChord ChordAt(int index)
    {
        var state = StateAt(index);
        var stop = StopAt(index);
        return new(
            new(stop.Chord, BeatOf(index), stop.Span.Length),
            NotesAt(index),
            PlaceOf(state),
            JoinGround.DirectionOf(state),
            index == 0 ? null : ground.WayFrom(ground.Last(StateAt(index - 1), NotesAt(index - 1))),
            PlaceOf(ground.Last(state, NotesAt(index))),
            Approach(index)?.Pitch
        );
    }

    private (ImmutableArray<Join>, ImmutableArray<Join>) FindJoins()
    {
        var made = new Dictionary<(int Stop, Degree From, Degree To, JoinWay Way), int>();
        var visited = new bool[ground.Joins];
        foreach (var state in way.Skip(LeadIn.Chords))
        {
            var last = ground.Last(state, ground.NotesAt(state, notes));
            var join = Key(last, ground.After(last));
            made[join] = made.GetValueOrDefault(join) + 1;
            if (ground.JoinFrom(last) is >= 0 and var number)
            {
                visited[number] = true;
            }
        }

        return (
            [
                .. made.OrderBy(static pair => pair.Key.Stop)
                    .ThenByDescending(static pair => pair.Value)
                    .ThenBy(static pair => pair.Key.From)
                    .ThenBy(static pair => pair.Key.To)
                    .ThenBy(static pair => pair.Key.Way)
                    .Select(pair => Made(pair.Key, pair.Value)),
            ],
            [
                .. Enumerable
                    .Range(0, visited.Length)
                    .Where(number => !visited[number])
                    .Select(number => ground.Example(number))
                    .Select(join => Made(Key(join.From, join.To), 0)),
            ]
        );

        (int Stop, Degree From, Degree To, JoinWay Way) Key(int last, int entry)
        {
            var (from, to) = (ground.StopOf(last), ground.StopOf(entry));
            return (
                from.Index,
                from.Functions[ground.ToneOf(last)],
                to.Functions[ground.ToneOf(entry)],
                ground.WayFrom(last)
            );
        }

        Join Made((int Stop, Degree From, Degree To, JoinWay Way) join, int count)
        {
            var stop = ground.Stops.TakeWhile(stop => stop.Index != join.Stop).Count();
            return new(ground.Stops[stop].Chord, join.From, StopAt(stop + 1).Chord, join.To, join.Way, count);
        }
    }

    private Path PathOf(int first, int count, Fraction from, Fraction beats)
    {
        var played = new List<PathNote>();
        for (var index = first; index < first + count; index++)
        {
            AddNotes(index, from, played);
        }

        return new(Query.Neck, played, Query.Changes.Time, Query.Changes, beats);
    }

    private void AddNotes(int index, Fraction from, List<PathNote> played)
    {
        var (stop, state, count) = (StopAt(index), StateAt(index), NotesAt(index));
        var length = stop.Span.Length / count;
        var start = BeatOf(index) - from;
        int? home = HomeOf(stop.Shape);
        var (travelling, why) = (DirectionInto(index), (JoinReason?)WhyEntered(index));
        for (var number = 0; number < count; number++)
        {
            var at = ground.Last(state, number + 1);
            if (number > 0)
            {
                why =
                    JoinGround.DirectionOf(at) == travelling
                        ? null
                        : new JoinReason.Turned(AtTop: travelling == Direction.Up);
                travelling = JoinGround.DirectionOf(at);
            }

            var note = stop.Shape.Notes[ground.ToneOf(at)];
            played.Add(
                number == count - 1 && Approach(index) is { } approach
                    ? approach with
                    {
                        Start = start,
                        Length = length,
                    }
                    : new()
                    {
                        Pitch = note.Place.Pitch,
                        Position = note.Place.Position,
                        Finger = note.Finger,
                        Place = home,
                        Start = start,
                        Length = length,
                        Why = why,
                    }
            );
            start += length;
        }
    }

    /// <summary>In which direction the line travels when it enters a chord.</summary>
    private Direction DirectionInto(int index) =>
        index == 0
            ? Query.Direction
            : JoinGround.DirectionOf(ground.After(ground.Last(StateAt(index - 1), NotesAt(index - 1))));

    private JoinReason WhyEntered(int index)
    {
        if (index == 0)
        {
            return new JoinReason.Start(
                Query.Start is null && StopAt(0).IsRoot(Start.Pitch.MidiNumber) ? StopAt(0).Chord : null
            );
        }

        var last = ground.Last(StateAt(index - 1), NotesAt(index - 1));
        var from = PlaceOf(last).Pitch;
        return new JoinReason.Entry(
            StopAt(index).Chord,
            from,
            ground.WayFrom(last),
            IsAbove: PlaceOf(StateAt(index)).Pitch.MidiNumber > from.MidiNumber
        );
    }

    /// <summary>The note that leads from a chord into the next, if the rule has such notes and it fits; its time is left open.</summary>
    private PathNote? Approach(int index)
    {
        if (!Query.Rule.Approaches || NotesAt(index) < 2 || IsParted(index))
        {
            return null;
        }

        var (state, count) = (StateAt(index), NotesAt(index));
        var (last, next) = (ground.Last(state, count), StateAt(index + 1));
        var (from, entry) = (PlaceOf(last).Pitch.MidiNumber, PlaceOf(next).Pitch);
        var (stop, after) = (StopAt(index), ground.StopOf(next).Shape.Notes[ground.ToneOf(next)]);
        var before = stop.Shape.Notes[ground.ToneOf(ground.Last(state, count - 1))];
        if (from == entry.MidiNumber)
        {
            return null; // the same pitch again comes from no side
        }

        var isBelow = from < entry.MidiNumber;
        var sound = entry.MidiNumber + (isBelow ? -1 : 1);
        if (sound == from || sound == before.Place.Pitch.MidiNumber)
        {
            return null;
        }

        var minorSecond = new Interval(1, 1);
        var pitch = isBelow ? entry - minorSecond : entry + minorSecond;
        var plain = pitch.Simplest(); // F rather than E# below F#, E rather than Fb above Eb
        if (Math.Abs(plain.Name.Alteration) < Math.Abs(pitch.Name.Alteration))
        {
            pitch = plain;
        }

        var played = Fingered(
            Query.Neck.PositionsOf(pitch).Where(position => stop.Shape.Window.Contains(position.Fret)),
            HomeOf(stop.Shape),
            before,
            (after, HomeOf(StopAt(index + 1).Shape))
        );
        return played is { } found
            ? new()
            {
                Pitch = pitch,
                Position = found.Position,
                Finger = found.Finger,
                Place = found.Place,
                Why = new JoinReason.LeadsInto(entry, isBelow),
            }
            : null;
    }

    /// <summary>
    /// The position and finger of least effort between two notes of shapes, the hand staying where it is; null for no position. Where no
    /// finger follows without a shift the one that is easiest by itself.
    /// </summary>
    private (Position Position, Finger? Finger, int? Place)? Fingered(
        IEnumerable<Position> positions,
        int? home,
        ShapeNote before,
        (ShapeNote Note, int? Home) after
    )
    {
        var solver = fingers.Line;
        (Position Position, Finger? Finger, int? Place)? best = null;
        var least = (double.PositiveInfinity, double.PositiveInfinity);
        foreach (var position in positions)
        {
            if (home is not { } place)
            {
                return (position, null, null);
            }

            var isOpen = position.Fret == Query.Neck.OpenFret(position.String);
            for (var finger = Finger.Index; finger <= (isOpen ? Finger.Index : Finger.Little); finger++)
            {
                var held = isOpen ? (Finger?)null : finger;
                var own = solver.NoteCost(position, held, place);
                var note = new FingeredNote(position, held, place);
                var all =
                    own
                    + solver.StepCost(new(before.Place.Position, before.Finger, place), note)
                    + solver.StepCost(note, new(after.Note.Place.Position, after.Note.Finger, after.Home ?? place));
                if (own < double.PositiveInfinity && (best is null || (all, own).CompareTo(least) < 0))
                {
                    (best, least) = ((position, held, place), (all, own));
                }
            }
        }

        return best;
    }

    /// <summary>The fret at which the index finger is at home in a shape that the hand plays without shifting; null for others.</summary>
    private int? HomeOf(Shape shape) => fingers.Covers(shape.Window) ? fingers.Line.Hand.Home(shape.Window) : null;

    /// <summary>Whether there is silence between a chord and the next.</summary>
    private bool IsParted(int index) =>
        Query.Changes.Chords.Count != Stops
        && (BeatOf(index) + StopAt(index).Span.Length).Reduce() != BeatOf(index + 1);
}
