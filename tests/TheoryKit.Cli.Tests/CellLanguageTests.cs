using TheoryKit.Cli.Pages;

namespace TheoryKit.Cli;

[Collection("one notebook at a time")]
public sealed class CellLanguageTests : IDisposable
{
    private const string Load = "#r \"nuget:TheoryKit.Interactive, 0.1.0\"";

    private const string Tab = """
        #!tab --name lowTide --changes "Gm9 | C13" --tempo 96
        E|-----------------|-----------------|
        B|---------6-------|-5---------------|
        G|-----7-------7---|-----7---5-------|
        D|-8---------------|-------------8---|
        A|-----------------|-----------------|
        E|-----------------|-----------------|
        """;

    private readonly CommandLine program = new();

    public void Dispose() => program.Dispose();

    [Fact]
    public async Task Tab_and_a_chord_chart_are_on_the_page_and_their_values_in_the_next_cell()
    {
        program.Write(
            "nine-tin-boats.ipynb",
            Load,
            Tab,
            "#!changes --name tune --key \"F major\"\nGm9 | C13\nFmaj9 | Dm7",
            "Console.WriteLine($\"{lowTide.Name}: {lowTide.Path.Notes.Count} notes, {tune.Bars.Count} bars\");"
        );
        Assert.True(await program.Print("--code", "show") == 0, program.Errors);
        var page = program.Page("nine-tin-boats");
        Assert.Contains("Low tide: 8 notes, 4 bars", page, StringComparison.Ordinal);
        Assert.Contains(
            "<code><span class=\"d\">#!tab --name lowTide --changes &quot;Gm9 | C13&quot; --tempo 96\n</span>E|--",
            page,
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData("#!changes\nGm7 | C7\nFmaj7 | Xm7", "  Fmaj7 | Xm7\n          ^")]
    [InlineData("#!changes --key \"F dur\"\nGm7", "  #!changes --key \"F dur\"\n                     ^")]
    [InlineData("#!tab\n<b>no tab</b>", "  <b>no tab</b>\n  ^")]
    public async Task What_cannot_be_read_is_told_with_a_caret_in_a_block_of_equal_characters(string cell, string shown)
    {
        program.Write("copper-weather.ipynb", Load, cell);
        Assert.Equal(1, await program.Print());
        Assert.Contains(shown, program.Errors, StringComparison.Ordinal);
        var page = program.Page("copper-weather");
        var failure = page[page.IndexOf("<div class=\"failure\"", StringComparison.Ordinal)..];
        Assert.Contains("<pre tabindex=\"0\">", failure, StringComparison.Ordinal);
        Assert.Contains(System.Net.WebUtility.HtmlEncode(shown), failure, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Text_of_a_cell_is_data_on_the_page()
    {
        const string Hostile = "</pre></script><script>alert(1)</script><img src=x onerror=alert(1)>";
        program.Write(
            "copper-weather.ipynb",
            Load,
            $"#!tab --title \"{Hostile}\" --tune \"{Hostile}\"\n# {Hostile}\n" + Tab[(Tab.IndexOf('\n') + 1)..],
            $"#!changes --key \"{Hostile}\"\nGm7"
        );
        Assert.Equal(1, await program.Print("--code", "show"));
        var page = program.Page("copper-weather");
        Assert.DoesNotContain("<script>alert", page, StringComparison.Ordinal);
        Assert.DoesNotContain("<img src=x", page, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("var a = 1;", "<span class=\"k\">var</span> a = <span class=\"n\">1</span>;")]
    [InlineData(
        "#!tab --name x\nE|-0-|\n#!csharp\nvar a",
        "<span class=\"d\">#!tab --name x\n</span>E|-0-|\n<span class=\"d\">#!csharp\n</span><span class=\"k\">var</span> a"
    )]
    [InlineData("#!time\nvar a", "<span class=\"d\">#!time\n</span><span class=\"k\">var</span> a")]
    [InlineData("#!changes", "<span class=\"d\">#!changes</span>")]
    [InlineData("#!tab\n<b> for # \"x", "<span class=\"d\">#!tab\n</span>&lt;b&gt; for # &quot;x")]
    public void Only_the_csharp_of_a_cell_is_coloured(string code, string html) =>
        Assert.Equal($"<pre tabindex=\"0\" class=\"code\"><code>{html}</code></pre>", Code.Html(code, "csharp"));
}
