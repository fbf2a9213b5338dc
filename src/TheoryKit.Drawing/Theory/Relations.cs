using TheoryKit.Drawing.Sheets;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Notes;
using TheoryKit.Theory.Relations;
using TheoryKit.Theory.Words;
using TheoryKit.Values;

namespace TheoryKit.Drawing.Theory;

/// <summary>How what a formula is related to is described, each by itself.</summary>
internal static class Relations
{
    public static Description<ToneFunction> ToneFunctions { get; } =
        new(
            new("tone", "tones"),
            static tone => Words.Of(tone.Own),
            [new("in the formula around it", static tone => Words.Of(tone.Outer))]
        );

    public static Description<DegreeChord> DegreeChords { get; } =
        new(
            new("chord", "chords"),
            static chord =>
                chord.Quality is { } quality ? (Words)quality.Name
                : chord.Scale is { } scale ? Words.Of(scale)
                : "no usual name",
            [
                new("stands on", static chord => Chords.Function(chord.On)),
                new("formula", static chord => Words.Of(chord.Formula)),
                new(
                    "its tones there",
                    static chord => Words.Join(" ", chord.Functions.Select(static each => each.Outer))
                ),
            ]
        )
        {
            Counted = static (count, left) =>
                count == 0
                    ? $"No chord that has a usual name, from {English.Count(left, "tone")}"
                    : (count == 1 ? "1 chord, on a degree" : $"{count} chords, each on a degree")
                        + (left == 0 ? "" : $"; {Nameless(left)}"),
            // One formula on several degrees is told for the degrees, name or not.
            IsLeftOut = static (chord, all) =>
                chord.Quality is null && chord.Scale is null && all.Any(other => other.Formula != chord.Formula),
        };

    public static Description<FormulaNeighbour> Neighbours { get; } =
        new(
            new("formula", "formulas"),
            static near => Words.Of(near.Formula),
            [
                new("change", static near => Change(near)),
                new("over the same root", static near => NameOf(near) ?? NoName),
                new("scale", static near => near.Scale is { } scale ? Words.Of(scale) : null),
                new("read from another tone", static near => Words.Join(", ", OnOther(near))),
            ]
        );

    public static Description<ScaleAround> ScalesAround { get; } =
        new(
            new("scale", "scales"),
            static scale => Words.Of(scale.Type),
            [
                new("adds", static scale => scale.Added.Count == 0 ? "nothing" : Words.Of(scale.Added)),
                new("respells", static scale => Respellings(scale)),
            ]
        );

    /// <summary>What is said where there is no name.</summary>
    public static Words NoName { get; } = "no usual name";

    /// <summary>What is said of tones from which there is no name.</summary>
    public static string Nameless(int count) =>
        count == 1 ? "1 other tone gives no usual name" : $"{count} other tones give no usual name";

    /// <summary>
    /// What a formula one tone away is called over the same root: a known quality, one whose third or fifth alone is left out,
    /// or one spelled differently; null if none.
    /// </summary>
    public static Words? NameOf(FormulaNeighbour near) =>
        near.Quality is { } quality ? quality.Name
        : near is { Change: FormulaChange.Dropped, From: { Number: 3 or 5 } left, Symbol: not null }
        && ChordQuality.Find(near.Formula.With(left)) is not null
            ? near.Formula.InWords()
        : near.Readings.FirstOrDefault(static reading => reading.On == Degree.Root)?.Quality?.Name;

    private static IEnumerable<Words> OnOther(FormulaNeighbour near) =>
        near
            .Readings.Where(static reading => reading.On != Degree.Root)
            .Select(static reading => (Words)$"{reading.Quality!.Name} on {reading.On}");

    /// <summary>The tones that the scale spells differently.</summary>
    public static Words Respellings(ScaleAround scale) =>
        Words.Join(
            ", ",
            scale
                .Functions.Where(static each => each.Own.Simple != each.Outer)
                .Select(static each => (Words)$"{each.Own} as {each.Outer}")
        );

    /// <summary>What makes the one formula into the other.</summary>
    public static Words Change(FormulaNeighbour near) =>
        near.Change switch
        {
            FormulaChange.Moved => (Words)$"{near.From}\u00a0to\u00a0{near.To}",
            FormulaChange.Added => (Words)$"add\u00a0{near.To}",
            _ => (Words)$"leave out {near.From}",
        };
}
