using System.Collections.Immutable;
using Fractions;
using TheoryKit.Theory;

namespace TheoryKit.Paths;

/// <summary>What searches ask of a lick, worked out once.</summary>
internal sealed class LickFacts
{
    public LickFacts(Lick lick)
    {
        Lick = lick;
        Line = LickLine.Of(lick);
        Contour = LickContour.Write(Line.Contour);
        var path = lick.Path;
        Sounding = [.. path.Notes.Where(static note => !note.Has(Technique.Dead))];
        Functions = [.. Sounding.Select(note => path.FunctionOf(note)?.Simple)];
        Strong = [.. Sounding.Select(note => IsStrong(note.Start, path.Time))];
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

    /// <summary>The notes that are not dead.</summary>
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

    /// <summary>
    /// Whether a beat is strong: the first of a bar, that in the middle of an even bar of four or more, and in compound time the first
    /// of every three.
    /// </summary>
    public static bool IsStrong(Fraction start, TimeSignature time)
    {
        if (!start.Denominator.IsOne)
        {
            return false;
        }

        var beat = (int)(start.Numerator % time.Beats);
        return beat == 0
            || (time.IsCompound ? beat % 3 == 0 : time.Beats >= 4 && time.Beats % 2 == 0 && 2 * beat == time.Beats);
    }
}
