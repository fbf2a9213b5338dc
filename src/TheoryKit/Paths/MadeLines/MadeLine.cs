using TheoryKit.Values;

namespace TheoryKit.Paths.MadeLines;

/// <summary>A line that was made, with what was asked; every note of its path says why it is there. Equal when question and path are.</summary>
[EqualBy(nameof(Request), nameof(Path))]
public sealed partial class MadeLine : IEquatable<MadeLine>
{
    internal MadeLine(LineRequest request, Path path, double effort) =>
        (Request, Path, Effort) = (request, path, effort);

    /// <summary>What was asked.</summary>
    public LineRequest Request { get; }

    /// <summary>The line, over the changes, with fingers; <see cref="PathNote.Why"/> of every note is its reason.</summary>
    public Path Path { get; }

    /// <summary>What playing it costs the hand; see <see cref="TheoryKit.Fingering.Hands.EffortWeights"/>.</summary>
    public double Effort { get; }

    /// <summary>The seed, and the path.</summary>
    public override string ToString() => $"seed {Request.Seed}: {Path}";
}
