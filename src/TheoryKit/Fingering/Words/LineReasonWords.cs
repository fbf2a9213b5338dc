using TheoryKit.Fingering.Lines;
using TheoryKit.Values;

namespace TheoryKit.Fingering.Words;

/// <summary>Why a line can't be played, in English.</summary>
public static class LineReasonWords
{
    /// <summary>Why the line can't be played, in a sentence that counts notes from 1.</summary>
    /// <param name="reason">The reason.</param>
    /// <param name="format">"G" (or null) plain, "P" with printed signs.</param>
    /// <param name="naming">A <see cref="TheoryKit.Theory.Notes.NoteNaming"/>; null for English.</param>
    public static string InWords(this NoLineReason reason, string? format = null, IFormatProvider? naming = null)
    {
        ArgumentNullException.ThrowIfNull(reason);
        var note = reason.Note + 1;
        return reason switch
        {
            NoLineReason.NowhereOnNeck no => $"Note {note} lies nowhere on the neck {no.Neck}.",
            NoLineReason.OnlyOnOpenStrings => $"Note {note} lies only on open strings, which are not allowed.",
            NoLineReason.NoPlaceForHand no =>
                $"No finger plays note {note}: the hand has no place between frets {no.First} and {no.Last} of the neck {no.Neck}.",
            NoLineReason.OutOfReach far =>
                $"No finger plays note {note} {Between(far.First, far.Last)}: it lies {Math.Ceiling(far.Excess):F0} mm out of reach.",
            NoLineReason.OthersRingOn ringing =>
                $"Note {note} can't be played {Between(ringing.First, ringing.Last)} while the notes before it ring on: the hand does not reach, or has no finger or string left.",
            NoLineReason.OffItsString =>
                $"Note {note} does not lie on the string of note {note - 1}, on which it is to stay.",
            NoLineReason.CannotFollow no =>
                $"Note {note} can't be played after note {note - 1} {Between(no.First, no.Last)}: the fingers would cross or do not reach, and there is no place to shift to.",
            _ => throw Check.NoKind(reason),
        };
    }

    private static string Between(int first, int last) => $"with the hand between frets {first} and {last}";
}
