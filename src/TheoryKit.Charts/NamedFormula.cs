using TheoryKit.Theory;

namespace TheoryKit.Charts;

/// <summary>A formula and the name it goes by in a chart. Equal when both agree.</summary>
/// <param name="Name">The name: a chord symbol's quality, a scale's name, any words.</param>
/// <param name="Formula">The formula.</param>
public readonly record struct NamedFormula(string Name, Formula Formula)
{
    /// <summary>A formula that goes by its own degrees.</summary>
    public static implicit operator NamedFormula(Formula formula) => FromFormula(formula);

    /// <summary>A name and a formula.</summary>
    public static implicit operator NamedFormula((string Name, Formula Formula) pair) => new(pair.Name, pair.Formula);

    /// <summary>A formula that goes by its own degrees.</summary>
    public static NamedFormula FromFormula(Formula formula) => new(formula.ToString(), formula);

    /// <summary>The name and the formula, as in <c>m7b5: 1 b3 b5 b7</c>.</summary>
    public override string ToString() => $"{Name}: {Formula}";
}
