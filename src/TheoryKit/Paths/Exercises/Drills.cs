using Fractions;
using TheoryKit.Fingering.Grips;
using TheoryKit.Fingering.Hands;
using TheoryKit.Fingering.Lines;
using TheoryKit.Fingering.Words;
using TheoryKit.Fingering.Zones;
using TheoryKit.Paths.Timing;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Progressions;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Paths.Exercises;

/// <summary>Makes paths to practise from zones and shapes.</summary>
public static class Drills
{
    private static readonly Rhythm Eighths = Rhythm.Even(2);

    /// <summary>
    /// A drill of a zone: its grip for a bar, the tones of its shape in the order of the drill, and the grip again; whole bars over the chord.
    /// </summary>
    /// <remarks>
    /// The fingers are those of the zone. Where they could not follow one another in the order of the drill, they are those of least
    /// effort with the hand where it is, and where there are none, with the hand shifting.
    /// </remarks>
    /// <param name="zone">The zone.</param>
    /// <param name="drill">The order of the tones.</param>
    /// <param name="rhythm">The rhythm of the tones; two a beat if null.</param>
    /// <param name="accents">Which tones are louder; as the rhythm says if null.</param>
    /// <param name="time">The time signature; 4/4 unless told.</param>
    /// <param name="grips">Whether the grip sounds before and after; never where the hand can hold none.</param>
    /// <exception cref="ArgumentException">The hand can't play the tones in that order; the message says where and why.</exception>
    public static Path Drill(
        this Zone zone,
        Drill drill,
        Rhythm? rhythm = null,
        AccentPattern? accents = null,
        TimeSignature time = default,
        bool grips = true
    )
    {
        ArgumentNullException.ThrowIfNull(zone);
        ArgumentNullException.ThrowIfNull(drill);
        var line = Line(zone.Shape, zone.Chord, new(zone.Neck, zone.Hand), drill, rhythm, accents, time);
        if (!grips || zone.Grip is not { } grip)
        {
            return line;
        }

        var held = Held(zone, grip, time, line.Changes);
        return held.Then(line).Then(held);
    }

    /// <summary>A drill of any shape; as that of a zone, without a grip.</summary>
    /// <param name="shape">The shape.</param>
    /// <param name="neck">The neck that it was found on.</param>
    /// <param name="drill">The order of the tones.</param>
    /// <param name="rhythm">The rhythm of the tones; two a beat if null.</param>
    /// <param name="accents">Which tones are louder; as the rhythm says if null.</param>
    /// <param name="time">The time signature; 4/4 unless told.</param>
    /// <param name="hand">The hand; the average one if null.</param>
    /// <exception cref="ArgumentException">The neck is another one, or the hand can't play the tones in that order; the message says where
    /// and why.</exception>
    public static Path Drill(
        this Shape shape,
        Neck neck,
        Drill drill,
        Rhythm? rhythm = null,
        AccentPattern? accents = null,
        TimeSignature time = default,
        Hand? hand = null
    )
    {
        ArgumentNullException.ThrowIfNull(shape);
        ArgumentNullException.ThrowIfNull(neck);
        ArgumentNullException.ThrowIfNull(drill);
        foreach (var place in shape.Places)
        {
            if (!neck.Has(place.Position) || neck.MidiNumberAt(place.Position) != place.Pitch.MidiNumber)
            {
                throw new ArgumentException(
                    $"The shape has {place.Pitch} at {place.Position}, which the neck {neck} has not; drill it on the neck it was found on.",
                    nameof(neck)
                );
            }
        }

        Chord chord = new(shape.Root, shape.Formula);
        return Line(shape, chord, new(neck, hand ?? Hand.Average), drill, rhythm, accents, time);
    }

    /// <summary>
    /// A drill of the chord's formula over all twelve roots in the window of one zone, beginning with the zone's own or, when shuffled,
    /// anywhere; each root in whole bars over its chord. A root that has no shape in the window is left out.
    /// </summary>
    /// <param name="zone">The zone.</param>
    /// <param name="drill">The order of the tones.</param>
    /// <param name="roots">The order of the roots; fourths if null.</param>
    /// <param name="rhythm">The rhythm of the tones; two a beat if null.</param>
    /// <param name="accents">Which tones are louder; as the rhythm says if null.</param>
    /// <param name="time">The time signature; 4/4 unless told.</param>
    /// <exception cref="ArgumentException">The hand can't play the tones of a root in that order; the message says where and why.</exception>
    public static Path DrillAllRoots(
        this Zone zone,
        Drill drill,
        RootCycle? roots = null,
        Rhythm? rhythm = null,
        AccentPattern? accents = null,
        TimeSignature time = default
    )
    {
        ArgumentNullException.ThrowIfNull(zone);
        ArgumentNullException.ThrowIfNull(drill);
        var shapes = zone.AllRoots().ToDictionary(shape => Distance(zone.Chord.Root, shape.Root));
        var hand = new HandOnNeck(zone.Neck, zone.Hand);
        var (notes, bars, beats) = (new List<PathNote>(), new List<Bar>(), Fraction.Zero);
        foreach (var up in (roots ?? RootCycle.Fourths).Order)
        {
            if (shapes.GetValueOrDefault(up) is not { } shape)
            {
                continue;
            }

            Chord chord = new(shape.Root, shape.Formula);
            var line = Line(shape, chord, hand, drill, rhythm, accents, time);
            notes.AddRange(line.Notes.Select(note => note with { Start = note.Start + beats }));
            bars.AddRange(Enumerable.Repeat(line.Changes!.Bars[0], line.BarCount));
            beats += line.Beats;
        }

        return new(zone.Neck, notes, time, new(bars, time), beats);
    }

