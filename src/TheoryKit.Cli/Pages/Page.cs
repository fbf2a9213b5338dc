using System.Net;
using TheoryKit.Drawing.Rendering;

namespace TheoryKit.Cli.Pages;

/// <summary>The frame that all pages share.</summary>
internal static class Page
{
    private static readonly Lazy<string> Style = new(static () =>
    {
        using var reader = new StreamReader(typeof(Page).Assembly.GetManifestResourceStream(typeof(Page), "page.css")!);
        return Look.Css
            + "\n"
            + reader
                .ReadToEnd()
                .Replace("SANS", Look.Sans, StringComparison.Ordinal)
                .Replace("SERIF", Look.Serif, StringComparison.Ordinal);
    });

    /// <summary>A whole page.</summary>
    /// <param name="title">Its title, as plain text.</param>
    /// <param name="kind">The class of the body.</param>
    /// <param name="main">The HTML of its main part.</param>
    /// <param name="foot">The HTML of its last line.</param>
    /// <param name="scripts">Script elements that go last.</param>
    public static string Html(string title, string kind, string main, string foot, string scripts = "") =>
        $"""
            <!DOCTYPE html>
            <html lang="en">
            <head>
            <meta charset="utf-8">
            <meta name="viewport" content="width=device-width, initial-scale=1">
            <meta name="color-scheme" content="light dark">
            <title>{WebUtility.HtmlEncode(title)}</title>
            <link rel="icon" href="data:,">
            <style>
            {Style.Value}</style>
            </head>
            <body class="tk {kind}">
            <main>
            {main}</main>
            <footer>{foot}</footer>
            {scripts}
            </body>
            </html>

            """;
}
