using System.Collections.Immutable;
using Fractions;
using TheoryKit.Theory;

namespace TheoryKit.Paths;

/// <summary>What sounds of a note when a path is played.</summary>
/// <param name="Pitch">The pitch.</param>
/// <param name="Start">When it starts, in beats as played, swing included.</param>
/// <param name="Length">How long it sounds, in beats as played.</param>
/// <param name="Loudness">How loud, as a factor of the amplitude of a plain note.</param>
/// <param name="Note">The note of the path.</param>
public sealed record SoundingNote(Pitch Pitch, Fraction Start, Fraction Length, double Loudness, PathNote Note);

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
        notes = [.. path.Notes.Select(Sound)];
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

    private SoundingNote Sound(PathNote note)
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
        return new(note.Pitch, start, ((end - start) * sounds).Reduce(), loudness, note);
    }
}
