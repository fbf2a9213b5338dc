using TheoryKit.Fingering.Grips;
using TheoryKit.Theory.Chords;
using TheoryKit.Values;

namespace TheoryKit.Fingering.Moving;

/// <summary>One chord of changes moved to another tuning: its grip before and after. Equal when all of it is.</summary>
/// <param name="Chord">The chord.</param>
/// <param name="Before">Its grip in the old tuning; null if the changes have none there.</param>
/// <param name="Same">The same frets as a grip of the same chord in the new tuning; null if they are none there: the grip can't stay.</param>
/// <param name="Easiest">Its grip in the easiest version; null if the changes have none in the new tuning.</param>
/// <param name="Kept">Its grip in the version that keeps what can stay; null likewise.</param>
[Checked]
public sealed partial record MovedGrip(
    Chord Chord,
    ChordGrip? Before,
    ChordGrip? Same,
    ChordGrip? Easiest,
    ChordGrip? Kept
)
{
    private readonly Sequence<MovedPosition> positions = new([]);

    /// <summary>Whether the grip can stay: the same frets sound a grip of the same chord under the same limits.</summary>
    public bool CanStay => Same is not null;

    /// <summary>The positions of the old grip, string 1 first, and what each gives in the new tuning.</summary>
    public IReadOnlyList<MovedPosition> Positions
    {
        get => positions;
        init => positions = Check.Items(value, nameof(Positions));
    }

    /// <summary>The limits that its grips keep.</summary>
    public GripLimits Limits
    {
        get;
        init => field = Check.NotNull(value, nameof(Limits));
    } = GripLimits.Default;

    /// <summary>Why the grip can't stay; null where it can, or where there is none.</summary>
    public MustMoveReason? Reason
    {
        get
        {
            if (Before is null || CanStay)
            {
                return null;
            }

            var foreign = positions.Where(static position => position.MustMove).ToList();
            if (foreign.Count > 0)
            {
                var neck = Before.Neck;
                return new MustMoveReason.ForeignTones(
                    Chord,
                    foreign.Select(each => new ForeignTone(
                        each.Position,
                        each.Position.Fret == neck.OpenFret(each.Position.String),
                        each.After
                    ))
                );
            }

            var sounding = positions.Select(static position => position.After.PitchClass).ToHashSet();
            var optional = Limits.Optional ?? GripLimits.CommonlyOptional(Chord.Formula);
            var missing = new Formula(
                Chord.Formula.Where(degree =>
                    !optional.Contains(degree) && !sounding.Contains(Chord.Root.Add(degree).PitchClass)
                )
            );
            if (missing.Count > 0)
            {
                return new MustMoveReason.MissingTones(Chord, missing);
            }

            var lowest = positions.MinBy(static position => position.After.MidiNumber).After;
            return !Limits.AnyBass && lowest.PitchClass != Chord.Bass.PitchClass
                ? new MustMoveReason.OtherBass(lowest, Chord.Bass)
                : new MustMoveReason.OutsideLimits();
        }
    }
}
