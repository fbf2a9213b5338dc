using System.Globalization;
using TheoryKit.Fingering.Lines;
using TheoryKit.Fingering.Words;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Scales;
using TheoryKit.Tunings.Necks;
using TheoryKit.Values;

namespace TheoryKit.Paths.MadeLines;

/// <summary>Makes lines over changes: the same line for the same question, and every note says why it is there.</summary>
public static class LineMaker
{
    private const int Attempts = 32;

    /// <summary>
    /// A line of chord tones over the changes, with targets where chords begin, approaches and enclosures into them, and passing tones.
    /// </summary>
    /// <remarks>
    /// First the rhythm is drawn, bar by bar, from all fillings of the bar that have a note wherever a chord begins, and for each target
    /// whether it is approached. Then the
    /// pitches are drawn from all the lines that keep the rules, likelier ones with steps and small leaps and with a direction that they
    /// keep. Rules: where a chord begins there is a target; the notes of an approach come directly before their target and in their order;
    /// a passing tone stands off the beat between two tones of its chord, a step of the scale from each; everything else is a tone of the chord
    /// that it is played over. Last, strings, frets and fingers are those of least effort. Where the hand can't play what was drawn, it is drawn again.
    /// </remarks>
    /// <param name="request">What is asked.</param>
    /// <param name="cancellation">Ends the making.</param>
    /// <exception cref="ArgumentException">The figures can't fill a bar as asked, no target or no chord tone lies in the range, or the hand
    /// can't play any of the lines drawn; the message says where and why.</exception>
    /// <exception cref="OperationCanceledException">The making was cancelled.</exception>
    public static MadeLine Make(LineRequest request, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(request);
        if (request.Changes.Bars.Count * request.Times > LineRequest.MaxBars)
        {
            throw new ArgumentException($"A line is made for at most {LineRequest.MaxBars} bars.", nameof(request));
        }

        var random = new SplitMix64(request.Seed);
        var rhythm = new LineRhythm(request, random);
        var positions = Positions(request);
        var reason = default(NoLineReason);
        for (var attempt = 0; attempt < Attempts; attempt++)
        {
            cancellation.ThrowIfCancellationRequested();
            var slots = rhythm.Draw();
            var tones = new LinePitches(request, slots, positions.Keys, random).Draw(random);
            var answer = LineSearch.Find(
                new()
                {
                    Neck = request.Neck,
                    Hand = request.Hand,
                    Notes = [.. tones.Select(tone => LineNote.Of(positions[tone.Pitch.MidiNumber]))],
                    PreferredPlace = request.Window is { } window ? Math.Max(1, window.First) : null,
                },
                cancellation
            );
            if (answer.Count > 0)
            {
                return new(request, PathOf(request, slots, tones, answer[0]), answer[0].Effort);
            }

            reason = answer.Reason;
        }

        throw new ArgumentException(
            $"The hand can't play any of {Attempts} lines that were drawn; of the last one: {reason?.InWords()}",
            nameof(request)
        );
    }

    private static Dictionary<int, List<Position>> Positions(LineRequest request)
    {
        var neck = request.Neck;
        var found = new Dictionary<int, List<Position>>();
        for (var number = neck.StringCount; number >= 1; number--)
        {
            for (var fret = neck.OpenFret(number); fret <= neck.Frets; fret++)
            {
                var sound = neck.MidiNumberAt(new(number, fret));
                if (
                    request.Window is { } window && !window.Contains(fret)
                    || sound < request.Lowest?.MidiNumber
                    || sound > request.Highest?.MidiNumber
                )
                {
                    continue;
                }

                if (!found.TryGetValue(sound, out var at))
                {
                    found[sound] = at = [];
                }

                at.Add(new(number, fret));
            }
        }

        return found;
    }

