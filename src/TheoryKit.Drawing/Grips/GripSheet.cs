using TheoryKit.Fingering;

namespace TheoryKit.Drawing;

/// <summary>Grip boxes in rows, each with what there is to say about it. Equal when the grips and everything shown agree.</summary>
public sealed record GripSheet
{
    private readonly int most = 12;
    private readonly GripAnswer? answer;

    /// <summary>A sheet of these grips.</summary>
    public GripSheet(IEnumerable<ChordGrip> grips)
    {
        ArgumentNullException.ThrowIfNull(grips);
        Grips = [.. grips];
        answer = grips as GripAnswer;
        Reason = answer?.Reason ?? "";
    }

    /// <summary>The grips.</summary>
    public IReadOnlyList<ChordGrip> Grips { get; }

    /// <summary>Why there are none, where that is known.</summary>
    public string Reason { get; }

    /// <summary>The reason in the reader's way.</summary>
    internal Words ReasonInWords => answer is null ? Words.None : Words.Of(new StringValues.Said(answer.ReasonAs));

    /// <summary>What stands above them.</summary>
    public string Title { get; init; } = "";

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
