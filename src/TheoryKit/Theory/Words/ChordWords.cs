using System.Globalization;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Naming;
using TheoryKit.Theory.Notes;
using TheoryKit.Values;

namespace TheoryKit.Theory.Words;

/// <summary>Chords, and how notes read as chords, in English.</summary>
public static class ChordWords
{
    /// <summary>The chord: <c>Eb dominant seventh, flat nine, over G</c>.</summary>
    /// <param name="chord">The chord.</param>
    /// <param name="format">"G" (or null) plain, "P" with printed signs.</param>
    /// <param name="naming">A <see cref="NoteNaming"/>; null for English.</param>
    public static string InWords(this Chord chord, string? format = null, IFormatProvider? naming = null)
    {
        ArgumentNullException.ThrowIfNull(chord);
        var over = chord.Bass == chord.Root ? "" : $", over {chord.Bass.ToString(format, naming)}";
        return $"{chord.Root.ToString(format, naming)} {chord.Formula.InWords(format)}{over}";
    }

    /// <summary>
    /// The name of a formula as a chord: of a catalogued quality its own, else composed, <c>dominant ninth, sharp five, without the
    /// third</c>; where it has no symbol it says so and lists the tones, <c>no usual name: 1 b2 4 #5</c>.
    /// </summary>
    /// <param name="formula">The formula.</param>
    /// <param name="format">"G" (or null) plain, "P" with printed signs.</param>
    public static string InWords(this Formula formula, string? format = null)
    {
        if (ChordQuality.Find(formula) is { } known)
        {
            return known.Name;
        }

        if (ChordSymbol.Built(formula) is not var (quality, changes))
        {
            return $"no usual name: {formula.ToString(format)}";
        }

        var parts = changes.Where(static each => each is not ReadingReason.Omitted).Select(each => each.InWords());
        var without = changes.OfType<ReadingReason.Omitted>().Select(static each => Left(each.Tone)).ToList();
        return string.Join(
            ", ",
            [
                quality.Name,
                .. parts,
                .. without.Count > 0 ? [$"without {English.List(without)}"] : Array.Empty<string>(),
            ]
        );
    }

    /// <summary>The reasons of a reading: <c>root in the bass, all four tones, nothing missing</c>.</summary>
    /// <param name="reading">The reading.</param>
    /// <param name="format">"G" (or null) plain, "P" with printed signs.</param>
    /// <param name="naming">A <see cref="NoteNaming"/>; null for English.</param>
    public static string InWords(this ChordReading reading, string? format = null, IFormatProvider? naming = null)
    {
        ArgumentNullException.ThrowIfNull(reading);
        return string.Join(", ", reading.Terms.Select(term => term.Reason.InWords(format, naming)));
    }

    /// <summary>A reason of a reading, in a few words.</summary>
    /// <param name="reason">The reason.</param>
    /// <param name="format">"G" (or null) plain, "P" with printed signs.</param>
    /// <param name="naming">A <see cref="NoteNaming"/>; null for English.</param>
    public static string InWords(this ReadingReason reason, string? format = null, IFormatProvider? naming = null) =>
        reason switch
        {
            ReadingReason.RootInBass => "root in the bass",
            ReadingReason.ToneInBass tone => $"{tone.Function.ToString(format)} in the bass",
            ReadingReason.ForeignBass foreign => $"over a foreign bass, {foreign.Bass.ToString(format, naming)}",
            ReadingReason.AllTones { Count: 2 } => "both tones, nothing missing",
            ReadingReason.AllTones all => $"all {Number(all.Count)} tones, nothing missing",
            ReadingReason.SomeTones { HasRoot: true } some => $"{Number(some.Count)} tones",
            ReadingReason.SomeTones some => $"{Number(some.Count)} tones over a root that is not played",
            ReadingReason.PowerChord => "a power chord",
            ReadingReason.AllAlterations => "all alterations at once",
            ReadingReason.Altered altered => Spoken(altered.Tone),
            ReadingReason.Added added => $"added {Spoken(added.Tone)}",
            ReadingReason.MajorSeventh => "with the major seventh",
            ReadingReason.Omitted omitted => $"without {Left(omitted.Tone)}",
            ReadingReason.RareChange => "a change that players rarely mean",
            ReadingReason.Respelled respelled =>
                $"{respelled.From.ToString(format, naming)} respelled as {respelled.To.ToString(format, naming)}",
            ReadingReason.SingleNote => "a single note",
            ReadingReason.NoUsualName => "no usual name, counted from the bass",
            _ => throw Check.NoKind(reason),
        };

    private static string Left(Degree tone) =>
        tone.Number switch
        {
            1 => "the root",
            3 => "the third",
            _ => "the fifth",
        };

    private static string Spoken(Degree degree) =>
        degree.Alteration switch
        {
            < 0 => "flat ",
            > 0 => "sharp ",
            _ => "",
        } + Number(degree.Number);

    private static string Number(int count) =>
        count switch
        {
            2 => "two",
            3 => "three",
            4 => "four",
            5 => "five",
            6 => "six",
            7 => "seven",
            9 => "nine",
            11 => "eleven",
            13 => "thirteen",
            _ => count.ToString(CultureInfo.InvariantCulture),
        };
}