    private static Path PathOf(LineRequest request, List<LineSlot> slots, List<MadeTone> tones, FingeredLine line) =>
        new(
            request.Neck,
            slots.Select(
                (slot, index) =>
                    new PathNote
                    {
                        Pitch = tones[index].Pitch,
                        Position = line[index].Position,
                        Finger = line[index].Finger,
                        Place = line[index].Place,
                        Start = slot.Start,
                        Length = slot.Length,
                        Techniques = slot.IsAccented ? [Technique.Accent] : [],
                        Why = tones[index].Why,
                    }
            ),
            request.Changes.Time,
            request.Changes,
            request.Changes.Beats * request.Times
        );
}

/// <summary>A pitch of a made line and why it is there.</summary>
internal readonly record struct MadeTone(Pitch Pitch, MadeReason Why);

/// <summary>
/// The pitches of a made line: a chain of states, a layer for each note, drawn exactly in proportion to the product of the weights of its
/// steps. The weights of all continuations are summed from the end; then each note is drawn from the beginning.
/// </summary>
internal sealed class LinePitches
{
    /// <summary>What a step weighs by its semitones. Chosen: so that lines go by chord steps, leap now and then, and hardly repeat a note.</summary>
    private static ReadOnlySpan<double> Leaps => [0.02, 4, 6, 8, 8, 5, 2, 2, 1, 1, 0.4, 0.3, 0.5];

    /// <summary>Wider leaps, and targets without the approach that is wanted: only where nothing else is left.</summary>
    private const double LastResort = 1e-6;

    private const double Onward = 2.5; // keeping the direction; chosen

    private readonly LineRequest request;
    private readonly List<LineSlot> slots;
    private readonly HashSet<int> range;
    private readonly State[][] layers;
    private readonly bool[] isApproached; // by slot, for targets: whether an approach is wanted
    private readonly Dictionary<Chord, Scale?> scales = [];

    public LinePitches(LineRequest request, List<LineSlot> slots, IEnumerable<int> range, SplitMix64 random)
    {
        (this.request, this.slots) = (request, slots);
        this.range = [.. range];
        isApproached = new bool[slots.Count];
        for (var slot = 0; slot < slots.Count; slot++)
        {
            Check(slot);
            isApproached[slot] = slots[slot].IsTarget && random.NextPart() < request.Approached;
        }

        layers = new State[slots.Count][];
        for (var slot = slots.Count - 1; slot >= 0; slot--)
        {
            layers[slot] = [.. StatesAt(slot)];
        }
    }

    private enum Role
    {
        Target,
        Chord,
        Approach,
        Passing,
    }

    /// <summary>What a note may be.</summary>
    /// <param name="Role">Its part.</param>
    /// <param name="Pitch">Its pitch.</param>
    /// <param name="Direction">For a chord tone whether it was come to from below (1), from above (-1) or on the same pitch.</param>
    /// <param name="Goal">Of an approach or a passing tone the pitch that it leads to, by sound.</param>
    /// <param name="Way">Of an approach which one.</param>
    /// <param name="Stage">Of an approach the number of the neighbour.</param>
    private readonly record struct State(
        Role Role,
        Pitch Pitch,
        int Direction = 0,
        int Goal = 0,
        Approach? Way = null,
        int Stage = 0
    )
    {
        public int Midi { get; } = Pitch.MidiNumber;

        public bool IsTone => Role is Role.Target or Role.Chord;
    }

    public List<MadeTone> Draw(SplitMix64 random)
    {
        if (slots.Count == 0)
        {
            return [];
        }

        var after = After();
        var chosen = new State[slots.Count];
        for (var slot = 0; slot < slots.Count; slot++)
        {
            var layer = layers[slot];
            var weights = new double[layer.Length];
            for (var state = 0; state < layer.Length; state++)
            {
                weights[state] =
                    after[slot][state]
                    * (slot == 0 ? First(layer[state]) : Weight(chosen[slot - 1], layer[state], slot));
            }

            chosen[slot] = layer[random.Pick(weights)];
        }

        return [.. chosen.Select((state, slot) => new MadeTone(state.Pitch, Why(state, slot)))];
    }

