using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Scales;
using TheoryKit.Values;

namespace TheoryKit.Theory.Relations;

/// <summary>One sound's two functions: in a chord, and in the formula around it.</summary>
/// <param name="Own">Its degree in the chord.</param>
/// <param name="Outer">Its degree in the formula around it.</param>
public readonly record struct ToneFunction(Degree Own, Degree Outer)
{
    /// <summary>Both degrees, as in <c>b3 = 5</c>.</summary>
    public override string ToString() => $"{Own} = {Outer}";
}

/// <summary>
/// A chord, or a mode, that stands on a degree of a formula: the minor triad on 3 of a major seventh. Equal by value.
/// </summary>
public sealed record DegreeChord
{
    private DegreeChord(Degree on, Formula formula, IReadOnlyList<ToneFunction> functions)
    {
        On = on;
        Formula = formula;
        Functions = functions;
        Respelled = functions.Where(each => Seen(each.Outer, on) != each.Own.Simple).ToSequence();
    }

    /// <summary>The degree of the outer formula that is its root.</summary>
    public Degree On { get; }

    /// <summary>Its own degrees, over that root.</summary>
    public Formula Formula { get; }

    /// <summary>The known quality it has; null if it has none.</summary>
    public ChordQuality? Quality => ChordQuality.Find(Formula);

    /// <summary>The known scale it is; null if it is none.</summary>
    public ScaleType? Scale => ScaleType.Find(Formula);

    /// <summary>Whether players have a usual name for it: a known quality, or a known scale.</summary>
    public bool IsNamed => Quality is not null || Scale is not null;

    /// <summary>What is written after its root, empty for a major triad; null if it has no symbol.</summary>
    public string? Symbol => ChordSymbol.For(Formula);

    /// <summary>For each of its tones, in its own order, both functions.</summary>
    public IReadOnlyList<ToneFunction> Functions { get; }

    /// <summary>
    /// The tones that it spells differently from the outer formula, as the augmented triad on 3 of <c>1 3 #5</c> has a sharp
    /// five where the outer one has its root (B# for C).
    /// </summary>
    public IReadOnlyList<ToneFunction> Respelled { get; }

    /// <summary>Whether some tone is spelled differently from the outer formula.</summary>
    public bool IsRespelled => Respelled.Count > 0;

    /// <summary>The chord when the outer formula stands on a root; its own root spelled as the outer formula has it.</summary>
    /// <exception cref="OverflowException">The root would need more accidentals than a note name has.</exception>
    public Chord Over(NoteName outerRoot) => new(outerRoot.Add(On), Formula);

    /// <summary>The same with its root spelled with the fewest accidentals: Adim7, not Bbbdim7, in Cdim7.</summary>
    /// <exception cref="OverflowException">The root would need more accidentals than a note name has.</exception>
    public Chord SimplestOver(NoteName outerRoot) => new(outerRoot.Add(On).Simplest(), Formula);

    /// <summary>The degree and the name, or the formula in brackets, as in <c>b3: sixth</c>.</summary>
    public override string ToString() => $"{On}: {Quality?.Name ?? Scale?.Name ?? $"[{Formula}]"}";

    /// <summary>A formula on a degree of one whose sounds include all of its own.</summary>
    internal static DegreeChord Of(Degree on, Formula formula, Formula outer) =>
        new(on, formula, formula.Select(own => new ToneFunction(own, Nearest(outer, on, own))).ToSequence());

    /// <summary>The degree of the outer formula at the sound of one of the chord's own; where several are, the one spelled alike.</summary>
    private static Degree Nearest(Formula outer, Degree on, Degree own)
    {
        var alike = outer.At(on.PitchClass + own.PitchClass)!.Value;
        foreach (var degree in outer)
        {
            if (degree.PitchClass == alike.PitchClass && Seen(degree, on) == own.Simple)
            {
                return degree;
            }
        }

        return alike;
    }

    /// <summary>What a degree is when counted from another, letters kept; null past three accidentals.</summary>
    internal static Degree? Seen(Degree degree, Degree from)
    {
        var steps = Diatonic.Modulo(degree.Number - from.Number, Diatonic.StepsPerOctave);
        var alteration = degree.PitchClass - from.PitchClass - Diatonic.Semitones(steps);
        alteration = Diatonic.Modulo(alteration + 6, Diatonic.SemitonesPerOctave) - 6;
        return Math.Abs(alteration) <= Degree.MaxAlteration ? new Degree(steps + 1, alteration) : null;
    }
}
