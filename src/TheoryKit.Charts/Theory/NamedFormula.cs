using System.Text.RegularExpressions;
using TheoryKit.Theory.Chords;
using TheoryKit.Theory.Scales;
using TheoryKit.Values;

namespace TheoryKit.Charts.Theory;

/// <summary>A formula and the name it goes by in a chart. Equal when both agree.</summary>
/// <remarks>Qualities, scales, chords and bare formulas turn into one where a chart asks for it.</remarks>
/// <param name="Name">The name: a chord symbol's quality, a scale's name, any words.</param>
/// <param name="Formula">The formula.</param>
public readonly partial record struct NamedFormula(string Name, Formula Formula)
{
    /// <summary>The name; empty by default.</summary>
    public string Name
    {
        get => field ?? "";
        init => field = Check.NotNull(value, nameof(Name));
    } = Check.NotNull(Name);

    /// <summary>A formula that goes by its own degrees.</summary>
    public static implicit operator NamedFormula(Formula formula) => From(formula);

    /// <summary>A name and a formula.</summary>
    public static implicit operator NamedFormula((string Name, Formula Formula) pair) =>
        new(Check.NotNull(pair.Name, nameof(pair)), pair.Formula);

    /// <summary>A quality by its symbol; by its name where that is empty.</summary>
    public static implicit operator NamedFormula(ChordQuality quality) => From(quality);

    /// <summary>A kind of scale by its name.</summary>
    public static implicit operator NamedFormula(ScaleType type) => From(type);

    /// <summary>A chord's formula by the chord's symbol.</summary>
    public static implicit operator NamedFormula(Chord chord) => From(chord);

    /// <summary>A formula that goes by its own degrees.</summary>
    public static NamedFormula From(Formula formula) => new(formula.ToString(), formula);

    /// <summary>A quality by its symbol; by its name where that is empty.</summary>
    public static NamedFormula From(ChordQuality quality)
    {
        ArgumentNullException.ThrowIfNull(quality);
        return new(quality.Symbol.Length > 0 ? quality.Symbol : quality.Name, quality.Formula);
    }

    /// <summary>A kind of scale by its name.</summary>
    public static NamedFormula From(ScaleType type)
    {
        ArgumentNullException.ThrowIfNull(type);
        return new(type.Name, type.Formula);
    }

    /// <summary>A chord's formula by the chord's symbol.</summary>
    public static NamedFormula From(Chord chord)
    {
        ArgumentNullException.ThrowIfNull(chord);
        return new(chord.ToString(), chord.Formula);
    }

    /// <summary>The name with printed signs: a chord or quality as it is printed elsewhere (♭ ♯ ø), other names with ♭ and ♯ before numbers.</summary>
    public string PrintedName =>
        Chord.TryParse(Name, null, out var chord) && chord.Formula == Formula ? chord.ToString("P")
        : Name.Length > 0 && ChordSymbol.For(Formula) == Name ? ChordSymbol.For(Formula, "P")!
        : SignsBeforeNumber().Replace(Name, static signs => signs.Value.Replace('b', '♭').Replace('#', '♯'));

    /// <summary>The name: "G" (or null) plain, "P" printed.</summary>
    internal string Show(string? format) => format is null or "G" ? Name : PrintedName;

    /// <summary>The name and the formula, as in <c>m7b5: 1 b3 b5 b7</c>.</summary>
    public override string ToString() => $"{Name}: {Formula}";

    [GeneratedRegex("[b#]+(?=[0-9])")]
    private static partial Regex SignsBeforeNumber();
}