    /// <summary>For every state the weight of all that may follow, each layer scaled so that the most is 1.</summary>
    private double[][] After()
    {
        var after = new double[slots.Count][];
        after[^1] = [.. layers[^1].Select(static state => state.IsTone ? 1.0 : 0.0)];
        for (var slot = slots.Count - 2; slot >= 0; slot--)
        {
            var (here, next) = (layers[slot], layers[slot + 1]);
            var sums = after[slot] = new double[here.Length];
            for (var state = 0; state < here.Length; state++)
            {
                for (var to = 0; to < next.Length; to++)
                {
                    if (after[slot + 1][to] > 0)
                    {
                        sums[state] += Weight(here[state], next[to], slot + 1) * after[slot + 1][to];
                    }
                }
            }

            var most = sums.DefaultIfEmpty().Max();
            for (var state = 0; state < sums.Length && most > 0; state++)
            {
                sums[state] /= most;
            }
        }

        return after;
    }

    private static double First(State state) => state.IsTone ? 1 : 0;

    /// <summary>What the step from a note to the next weighs; 0 where it breaks a rule.</summary>
    private double Weight(State from, State to, int slot)
    {
        if (from.Role == Role.Passing)
        {
            return to.Role == Role.Chord && to.Midi == from.Goal && to.Direction == Math.Sign(to.Midi - from.Midi)
                ? 1
                : 0;
        }

        if (from.Role == Role.Approach)
        {
            return from.Stage + 1 < from.Way!.Neighbours.Count
                ? (to.Way == from.Way && to.Stage == from.Stage + 1 && to.Goal == from.Goal ? 1 : 0)
                : (to.Role == Role.Target && to.Midi == from.Goal ? 1 : 0);
        }

        var leap = Leap(from, to);
        return to.Role switch
        {
            Role.Chord => to.Direction == Math.Sign(to.Midi - from.Midi) ? leap : 0,
            Role.Target => isApproached[slot] ? leap * LastResort : leap,
            Role.Approach => to.Stage == 0 ? leap : 0,
            _ => slots[slot - 1].Span == slots[slot].Span
            && Math.Sign(to.Goal - to.Midi) == Math.Sign(to.Midi - from.Midi)
            && Math.Abs(to.Midi - from.Midi) <= 2
                ? leap
                : 0,
        };
    }

    private static double Leap(State from, State to)
    {
        var (size, direction) = (Math.Abs(to.Midi - from.Midi), Math.Sign(to.Midi - from.Midi));
        var weight = size < Leaps.Length ? Leaps[size] : LastResort;
        return from.Direction != 0 && from.Direction == direction ? weight * Onward : weight;
    }

    /// <summary>Whether there is a tone for a note at all.</summary>
    private void Check(int slot)
    {
        var chord = slots[slot].Chord;
        var wanted = slots[slot].IsTarget ? request.TargetsOf(chord) : chord.Formula;
        if (!Tones(chord, wanted).Any())
        {
            throw Nothing($"none of {string.Join(", ", wanted)}", chord, slot);
        }
    }

    private List<State> StatesAt(int slot)
    {
        var (chord, states) = (slots[slot].Chord, new List<State>());
        if (slots[slot].IsTarget)
        {
            states.AddRange(
                Tones(chord, request.TargetsOf(chord)).Select(static pitch => new State(Role.Target, pitch))
            );
            return states;
        }

        states.AddRange(
            Tones(chord, chord.Formula)
                .SelectMany(static pitch =>
                    Enumerable.Range(-1, 3).Select(direction => new State(Role.Chord, pitch, direction))
                )
        );
        AddApproaches(slot, states);
        AddPassing(slot, states);
        return states;
    }

    private IEnumerable<Pitch> Tones(Chord chord, Formula wanted) =>
        from sound in range.Order()
        let function = chord.Formula.At(sound - chord.Root.PitchClass)
        where function is { } degree && wanted.Contains(degree)
        select Pitch.Nearest(chord.Root.Add(function.Value), sound);

