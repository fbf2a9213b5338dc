using TheoryKit.Fingering.Hands;
using TheoryKit.Fingering.Lines;
using TheoryKit.Fingering.Zones;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Progressions;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Paths.Joins;

/// <summary>
/// Where a joined line can be: the places of the changes that sound, their tones, and for every tone and direction of travel where it
/// goes at the next change, worked out once. A state is a place, a tone of it and a direction, all in one number.
/// </summary>
internal sealed class JoinGround
{
    private readonly Stop[] stops;
    private readonly int[] stopOf; // by state
    private readonly int[] entered; // by the state of a last note: the state it leads into
    private readonly JoinWay[] ways; // and how
    private readonly int[] joins; // and which join that is; -1 for one that no line makes
    private readonly List<(int From, int To)> kinds = []; // by join: a last note and the state that it leads into

    /// <summary>The ground of some shapes.</summary>
    /// <param name="changes">The changes.</param>
    /// <param name="shapes">A shape for each of their chords; null where there is silence.</param>
    /// <param name="rule">How chords are joined.</param>
    public JoinGround(Changes changes, IReadOnlyList<Shape?> shapes, JoinRule rule)
    {
        var found = new List<Stop>();
        var states = 0;
        for (var index = 0; index < shapes.Count; index++)
        {
            var span = changes.Chords[index];
            if (span.Chord is not { } chord || shapes[index] is not { Notes.Count: > 0 } shape)
            {
                continue;
            }

            var (tones, functions) = (new int[shape.Notes.Count], new Degree[shape.Notes.Count]);
            for (var tone = 0; tone < tones.Length; tone++)
            {
                var pitch = shape.Notes[tone].Place.Pitch;
                (tones[tone], functions[tone]) = (pitch.MidiNumber, chord.DegreeOf(pitch.Name));
            }

            found.Add(new(index, span, chord, shape, tones, functions, states));
            states += 2 * tones.Length;
        }

        stops = [.. found];
        stopOf = new int[states];
        entered = new int[states];
        ways = new JoinWay[states];
        joins = new int[states];
        for (var index = 0; index < stops.Length; index++)
        {
            stopOf.AsSpan(stops[index].First, 2 * stops[index].Tones.Length).Fill(index);
        }

        Join(rule);
    }

    /// <summary>The places that sound, in order.</summary>
    public IReadOnlyList<Stop> Stops => stops;

    /// <summary>How many states there are.</summary>
    public int States => stopOf.Length;

    /// <summary>How many joins there can be; see <see cref="JoinedChanges.PossibleJoins"/>.</summary>
    public int Joins => kinds.Count;

    /// <summary>The place of a state.</summary>
    public Stop StopOf(int state) => stops[stopOf[state]];

    /// <summary>The tone of a state.</summary>
    public int ToneOf(int state) => (state - StopOf(state).First) / 2;

    /// <summary>The direction of a state.</summary>
    public static Direction DirectionOf(int state) => (Direction)(state & 1);

    /// <summary>The state of entering a place on a tone.</summary>
    public int StateOf(int stop, int tone, Direction direction) => stops[stop].First + (2 * tone) + (int)direction;

    /// <summary>The first state of a line: the tone asked for, or the lowest root, or the lowest tone.</summary>
    /// <exception cref="ArgumentException">The first chord has no such tone here.</exception>
    public int Start(Pitch? asked, Direction direction, string name)
    {
        var first = stops[0];
        if (asked is not { } pitch)
        {
            return StateOf(0, Math.Max(0, Array.FindIndex(first.Tones, first.IsRoot)), direction);
        }

        var tone = Array.IndexOf(first.Tones, pitch.MidiNumber);
        return tone >= 0
            ? StateOf(0, tone, direction)
            : throw new ArgumentException(
                $"{first.Chord} has no {pitch} here to start on; it has {string.Join(' ', first.Shape.Notes.Select(static note => note.Place.Pitch))}.",
                name
            );
    }

    /// <summary>
    /// The state as the line goes on from it: with more notes to come it travels from the lowest tone up and from the highest down, whichever
    /// way it came. So states are the same where all that follows is.
    /// </summary>
    public int Settle(int state, ReadOnlySpan<int> notes)
    {
        var stop = StopOf(state);
        var tone = ToneOf(state);
        return NotesAt(state, notes) == 1 || stop.Tones.Length == 1 ? state
            : tone == 0 ? stop.First
            : tone == stop.Tones.Length - 1 ? stop.First + (2 * tone) + (int)Direction.Down
            : state;
    }

    /// <summary>
    /// Where so many notes from a state on end: tone and direction of the last note. Travelling to and fro through m tones comes round after
    /// 2(m - 1) steps.
    /// </summary>
    public int Last(int state, int notes)
    {
        var stop = StopOf(state);
        var highest = stop.Tones.Length - 1;
        if (notes == 1 || highest == 0)
        {
            return state;
        }

        var round = 2 * highest;
        var tone = (state - stop.First) / 2;
        var phase = ((DirectionOf(state) == Direction.Up ? tone : round - tone) + notes - 1) % round;
        return phase == 0 ? stop.First + (int)Direction.Down
            : phase <= highest ? stop.First + (2 * phase)
            : stop.First + (2 * (round - phase)) + (int)Direction.Down;
    }

    /// <summary>How many notes the chord of a state gets.</summary>
    /// <param name="state">The state.</param>
    /// <param name="notes">By place that sounds, how many.</param>
    public int NotesAt(int state, ReadOnlySpan<int> notes) => notes[stopOf[state]];

