using Fractions;
using TheoryKit.Fingering.Hands;
using TheoryKit.Licks.Moves;
using TheoryKit.Paths;
using TheoryKit.Theory.Notes;
using TheoryKit.Values;

namespace TheoryKit.Licks.Words;

/// <summary>The words of a lick that was moved: what was done, what became of each note, what could not be kept.</summary>
public static class MoveWords
{
    /// <summary>What was done, in a few words: <c>to the zone at frets 5 to 8</c>.</summary>
    /// <param name="move">The move.</param>
    /// <param name="format">"G" (or null) for plain signs, "P" for printed ones.</param>
    /// <param name="naming">A <see cref="NoteNaming"/>; null for English.</param>
    /// <exception cref="FormatException">Another format.</exception>
    public static string InWords(this LickMove move, string? format = null, IFormatProvider? naming = null)
    {
        var speech = new Speech(format, naming);
        return move switch
        {
            LickMove.ByInterval by => speech.Say($"by {by.Interval}"),
            LickMove.ToKey to => speech.Say($"to {to.Key}"),
            LickMove.ByOctaves { Octaves: 0 } or LickMove.ByBeats { Beats.IsZero: true } => "where it is",
            LickMove.ByOctaves by => Octaves(by.Octaves),
            LickMove.ToZone to => $"to the zone at {Frets(to.Zone.Window)}",
            LickMove.ToStrings to => $"to {(to.Strings.Count == 1 ? "string" : "strings")} {Numbers(to.Strings)}",
            LickMove.ToNeck => "to another neck",
            LickMove.ToTuning to => speech.Say($"to {to.Neck.Tuning}"),
            LickMove.ForHand => "for this hand",
            LickMove.ToChord to => speech.Say($"to {to.Chord}"),
            LickMove.ToChanges to => speech.Say($"to {to.Changes}"),
            LickMove.Backwards => "backwards",
            LickMove.ByBeats by =>
                $"{English.Beats(by.Beats.Abs())} {(by.Beats > Fraction.Zero ? "later" : "earlier")}",
            LickMove.ToRhythm to => $"in the rhythm {to.Rhythm}",
            _ => throw Check.NoKind(move),
        };
    }

    /// <summary>
    /// A sentence: <c>Bar 2, beat 2 and 1/2: Eb4 loses the slide: both notes are at one fret now; instead the note struck.</c>
    /// </summary>
    /// <inheritdoc cref="InWords(LickMove, string?, IFormatProvider?)"/>
    public static string InWords(this MoveRemark remark, string? format = null, IFormatProvider? naming = null)
    {
        ArgumentNullException.ThrowIfNull(remark);
        var speech = new Speech(format, naming);
        var (lost, instead) = (remark.Loss.Lost(format, naming), remark.Loss.Instead(format, naming));
        var who =
            remark is not { Bar: { } bar, Beat: { } beat } ? "The lick"
            : remark.Pitch is { } pitch ? speech.Say($"{Place("Bar", bar, beat)}: {pitch}")
            : $"{Place("Bar", bar, beat)}: the dead note";
        return $"{who} loses {lost}; instead {instead}.";
    }

    /// <summary>
    /// A sentence: <c>Bar 1, beat 2: E4 (3) becomes Eb4 (b3): the 3 of C7 becomes the b3 of Cm7.</c> Where the time is another:
    /// <c>Bar 1, beat 2, now bar 1, beat 2 and 1/2: E4 (3) stays.</c>
    /// </summary>
    /// <inheritdoc cref="InWords(LickMove, string?, IFormatProvider?)"/>
    public static string InWords(this MovedTone tone, string? format = null, IFormatProvider? naming = null)
    {
        ArgumentNullException.ThrowIfNull(tone);
        var speech = new Speech(format, naming);
        var now = tone.IsElsewhereInTime ? $", now {Place("bar", tone.BarAfter, tone.BeatAfter)}" : "";
        var before = Note(tone.Before, tone.SoundedBefore, tone.FunctionBefore);
        var becomes = tone.IsUnchanged ? "stays" : $"becomes {Note(tone.After, tone.SoundedAfter, tone.FunctionAfter)}";
        var why = tone.Why is { } reason ? $": {reason.InWords(format, naming)}" : "";
        return $"{Place("Bar", tone.Bar, tone.Beat)}{now}: {before} {becomes}{why}.";

        string Note(PathNote note, Pitch pitch, Degree? function) =>
            note.IsDead ? speech.Say($"the dead note on string {note.Position.String}")
            : function is { } known ? speech.Say($"{pitch} ({known})")
            : speech.Text(pitch);
    }

    /// <summary>A line for the name and the move, then one for each remark and for each exception; or that nothing is lost.</summary>
    /// <inheritdoc cref="InWords(LickMove, string?, IFormatProvider?)"/>
    public static IReadOnlyList<string> InWords(
        this MovedLick moved,
        string? format = null,
        IFormatProvider? naming = null
    ) =>
        [
            Check.NotNull(moved).Move is { } move
                ? $"{moved.From.Name}, {move.InWords(format, naming)}"
                : moved.From.Name,
            .. moved.IsWhole ? ["Nothing is lost."] : Enumerable.Empty<string>(),
            .. moved.Remarks.Select(remark => remark.InWords(format, naming)),
            .. moved.Exceptions.Select(tone => tone.InWords(format, naming)),
        ];

    /// <summary>"an octave higher".</summary>
    internal static string Octaves(int octaves) =>
        $"{(Math.Abs(octaves) == 1 ? "an octave" : English.Count(Math.Abs(octaves), "octave"))} {(octaves > 0 ? "higher" : "lower")}";

    /// <summary>"frets 5 to 8".</summary>
    internal static string Frets(Window window) =>
        window.Width == 1 ? $"fret {window.First}" : $"frets {window.First} to {window.Last}";

    internal static string Numbers(IEnumerable<int> strings) => string.Join(", ", strings);

    /// <summary>"Bar 2, beat 2 and 1/2".</summary>
    private static string Place(string word, int bar, Fraction beat)
    {
        var whole = beat.Numerator / beat.Denominator;
        var rest = (beat - whole).Reduce();
        return $"{word} {bar}, beat {whole}{(rest.IsZero ? "" : $" and {rest}")}";
    }
}
