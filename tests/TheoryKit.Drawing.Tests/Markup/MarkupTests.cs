using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using TheoryKit.Drawing.Markup;
using TheoryKit.Drawing.Rendering;
using TheoryKit.Drawing.Sheets;

namespace TheoryKit.Drawing.Tests.Markup;

public partial class MarkupTests
{
    [Theory]
    [InlineData("<script>alert(1)</script>")]
    [InlineData("\"><img src=x onerror='alert(1)'>")]
    [InlineData("Tom & Jerry's \"best\" ]]> --> &amp; &#60;")]
    public void Any_text_stays_text(string text)
    {
        var svg = new SvgWriter()
            .Picture(new RenderContext(), 10, 10, text, text)
            .Open("g")
            .Attribute("data-text", text)
            .Text(text)
            .Close()
            .Close()
            .ToString();
        Assert.DoesNotContain("<script", svg, StringComparison.Ordinal);
        Assert.DoesNotContain("<img", svg, StringComparison.Ordinal);
        var root = XDocument.Parse(svg).Root!;
        XNamespace ns = "http://www.w3.org/2000/svg";
        Assert.Equal(text, root.Element(ns + "title")!.Value);
        Assert.Equal(text, root.Element(ns + "desc")!.Value);
        Assert.Equal(text, root.Element(ns + "g")!.Value);
        Assert.Equal(text, root.Element(ns + "g")!.Attribute("data-text")!.Value);
    }

    [Fact]
    public void Random_texts_and_attributes_come_back_or_as_replacement_signs() =>
        Gen
            .Char.Array[0, 20]
            .Select(static letters => new string(letters))
            .Sample(static text =>
            {
                var element = XElement.Parse(
                    new SvgWriter().Open("a").Attribute("b", text).Text(text).Close().ToString(),
                    LoadOptions.PreserveWhitespace
                );
                var kept = Writable(text);
                return element.Value == kept && element.Attribute("b")!.Value == kept;
            });

    [Fact]
    public void Numbers_have_at_most_two_decimals_and_are_the_nearest() =>
        Gen.Double[-1e6, 1e6]
            .Sample(static number =>
            {
                var written = Written(number);
                Assert.Matches(ANumber(), written);
                Assert.Equal(number, double.Parse(written, CultureInfo.InvariantCulture), 0.0050001);
            });

    [Theory]
    [InlineData(0, "0")]
    [InlineData(-0.001, "0")]
    [InlineData(-0.5, "-0.5")]
    [InlineData(12.3456, "12.35")]
    [InlineData(12.04, "12.04")]
    [InlineData(100, "100")]
    public void A_number_is_written(double number, string expected) => Assert.Equal(expected, Written(number));

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void A_number_that_is_none_is_refused(double number) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Written(number));

    [Fact]
    public void What_is_left_open_is_not_given_out() =>
        Assert.Throws<InvalidOperationException>(static () => new HtmlWriter().Open("p").ToString());

    [Fact]
    public void An_attribute_after_content_is_refused() =>
        Assert.Throws<InvalidOperationException>(static () =>
            new HtmlWriter().Open("p").Text("x").Attribute("id", "y")
        );

    [Fact]
    public void Html_writes_void_elements_and_empty_ones_as_html_does() =>
        Assert.Equal(
            "<p><br><input checked=\"\"><span></span></p>",
            new HtmlWriter()
                .Open("p")
                .Open("br")
                .Close()
                .Open("input")
                .Flag("checked")
                .Flag("disabled", false)
                .Close()
                .Open("span")
                .Close()
                .Close()
                .ToString()
        );

    private static string Written(double number) =>
        XElement.Parse(new SvgWriter().Open("a").Attribute("b", number).Close().ToString()).Attribute("b")!.Value;

    // XML 1.0, production 2 (Char), sign by sign.
    private static string Writable(string text) =>
        string.Concat(
            text.EnumerateRunes()
                .Select(static rune =>
                    rune.Value is 0x9 or 0xA or 0xD or (>= 0x20 and <= 0xFFFD) or >= 0x10000
                        ? rune.ToString()
                        : "\uFFFD"
                )
        );

    [GeneratedRegex(@"^-?\d+(\.\d{1,2})?$")]
    private static partial Regex ANumber();
}
