using System.Collections.Immutable;
using TheoryKit.Fingering.Hands;
using TheoryKit.Fingering.Lines;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Fingering.Zones;

/// <summary>
/// The shapes that a formula over a root makes of the windows of one neck under one hand. Keeps what it has found: one
/// instance per thread.
/// </summary>
internal sealed class WindowShapes
{
    private const int Fingers = 4;

    private readonly HandOnNeck hand;
    private readonly LineSolver line;
    private readonly Neck neck;
    private readonly NoteName root;
    private readonly Formula formula;
    private readonly Degree?[] degreeAt = new Degree?[12];
    private readonly NoteName[] nameAt = new NoteName[12];
    private readonly Dictionary<Window, Shape?> found = [];
    private readonly int[] openMidi;

    public WindowShapes(LineSolver line, NoteName root, Formula formula)
    {
        this.line = line;
        hand = line.Hand;
        neck = hand.Neck;
        this.root = root;
        this.formula = formula;
        foreach (var degree in formula)
        {
            var pitchClass = (root.PitchClass + degree.PitchClass) % 12;
            if (degreeAt[pitchClass] is null)
            {
                degreeAt[pitchClass] = degree;
                nameAt[pitchClass] = root.Add(degree);
            }
        }

        openMidi = new int[neck.StringCount + 1];
        for (var number = 1; number <= neck.StringCount; number++)
        {
            openMidi[number] = neck.Tuning[number].Open.MidiNumber - neck.Tuning[number].Start;
        }
    }

    /// <summary>Whether a string sounds a tone of the formula at a fret.</summary>
    public bool IsTone(int number, int fret) =>
        fret >= hand.OpenFrets[number]
        && fret <= neck.Frets
        && degreeAt[Diatonic.Modulo(openMidi[number] + fret, 12)] is not null;

    /// <summary>Whether the hand covers the window: its little finger reaches the last fret from the index finger at the first.</summary>
    public bool Covers(Window window) => ExcessOf(window) <= 0;

    /// <summary>How many mm the window is wider than the hand's reach; zero or less if it is covered.</summary>
    public double ExcessOf(Window window) =>
        window.Last <= hand.Home(window)
            ? -hand.Reach(Finger.Index, Finger.Little)
            : hand.Excess(Finger.Index, Finger.Little, hand.Tip(window.Last) - hand.Tip(hand.Home(window)), 0);

    /// <summary>The least-effort shape of a window; null if the hand does not cover it or no tone lies in it.</summary>
    public Shape? In(Window window)
    {
        if (!found.TryGetValue(window, out var shape))
        {
            found[window] = shape = Find(window);
        }

        return shape;
    }

    private Shape? Find(Window window)
    {
        var home = hand.Home(window);
        if (window.Last > neck.Frets || window.Last < home || !Covers(window))
        {
            return null;
        }

        // The positions of each pitch, lowest pitch first; a pitch in the window lies on few strings.
        var (low, high) = (int.MaxValue, int.MinValue);
        for (var number = 1; number <= neck.StringCount; number++)
        {
            for (var fret = Math.Max(window.First, hand.OpenFrets[number]); fret <= window.Last; fret++)
            {
                if (IsTone(number, fret))
                {
                    low = Math.Min(low, openMidi[number] + fret);
                    high = Math.Max(high, openMidi[number] + fret);
                }
            }
        }

        if (low > high)
        {
            return null;
        }

        var missing = ImmutableArray.CreateBuilder<Pitch>();
        var columns = new List<State[]>();
        Span<State> states = stackalloc State[Position.MaxString * Fingers];
        for (var midi = low; midi <= high; midi++)
        {
            if (degreeAt[Diatonic.Modulo(midi, 12)] is null)
            {
                continue;
            }

            var count = 0;
            for (var number = neck.StringCount; number >= 1; number--)
            {
                var fret = midi - openMidi[number];
                if (fret >= hand.OpenFrets[number] && window.Contains(fret))
                {
                    count = AddStates(new(number, fret), home, states, count);
                }
            }

            if (count == 0)
            {
                missing.Add(Pitch.Nearest(nameAt[Diatonic.Modulo(midi, 12)], midi));
                continue;
            }

            Advance(columns.Count == 0 ? [] : columns[^1], states[..count]);
            columns.Add(states[..count].ToArray());
        }

        return Trace(columns, window, missing.DrainToImmutable());
    }

    private int AddStates(Position position, int home, Span<State> states, int count)
    {
        if (position.Fret == hand.OpenFrets[position.String])
        {
            states[count++] = new(new(position, null, home)) { Cost = line.NoteCost(position, null, home) };
            return count;
        }

        for (var finger = Finger.Index; finger <= Finger.Little; finger++)
        {
            var own = line.NoteCost(position, finger, home);
            if (own < double.PositiveInfinity)
            {
                states[count++] = new(new(position, finger, home)) { Cost = own };
            }
        }

        return count;
    }

    private void Advance(ReadOnlySpan<State> before, Span<State> states)
    {
        if (before.IsEmpty)
        {
            return;
        }

        foreach (ref var state in states)
        {
            var (best, from) = (double.PositiveInfinity, -1);
            for (var index = 0; index < before.Length; index++)
            {
                var cost = before[index].Cost + line.StepCost(before[index].Note, state.Note);
                if (cost < best)
                {
                    (best, from) = (cost, index);
                }
            }

            state.Cost += best;
            state.From = from;
        }
    }

    private Shape? Trace(List<State[]> columns, Window window, ImmutableArray<Pitch> missing)
    {
        if (columns.Count == 0)
        {
            return null;
        }

        var at = 0;
        for (var index = 1; index < columns[^1].Length; index++)
        {
            at = columns[^1][index].Cost < columns[^1][at].Cost ? index : at;
        }

        var effort = columns[^1][at].Cost;
        if (double.IsPositiveInfinity(effort))
        {
            return null;
        }

        var notes = new ShapeNote[columns.Count];
        for (var index = columns.Count - 1; index >= 0; index--)
        {
            var state = columns[index][at];
            var position = state.Note.Position;
            var midi = openMidi[position.String] + position.Fret;
            var pitchClass = Diatonic.Modulo(midi, 12);
            notes[index] = new(
                new(position, Pitch.Nearest(nameAt[pitchClass], midi), degreeAt[pitchClass]!.Value),
                state.Note.Finger
            );
            at = state.From;
        }

        return new(root, formula, window, ImmutableArray.Create(notes), missing, effort);
    }

    private struct State(FingeredNote note)
    {
        public FingeredNote Note { get; } = note;

        public double Cost { get; set; }

        public int From { get; set; } = -1;
    }
}
