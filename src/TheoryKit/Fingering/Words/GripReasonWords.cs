using TheoryKit.Fingering.Grips;
using TheoryKit.Fingering.Hands;
using TheoryKit.Theory.Chords;
using TheoryKit.Values;

namespace TheoryKit.Fingering.Words;

/// <summary>Why there is no grip, in English.</summary>
public static class GripReasonWords
{
    /// <summary>Why there is no grip, in a sentence.</summary>
    /// <param name="reason">The reason.</param>
    /// <param name="format">"G" (or null) plain, "P" with printed signs.</param>
    /// <param name="naming">A <see cref="TheoryKit.Theory.Notes.NoteNaming"/>; null for English.</param>
    public static string InWords(this NoGripReason reason, string? format = null, IFormatProvider? naming = null)
    {
        return reason switch
        {
            NoGripReason.OutOfReach miss =>
                $"The hand does not reach: the nearest grip, {miss.Nearest}, asks {Math.Ceiling(miss.Excess):F0} mm more between {Name(miss.One)} and {Name(miss.Other)}.",
            NoGripReason.BarresAndThumb own => None(own.Chord, "that this hand holds with its barres and its thumb"),
            NoGripReason.Fingers few => None(few.Chord, $"with at most {English.Count(few.Most, "finger")}"),
            NoGripReason.InnerMutes inner => None(inner.Chord, "with no muted string between two that sound"),
            NoGripReason.Top top => None(top.Chord, $"with {top.Pitch.ToString(format, naming)} on top"),
            NoGripReason.Bass bass => None(bass.Chord, $"over {bass.Note.ToString(format, naming)} in the bass"),
            NoGripReason.Strings some => None(some.Chord, "on those strings"),
            NoGripReason.Frets frets => None(frets.Chord, $"between frets {frets.First} and {frets.Last}"),
            NoGripReason.OpenStrings open => None(open.Chord, "with such use of open strings"),
            NoGripReason.FewestStrings least => None(least.Chord, $"on {English.Count(least.Least, "string")} or more"),
            NoGripReason.MostStrings most => None(most.Chord, $"on {English.Count(most.Most, "string")} or fewer"),
            NoGripReason.RequiredTones all => None(all.Chord, "with every tone that may not be left out"),
            NoGripReason.SeveralLimits several =>
                $"No single limit keeps {several.Chord.ToString(format, naming)} from sounding on this neck: drop several of them, if the neck has its tones at all.",
            _ => throw Check.NoKind(reason),
        };

        string None(Chord chord, string limit) =>
            $"There is no grip of {chord.ToString(format, naming)} {limit}; without this limit there is one.";
    }

    /// <summary>Which chord has no grip, and why, in a sentence.</summary>
    /// <param name="without">The chord.</param>
    /// <param name="format">"G" (or null) plain, "P" with printed signs.</param>
    /// <param name="naming">A <see cref="TheoryKit.Theory.Notes.NoteNaming"/>; null for English.</param>
    public static string InWords(this ChordWithoutGrip without, string? format = null, IFormatProvider? naming = null)
    {
        ArgumentNullException.ThrowIfNull(without);
        return $"Chord {without.Index + 1}: {without.Reason?.InWords(format, naming)}";
    }

    private static string Name(Finger finger) => finger == Finger.Thumb ? "the thumb" : $"finger {(int)finger}";
}
