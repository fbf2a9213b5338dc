using TheoryKit.Theory;

namespace TheoryKit.Charts;

/// <summary>The charts of this package, asked for from what they show.</summary>
public static class TheoryCharts
{
    /// <summary>Which intervals each formula holds.</summary>
    public static IntervalContentChart IntervalContentChart(this IEnumerable<NamedFormula> formulas) => new(formulas);

    /// <summary>The formulas against the twelve semitones.</summary>
    public static LadderChart LadderChart(this IEnumerable<NamedFormula> formulas) => new(formulas);

    /// <summary>The formulas in the field of two intervals, semitones and tritones unless told otherwise.</summary>
    /// <inheritdoc cref="FormulaMapChart(IEnumerable{NamedFormula}, int, int)"/>
    public static FormulaMapChart MapChart(this IEnumerable<NamedFormula> formulas, int across = 1, int up = 6) =>
        new(formulas, across, up);

    /// <summary>Which formulas turn into each other by one tone.</summary>
    public static OneToneAwayChart OneToneAwayChart(this IEnumerable<NamedFormula> formulas) => new(formulas);

    /// <summary>The formulas, each named by its degrees.</summary>
    public static IEnumerable<NamedFormula> Named(this IEnumerable<Formula> formulas) =>
        formulas.Select(NamedFormula.FromFormula);

    /// <summary>Which intervals each formula holds.</summary>
    public static IntervalContentChart IntervalContentChart(this IEnumerable<Formula> formulas) =>
        new(formulas.Named());

    /// <summary>The formulas against the twelve semitones.</summary>
    public static LadderChart LadderChart(this IEnumerable<Formula> formulas) => new(formulas.Named());

    /// <inheritdoc cref="MapChart(IEnumerable{NamedFormula}, int, int)"/>
    public static FormulaMapChart MapChart(this IEnumerable<Formula> formulas, int across = 1, int up = 6) =>
        new(formulas.Named(), across, up);

    /// <summary>Which formulas turn into each other by one tone.</summary>
    public static OneToneAwayChart OneToneAwayChart(this IEnumerable<Formula> formulas) => new(formulas.Named());

    /// <summary>The chords' formulas, each named by its chord.</summary>
    public static IEnumerable<NamedFormula> Named(this IEnumerable<Chord> chords) =>
        chords.Select(static chord => new NamedFormula(Names.Of(chord), chord.Formula));

    /// <summary>How many tones each two chords share.</summary>
    public static SharedTonesChart SharedTonesChart(this IEnumerable<Chord> chords) => new(chords);

    /// <summary>Which intervals each chord holds over its root.</summary>
    public static IntervalContentChart IntervalContentChart(this IEnumerable<Chord> chords) => new(chords.Named());

    /// <summary>The chords' formulas against the twelve semitones, each over its own root.</summary>
    public static LadderChart LadderChart(this IEnumerable<Chord> chords) => new(chords.Named());
}
