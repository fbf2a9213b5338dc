using TheoryKit.Fingering.Lines;
using TheoryKit.Theory.Chords;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Drawing.Lines;

/// <summary>
/// A fingered line on a neck: the order of its notes on the marks, fingers and shifts in a table. Equal when line, neck and
/// what is shown agree.
/// </summary>
public sealed record LineDrawing
{
    /// <summary>A line on a neck.</summary>
    /// <exception cref="ArgumentException">A note of it is not on the neck.</exception>
    public LineDrawing(FingeredLine line, Neck neck)
    {
        ArgumentNullException.ThrowIfNull(line);
        ArgumentNullException.ThrowIfNull(neck);
        foreach (var note in line)
        {
            if (!neck.Has(note.Position))
            {
                throw new ArgumentException($"{note.Position} of the line is not on this neck: {neck}.", nameof(line));
            }
        }

        (Line, Neck) = (line, neck);
    }

    /// <summary>The line.</summary>
    public FingeredLine Line { get; }

    /// <summary>The neck.</summary>
    public Neck Neck { get; }

    /// <summary>The chord it is played over, which gives its tones functions; null for none.</summary>
    public Chord? Chord { get; init; }

    /// <summary>Whether the neck is mirrored for a left-handed player.</summary>
    public bool IsLeftHanded { get; init; }
}
