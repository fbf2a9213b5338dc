using System.Collections.Immutable;
using Fractions;
using TheoryKit.Paths.Timing;
using TheoryKit.Theory.Notes;
using TheoryKit.Values;

namespace TheoryKit.Paths.Sounding;

/// <summary>What sounds of a note when a path is played.</summary>
/// <remarks>
/// Each note of the path is one sounding note: a trill is a curve in steps, for it is struck once; a note that is joined to the one before
/// goes on from it without a stroke of its own (<see cref="Technique.IsJoined"/>), and its curve begins where that one ends.
/// </remarks>
/// <param name="Pitch">The pitch without bends and slides: that of the fret, of a harmonic the one that sounds.</param>
/// <param name="Start">When it starts, in beats as played, swing included.</param>
/// <param name="Length">How long it sounds, in beats as played.</param>
/// <param name="Loudness">How loud, as a factor of the amplitude of a plain note.</param>
/// <param name="Note">The note of the path.</param>
[Checked]
public sealed partial record SoundingNote(Pitch Pitch, Fraction Start, Fraction Length, double Loudness, PathNote Note)
{
    private readonly Sequence<PitchPoint> curve = new([]);

    /// <summary>How the pitch moves, in order of time; empty where it stays. It is even between points, and a step where two have one time.</summary>
    /// <remarks>
    /// A bend rises, and a release falls, in a fifth of a second, a slide in a tenth, a turn of a trill takes 0.08 s; each at most half of
    /// the time that the note sounds. A slide from or to nowhere covers three frets where the string has them.
    /// </remarks>
    public IReadOnlyList<PitchPoint> Curve
    {
        get => curve;
        init => curve = Check.Items(value, nameof(Curve));
    }

    /// <summary>How far the pitch is from <see cref="Pitch"/>, in cents, at a part of the time that the note sounds.</summary>
    /// <param name="part">From 0 to 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">Beyond that.</exception>
    public double CentsAt(double part)
    {
        if (part is not (>= 0 and <= 1))
        {
            throw new ArgumentOutOfRangeException(nameof(part), part, "A part of a note is 0 to 1.");
        }

        for (var index = 1; index < curve.Count; index++)
        {
            var (from, to) = (curve[index - 1], curve[index]);
            if (part < to.At)
            {
                return from.Cents + ((to.Cents - from.Cents) * (part - from.At) / (to.At - from.At));
            }
        }

        return curve.Count > 0 ? curve[^1].Cents : 0;
    }
}

/// <summary>What sounds when a path is played at a tempo, straight or swung.</summary>
public sealed class Performance
{
    private readonly ImmutableArray<SoundingNote> notes;

    /// <summary>A path as it is played.</summary>
    /// <param name="path">The path.</param>
    /// <param name="tempo">Beats a minute, more than 0 and at most 1000.</param>
    /// <param name="swing">How a beat is divided; straight unless told.</param>
    /// <exception cref="ArgumentOutOfRangeException">The tempo is none.</exception>
    public Performance(Path path, double tempo, Swing swing = default)
    {
        ArgumentNullException.ThrowIfNull(path);
        if (tempo is not (> 0 and <= 1000))
        {
            throw new ArgumentOutOfRangeException(
                nameof(tempo),
                tempo,
                "A tempo is more than 0 and at most 1000 beats a minute."
            );
        }

        (Path, Tempo, Swing) = (path, tempo, swing);
        var last = new PathNote?[path.Neck.StringCount + 1];
        notes =
        [
            .. path.Notes.Select(note =>
            {
                ref var before = ref last[note.Position.String];
                var sound = Sound(note, before is not null && before.End == note.Start ? before : null);
                before = note;
                return sound;
            }),
        ];
    }

    /// <summary>The path.</summary>
    public Path Path { get; }

    /// <summary>Beats a minute.</summary>
    public double Tempo { get; }

    /// <summary>How a beat is divided.</summary>
    public Swing Swing { get; }

    /// <summary>What sounds, in the order of the path's notes.</summary>
    public IReadOnlyList<SoundingNote> Notes => notes;

    /// <summary>How long it lasts, in seconds.</summary>
    public double Seconds => SecondsAt(Swing.Play(Path.Beats));

    /// <summary>The second at which a played beat comes.</summary>
    public double SecondsAt(Fraction beat) => beat.ToDouble() * 60 / Tempo;

    private SoundingNote Sound(PathNote note, PathNote? before)
    {
        var (start, end) = (Swing.Play(note.Start), Swing.Play(note.End));
        var (part, loudness) = (1.0, 1.0);
        foreach (var technique in note.Techniques)
        {
            part *= technique.Sounds;
            loudness *= technique.Loudness;
        }

        // A thousandth is finer than anyone hears, and keeps the length exact.
        var sounds = new Fraction((int)Math.Max(1, Math.Round(part * 1000)), 1000);
        var length = ((end - start) * sounds).Reduce();
        var pitch =
            note.Has(Technique.NaturalHarmonic) || note.Has(Technique.ArtificialHarmonic)
                ? Path.SoundingPitch(note with { Bend = 0 })
                : note.Pitch;
        return new(pitch, start, length, loudness, note)
        {
            Curve = PitchCurve.Of(Path.Neck, note, before, SecondsAt(length)),
        };
    }
}
