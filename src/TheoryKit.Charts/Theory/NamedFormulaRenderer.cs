using TheoryKit.Drawing.Markup;
using TheoryKit.Drawing.Rendering;

namespace TheoryKit.Charts.Theory;

/// <summary>Shows a formula after its name.</summary>
internal sealed class NamedFormulaRenderer : IRenderer<NamedFormula>
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