    private void AddApproaches(int slot, List<State> states)
    {
        var target = slots.FindIndex(slot, static later => later.IsTarget);
        if (target < 0 || !isApproached[target])
        {
            return;
        }

        foreach (var way in request.Approaches)
        {
            var stage = way.Neighbours.Count - (target - slot);
            var first = target - way.Neighbours.Count;
            if (stage < 0 || first < 1 || slots.FindIndex(first, target - first, static each => each.IsTarget) >= 0)
            {
                continue;
            }

            var scale = ScaleOf(slots[target].Chord);
            foreach (var goal in layers[target])
            {
                if (
                    Approach.NeighbourOf(goal.Pitch, way.Neighbours[stage], scale) is { } pitch
                    && range.Contains(pitch.MidiNumber)
                )
                {
                    states.Add(new(Role.Approach, pitch, 0, goal.Midi, way, stage));
                }
            }
        }
    }

    private void AddPassing(int slot, List<State> states)
    {
        if (
            !request.Passing
            || slots[slot].Start.Denominator.IsOne
            || slot + 1 == slots.Count
            || slots[slot + 1].IsTarget
            || ScaleOf(slots[slot].Chord) is not { } scale
        )
        {
            return;
        }

        foreach (var goal in layers[slot + 1])
        {
            // Each pitch stands there once for every direction.
            if (goal.Role != Role.Chord || goal.Direction == 0)
            {
                continue;
            }

            var neighbour = goal.Direction > 0 ? Neighbour.ScaleToneBelow : Neighbour.ScaleToneAbove;
            if (
                Approach.NeighbourOf(goal.Pitch, neighbour, scale) is { } pitch
                && Math.Abs(pitch.MidiNumber - goal.Midi) <= 2
                && range.Contains(pitch.MidiNumber)
                && slots[slot].Chord.FunctionOf(pitch.Name) is null
            )
            {
                states.Add(new(Role.Passing, pitch, 0, goal.Midi));
            }
        }
    }

    private Scale? ScaleOf(Chord chord)
    {
        if (!scales.TryGetValue(chord, out var scale))
        {
            scales[chord] = scale = request.ScaleOf(chord);
        }

        return scale;
    }

    private MadeReason Why(State state, int slot)
    {
        var chord = slots[slot].Chord;
        switch (state.Role)
        {
            case Role.Target:
                return new MadeReason.Target(FunctionOf(state.Midi, chord), chord);
            case Role.Chord:
                return new MadeReason.ChordTone(FunctionOf(state.Midi, chord), chord);
            case Role.Passing:
                return new MadeReason.Passing(ScaleOf(chord)!, FunctionOf(state.Goal, chord), chord);
            default:
                var goal = slots[slots.FindIndex(slot, static later => later.IsTarget)].Chord;
                var isOfScale =
                    state.Way!.Neighbours[state.Stage] is Neighbour.ScaleToneBelow or Neighbour.ScaleToneAbove;
                return new MadeReason.Leading(
                    state.Way,
                    state.Stage,
                    state.Midi > state.Goal,
                    isOfScale ? ScaleOf(goal) : null,
                    FunctionOf(state.Goal, goal),
                    goal
                );
        }
    }

    private static Degree FunctionOf(int sound, Chord chord) => chord.Formula.At(sound - chord.Root.PitchClass)!.Value;

    private ArgumentException Nothing(string what, Chord chord, int slot)
    {
        var frets = request.Window is { } window ? $"frets {window}" : "the neck";
        var lowest = request.Lowest is { } low ? $" from {low}" : "";
        var highest = request.Highest is { } high ? $" up to {high}" : "";
        var bar = (int)Math.Floor((slots[slot].Start / request.Changes.Time.Beats).ToDouble()) + 1;
        return new(
            string.Create(
                CultureInfo.InvariantCulture,
                $"Bar {bar}: {what} of {chord} lies on {frets}{lowest}{highest}; widen the frets or the range."
            ),
            nameof(request)
        );
    }
}
