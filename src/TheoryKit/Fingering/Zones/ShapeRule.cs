using System.Collections.Immutable;
using TheoryKit.Fingering.Hands;
using TheoryKit.Fingering.Lines;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Necks;
using TheoryKit.Values;

namespace TheoryKit.Fingering.Zones;

/// <summary>A rule that lays a formula out on the neck from a fret on. A further layout is a further rule in this file.</summary>
[Checked]
public abstract partial record ShapeRule
{
    private ShapeRule() { }

    /// <summary>Every tone inside a window of so many frets.</summary>
    /// <param name="width">How many frets, 1 to <see cref="Position.MaxFret"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">Another width.</exception>
    public static ShapeRule Window(int width) => new WindowRule(Check.Range(width, 1, Position.MaxFret));

    /// <summary>So many neighbouring tones on each string, from the highest-numbered string down to string 1; the hand shifts as it needs.</summary>
    /// <param name="count">How many, 1 to 12.</param>
    /// <exception cref="ArgumentOutOfRangeException">Another count.</exception>
    public static ShapeRule NotesPerString(int count) => new PerStringRule(Check.Range(count, 1, 12));

    /// <summary>Neighbouring tones all along one string.</summary>
    /// <param name="number">The string, 1 to <see cref="Position.MaxString"/>; one that the neck has not has no layout.</param>
    /// <exception cref="ArgumentOutOfRangeException">Another number.</exception>
    public static ShapeRule AlongString(int number) => new AlongRule(Check.Range(number, 1, Position.MaxString));

    /// <summary>The layout that begins at a fret or the first one possible above; null if there is none on this neck for this hand.</summary>
    /// <param name="neck">The neck.</param>
    /// <param name="root">The root.</param>
    /// <param name="formula">The formula.</param>
    /// <param name="fret">The lowest fret of the first string laid out.</param>
    /// <param name="hand">The hand; the average one if null.</param>
    public Shape? LayOut(Neck neck, NoteName root, Formula formula, int fret, Hand? hand = null)
    {
        ArgumentNullException.ThrowIfNull(neck);
        ArgumentOutOfRangeException.ThrowIfNegative(fret);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(fret, neck.Frets);
        return Find(new(neck, hand ?? Hand.Average), root, formula, fret);
    }

    private protected abstract Shape? Find(HandOnNeck hand, NoteName root, Formula formula, int fret);

    /// <summary>Fingers a run of places whose hand may shift.</summary>
    private static Shape? Finger(HandOnNeck hand, NoteName root, Formula formula, List<Place> places)
    {
        if (places.Count == 0)
        {
            return null;
        }

        var sounding = places.Select(static place => place.Pitch.MidiNumber).ToHashSet();
        var missing = ImmutableArray.CreateBuilder<Pitch>();
        for (var midi = sounding.Min(); midi < sounding.Max(); midi++)
        {
            if (!sounding.Contains(midi) && formula.At(midi - root.PitchClass) is { } degree)
            {
                missing.Add(Pitch.Nearest(root.Add(degree), midi));
            }
        }

        var lines = new LineSolver(hand).Solve([
            .. places.Select(static place => (IReadOnlyList<Position>)[place.Position]),
        ]);
        return lines is [var line]
            ? new(
                root,
                formula,
                new(places.Min(static place => place.Position.Fret), places.Max(static place => place.Position.Fret)),
                [.. places.Zip(line, static (place, note) => new ShapeNote(place, note.Finger))],
                missing.DrainToImmutable(),
                line.Effort
            )
            : null;
    }

    private sealed record WindowRule(int Width) : ShapeRule
    {
        public override string ToString() => Width == 1 ? "window of 1 fret" : $"window of {Width} frets";

        private protected override Shape? Find(HandOnNeck hand, NoteName root, Formula formula, int fret) =>
            fret + Width - 1 <= hand.Neck.Frets
                ? new WindowShapes(new(hand), root, formula).In(new(fret, fret + Width - 1))
                : null;
    }

    private sealed record PerStringRule(int Count) : ShapeRule
    {
        public override string ToString() => Count == 1 ? "1 note a string" : $"{Count} notes a string";

        private protected override Shape? Find(HandOnNeck hand, NoteName root, Formula formula, int fret)
        {
            var places = new List<Place>();
            var byString = hand.Neck.PlacesOf(root, formula).ToLookup(static place => place.Position.String);
            var from = int.MinValue;
            for (var number = hand.Neck.StringCount; number >= 1; number--)
            {
                var run = byString[number]
                    .Where(place => from == int.MinValue ? place.Position.Fret >= fret : place.Pitch.MidiNumber > from)
                    .Take(Count)
                    .ToList();
                if (run.Count < Count)
                {
                    return null;
                }

                places.AddRange(run);
                from = run[^1].Pitch.MidiNumber;
            }

            return Finger(hand, root, formula, places);
        }
    }

    private sealed record AlongRule(int Number) : ShapeRule
    {
        public override string ToString() => $"along string {Number}";

        private protected override Shape? Find(HandOnNeck hand, NoteName root, Formula formula, int fret) =>
            Finger(
                hand,
                root,
                formula,
                [
                    .. hand
                        .Neck.PlacesOf(root, formula)
                        .Where(place => place.Position.String == Number && place.Position.Fret >= fret),
                ]
            );
    }
}
