using TheoryKit.Theory.Notes;
using TheoryKit.Tunings.Necks;

namespace TheoryKit.Paths;

/// <summary>What can't be played as a note says.</summary>
internal static class PathChecks
{
    /// <summary>What is wrong with a note's techniques, after the note before it on its string; null for nothing.</summary>
    public static string? Of(Neck neck, PathNote note, PathNote? before)
    {
        var open = neck.OpenFret(note.Position.String);
        var isBent = note.Techniques.Any(static technique => technique.IsBent);
        if (isBent && note.Bend == 0)
        {
            return "it is bent by nothing; say how far.";
        }

        if (!isBent && note.Bend > 0 && !note.Has(Technique.Release))
        {
            return $"it is {note.Bend} cents higher than its fret but not bent; add a bend or a pre-bend.";
        }

        if (isBent && note.Position.Fret == open)
        {
            return "an open string has no finger that could bend it.";
        }

        if (note.Has(Technique.Release))
        {
            if (before is null || before.End != note.Start || before.Position != note.Position)
            {
                return "nothing sounds at this fret up to there that could be released.";
            }

            if (before.Bend <= note.Bend)
            {
                return $"a release comes down, but the note before is bent by {before.Bend} cents and this one by {note.Bend}.";
            }
        }

        if (note.Has(Technique.NaturalHarmonic) && NodeAbove(note.Position.Fret - open) is null)
        {
            return "the string has no node there; natural harmonics lie 3, 4, 5, 7, 9, 12, 16, 19, 24 and 28 frets above the open string.";
        }

        return
            note.Has(Technique.Trill)
            && (
                note.TrillFret is not { } trill
                || trill == note.Position.Fret
                || !neck.Has(new(note.Position.String, trill))
            )
            ? "a trill takes turns with another fret of its string."
            : null;
    }

    /// <summary>
    /// What a string sounds above its open pitch when touched so many frets above it; null where no node is near. A string touched at
    /// k/n of its length sounds its n-th partial.
    /// </summary>
    public static Interval? NodeAbove(int frets) =>
        frets switch
        {
            12 => new Interval(7, 12),
            7 or 19 => new Interval(11, 19),
            5 or 24 => new Interval(14, 24),
            4 or 9 or 16 or 28 => new Interval(16, 28),
            3 => new Interval(18, 31),
            _ => null,
        };
}
