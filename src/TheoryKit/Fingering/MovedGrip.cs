using TheoryKit.Theory;

namespace TheoryKit.Fingering;

/// <summary>One chord of changes moved to another tuning: its grip before and after. Equal when all of it is.</summary>
/// <param name="Chord">The chord.</param>
/// <param name="Before">Its grip in the old tuning; null if the changes have none there.</param>
/// <param name="Same">The same frets as a grip of the same chord in the new tuning; null if they are none there: the grip can't stay.</param>
/// <param name="Easiest">Its grip in the easiest version; null if the changes have none in the new tuning.</param>
/// <param name="Kept">Its grip in the version that keeps what can stay; null likewise.</param>
public sealed record MovedGrip(Chord Chord, ChordGrip? Before, ChordGrip? Same, ChordGrip? Easiest, ChordGrip? Kept)
{
    private readonly Sequence<MovedPosition> positions = new([]);

    /// <summary>Whether the grip can stay: the same frets sound a grip of the same chord under the same limits.</summary>
    public bool CanStay => Same is not null;

    /// <summary>The positions of the old grip, string 1 first, and what each gives in the new tuning.</summary>
    public IReadOnlyList<MovedPosition> Positions
    {
        get => positions;
        init => positions = value.ToSequence();
    }

    /// <summary>The limits that its grips keep.</summary>
    public GripLimits Limits { get; init; } = GripLimits.Default;

    /// <summary>Why the grip can't stay: <c>string 6 at fret 3 gives F2: no tone of G</c>; empty where it can, or where there is none.</summary>
    public string Reason => ReasonAs(null);

    /// <summary>The reason with notes and chords in a format ("G" or "P") and in the language of a <see cref="NoteNaming"/>.</summary>
    /// <exception cref="FormatException">Another format.</exception>
    public string ReasonAs(string? format, IFormatProvider? naming = null)
    {
        if (Before is null || CanStay)
        {
            return "";
        }

        var chord = Chord.ToString(format, naming);
        var foreign = positions.Where(static position => position.MustMove).ToList();
        if (foreign.Count > 0)
        {
            var neck = Before.Neck;
            var gives = foreign.Select(each =>
            {
                var (number, fret) = (each.Position.String, each.Position.Fret);
                var where = fret == neck.OpenFret(number) ? $"open string {number}" : $"string {number} at fret {fret}";
                return $"{where} gives {each.After.ToString(format, naming)}";
            });
            return $"{string.Join(", ", gives)}: no {(foreign.Count > 1 ? "tones" : "tone")} of {chord}";
        }

        var sounding = positions.Select(static position => position.After.PitchClass).ToHashSet();
        var optional = Limits.Optional ?? GripLimits.CommonlyOptional(Chord.Formula);
        var missing = Chord
            .Formula.Where(degree =>
                !optional.Contains(degree) && !sounding.Contains(Chord.Root.Add(degree).PitchClass)
            )
            .Select(degree => degree.ToString(format))
            .ToList();
        if (missing.Count > 0)
        {
            return $"{string.Join(" and ", missing)} of {chord} would be missing";
        }

        var lowest = positions.MinBy(static position => position.After.MidiNumber).After;
        return !Limits.AnyBass && lowest.PitchClass != Chord.Bass.PitchClass
            ? $"{lowest.ToString(format, naming)} would be lowest, not {Chord.Bass.ToString(format, naming)}"
            : "the limits leave it out in the new tuning";
    }
}