    /// <summary>The state that a last note leads into.</summary>
    public int After(int last) => entered[last];

    /// <summary>How it leads there.</summary>
    public JoinWay WayFrom(int last) => ways[last];

    /// <summary>Which of the <see cref="Joins"/> that is; -1 for one that none of them counts.</summary>
    public int JoinFrom(int last) => joins[last];

    /// <summary>A last note that makes a join, and the state that it leads into.</summary>
    public (int From, int To) Example(int join) => kinds[join];

    /// <summary>The way from a start until it comes round: its states, and how many of them lead into the cycle.</summary>
    /// <param name="start">The first state.</param>
    /// <param name="notes">By place, how many notes it gets.</param>
    /// <param name="way">Filled with the states, each once.</param>
    /// <param name="seen">By state, room to work in: below <paramref name="stamp"/> for those that were not seen in this walk.</param>
    /// <param name="stamp">Above everything in <paramref name="seen"/>; the next free stamp after this.</param>
    public int Walk(int start, ReadOnlySpan<int> notes, List<int> way, int[] seen, ref int stamp)
    {
        way.Clear();
        var state = Settle(start, notes);
        while (seen[state] < stamp)
        {
            seen[state] = stamp + way.Count;
            way.Add(state);
            state = Settle(After(Last(state, NotesAt(state, notes))), notes);
        }

        var leadIn = seen[state] - stamp;
        stamp += way.Count;
        return leadIn;
    }

    private void Join(JoinRule rule)
    {
        var known = new Dictionary<(int Stop, Degree From, Degree To), int>();
        for (var stop = 0; stop < stops.Length; stop++)
        {
            var (here, to) = (stops[stop], (stop + 1) % stops.Length);
            var next = stops[to];
            for (var tone = 0; tone < here.Tones.Length; tone++)
            {
                for (var direction = Direction.Up; direction <= Direction.Down; direction++)
                {
                    var last = StateOf(stop, tone, direction);
                    var entry = rule.Enter(next.Tones, here.Tones[tone], direction);
                    (entered[last], ways[last]) = (StateOf(to, entry.Tone, entry.Direction), entry.Way);
                    var join = (stop, here.Functions[tone], next.Functions[entry.Tone]);
                    if (IsReached(here, tone, direction) && known.TryAdd(join, kinds.Count))
                    {
                        kinds.Add((last, entered[last]));
                    }
                }
            }
        }

        for (var last = 0; last < joins.Length; last++)
        {
            var (from, to) = (StopOf(last), StopOf(entered[last]));
            joins[last] = known.GetValueOrDefault(
                (stopOf[last], from.Functions[ToneOf(last)], to.Functions[ToneOf(entered[last])]),
                -1
            );
        }
    }

    /// <summary>Whether a step within the shape arrives at a tone in that direction.</summary>
    private static bool IsReached(Stop stop, int tone, Direction direction) =>
        stop.Tones.Length == 1 || (direction == Direction.Up ? tone > 0 : tone < stop.Tones.Length - 1);

    /// <summary>A place in the changes that sounds.</summary>
    /// <param name="Index">Its number among the chords of the changes.</param>
    /// <param name="Span">The chord with its time.</param>
    /// <param name="Chord">The chord.</param>
    /// <param name="Shape">Its shape.</param>
    /// <param name="Tones">The MIDI numbers of the shape, rising.</param>
    /// <param name="Functions">What each is to the chord.</param>
    /// <param name="First">Its first state.</param>
    internal sealed record Stop(
        int Index,
        ChordSpan Span,
        Chord Chord,
        Shape Shape,
        int[] Tones,
        Degree[] Functions,
        int First
    )
    {
        public bool IsRoot(int midi) => Diatonic.Modulo(midi - Chord.Root.PitchClass, 12) == 0;
    }
}

/// <summary>The shapes of chords in windows of one neck under one hand, found once each; one instance per thread.</summary>
internal sealed class JoinShapes(Neck neck, Hand hand)
{
    private readonly LineSolver line = new(new(neck, hand));
    private readonly Dictionary<(NoteName, Formula), WindowShapes> byChord = [];

    /// <summary>What the hand does on the neck.</summary>
    public LineSolver Line => line;

    /// <summary>Whether the hand covers the frets.</summary>
    public bool Covers(Window window) =>
        window.Last <= neck.Frets
        && (
            window.Last <= line.Hand.Home(window)
            || line.Hand.Excess(
                Finger.Index,
                Finger.Little,
                line.Hand.Tip(window.Last) - line.Hand.Tip(line.Hand.Home(window)),
                0
            ) <= 0
        );

    /// <summary>The shape of every chord of the changes in a window; null where there is no chord or it has no tone there.</summary>
    /// <exception cref="ArgumentException">The window is not on the neck, or the hand does not cover it.</exception>
    public Shape?[] In(Changes changes, Window window, string name)
    {
        if (!Covers(window))
        {
            throw new ArgumentException(
                window.Last > neck.Frets
                    ? $"Frets {window} are not on the neck {neck}."
                    : $"The hand does not cover frets {window} without shifting; take fewer or higher ones.",
                name
            );
        }

        return [.. changes.Chords.Select(span => span.Chord is { } chord ? Of(chord).In(window) : null)];
    }

    private WindowShapes Of(Chord chord)
    {
        if (!byChord.TryGetValue((chord.Root, chord.Formula), out var shapes))
        {
            byChord[(chord.Root, chord.Formula)] = shapes = new(line, chord.Root, chord.Formula);
        }

        return shapes;
    }
}
