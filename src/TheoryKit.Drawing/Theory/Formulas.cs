using TheoryKit.Drawing.Ladders;
using TheoryKit.Drawing.Sheets;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Scales;
using TheoryKit.Theory.Words;

namespace TheoryKit.Drawing.Theory;

/// <summary>How formulas and qualities of chords are described.</summary>
internal static class Formulas
{
    public static Description<Formula> All { get; } =
        new(
            new("formula", "formulas"),
            static formula => Words.Of(formula),
            [
                new("chord symbol", static formula => Symbol(formula)),
                new("scale", static formula => Words.Join(", ", ScaleType.Alike(formula))),
                new("steps", static formula => Steps(formula)),
                new("set class", static formula => Words.Of(formula.PitchClasses.SetClass)),
                new("interval vector", static formula => Words.Of(formula.PitchClasses.IntervalVector)),
            ]
        )
        {
            InWords = static formula =>
                ChordSymbol.For(formula) is not null ? formula.InWords()
                : ScaleType.Find(formula) is { } type ? Words.Of(type)
                : null,
            More = static formula => formula.Count == 0 ? [] : [Ladder(new LadderColumn(formula))],
        };

    public static Description<ChordQuality> Qualities { get; } =
        new(
            new("chord quality", "chord qualities"),
            static quality => quality.Name,
            [
                new("symbol", static quality => Symbol(quality.Formula)),
                new("formula", static quality => Words.Of(quality.Formula)),
                new("steps", static quality => Steps(quality.Formula)),
                new("family", static quality => quality.Family.ToString().ToLowerInvariant()),
                new("also written", static quality => Words.Join("  ", quality.Aliases)),
            ]
        )
        {
            More = static quality => [Ladder(new LadderColumn(quality.Formula))],
        };

    /// <summary>The intervals between neighbouring tones.</summary>
    public static Words? Steps(Formula formula) =>
        formula.Count < 2
            ? null
            : Words.Join(
                formula.Count <= 8 ? "\u00a0" : " ",
                formula.Zip(formula.Skip(1), static (lower, upper) => upper.Interval - lower.Interval)
            );

    /// <summary>A ladder of one column.</summary>
    public static Block Ladder(LadderColumn column) => LadderRenderer.Picture(new LadderDrawing([column]));

    /// <summary>The chord symbol with no root; the bare triad has none but its absence.</summary>
    private static Words? Symbol(Formula formula) =>
        ChordSymbol.For(formula) switch
        {
            null => null,
            "" => "none: the root alone",
            _ => Words.Of(new PrintedSymbol(formula)),
        };

    /// <summary>A symbol in both its ways of writing.</summary>
    private readonly record struct PrintedSymbol(Formula Formula) : IFormattable
    {
        public string ToString(string? format, IFormatProvider? formatProvider) => ChordSymbol.For(Formula, format)!;
    }
}
