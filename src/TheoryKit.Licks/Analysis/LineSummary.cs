using System.Collections.Immutable;
using Fractions;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Progressions;
using TheoryKit.Values;

namespace TheoryKit.Licks.Analysis;

/// <summary>How often a function is struck.</summary>
/// <param name="Function">The function.</param>
/// <param name="Strong">On strong beats, see <see cref="TimeSignature.StrongBeats"/>.</param>
/// <param name="Weak">Elsewhere.</param>
public readonly record struct FunctionCount(Degree Function, int Strong, int Weak)
{
    /// <summary>Anywhere.</summary>
    public int Total => Strong + Weak;

    /// <summary>The function and both counts: <c>b3: 2+1</c>.</summary>
    public override string ToString() => $"{Function}: {Strong}+{Weak}";
}

/// <summary>How many notes play a part.</summary>
/// <param name="Part">The part.</param>
/// <param name="Count">How many.</param>
/// <param name="Share">The part of all notes of the line that these are, 0 to 1; 0 for parts that don't count as notes of the line.</param>
public readonly record struct PartCount(NotePart Part, int Count, double Share)
{
    /// <summary>The part and its count: <c>ChordTone: 6</c>.</summary>
    public override string ToString() => $"{Part}: {Count}";
}

/// <summary>
/// What some notes of a line come to. Dead notes and those slid from are no notes of the line. Equal when notes and beats are.
/// </summary>
[EqualBy(nameof(Beats), nameof(notes))]
public sealed partial class LineSummary : IEquatable<LineSummary>
{
    private readonly ImmutableArray<AnalysedNote> notes;

    internal LineSummary(IEnumerable<AnalysedNote> notes, Fraction beats)
    {
        this.notes = [.. notes];
        Beats = beats;
        Line = [.. this.notes.Where(static note => note.Counts)];
        Functions =
        [
            .. Line.Where(static note => note.Function is not null)
                .GroupBy(static note => note.Function!.Value)
                .Select(static group => new FunctionCount(
                    group.Key,
                    group.Count(static note => note.IsStrong),
                    group.Count(static note => !note.IsStrong)
                ))
                .OrderByDescending(static count => count.Strong)
                .ThenByDescending(static count => count.Total)
                .ThenBy(static count => count.Function),
        ];
        Parts =
        [
            .. this
                .notes.GroupBy(static note => note.Part)
                .OrderBy(static group => group.Key)
                .Select(group => new PartCount(
                    group.Key,
                    group.Count(),
                    group.First().Counts ? (double)group.Count() / Line.Length : 0
                )),
        ];
    }

    /// <summary>How many beats they fill, rests included.</summary>
    public Fraction Beats { get; }

    /// <summary>How many notes the line has.</summary>
    public int Count => Line.Length;

    /// <summary>The lowest as it sounds, the first of these; null where there is no note.</summary>
    public AnalysedNote? Lowest => Line.MinBy(static note => note.Sounding.MidiNumber);

    /// <summary>The highest as it sounds, the first of these; null where there is no note.</summary>
    public AnalysedNote? Highest => Line.MaxBy(static note => note.Sounding.MidiNumber);

    /// <summary>Semitones from the lowest to the highest.</summary>
    public int Range => Count == 0 ? 0 : Highest!.Sounding.MidiNumber - Lowest!.Sounding.MidiNumber;

    /// <summary>Notes a beat; 0 where there is no beat.</summary>
    public Fraction Density => Beats.IsZero ? Fraction.Zero : (Count / Beats).Reduce();

    /// <summary>The part of the notes that are chord tones, 0 to 1; 0 where there is no note.</summary>
    public double ChordToneShare => Count == 0 ? 0 : (double)CountOf(NotePart.ChordTone) / Count;

    /// <summary>The functions struck, those on most strong beats first, of these the more frequent, of these the lower.</summary>
    public IReadOnlyList<FunctionCount> Functions { get; }

    /// <summary>The parts played, in the order of <see cref="NotePart"/>.</summary>
    public IReadOnlyList<PartCount> Parts { get; }

    internal ImmutableArray<AnalysedNote> Line { get; }

    /// <summary>How many notes play a part.</summary>
    public int CountOf(NotePart part)
    {
        var count = 0;
        foreach (var note in notes)
        {
            count += note.Part == part ? 1 : 0;
        }

        return count;
    }

    /// <summary>The notes, each as it is written.</summary>
    public override string ToString() => string.Join(", ", notes);
}
