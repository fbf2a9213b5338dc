namespace TheoryKit.Paths;

/// <summary>A line that was made, with what was asked; every note of its path says why it is there. Equal when question and path are.</summary>
public sealed class MadeLine : IEquatable<MadeLine>
{
    internal MadeLine(LineRequest request, Path path, double effort) =>
        (Request, Path, Effort) = (request, path, effort);

    /// <summary>What was asked.</summary>
    public LineRequest Request { get; }

    /// <summary>The line, over the changes, with fingers; <see cref="PathNote.Why"/> of every note is its reason.</summary>
    public Path Path { get; }

    /// <summary>What playing it costs the hand; see <see cref="Fingering.EffortWeights"/>.</summary>
    public double Effort { get; }

    /// <inheritdoc/>
    public bool Equals(MadeLine? other) => other is not null && Request == other.Request && Path.Equals(other.Path);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as MadeLine);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Request, Path);

    /// <summary>The seed, and the path.</summary>
    public override string ToString() => $"seed {Request.Seed}: {Path}";
}
