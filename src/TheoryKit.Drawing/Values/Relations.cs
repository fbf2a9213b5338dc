using TheoryKit.Theory;

namespace TheoryKit.Drawing;

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
            new("chord on a degree", "chords on degrees"),
            static chord => chord.Quality?.Name ?? Words.Of((object?)chord.Scale ?? chord.Formula),
            [
                new("stands on", static chord => Chords.Function(chord.On)),
                new("formula", static chord => Words.Of(chord.Formula)),
                new(
                    "its tones there",
                    static chord => Words.Join(" ", chord.Functions.Select(static each => each.Outer))
                ),
            ]
        );

    public static Description<FormulaNeighbour> Neighbours { get; } =
        new(
            new("formula", "formulas"),
            static near => Words.Of(near.Formula),
            [
                new("change", static near => Change(near)),
                new("chord", static near => near.Quality?.Name),
                new("scale", static near => near.Scale is { } scale ? Words.Of(scale) : null),
                new(
                    "also read as",
                    static near =>
                        Words.Join(
                            ", ",
                            near.Readings.Where(reading => reading.Formula != near.Formula)
                                .Select(static reading => (Words)$"{reading.Quality!.Name} on {reading.On}")
                        )
                ),
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