    /// <summary>The path with its notes louder as a pattern says, from the first note on; notes that start together count as one.</summary>
    public static Path Accented(this Path path, AccentPattern pattern)
    {
        ArgumentNullException.ThrowIfNull(path);
        ArgumentNullException.ThrowIfNull(pattern);
        var notes = path
            .Notes.GroupBy(static note => note.Start)
            .SelectMany(
                (together, index) =>
                    together.Select(note =>
                    {
                        var techniques = note.Techniques.Where(static technique => technique != Technique.Accent);
                        return note with
                        {
                            Techniques =
                            [
                                .. techniques,
                                .. pattern[index] ? [Technique.Accent] : Array.Empty<Technique>(),
                            ],
                        };
                    })
            );
        return path.With(notes, beats: path.Beats);
    }

    /// <summary>Changes of one chord.</summary>
    internal static Changes Over(Chord chord, TimeSignature time) => new([Bar.Of(time.Beats, chord)], time);

    private static int Distance(NoteName from, NoteName to) => Diatonic.Modulo(to.PitchClass - from.PitchClass, 12);

    private static Path Held(Zone zone, ChordGrip grip, TimeSignature time, Changes? changes) =>
        new(
            zone.Neck,
            grip.Places.Select(place => new PathNote
            {
                Pitch = place.Pitch,
                Position = place.Position,
                Length = time.Beats,
                Finger = grip.Grip[place.Position.String].Finger,
                Why = new DrillReason.OfGrip(place.Function, zone.Chord),
            }),
            time,
            changes
        );

    private static Path Line(
        Shape shape,
        Chord chord,
        HandOnNeck hand,
        Drill drill,
        Rhythm? rhythm,
        AccentPattern? accents,
        TimeSignature time
    )
    {
        var order = drill.OrderOf(shape);
        var line = Fingered(shape, order, hand);
        var notes = order.Select(
            (tone, index) =>
                new PathNote
                {
                    Pitch = shape.Notes[tone].Place.Pitch,
                    Position = line[index].Position,
                    Finger = line[index].Finger,
                    Place = line[index].Place,
                    Start = index,
                    Why = new DrillReason.Tone(shape.Notes[tone].Place.Function, chord),
                }
        );
        var path = new Path(hand.Neck, notes, time, Over(chord, time)).InRhythm(rhythm ?? Eighths);
        return (accents is null ? path : path.Accented(accents)).ToWholeBars();
    }

    private static IReadOnlyList<FingeredNote> Fingered(Shape shape, IReadOnlyList<int> order, HandOnNeck hand)
    {
        var (solver, home) = (new LineSolver(hand), hand.Home(shape.Window));
        FingeredNote[] own =
        [
            .. order.Select(tone => new FingeredNote(shape.Notes[tone].Place.Position, shape.Notes[tone].Finger, home)),
        ];
        if (IsPlayable(own, solver))
        {
            return own;
        }

        var query = new LineQuery
        {
            Neck = hand.Neck,
            Hand = hand.Hand,
            Notes = [.. own.Select(static note => LineNote.At(note.Position))],
        };
        var stays = LineSearch.Find(query with { FirstPlace = home, LastPlace = home });
        var answer = stays.Count > 0 ? stays : LineSearch.Find(query);
        return answer.Count > 0
            ? answer[0]
            : throw new ArgumentException(
                $"The shape {shape} can't be played in this order: {answer.Reason?.InWords()}",
                nameof(shape)
            );
    }

    private static bool IsPlayable(FingeredNote[] notes, LineSolver solver)
    {
        for (var index = 0; index < notes.Length; index++)
        {
            var (position, finger, place) = notes[index];
            if (
                double.IsPositiveInfinity(solver.NoteCost(position, finger, place))
                || (index > 0 && double.IsPositiveInfinity(solver.StepCost(notes[index - 1], notes[index])))
            )
            {
                return false;
            }
        }

        return true;
    }
}
