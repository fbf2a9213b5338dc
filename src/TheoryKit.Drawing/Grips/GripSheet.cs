using TheoryKit.Drawing.Necks;
using TheoryKit.Fingering.Grips;
using TheoryKit.Values;

namespace TheoryKit.Drawing.Grips;

/// <summary>Grip boxes in rows, each with what there is to say about it. Equal when the grips and everything shown agree.</summary>
public sealed record GripSheet
{
    private readonly int most = 12;

    /// <summary>A sheet of these grips.</summary>
    public GripSheet(IEnumerable<ChordGrip> grips)
    {
        ArgumentNullException.ThrowIfNull(grips);
        Grips = [.. grips];
        Reason = (grips as GripAnswer)?.Reason;
    }

    /// <summary>The grips.</summary>
    public IReadOnlyList<ChordGrip> Grips { get; }

    /// <summary>Why there are none, where that is known.</summary>
    public NoGripReason? Reason { get; }

    /// <summary>What stands above them.</summary>
    public string Title
    {
        get;
        init => field = Check.NotNull(value, nameof(Title));
    } = "";

    /// <summary>How many boxes are drawn at most, 12 unless told; the rest is counted.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Less than 1.</exception>
    public int Most
    {
        get => most;
        init
        {
            ArgumentOutOfRangeException.ThrowIfLessThan(value, 1, nameof(Most));
            most = value;
        }
    }

    /// <summary>What is written on the marks at first.</summary>
    public Labels Labels { get; init; } = Labels.Fingers;

    /// <summary>Whether the boxes are mirrored for a left-handed player.</summary>
    public bool IsLeftHanded { get; init; }

    /// <inheritdoc/>
    public bool Equals(GripSheet? other) =>
        other is not null
        && (Reason, Title, Most, Labels, IsLeftHanded)
            == (other.Reason, other.Title, other.Most, other.Labels, other.IsLeftHanded)
        && Grips.SequenceEqual(other.Grips);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Grips.Count, Title, Most, Labels, IsLeftHanded);
}
