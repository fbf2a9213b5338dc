namespace TheoryKit.Fingering;

/// <summary>
/// The weights of effort. Effort is a plain sum of terms, each zero or more, each a weight times a quantity that can be
/// checked with a ruler; 1 is the effort of setting down one strong finger where it falls by itself.
/// </summary>
/// <remarks>
/// The relation of the fingers' strengths is from measurements of their share in a power grip, about 25, 34, 26 and 15
/// percent from index to little finger (MacDermid, Lee, Richards, Roth, "Individual finger strength: are the ulnar digits
/// powerful?", J. Hand Therapy 17, 2004). The other weights are teaching practice put in numbers: they order what a
/// teacher would order. They are properties so that a player can change each, or learn them from examples.
/// </remarks>
public sealed record EffortWeights
{
    /// <summary>The weights that the presets use.</summary>
    public static EffortWeights Default { get; } = new();

    /// <summary>Setting the thumb over the neck; an awkward hold for most hands.</summary>
    public double Thumb { get; init; } = 2.0;

    /// <summary>Setting the index finger.</summary>
    public double Index { get; init; } = 1.0;

    /// <summary>Setting the middle finger; the strongest by share in a grip.</summary>
    public double Middle { get; init; } = 1.0;

    /// <summary>Setting the ring finger; its tendon is shared with its neighbours, so it moves less freely.</summary>
    public double Ring { get; init; } = 1.2;

    /// <summary>Setting the little finger; less than half the strength of the middle one.</summary>
    public double Little { get; init; } = 1.5;

    /// <summary>A pair of neighbouring fingers spread to the limit of their reach; grows with the square of the spread beyond rest.</summary>
    public double Stretch { get; init; } = 6.0;

    /// <summary>A pair of neighbouring fingers squeezed into no room at all; grows with the square of what is lacking.</summary>
    public double Crowding { get; init; } = 1.0;

    /// <summary>Laying a finger flat, whatever it covers.</summary>
    public double Barre { get; init; } = 1.5;

    /// <summary>Each string beyond the first that a flat finger holds down: the same force is shared by more strings.</summary>
    public double BarreString { get; init; } = 0.3;

    /// <summary>A flat finger other than the index, for which flatness is unnatural.</summary>
    public double OtherBarre { get; init; } = 2.0;

    /// <summary>Two fingers at one fret with the lower-numbered one nearer the floor: the hand must turn.</summary>
    public double Twist { get; init; } = 0.7;

    /// <summary>A string that must stay silent between two that sound.</summary>
    public double InnerMute { get; init; } = 0.8;

    /// <summary>Shifting the hand by one metre along the neck; a shift also costs <see cref="Shift"/> once.</summary>
    public double ShiftDistance { get; init; } = 20.0;

    /// <summary>Shifting the hand at all, however little.</summary>
    public double Shift { get; init; } = 1.0;

    /// <summary>Moving to a neighbouring string, for each string crossed.</summary>
    public double StringCrossing { get; init; } = 0.2;

    /// <summary>Setting one finger twice in a row on different frets: it must let go and leap. Not counted when it slides along its string in a shift.</summary>
    public double SameFinger { get; init; } = 2.0;

    /// <summary>Rolling one finger to another string at the same fret.</summary>
    public double Roll { get; init; } = 0.8;

    /// <summary>One voice going one semitone from a grip to the next.</summary>
    public double VoiceStep { get; init; } = 0.25;

    /// <summary>Keeping the hand away from the preferred place, for each metre.</summary>
    public double Preference { get; init; } = 5.0;

    /// <summary>The weight of setting a finger.</summary>
    /// <exception cref="ArgumentOutOfRangeException">No such finger.</exception>
    public double Of(Finger finger) =>
        finger switch
        {
            Finger.Thumb => Thumb,
            Finger.Index => Index,
            Finger.Middle => Middle,
            Finger.Ring => Ring,
            Finger.Little => Little,
            _ => throw new ArgumentOutOfRangeException(nameof(finger), finger, "A hand has a thumb and four fingers."),
        };
}
