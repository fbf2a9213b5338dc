using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Scales;
using TheoryKit.Values;

namespace TheoryKit.Charts.Theory;

/// <summary>The charts of this package, asked for from what they show: <c>ChordQuality.Known.Named().MapChart()</c>.</summary>
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

    /// <summary>How many tones each two chords share.</summary>
    public static SharedTonesChart SharedTonesChart(this IEnumerable<Chord> chords) => new(chords);

    /// <summary>The formulas, each named by its degrees.</summary>
    public static IEnumerable<NamedFormula> Named(this IEnumerable<Formula> formulas) =>
        Check.Items(formulas).Select(NamedFormula.From);

    /// <summary>The qualities' formulas, each named by its symbol.</summary>
    public static IEnumerable<NamedFormula> Named(this IEnumerable<ChordQuality> qualities) =>
        Check.Items(qualities).Select(NamedFormula.From);

    /// <summary>The scales' formulas, each named by the kind of scale.</summary>
    public static IEnumerable<NamedFormula> Named(this IEnumerable<ScaleType> types) =>
        Check.Items(types).Select(NamedFormula.From);

    /// <summary>The chords' formulas, each named by its symbol.</summary>
    public static IEnumerable<NamedFormula> Named(this IEnumerable<Chord> chords) =>
        Check.Items(chords).Select(NamedFormula.From);
}
