using Microsoft.DotNet.Interactive;
using Microsoft.DotNet.Interactive.Formatting;
using TheoryKit.Drawing.Licks;
using TheoryKit.Drawing.Necks;
using TheoryKit.Drawing.Rendering;
using TheoryKit.Drawing.Zones;

namespace TheoryKit.Interactive;

[Collection("one kernel at a time")]
public sealed class InteractiveExtensionTests
{
    private const string Chart = "Plotly.NET.CSharp.Chart.Line<int, int, string>(x: new[] { 1, 2 }, y: new[] { 3, 4 })";
    private const string Script = "new DecompressionStream";

    [Fact]
    public async Task The_namespaces_of_the_library_are_open()
    {
        using var kernel = await NotebookKernel.Start();
        await kernel.Run("(typeof(NoteName), typeof(Tuning), typeof(RenderContext), typeof(ChartRenderers))");
    }

    [Fact]
    public async Task Every_type_of_the_renderers_has_a_formatter_for_html_and_for_text()
    {
        using var kernel = await NotebookKernel.Start();
        var registered = Formatter
            .RegisteredFormatters(includeDefaults: false)
            .Select(static formatter => (formatter.Type, formatter.MimeType))
            .ToHashSet();
        Assert.NotEmpty(InteractiveExtension.Renderers.Types);
        foreach (var type in InteractiveExtension.Renderers.Types)
        {
            Assert.Contains((type, HtmlFormatter.MimeType), registered);
            Assert.Contains((type, PlainTextFormatter.MimeType), registered);
        }
    }

    [Fact]
    public async Task A_value_shows_what_its_renderer_says()
    {
        using var kernel = await NotebookKernel.Start();
        var neck = new RenderContext();
        var html = (await kernel.Run("Neck.Guitar"))["text/html"];
        Assert.Equal(
            WithoutIds(InteractiveExtension.Renderers.Html(TheoryKit.Tunings.Necks.Neck.Guitar, neck)),
            WithoutIds(html)
        );
        Assert.Equal(
            InteractiveExtension.Renderers.Text(TheoryKit.Tunings.Necks.Neck.Guitar),
            TheoryKit.Tunings.Necks.Neck.Guitar.ToDisplayString(PlainTextFormatter.MimeType)
        );
    }

    [Fact]
    public async Task A_list_of_values_shows_each()
    {
        using var kernel = await NotebookKernel.Start();
        var html = (await kernel.Run("new[] { Neck.Guitar.Draw(), Neck.Guitar.WithCapo(2).Draw() }"))["text/html"];
        Assert.Equal(2, Count(html, "<svg"));
        var text = new List<NeckDrawing> { TheoryKit.Tunings.Necks.Neck.Guitar.Draw() }.ToDisplayString(
            PlainTextFormatter.MimeType
        );
        Assert.Equal(InteractiveExtension.Renderers.Text(TheoryKit.Tunings.Necks.Neck.Guitar.Draw()), text);
    }

    [Fact]
    public async Task A_list_without_end_shows_as_many_as_other_lists_do()
    {
        using var kernel = await NotebookKernel.Start();
        const string Endless =
            "IEnumerable<NeckDrawing> Forever() { while (true) yield return Neck.Guitar.Draw(); }\nForever()";
        var html = (await kernel.Run(Endless))["text/html"];
        Assert.Equal(Formatter.ListExpansionLimit, Count(html, "<svg"));
        Assert.EndsWith("<p>… and more</p>", html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_list_that_the_library_has_a_table_for_is_that_table()
    {
        using var kernel = await NotebookKernel.Start();
        var chords = new List<TheoryKit.Theory.Chords.Chord>
        {
            TheoryKit.Theory.Chords.Chord.Parse("Gm9"),
            TheoryKit.Theory.Chords.Chord.Parse("C13"),
        };
        var html = (await kernel.Run("new[] { Chord.Parse(\"Gm9\"), Chord.Parse(\"C13\") }"))["text/html"];
        Assert.Equal(WithoutIds(InteractiveExtension.Renderers.Html(chords, new RenderContext())), WithoutIds(html));
    }

    [Fact]
    public async Task A_list_with_a_gap_says_so()
    {
        using var kernel = await NotebookKernel.Start();
        Assert.Contains(
            "&lt;null&gt;",
            (await kernel.Run("new[] { Neck.Guitar.Draw(), null }"))["text/html"],
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task Values_inside_other_values_are_shown_too()
    {
        using var kernel = await NotebookKernel.Start();
        var table = (await kernel.Run("new Dictionary<string, Neck> { [\"mine\"] = Neck.Guitar }"))["text/html"];
        Assert.Equal(1, Count(table, "<svg"));
    }

    [Fact]
    public async Task Ids_differ_from_session_to_session()
    {
        string first,
            second;
        using (var kernel = await NotebookKernel.Start())
        {
            first = (await kernel.Run("Neck.Guitar"))["text/html"];
        }

        using (var kernel = await NotebookKernel.Start())
        {
            second = (await kernel.Run("Neck.Guitar"))["text/html"];
        }

        Assert.NotEqual(first, second);
        Assert.Equal(WithoutIds(first), WithoutIds(second));
    }

    [Fact]
    public async Task The_first_chart_brings_the_script_and_the_others_do_not()
    {
        using var kernel = await NotebookKernel.Start();
        Assert.Equal(1, Count((await kernel.Run(Chart))["text/html"], Script));
        Assert.Equal(0, Count((await kernel.Run("// Another cell.\n" + Chart))["text/html"], Script));
    }

    [Fact]
    public async Task The_cell_that_brought_the_script_brings_it_again()
    {
        using var kernel = await NotebookKernel.Start();
        await kernel.Run(Chart);
        Assert.Equal(1, Count((await kernel.Run(Chart))["text/html"], Script));
    }

    [Fact]
    public async Task Two_charts_of_one_cell_need_the_script_once()
    {
        using var kernel = await NotebookKernel.Start();
        var html = (await kernel.Run($"new[] {{ {Chart}, {Chart} }}"))["text/html"];
        Assert.Equal(1, Count(html, Script));
        Assert.Equal(2, Count(html, "class=\"tk-chart\""));
    }

    [Fact]
    public async Task Each_session_brings_the_script()
    {
        for (var session = 0; session < 2; session++)
        {
            using var kernel = await NotebookKernel.Start();
            Assert.Equal(1, Count((await kernel.Run(Chart))["text/html"], Script));
        }
    }

    [Fact]
    public async Task The_other_chart_extension_can_be_loaded_beside_this_one()
    {
        using var kernel = await NotebookKernel.Start();
        IKernelExtension other = new Plotly.NET.Interactive.FormatterKernelExtension();
        await other.OnLoadAsync(kernel.Root);
        Assert.Contains("plotly", (await kernel.Run(Chart))["text/html"], StringComparison.OrdinalIgnoreCase);
        Assert.Equal(1, Count((await kernel.Run("Neck.Guitar"))["text/html"], "<svg"));
    }

    private static int Count(string text, string part) => text.Split(part).Length - 1;

    private static string WithoutIds(string html) =>
        System.Text.RegularExpressions.Regex.Replace(html, @"\btk[0-9a-f]*-\d+", "tk-0");
}
