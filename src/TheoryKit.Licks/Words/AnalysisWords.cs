using TheoryKit.Licks.Analysis;
using TheoryKit.Theory.Notes;
using TheoryKit.Values;

namespace TheoryKit.Licks.Words;

/// <summary>The words of an analysis.</summary>
public static class AnalysisWords
{
    /// <summary>What a teacher would say of the whole, sentence by sentence; each bar has words of its own.</summary>
    /// <param name="analysis">The analysis.</param>
    /// <param name="format">"G" (or null) for plain signs, "P" for printed ones.</param>
    /// <param name="naming">A <see cref="NoteNaming"/>; null for English.</param>
    /// <exception cref="FormatException">Another format.</exception>
    public static IReadOnlyList<string> InWords(
        this LickAnalysis analysis,
        string? format = null,
        IFormatProvider? naming = null
    ) => Sentences(Check.NotNull(analysis).Remarks, format, naming);

    /// <summary>What a teacher would say of the bar, sentence by sentence.</summary>
    /// <inheritdoc cref="InWords(LickAnalysis, string?, IFormatProvider?)"/>
    public static IReadOnlyList<string> InWords(
        this BarAnalysis analysis,
        string? format = null,
        IFormatProvider? naming = null
    ) => Sentences(Check.NotNull(analysis).Remarks, format, naming);

    /// <summary>A sentence. Chords are named: what was said before is not known.</summary>
    /// <inheritdoc cref="InWords(LickAnalysis, string?, IFormatProvider?)"/>
    public static string InWords(this LineRemark remark, string? format = null, IFormatProvider? naming = null) =>
        new RemarkWords(new Speech(format, naming)).Say(Check.NotNull(remark));

    /// <summary>What a part is called: <c>chord tone</c>, <c>approach</c>.</summary>
    public static string InWords(this NotePart part) =>
        part switch
        {
            NotePart.ChordTone => "chord tone",
            NotePart.ColourTone => "colour tone",
            NotePart.Approach => "approach",
            NotePart.Passing => "passing note",
            NotePart.Neighbour => "neighbour note",
            NotePart.Enclosure => "enclosure",
            NotePart.Anticipation => "anticipation",
            NotePart.Grace => "slid from",
            NotePart.Outside => "outside",
            NotePart.NoChord => "no chord",
            NotePart.Dead => "dead note",
            _ => throw new ArgumentOutOfRangeException(nameof(part)),
        };

    /// <summary>How many notes in how many beats: <c>7 notes in 8 beats</c>.</summary>
    public static string InWords(this LineSummary line) =>
        $"{English.Count(Check.NotNull(line).Count, "note")} in {English.Beats(line.Beats)}";

    private static List<string> Sentences(IReadOnlyList<LineRemark> remarks, string? format, IFormatProvider? naming)
    {
        var words = new RemarkWords(new(format, naming));
        var said = new List<string>(remarks.Count);
        foreach (var remark in remarks)
        {
            said.Add(words.Say(remark));
        }

        return said;
    }
}
