using TheoryKit.Fingering.Grips;
using TheoryKit.Fingering.Hands;
using TheoryKit.Fingering.Lines;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Necks;
using TheoryKit.Values;

namespace TheoryKit.Fingering.Zones;

/// <summary>
/// An area of the neck that one hand covers without shifting, with what a chord makes of it: its shape and its best grip.
/// Equal when chord, neck, window and form are.
/// </summary>
[EqualBy(nameof(Chord), nameof(Neck), nameof(Window), nameof(Form), nameof(Shape))]
public sealed partial class Zone : IEquatable<Zone>
{
    private const int FartherFrets = 2;

    private readonly Lazy<ChordGrip?> grip;
    private readonly LineSolver line;

    internal Zone(Chord chord, LineSolver line, Window window, Form form, Shape shape)
    {
        (Chord, Neck, Window, Form, Shape) = (chord, line.Hand.Neck, window, form, shape);
        this.line = line;
        grip = new(FindGrip);
    }

    /// <summary>The chord.</summary>
    public Chord Chord { get; }

    /// <summary>The neck.</summary>
    public Neck Neck { get; }

    /// <summary>The hand it was found for.</summary>
    public Hand Hand => line.Hand.Hand;

    /// <summary>The frets.</summary>
    public Window Window { get; }

    /// <summary>The strings of the two neighbouring root frets that the zone lies between.</summary>
    public Form Form { get; }

    /// <summary>One position for every tone, with fingers.</summary>
    public Shape Shape { get; }

    /// <summary>
    /// The best grip inside the window, open strings only where the window begins at them: with all tones over the chord's
    /// bass where there is one, else without those that may be left out, else over any bass; of these the one of least
    /// effort. Null where the hand can hold none.
    /// </summary>
    public ChordGrip? Grip => grip.Value;

    /// <summary>
    /// The shapes of the chord's formula over all twelve roots in this window, in semitones up from the chord's own root,
    /// each root spelled so that its chord has the fewest accidentals; of equals the flat.
    /// </summary>
    public IReadOnlyList<Shape> AllRoots()
    {
        var shapes = new List<Shape>(12);
        for (var up = 0; up < 12; up++)
        {
            var root = up == 0 ? Chord.Root : RootAt((Chord.Root.PitchClass + up) % 12);
            if (new WindowShapes(line, root, Chord.Formula).In(Window) is { } shape)
            {
                shapes.Add(shape);
            }
        }

        return shapes;
    }

    private NoteName RootAt(int pitchClass) =>
        NoteName
            .Common.Where(name => name.PitchClass == pitchClass)
            .OrderBy(name => Chord.Formula.Tones(name).Sum(static tone => Math.Abs(tone.Alteration)))
            .ThenBy(static name => name.Alteration)
            .First();

    /// <summary>
    /// Other positions for the tones of the shape that the hand has a choice for: the same pitch on a neighbouring string, in the
    /// window or at most two frets outside, by a stretch from where the hand is or by a shift, whichever costs less.
    /// </summary>
    public IReadOnlyList<ShapeAlternative> Alternatives()
    {
        var home = line.Hand.Home(Window);
        var found = new List<ShapeAlternative>();
        foreach (var note in Shape.Notes)
        {
            foreach (var position in Neck.PositionsOf(note.Place.Pitch))
            {
                if (
                    position == note.Place.Position
                    || Math.Abs(position.String - note.Place.Position.String) > 1
                    || position.Fret < Window.First - FartherFrets
                    || position.Fret > Window.Last + FartherFrets
                )
                {
                    continue;
                }

                var states = new List<FingeredNote>();
                line.AddStates(position, states);
                if (states.Count == 0)
                {
                    continue;
                }

                var here = new FingeredNote(note.Place.Position, note.Finger, home);
                var best = states.MinBy(state =>
                    line.NoteCost(position, state.Finger, state.Place) + line.StepCost(here, state)
                );
                var shift = best.Place == home ? 0 : line.Hand.Tip(best.Place) - line.Hand.Tip(home);
                found.Add(new(note, position, best.Finger, shift));
            }
        }

        return found;
    }

    /// <summary>The form and the window.</summary>
    public override string ToString() => $"{Form} {Window}";

    private ChordGrip? FindGrip()
    {
        var all = new GripQuery
        {
            Chord = Chord,
            Neck = Neck,
            Hand = Hand,
            Optional = Formula.Empty,
            FirstFret = line.Hand.Home(Window),
            LastFret = Window.Last,
            OpenStrings = Window.First <= Neck.Capo ? OpenStrings.Allowed : OpenStrings.None,
        };
        ReadOnlySpan<GripQuery> questions =
        [
            all,
            all with
            {
                Optional = null,
            },
            all with
            {
                AnyBass = true,
            },
            all with
            {
                AnyBass = true,
                Optional = null,
            },
        ];
        foreach (var question in questions)
        {
            if (GripSearch.Best(question, line.Hand) is { } best)
            {
                return best;
            }
        }

        return null;
    }
}
