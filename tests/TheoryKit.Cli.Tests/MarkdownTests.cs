using TheoryKit.Cli.Notebooks;
using TheoryKit.Cli.Pages;

namespace TheoryKit.Cli;

public sealed class MarkdownTests
{
    [Fact]
    public void Html_in_the_text_is_shown_as_written()
    {
        var html = Html(
            "<script>alert(1)</script>\n\n# Copper <b>Weather</b>\n\na <img src=x onerror=\"alert(1)\"> b\n\n"
                + "<svg onload=alert(1)>\n\n<iframe src=\"https://example.org\"></iframe>"
        );
        foreach (var tag in new[] { "<script", "<b>", "<img", "<svg", "<iframe" })
        {
            Assert.DoesNotContain(tag, html, StringComparison.OrdinalIgnoreCase);
        }

        Assert.Contains("&lt;script&gt;alert(1)&lt;/script&gt;", html, StringComparison.Ordinal);
        Assert.Contains("a &lt;img src=x onerror=&quot;alert(1)&quot;&gt; b", html, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("[bars](javascript:alert(1))")]
    [InlineData("[bars](JavaScript:alert(1) \"title\")")]
    [InlineData("[bars](&#106;avascript:alert(1))")]
    [InlineData("[bars](java&#9;script:alert(1))")]
    [InlineData("[bars](<&#1; javascript:alert(1)>)")]
    [InlineData("[bars](vbscript:x)")]
    [InlineData("[bars](data:text/html;base64,AAAA)")]
    [InlineData("[bars](file:///etc/hostname)")]
    [InlineData("[bars][a]\n\n[a]: javascript:alert(1)")]
    [InlineData("![bars](javascript:alert(1))")]
    [InlineData("[*bars*](javascript:alert(1))")]
    [InlineData("bars <javascript:alert(1)>")]
    [InlineData("bars ![b](data:text/html,x)")]
    public void A_link_that_may_do_harm_leaves_its_words(string text)
    {
        var html = Html(text);
        Assert.DoesNotContain("<a ", html, StringComparison.Ordinal);
        Assert.DoesNotContain("<img", html, StringComparison.Ordinal);
        Assert.Contains("bars", html, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("[bars](https://example.org/a:b)", "https://example.org/a:b")]
    [InlineData("[bars](http://example.org)", "http://example.org")]
    [InlineData("[bars](mailto:ada@example.org)", "mailto:ada@example.org")]
    [InlineData("[bars](#kestrel-stairs)", "#kestrel-stairs")]
    [InlineData("[bars](02-zones.html#a:b)", "02-zones.html#a:b")]
    [InlineData("[bars](../a/b.html?c=d:e)", "../a/b.html?c=d:e")]
    [InlineData("<https://example.org>", "https://example.org")]
    [InlineData("<ada@example.org>", "mailto:ada@example.org")]
    [InlineData("https://example.org/bars", "https://example.org/bars")]
    public void Other_links_are_kept(string text, string url) =>
        Assert.Contains($"<a href=\"{url}\"", Html(text), StringComparison.Ordinal);

    [Theory]
    [InlineData(">", 5_000)]
    [InlineData("- ", 20_000)]
    [InlineData("[", 20_000)]
    [InlineData("*", 99_000)]
    [InlineData("*a ", 7_000)]
    [InlineData("`", 99_001)]
    [InlineData("![](", 4_000)]
    [InlineData("|a", 40_000)]
    [InlineData("[^1] ", 2_000)]
    [InlineData("<", 99_000)]
    public void Text_that_is_nested_without_end_is_shown_all_the_same(string part, int times)
    {
        var text = string.Concat(Enumerable.Repeat(part, times));
        Assert.NotEmpty(Html("# Copper Weather\n\n" + text));
        Assert.Contains("<h1", Html("# Copper Weather\n\n> bars"), StringComparison.Ordinal);
        _ = MarkdownText.Title(text);
        _ = MarkdownText.FirstParagraph(text);
    }

    [Fact]
    public void Whatever_is_written_no_element_or_link_comes_from_the_text()
    {
        string[] parts =
        [
            "<",
            ">",
            "script",
            "a href=",
            "javascript:",
            "\"",
            "[",
            "]",
            "(",
            ")",
            "!",
            " ",
            "\n\n",
            "on",
            "error=",
            "&#58;",
            "x",
            "`",
            "*",
            "|",
            "://",
        ];
        Gen.Int[0, parts.Length - 1]
            .Array[0, 30]
            .Sample(picks =>
            {
                var html = Html(string.Concat(picks.Select(i => parts[i])));
                Assert.DoesNotContain("<script", html, StringComparison.OrdinalIgnoreCase);
                Assert.DoesNotContain("href=\"javascript", html, StringComparison.OrdinalIgnoreCase);
                Assert.DoesNotContain("src=\"javascript", html, StringComparison.OrdinalIgnoreCase);
            });
    }

    private static string Html(string text) =>
        Markdown.Html(text, new("", new Dictionary<string, string>()), new HashSet<string>(StringComparer.Ordinal));
}
