using TheoryKit.Fingering.Hands;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Necks;
using TheoryKit.Values;

namespace TheoryKit.Fingering.Grips;

/// <summary>
/// What is asked of a grip: the sound, the place, the hand, and its <see cref="GripLimits"/>. Equal when all that is asked is.
/// </summary>
public sealed record GripQuery : GripLimits
{
    /// <summary>A question with the default limits.</summary>
    public GripQuery() { }

    /// <summary>A question with these limits.</summary>
    public GripQuery(GripLimits limits)
        : base(Check.NotNull(limits)) { }

    /// <summary>The chord that is to sound.</summary>
    public required Chord Chord
    {
        get;
        init => field = Check.NotNull(value, nameof(Chord));
    }

    /// <summary>Where.</summary>
    public required Neck Neck
    {
        get;
        init => field = Check.NotNull(value, nameof(Neck));
    }

    /// <summary>By which hand; the average one unless told.</summary>
    public Hand Hand
    {
        get;
        init => field = Check.NotNull(value, nameof(Hand));
    } = Hand.Average;

    /// <summary>
    /// The lowest note asked for; null for the chord's own bass. If it is no tone of the chord it sounds once, lowest. See
    /// <see cref="GripLimits.AnyBass"/>.
    /// </summary>
    public NoteName? Bass { get; init; }

    /// <summary>The highest pitch asked for, as for a melody; null for any.</summary>
    public Pitch? Top { get; init; }

    /// <summary>Throws where what is asked contradicts itself or the neck.</summary>
    internal void Validate()
    {
        ArgumentNullException.ThrowIfNull(Chord);
        ArgumentNullException.ThrowIfNull(Hand);
        Validate(Neck);
    }
}
