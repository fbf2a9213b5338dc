using System.Collections.Immutable;
using TheoryKit.Licks.Analysis;
using TheoryKit.Paths;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;

namespace TheoryKit.Licks.Search;

/// <summary>What searches ask of a lick, worked out once.</summary>
internal sealed class LickFacts
{
    public LickFacts(Lick lick)
    {
        Lick = lick;
        Line = LickLine.Of(lick);
        Contour = LickContour.Write(Line.Contour);
        var path = lick.Path;
        AnalysedNote[] line = [.. path.Analyse().Notes.Where(static note => note.Counts)];
        Sounding = [.. line.Select(static note => note.Note)];
        Functions = [.. line.Select(static note => note.Function?.Simple)];
        Strong = [.. line.Select(static note => note.IsStrong)];
        Techniques = [.. Technique.Known.Where(technique => path.Notes.Any(note => note.Has(technique)))];
        Chords =
        [
            .. (path.Changes?.Chords ?? [])
                .Where(span => span.Start < path.Beats)
                .Select(static span => span.Chord)
                .OfType<Chord>()
                .Distinct(),
        ];
        FunctionMask = Functions.Aggregate(0L, static (mask, degree) => mask | Bit(degree));
        StrongMask = Functions
            .Zip(Strong)
            .Aggregate(0L, static (mask, each) => mask | (each.Second ? Bit(each.First) : 0));
    }

    public Lick Lick { get; }

    public LickLine Line { get; }

    public string Contour { get; }

    /// <summary>The notes of the line as the analysis counts them: neither dead nor slid from.</summary>
    public ImmutableArray<PathNote> Sounding { get; }

    /// <summary>What each of them does, within the octave: a ninth is a 2.</summary>
    public ImmutableArray<Degree?> Functions { get; }

    /// <summary>Whether each of them starts on a strong beat.</summary>
    public ImmutableArray<bool> Strong { get; }

    public ImmutableArray<Technique> Techniques { get; }

    public ImmutableArray<Chord> Chords { get; }

    /// <summary>A bit for every function that there is.</summary>
    public long FunctionMask { get; }

    /// <summary>A bit for every function that starts on a strong beat.</summary>
    public long StrongMask { get; }

    /// <summary>The bit of a function.</summary>
    public static long Bit(Degree? degree) =>
        degree is { } known
            ? 1L
                << (
                    ((known.Number - 1) % 7 * ((2 * Degree.MaxAlteration) + 1))
                    + known.Alteration
                    + Degree.MaxAlteration
                )
            : 0;
}
