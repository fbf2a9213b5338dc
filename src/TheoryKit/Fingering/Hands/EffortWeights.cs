using System.Runtime.CompilerServices;
using TheoryKit.Values;

namespace TheoryKit.Fingering.Hands;

/// <summary>
/// The weights of effort. Effort is a plain sum of terms, each zero or more, each a weight times a quantity that can be
/// checked with a ruler; 1 is the effort of setting down one strong finger where it falls by itself.
/// </summary>
/// <remarks>
/// The order of the fingers follows their share in a power grip, about 25, 35, 25 and 14 percent from index to little
/// finger (looked up: "Individual finger strength: are the ulnar digits powerful?", J. Hand Ther. 17(3), 2004, 364-367), and that a
/// finger does not press by itself alone ("enslaving"; looked up: Martin, Latash, Zatsiorsky, "Interaction of finger enslaving and error
/// compensation in multiple finger force production", Exp. Brain Res. 192, 2009, 293-298), a ring or little finger least (from memory).
/// Such studies measure whole-hand grips and presses, not strings. Chosen: how much each weighs here, and all the other weights; they
/// are teaching practice put in numbers, which order what a teacher would order. They are properties so that a player can
/// change each, or learn them from examples. Equal when every weight is.
/// <para>Text: the weights that are not the default, each with its name in words: <c>ring 1.5, inner mute 0</c>; or
/// <c>default</c>.</para>
/// </remarks>
[ReadAs("a set of effort weights")]
public sealed partial record EffortWeights
{
    /// <summary>No weight is more: 1000. Weights are finite, so that effort tells what can't be played by being infinite.</summary>
    public const double MaxWeight = 1000;

    /// <summary>The fret at which the neck of a guitar meets its body on most instruments: 14. From memory.</summary>
    public const int UpperFret = 14;

    /// <summary>The weights that the presets use.</summary>
    public static EffortWeights Default { get; } = new();

    /// <summary>Setting the thumb over the neck; an awkward hold for most hands.</summary>
    public double Thumb
    {
        get;
        init => field = Checked(value);
    } = 2.0;

    /// <summary>Setting the index finger.</summary>
    public double Index
    {
        get;
        init => field = Checked(value);
    } = 1.0;

    /// <summary>Setting the middle finger; the strongest by share in a grip.</summary>
    public double Middle
    {
        get;
        init => field = Checked(value);
    } = 1.0;

    /// <summary>Setting the ring finger; its tendon is shared with its neighbours, so it moves less freely.</summary>
    public double Ring
    {
        get;
        init => field = Checked(value);
    } = 1.2;

    /// <summary>Setting the little finger; less than half the strength of the middle one.</summary>
    public double Little
    {
        get;
        init => field = Checked(value);
    } = 1.8;

    /// <summary>
    /// Setting a finger beyond <see cref="UpperFret"/>, for each fret beyond: the arm reaches round the body of the
    /// instrument, and the frets grow narrower than a finger.
    /// </summary>
    public double Upper
    {
        get;
        init => field = Checked(value);
    } = 0.2;

    /// <summary>
    /// A pair of neighbouring fingers spread to the limit of their reach; grows with the cube of the spread beyond rest. That
    /// a joint stiffens steeply towards the end of its range is measured: the passive moment of the index finger's knuckle
    /// follows a double exponential of its angle (looked up: "Muscle-tendon units provide limited contributions to the passive stiffness
    /// of the index finger metacarpophalangeal joint"; from memory: Kuo, Deshpande, J. Biomech. 45, 2012), in bending, not in spreading. The
    /// exponent three is not from there. Fitted: it stands in for the exponential, by how teachers finger the plain open chords and barres.
    /// </summary>
    public double Stretch
    {
        get;
        init => field = Checked(value);
    } = 6.0;

    /// <summary>A pair of neighbouring fingers squeezed into no room at all; grows with the square of what is lacking.</summary>
    public double Crowding
    {
        get;
        init => field = Checked(value);
    } = 1.0;

    /// <summary>Laying a finger flat, whatever it covers.</summary>
    public double Barre
    {
        get;
        init => field = Checked(value);
    } = 1.5;

    /// <summary>Each string beyond the first that a flat finger holds down: the same force is shared by more strings.</summary>
    public double BarreString
    {
        get;
        init => field = Checked(value);
    } = 0.3;

    /// <summary>A flat finger other than the index, for which flatness is unnatural.</summary>
    public double OtherBarre
    {
        get;
        init => field = Checked(value);
    } = 2.0;

    /// <summary>Two fingers at one fret with the lower-numbered one nearer the floor: the hand must turn.</summary>
    public double Twist
    {
        get;
        init => field = Checked(value);
    } = 0.7;

    /// <summary>A string that must stay silent between two that sound.</summary>
    public double InnerMute
    {
        get;
        init => field = Checked(value);
    } = 0.8;

    /// <summary>Shifting the hand by one metre along the neck; a shift also costs <see cref="Shift"/> once.</summary>
    public double ShiftDistance
    {
        get;
        init => field = Checked(value);
    } = 20.0;

    /// <summary>Shifting the hand at all, however little; as much as a finger or two, so that a scale that lies in one place is played there.</summary>
    public double Shift
    {
        get;
        init => field = Checked(value);
    } = 2.0;

    /// <summary>Moving to a neighbouring string, for each string crossed.</summary>
    public double StringCrossing
    {
        get;
        init => field = Checked(value);
    } = 0.2;

    /// <summary>Setting one finger twice in a row on different frets: it must let go and leap. Not counted when it slides along its string in a shift.</summary>
    public double SameFinger
    {
        get;
        init => field = Checked(value);
    } = 2.0;

    /// <summary>Rolling one finger to another string at the same fret.</summary>
    public double Roll
    {
        get;
        init => field = Checked(value);
    } = 0.8;

    /// <summary>One voice going one semitone from a grip to the next.</summary>
    public double VoiceStep
    {
        get;
        init => field = Checked(value);
    } = 0.25;

    /// <summary>
    /// An open string in a line, for each metre that the hand is away from where that string begins, counted from the first
    /// place there: nothing in open position. No finger damps it or gives it vibrato, it rings on while the hand plays
    /// elsewhere, and it sounds brighter than its neighbours, the more so the shorter they are; so teachers keep open strings
    /// to open position unless that is the sound they want. Chosen: at fret 12 of a guitar it comes to
    /// 2.9, more than any one finger and its usual spread, and at fret 3 to 0.7, less than any finger.
    /// Grips don't have it: their open strings are meant to ring on.
    /// </summary>
    public double OpenString
    {
        get;
        init => field = Checked(value);
    } = 10.0;

    /// <summary>Keeping the hand away from the preferred place, for each metre.</summary>
    public double Preference
    {
        get;
        init => field = Checked(value);
    } = 5.0;

    /// <summary>The least weight of any finger, thumb included.</summary>
    internal double LeastFinger => Math.Min(Thumb, Math.Min(Math.Min(Index, Middle), Math.Min(Ring, Little)));

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

    private static double Checked(double value, [CallerMemberName] string name = "") =>
        value is >= 0 and <= MaxWeight
            ? value
            : throw new ArgumentOutOfRangeException(name, value, $"{name} is a weight, 0 to {MaxWeight}.");
}
