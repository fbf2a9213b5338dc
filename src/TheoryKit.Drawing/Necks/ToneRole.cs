using TheoryKit.Theory;

namespace TheoryKit.Drawing;

/// <summary>What a tone does in its chord or scale, as told by the mark: colour and shape say it alike.</summary>
public enum ToneRole
{
    /// <summary>Anything else: a dot.</summary>
    Other,

    /// <summary>The root: a rounded square.</summary>
    Root,

    /// <summary>A tone of the chord proper: a disc.</summary>
    ChordTone,

    /// <summary>A tone that colours the chord, its ninth, eleventh or thirteenth: a ring.</summary>
    ColourTone,
}

/// <summary>Which role a degree has.</summary>
public static class ToneRoles
{
    /// <summary>
    /// The role of a degree by itself: 1 is the root; any third, fifth or seventh a chord tone; any ninth, eleventh or
    /// thirteenth a colour tone; a second, fourth or sixth anything else.
    /// </summary>
    public static ToneRole Of(Degree degree) =>
        degree.Number switch
        {
            1 or 8 or 15 => degree.Alteration == 0 ? ToneRole.Root : ToneRole.Other,
            3 or 5 or 7 or 10 or 12 or 14 => ToneRole.ChordTone,
            9 or 11 or 13 => ToneRole.ColourTone,
            _ => ToneRole.Other,
        };

    /// <summary>
    /// The role of a degree within a formula. As <see cref="Of(Degree)"/>, but a second or fourth that stands for the
    /// missing third (a suspension) is a chord tone, and so is the sixth of a formula without a seventh; and an altered
    /// fifth beside the perfect one is anything else.
    /// </summary>
    public static ToneRole Of(Degree degree, Formula formula) =>
        degree.Number switch
        {
            2 or 4 when !Has(formula, 3) => ToneRole.ChordTone,
            6 when degree.Alteration == 0 && !Has(formula, 7) => ToneRole.ChordTone,
            5 when degree.Alteration != 0 && formula.Contains(new Degree(5)) => ToneRole.Other,
            _ => Of(degree),
        };

    /// <summary>The role in words: "root", "chord tone", "colour tone", "other tone".</summary>
    public static string Words(ToneRole role) =>
        role switch
        {
            ToneRole.Root => "root",
            ToneRole.ChordTone => "chord tone",
            ToneRole.ColourTone => "colour tone",
            _ => "other tone",
        };

    private static bool Has(Formula formula, int number) => formula.WithNumber(number) is not null;
}
