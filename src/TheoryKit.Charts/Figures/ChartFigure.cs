using System.Collections;
using Plotly.NET;
using Plotly.NET.LayoutObjects;
using TheoryKit.Drawing.Rendering;

namespace TheoryKit.Charts.Figures;

/// <summary>
/// Puts a chart together from traces and axes in plotly's own attribute names, in the library's look.
/// </summary>
internal sealed class ChartFigure(string title, int height, Palette palette)
{
    private const int TitleBand = 40;
    private const int LegendBand = 20;
    private const int LegendWidth = 520;
    private const int LegendMark = 45;
    private const int LegendLetter = 7;
    private readonly List<Trace> traces = [];
    private readonly Layout layout = new();
    private int legendRows;

    /// <summary>Adds a trace: its type in plotly and its attributes.</summary>
    public ChartFigure Add(string type, params IEnumerable<(string Name, object Value)> attributes)
    {
        var trace = new Trace(type);
        foreach (var (name, value) in attributes)
        {
            trace.SetProperty(name, Settled(value));
        }

        traces.Add(trace);
        return this;
    }

    /// <summary>Sets an axis, "xaxis" or "yaxis".</summary>
    public ChartFigure Axis(string axis, string axisTitle, params IEnumerable<(string Name, object Value)> attributes)
    {
        var line = new LinearAxis();
        line.SetProperty("title", new { text = axisTitle, standoff = 10 });
        line.SetProperty("automargin", true);
        line.SetProperty("fixedrange", true);
        line.SetProperty("zeroline", false);
        line.SetProperty("gridcolor", palette[Look.Inlay]);
        line.SetProperty("linecolor", palette[Look.Line]);
        foreach (var (name, value) in attributes)
        {
            line.SetProperty(name, Settled(value));
        }

        layout.SetProperty(axis, line);
        return this;
    }

    /// <summary>Sets an attribute of the layout.</summary>
    public ChartFigure With(string name, object value)
    {
        layout.SetProperty(name, Settled(value));
        return this;
    }

    /// <summary>Puts a legend of the named traces under the title.</summary>
    /// <param name="isReadOnly">Whether a click leaves all traces in place.</param>
    /// <param name="names">The names, where they may be too long for one row.</param>
    public ChartFigure WithLegend(bool isReadOnly, IReadOnlyCollection<string>? names = null)
    {
        legendRows = names is null ? 1 : Rows(names);
        object click = isReadOnly ? false : "toggle";
        return With("showlegend", true)
            .With(
                "legend",
                new
                {
                    orientation = "h",
                    x = 0.5,
                    xanchor = "center",
                    y = 1,
                    yanchor = "bottom",
                    itemclick = click,
                    itemdoubleclick = false,
                }
            );
    }

    /// <summary>Plotly breaks a legend that is too wide into columns as wide as the longest name.</summary>
    private static int Rows(IReadOnlyCollection<string> names)
    {
        var widths = names.Select(static name => LegendMark + (LegendLetter * name.Length)).ToList();
        if (widths.Sum() <= LegendWidth)
        {
            return 1;
        }

        var columns = Math.Max(1, LegendWidth / widths.Max());
        return (names.Count + columns - 1) / columns;
    }

    public GenericChart ToPlotly()
    {
        layout.SetProperty(
            "font",
            new
            {
                color = palette[Look.Ink],
                family = Look.Sans,
                size = 12,
            }
        );
        layout.SetProperty("paper_bgcolor", palette[Look.Paper]);
        layout.SetProperty("plot_bgcolor", palette[Look.Paper]);
        layout.SetProperty(
            "title",
            new
            {
                text = title,
                x = 0.5,
                y = 1,
                yanchor = "top",
                pad = new { t = 14 },
                font = new { size = 16 },
            }
        );
        var top = TitleBand + (legendRows * LegendBand);
        layout.SetProperty("height", height + top);
        layout.SetProperty(
            "margin",
            new
            {
                t = top,
                r = 24,
                b = 48,
                l = 64,
            }
        );
        var config = new Config();
        config.SetProperty("displaylogo", false);
        config.SetProperty("responsive", true);
        config.SetProperty("displayModeBar", false);
        return GenericChart.setConfig(
            config,
            GenericChart.setLayout(layout, GenericChart.ofTraceObjects<IEnumerable<Trace>>(useDefaults: false, traces))
        );
    }

    /// <summary>Sequences are gone through once, here, not each time the chart is written.</summary>
    private static object Settled(object value) =>
        value is IEnumerable sequence and not string ? sequence.Cast<object>().Select(Settled).ToArray() : value;
}
