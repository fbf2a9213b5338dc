using TheoryKit.Charts.Figures;
using TheoryKit.Charts.Theory;
using TheoryKit.Drawing.Rendering;

namespace TheoryKit.Charts;

/// <summary>The renderers of this package.</summary>
public static class ChartRenderers
{
    /// <summary>Every renderer of this package.</summary>
    public static RendererSet All { get; } =
        RendererSet
            .Empty.Add(new GenericChartRenderer())
            .Add(new StudyChartRenderer())
            .Add(new ChartTableRenderer())
            .Add(new NamedFormulaRenderer());
}
