using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Scales;
using TheoryKit.Values;

namespace TheoryKit.Theory.Relations;

/// <summary>A scale on the same root that holds every tone of a formula. Equal by value.</summary>
public sealed record ScaleAround
{
    internal ScaleAround(ScaleType type, Formula formula)
    {
        Type = type;
        Functions = formula
            .Select(degree => new ToneFunction(degree, type.Formula.At(degree.PitchClass)!.Value))
            .ToSequence();
        Added = new(type.Formula.Where(degree => !formula.PitchClasses.Contains(degree.PitchClass)));
        IsRespelled = Functions.Any(static each => each.Own.Simple != each.Outer);
    }

    /// <summary>The scale.</summary>
    public ScaleType Type { get; }

    /// <summary>For each tone of the formula its degree there and in the scale: <c>#9 = b3</c>.</summary>
    public IReadOnlyList<ToneFunction> Functions { get; }

    /// <summary>The degrees of the scale that the formula has not: what it offers beyond the chord.</summary>
    public Formula Added { get; }

    /// <summary>Whether the scale spells some tone differently from the formula.</summary>
    public bool IsRespelled { get; }

    /// <summary>The scale and what it adds, as in <c>dorian: 2 4 6</c>.</summary>
    public override string ToString() => $"{Type}: {Added}";
}
