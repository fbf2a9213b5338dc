using System.Text.Json;
using TheoryKit.Hosts;

namespace TheoryKit.Interactive;

/// <summary>The packages in a real Jupyter, and what comes of it in a real browser.</summary>
public sealed class JupyterTests(Jupyter jupyter, Browser browser) : IClassFixture<Jupyter>, IClassFixture<Browser>
{
    private static string OwnNotebook => Path.Combine(AppContext.BaseDirectory, "Notebooks", "nine-tin-boats.ipynb");

    public static TheoryData<string> Notebooks =>
        [.. Repository.Notebooks.Append(OwnNotebook).Select(static file => Path.GetFileNameWithoutExtension(file))];

    [HostTheory(HostTools.Jupyter, HostTools.Kernel, HostTools.Browser)]
    [MemberData(nameof(Notebooks))]
    public async Task A_notebook_runs_and_its_pictures_and_charts_are_seen(string name)
    {
        if (name == Path.GetFileNameWithoutExtension(OwnNotebook))
        {
            jupyter.Add(OwnNotebook);
        }

        var run = await jupyter.Execute(name);
        var outputs = Outputs(run);
        Assert.DoesNotContain(outputs, static output => output.GetProperty("output_type").GetString() == "error");
        var html = outputs.Select(static output => Data(output, "text/html")).OfType<string>().ToList();
        var pictures = html.Sum(static text => Count(text, "<svg"));
        var charts = html.Sum(static text => Count(text, "class=\"tk-chart\""));
        Assert.True(pictures > 0, "No picture among the outputs.");

        // A notebook that asks for charts has them, and the script that draws them once; another carries none of it.
        var asksForCharts = Sources(run).Any(static code => code.Contains("Chart", StringComparison.Ordinal));
        Assert.Equal(asksForCharts, charts > 0);
        Assert.Equal(asksForCharts ? 1 : 0, html.Sum(static text => Count(text, "new DecompressionStream")));

        // Every value with a picture says the same in words.
        Assert.All(
            outputs.Where(static output =>
                Data(output, "text/html") is { } text && text.Contains("<figure", StringComparison.Ordinal)
            ),
            static output => Assert.False(string.IsNullOrWhiteSpace(Data(output, "text/plain")))
        );

        await using var page = await browser.Open(await jupyter.ToHtml(run));
        Assert.Equal(charts, await page.DrawnCharts());
        Assert.True(await page.PicturesWithSize() >= pictures);
        Assert.True(await page.SwitchLabels() > 0, "No neck whose labels can be switched.");
    }

    [HostTheory(HostTools.Jupyter, HostTools.Kernel)]
    [InlineData(
        "#!tab --tempo fast\nE|-0-|",
        "--tempo in line 1: expected beats a minute",
        "  #!tab --tempo fast\n                ^^^^"
    )]
    [InlineData("#!changes\nGm9 | Xm", "in line 2, at character 7", "  Gm9 | Xm\n        ^")]
    public async Task Cells_of_tab_and_of_chords_leave_their_values_and_show_what_is_wrong(
        string broken,
        string message,
        string caret
    )
    {
        const string Tab = """
            #!tab --name lowTide --changes "Gm9 | C13" --tempo 96
            E|-----------------|-----------------|
            B|---------6-------|-5---------------|
            G|-----7-------7---|-----7---5-------|
            D|-8---------------|-------------8---|
            A|-----------------|-----------------|
            E|-----------------|-----------------|
            """;
        jupyter.Write(
            "cells",
            "#r \"nuget:TheoryKit.Interactive, 0.1.0\"",
            Tab,
            "#!changes --name tune --key \"F major\"\nGm9 | C13\nFmaj9 | Dm7",
            "Console.Write($\"{lowTide.Name}: {lowTide.Path.Notes.Count} notes, {tune.Bars.Count} bars\");",
            broken
        );
        var outputs = Outputs(await jupyter.Execute("cells"));
        Assert.Contains(
            outputs,
            static output =>
                output.TryGetProperty("text", out var text)
                && text.ToString().Contains("Low tide: 8 notes, 4 bars", StringComparison.Ordinal)
        );
        Assert.Contains(
            outputs,
            static output => Data(output, "text/html")?.Contains("<li", StringComparison.Ordinal) == true
        );
        var error = outputs.Single(static output => output.GetProperty("output_type").GetString() == "error");
        var told =
            $"{error.GetProperty("evalue")}\n{string.Join('\n', error.GetProperty("traceback").EnumerateArray())}";
        Assert.Contains(message, told, StringComparison.Ordinal);
        Assert.Contains(caret, told, StringComparison.Ordinal);
    }

    private static List<JsonElement> Outputs(string notebook) =>
        [.. CodeCells(notebook).SelectMany(static cell => cell.GetProperty("outputs").EnumerateArray())];

    private static IEnumerable<string> Sources(string notebook) =>
        CodeCells(notebook)
            .Select(static cell =>
                string.Concat(cell.GetProperty("source").EnumerateArray().Select(static line => line.GetString()))
            );

    private static IEnumerable<JsonElement> CodeCells(string notebook) =>
        JsonDocument
            .Parse(File.ReadAllText(notebook))
            .RootElement.GetProperty("cells")
            .EnumerateArray()
            .Where(static cell => cell.GetProperty("cell_type").GetString() == "code");

    private static string? Data(JsonElement output, string type) =>
        output.TryGetProperty("data", out var data) && data.TryGetProperty(type, out var text)
            ? text.ValueKind == JsonValueKind.Array
                ? string.Concat(text.EnumerateArray().Select(static line => line.GetString()))
                : text.GetString()
            : null;

    private static int Count(string text, string part) => text.Split(part).Length - 1;
}
