using TheoryKit.Tunings.Necks;

namespace TheoryKit.Paths.Sounding;

/// <summary>Works out the curve that the pitch of a played note follows: bends, releases, slides and trills.</summary>
/// <remarks>
/// A bend rises, and a release falls, evenly in <see cref="BendSeconds"/>, a slide in <see cref="SlideSeconds"/>; each in at most half of the
/// time that the note sounds. A release begins where the note before has left the string. A pre-bend is up there from the start. A slide
/// that joins two notes leaves the first one's pitch when the second begins; a slide from or to nowhere covers <see cref="SlideFrets"/>
/// frets, fewer where the string has no more. A trill is one stroke with steps of <see cref="TrillSeconds"/>, at least one there and
/// back; it begins and ends on the note itself. Chosen: a player's ordinary figures, by ear, not from a source.
/// </remarks>
internal static class PitchCurve
{
    /// <summary>How long a bend takes, in seconds.</summary>
    public const double BendSeconds = 0.2;

    /// <summary>How long a slide takes, in seconds.</summary>
    public const double SlideSeconds = 0.1;

    /// <summary>How long each turn of a trill lasts, in seconds.</summary>
    public const double TrillSeconds = 0.08;

    /// <summary>From how many frets away a slide from nowhere comes.</summary>
    public const int SlideFrets = 3;

    // A trill that is held for minutes does not need every turn told apart.
    private const int MostTurns = 400;

    /// <summary>The curve; empty for a note whose pitch stays.</summary>
    /// <param name="neck">The neck.</param>
    /// <param name="note">The note.</param>
    /// <param name="before">The note that ends on its string where it starts; null for none.</param>
    /// <param name="seconds">How long it sounds.</param>
    public static IReadOnlyList<PitchPoint> Of(Neck neck, PathNote note, PathNote? before, double seconds)
    {
        if (note.Has(Technique.NaturalHarmonic))
        {
            return [];
        }

        var points = new List<PitchPoint>();
        var end = note.Bend;
        if (note.Has(Technique.Release) && before is not null)
        {
            Move(before.Bend, end, BendSeconds);
        }
        else if (note.Has(Technique.PreBend))
        {
            Add(0, end);
        }
        else if (note.Has(Technique.Bend))
        {
            Move(0, end, BendSeconds);
        }
        else if (note.Has(Technique.Slide) && before is not null && !before.Has(Technique.NaturalHarmonic))
        {
            Move((100 * (before.Position.Fret - note.Position.Fret)) + before.Bend, 0, SlideSeconds);
        }

        var (down, up) = Room(neck, note);
        if (points.Count == 0 && note.Has(Technique.SlideInFromBelow))
        {
            Move(-100 * down, 0, SlideSeconds);
        }
        else if (points.Count == 0 && note.Has(Technique.SlideInFromAbove))
        {
            Move(100 * up, 0, SlideSeconds);
        }

        if (note.Has(Technique.Trill) && note.TrillFret is { } trill)
        {
            Turn(100 * (trill - note.Position.Fret));
        }

        var away =
            note.Has(Technique.SlideOutDown) ? -100 * down
            : note.Has(Technique.SlideOutUp) ? 100 * up
            : 0;
        if (away != 0)
        {
            Add(1 - Part(SlideSeconds), end);
            Add(1, end + away);
        }
        else if (points.Count > 0)
        {
            Add(1, end);
        }

        return points.TrueForAll(static point => point.Cents == 0) ? [] : points;

        double Part(double time) => Math.Min(0.5, time / seconds);

        void Move(double from, double to, double time)
        {
            Add(0, from);
            Add(Part(time), to);
        }

        void Turn(double cents)
        {
            // From where the bend or slide has arrived, an odd number of turns: it begins and ends on the note itself.
            var from = points.Count > 0 ? points[^1].At : 0;
            var length = (1 - from) * seconds;
            var turns = (2 * (int)Math.Clamp(Math.Round(length / TrillSeconds / 2), 1, MostTurns / 2)) + 1;
            for (var turn = 0; turn < turns; turn++)
            {
                var height = end + (turn % 2 == 1 ? cents : 0);
                Add(from + ((1 - from) * turn / turns), height);
                Add(from + ((1 - from) * (turn + 1) / turns), height);
            }
        }

        void Add(double at, double cents)
        {
            if (points.Count == 0 && at > 0)
            {
                points.Add(new(0, end));
            }

            var last = points.Count > 0 ? points[^1].At : 0;
            var point = new PitchPoint(Math.Max(last, at), cents);
            if (points.Count == 0 || points[^1] != point)
            {
                points.Add(point);
            }
        }
    }

    /// <summary>From how many frets below and above the note a slide may come.</summary>
    private static (int Down, int Up) Room(Neck neck, PathNote note) =>
        (
            Math.Clamp(note.Position.Fret - neck.OpenFret(note.Position.String) - 1, 0, SlideFrets),
            Math.Clamp(neck.Frets - note.Position.Fret, 0, SlideFrets)
        );
}
