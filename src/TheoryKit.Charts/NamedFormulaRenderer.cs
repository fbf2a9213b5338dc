using TheoryKit.Drawing;

namespace TheoryKit.Charts;

/// <summary>Shows a formula after its name.</summary>
public sealed class NamedFormulaRenderer : IRenderer<NamedFormula>
{
    /// <inheritdoc/>
    public string Html(NamedFormula value, RenderContext context) =>
        new HtmlWriter(128)
            .Open("span")
            .Element("strong", null, value.PrintedName)
            .Text($" {value.Formula.ToString("P")}")
            .Close()
            .ToString();

    /// <inheritdoc/>
    public string Text(NamedFormula value) => value.ToString();
}
