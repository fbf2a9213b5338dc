using System.Globalization;
using System.Net;
using System.Text;
using Newtonsoft.Json;
using Newtonsoft.Json.Linq;
using Plotly.NET;
using TheoryKit.Drawing.Rendering;

namespace TheoryKit.Charts.Figures;

/// <summary>
/// Shows a chart as an element to draw into and a script that asks for it. Nothing is fetched: the page has to carry
/// <see cref="PlotlyScript"/>, before or after the fragment. Until then the element says in words what the chart shows.
/// </summary>
internal sealed class GenericChartRenderer : IRenderer<GenericChart>
{
    /// <summary>Points of one series that the text lists before it says how many there are.</summary>
    private const int ListedPoints = 24;
    private const int DefaultWidth = 720;
    private const int DefaultHeight = 400;

    /// <inheritdoc/>
    public string Html(GenericChart value, RenderContext context)
    {
        ArgumentNullException.ThrowIfNull(value);
        ArgumentNullException.ThrowIfNull(context);
        return Html(value, context, description: null);
    }

    /// <summary>The same with a description made for the chart.</summary>
    internal static string Html(GenericChart value, RenderContext context, string? description)
    {
        var figure = Figure(value);
        var id = context.NextId();
        var words = WebUtility.HtmlEncode(description ?? Describe(figure));
        var size = Size(figure);

        // "<" inside the data could end the script element early.
        var data = figure.ToString(Formatting.None).Replace("<", "\\u003c", StringComparison.Ordinal);
        return $"<div class=\"tk-chart\" id=\"{id}\" role=\"img\" aria-label=\"{words}\" "
            + $"style=\"{size}\">"
            + $"<p style=\"white-space:pre-line\">{words}</p></div>"
            + $"<script>({PlotlyScript.Queue}=window.{PlotlyScript.QueueName}||[]).push([\"{id}\",{data}]);</script>";
    }

    /// <inheritdoc/>
    public string Text(GenericChart value)
    {
        ArgumentNullException.ThrowIfNull(value);
        return Describe(Figure(value));
    }

    private static JObject Figure(GenericChart chart)
    {
        var serializer = JsonSerializer.Create(Globals.JSON_CONFIG);
        return new JObject
        {
            ["data"] = JToken.FromObject(GenericChart.getTraces(chart), serializer),
            ["layout"] = JToken.FromObject(GenericChart.getLayout(chart), serializer),
            ["config"] = JToken.FromObject(GenericChart.getConfig(chart), serializer),
        };
    }

    /// <summary>
    /// Moves the size from the layout to the element, so that a chart is never wider than its page. The width and height
    /// that Plotly.NET gives a chart that asks for none count as none.
    /// </summary>
    private static string Size(JObject figure)
    {
        var width = Pixels(figure, "width");
        var height = Pixels(figure, "height");
        if ((width, height) == (Defaults.DefaultWidth, Defaults.DefaultHeight))
        {
            (width, height) = (DefaultWidth, DefaultHeight);
        }

        if (figure["layout"] is JObject layout)
        {
            layout.Remove("width");
            layout.Remove("height");
            layout["autosize"] = true;
        }

        return $"width:{width ?? DefaultWidth}px;max-width:100%;height:{height ?? DefaultHeight}px";
    }

    private static int? Pixels(JObject figure, string dimension) => (int?)figure.SelectToken($"layout.{dimension}");

    private static string Describe(JObject figure)
    {
        var text = new StringBuilder("Chart");
        if (Title(figure["layout"]?["title"]) is { } title)
        {
            text.Append(": ").Append(title);
        }

        foreach (var axis in ((JObject?)figure["layout"])?.Properties() ?? [])
        {
            if (IsAxis(axis.Name) && Title(axis.Value["title"]) is { } name)
            {
                text.Append('\n').Append(axis.Name[0]).Append(": ").Append(name);
            }
        }

        foreach (var trace in figure["data"] ?? new JArray())
        {
            text.Append('\n').Append((string?)trace["name"] ?? (string?)trace["type"] ?? "series").Append(": ");
            text.Append(Points(trace));
        }

        return text.ToString();
    }

    private static bool IsAxis(string name) => name.Length >= 5 && name[0] is 'x' or 'y' or 'z' && name[1..5] == "axis";

    private static string? Title(JToken? title) =>
        (string?)(title is JObject parts ? parts["text"] : title) is { Length: > 0 } text ? Plain(text) : null;

    /// <summary>Titles may hold line breaks and the few inline elements plotly.js knows.</summary>
    private static string Plain(string markup)
    {
        var text = new StringBuilder();
        var inside = false;
        foreach (var c in markup.Replace("<br>", " ", StringComparison.OrdinalIgnoreCase))
        {
            inside = c == '<' || (inside && c != '>');
            if (!inside && c != '>')
            {
                text.Append(c);
            }
        }

        return text.ToString();
    }

    private static string Points(JToken trace)
    {
        var across = List(trace["x"] ?? trace["labels"] ?? trace["theta"]);
        var up = List(trace["y"] ?? trace["values"] ?? trace["r"]);
        if (trace["z"] is JArray rows && rows.Count > 0)
        {
            var columns = rows.Max(static row => row is JArray cells ? cells.Count : 1);
            return $"{rows.Count} by {columns} values";
        }

        var sideways = (string?)trace["orientation"] == "h";
        var points = (across.Count, up.Count) switch
        {
            (0, _) => up,
            (_, 0) => across,
            _ when sideways => [.. up.Zip(across, static (name, value) => $"{name} {value}")],
            _ => [.. across.Zip(up, static (name, value) => $"{name} {value}")],
        };
        return points.Count > ListedPoints
            ? $"{string.Join(", ", points.Take(ListedPoints))} and {points.Count - ListedPoints} more"
            : string.Join(", ", points);
    }

    private static List<string> List(JToken? values) =>
        values is JArray array
            ?
            [
                .. array.Select(static value =>
                    value is JValue { Value: double number }
                        ? number.ToString("0.####", CultureInfo.InvariantCulture)
                        : value.ToString(Formatting.None).Trim('"')
                ),
            ]
            : [];
}
