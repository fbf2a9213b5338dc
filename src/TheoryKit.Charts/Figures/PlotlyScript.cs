using System.IO.Compression;
using System.Text;
using Plotly.NET;

namespace TheoryKit.Charts.Figures;

/// <summary>
/// plotly.js for a page: the copy that Plotly.NET carries, put inline, so that a page with charts needs no network.
/// Which of the two forms a page gets, and where, is for the host to decide; one per page is enough, wherever it stands.
/// </summary>
/// <remarks>
/// Charts wait in a queue on the page's window until the script takes them up, whichever of them comes first. A page's
/// own module loader or its own plotly.js is left as it is.
/// </remarks>
public static class PlotlyScript
{
    internal const string QueueName = "theoryKitCharts";
    internal const string Queue = "window." + QueueName;

    // The three unset parameters keep plotly.js from finding a module loader of the page and going to it.
    private const string Before = "(function(define,exports,module){var before=window.Plotly;\n";
    private const string After = "\nvar own=window.Plotly;if(before)window.Plotly=before;return own;}).call(window)";

    private static readonly Lazy<string> Library = new(ReadLibrary);
    private static readonly Lazy<string> Drawer = new(static () => ReadResource(typeof(PlotlyScript), "charts.js"));
    private static readonly Lazy<string> Plain = new(static () =>
        $"<script>window.theoryKitPlotly=window.theoryKitPlotly||{Before}{Library.Value}{After};</script>\n"
        + $"<script>{Drawer.Value}</script>"
    );
    private static readonly Lazy<string> Packed = new(Pack);

    /// <summary>The script elements as they are, 3.6 MB: for a page that is kept.</summary>
    public static string Html => Plain.Value;

    /// <summary>
    /// The same compressed to 1.5 MB, for a notebook, whose server refuses larger messages; it takes a browser of 2023
    /// or later.
    /// </summary>
    public static string CompressedHtml => Packed.Value;

    /// <summary>Whether a page or fragment holds a chart that waits for the script.</summary>
    public static bool IsNeededBy(string html)
    {
        ArgumentNullException.ThrowIfNull(html);
        return html.Contains($"({Queue}=", StringComparison.Ordinal);
    }

    private static string Pack()
    {
        using var packed = new MemoryStream();
        using (var gzip = new GZipStream(packed, CompressionLevel.Optimal, leaveOpen: true))
        {
            gzip.Write(Encoding.UTF8.GetBytes($"return {Before}{Library.Value}{After};"));
        }

        var base64 = Convert.ToBase64String(packed.GetBuffer(), 0, (int)packed.Length);
        return "<script>window.theoryKitPlotly=window.theoryKitPlotly||(async function(packed){"
            + "var bytes=Uint8Array.from(atob(packed),function(c){return c.charCodeAt(0)});"
            + "var stream=new Blob([bytes]).stream().pipeThrough(new DecompressionStream('gzip'));"
            + "return new Function(await new Response(stream).text())();"
            + $"}})(\"{base64}\");\n{Drawer.Value}</script>";
    }

    private static string ReadLibrary()
    {
        var assembly = typeof(GenericChart).Assembly;
        var name = assembly
            .GetManifestResourceNames()
            .Single(static name =>
                name.Contains("plotly", StringComparison.Ordinal) && name.EndsWith(".js", StringComparison.Ordinal)
            );
        using var reader = new StreamReader(assembly.GetManifestResourceStream(name)!);
        return reader.ReadToEnd().Replace("</script", "<\\/script", StringComparison.OrdinalIgnoreCase);
    }

    private static string ReadResource(Type beside, string name)
    {
        using var reader = new StreamReader(beside.Assembly.GetManifestResourceStream(beside, name)!);
        return reader.ReadToEnd();
    }
}
