using Microsoft.Playwright;
using TheoryKit.Hosts;

namespace TheoryKit.Cli;

[Collection("one notebook at a time")]
/// <summary>Printed pages in a real browser.</summary>
public sealed class PrintedPageTests(Browser browser, PrintedPages pages)
    : IClassFixture<Browser>,
        IClassFixture<PrintedPages>
{
    public static TheoryData<string> Names => [.. PrintedPages.Names];

    public static TheoryData<string> NamesAndIndex => [.. PrintedPages.Names, "index"];

    [HostTheory(HostTools.Browser)]
    [MemberData(nameof(Names))]
    public async Task Pictures_have_size_charts_are_drawn_and_labels_switch(string name)
    {
        await using var page = await browser.Open(pages.File(name));
        await page.DrawnCharts();
        await page.PicturesWithSize();
        var switches = await page.SwitchLabels();
        Assert.Equal(await page.Page.Locator(".tk-labels").CountAsync(), switches);
    }

    [HostTheory(HostTools.Browser)]
    [MemberData(nameof(NamesAndIndex))]
    public async Task The_page_asks_for_nothing_and_says_nothing_on_the_console(string name)
    {
        await using var page = await browser.Open(pages.File(name));
        await page.DrawnCharts();
        Assert.Empty(page.Requests);
        Assert.Empty(page.Said);
    }

    [HostTheory(HostTools.Browser)]
    [MemberData(nameof(NamesAndIndex))]
    public async Task Axe_finds_nothing_on_light_or_dark_pages_with_the_code_open_or_folded(string name)
    {
        foreach (var scheme in new[] { ColorScheme.Light, ColorScheme.Dark })
        {
            await using var page = await browser.Open(pages.File(name), scheme: scheme);
            await page.DrawnCharts();
            await page.AssertAccessible();
            await page.Page.EvaluateAsync(
                "() => document.querySelectorAll('details').forEach(part => part.open = true)"
            );
            await page.AssertAccessible();
        }
    }

    [HostTheory(HostTools.Browser)]
    [MemberData(nameof(NamesAndIndex))]
    public async Task The_page_fits_a_phone_and_a_desk(string name)
    {
        foreach (var width in new[] { 390, 1280 })
        {
            await using var page = await browser.Open(pages.File(name), width);
            await page.DrawnCharts();
            await page.AssertNoSidewaysScrolling();
        }
    }

    [HostFact(HostTools.Browser)]
    public async Task The_scenarios_page_has_pictures_charts_and_switches()
    {
        await using var page = await browser.Open(pages.File("nine-tin-boats"));
        Assert.Equal(2, await page.DrawnCharts());
        Assert.True(await page.PicturesWithSize() >= 3);
        Assert.True(await page.SwitchLabels() >= 2);
    }
}
