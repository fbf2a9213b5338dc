using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Scales;
using TheoryKit.Values;

namespace TheoryKit.Theory.Relations;

/// <summary>What makes one formula into another that is one tone away.</summary>
public enum FormulaChange
{
    /// <summary>A tone goes up or down by a semitone or a whole tone.</summary>
    Moved,

    /// <summary>A tone comes in.</summary>
    Added,

    /// <summary>A tone is left out.</summary>
    Dropped,
}

/// <summary>A formula that is one tone away from another, over the same root. Equal by value.</summary>
public sealed record FormulaNeighbour
{
    internal FormulaNeighbour(FormulaChange change, Degree? from, Degree? to, int semitones, Formula formula)
    {
        Change = change;
        From = from;
        To = to;
        Semitones = semitones;
        Formula = formula;
        Readings = FormulaRelations.KnownChordsOn(formula).ToSequence();
    }

    /// <summary>What changes.</summary>
    public FormulaChange Change { get; }

    /// <summary>The tone that moves or is dropped; null if one is added.</summary>
    public Degree? From { get; }

    /// <summary>Where it moves to, or the tone added; null if one is dropped.</summary>
    public Degree? To { get; }

    /// <summary>How far the tone moves: -2, -1, 1 or 2; 0 if one is added or dropped.</summary>
    public int Semitones { get; }

    /// <summary>What comes out, over the same root; without 1 if the root itself moved or is dropped.</summary>
    public Formula Formula { get; }

    /// <summary>The known quality it has, spelled like that; null if it has none.</summary>
    public ChordQuality? Quality => ChordQuality.Find(Formula);

    /// <summary>The known scale with its sounds, the one spelled like that first; null if there is none.</summary>
    public ScaleType? Scale => ScaleType.Alike(Formula) is [var first, ..] ? first : null;

    /// <summary>What is written after the root; null if it has no symbol.</summary>
    public string? Symbol => ChordSymbol.For(Formula);

    /// <summary>
    /// The known qualities with these sounds, on whichever degree: <c>3 5 7</c>, a major triad with its root gone down to 7, is the
    /// minor triad on 3.
    /// </summary>
    public IReadOnlyList<DegreeChord> Readings { get; }

    /// <summary>The change and what comes out, as in <c>3 -> b3: 1 b3 5</c>, <c>+b7: 1 3 5 b7</c>, <c>-5: 1 3</c>.</summary>
    public override string ToString() =>
        Change switch
        {
            FormulaChange.Moved => $"{From} -> {To}: {Formula}",
            FormulaChange.Added => $"+{To}: {Formula}",
            _ => $"-{From}: {Formula}",
        };
}
