using Newtonsoft.Json.Linq;
using Plotly.NET;
using TheoryKit.Charts.Figures;

namespace TheoryKit.Charts.Tests;

/// <summary>Charts as plotly reads them.</summary>
internal static class Figures
{
    public static JObject Of(StudyChart chart) => JObject.Parse(GenericChart.toFigureJson(chart.ToPlotly()));

    /// <summary>The texts of all traces.</summary>
    public static IReadOnlyList<string> Texts(StudyChart chart) =>
        [
            .. Of(chart)["data"]!
                .Where(static trace => trace["text"] is JArray)
                .SelectMany(static trace => trace["text"]!)
                .Select(static text => (string)text!),
        ];
}
