using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace TheoryKit.Hosts;

/// <summary>A page in the browser, with all that it asked the network for and said on its console.</summary>
public sealed class OpenPage : IAsyncDisposable
{
    private readonly IBrowserContext context;

    private OpenPage(IBrowserContext context, IPage page) => (this.context, Page) = (context, page);

    public IPage Page { get; }

    public List<string> Requests { get; } = [];

    public List<string> Said { get; } = [];

    public static async Task<OpenPage> Of(IBrowserContext context, string file)
    {
        var page = await context.NewPageAsync();
        var open = new OpenPage(context, page);
        var address = new Uri(Path.GetFullPath(file)).AbsoluteUri;
        page.Request += (_, request) =>
        {
            if (request.Url != address && !request.Url.StartsWith("data:", StringComparison.Ordinal))
            {
                open.Requests.Add(request.Url);
            }
        };
        page.Console += (_, message) => open.Said.Add(message.Text);
        page.PageError += (_, error) => open.Said.Add(error);
        await page.GotoAsync(address, new() { WaitUntil = WaitUntilState.Load });
        return open;
    }

    /// <summary>Waits until every chart in the page is drawn.</summary>
    public async Task<int> DrawnCharts()
    {
        await Page.WaitForFunctionAsync(
            "() => [...document.querySelectorAll('.tk-chart')].every(chart => chart.querySelector('svg.main-svg'))"
        );
        return await Page.Locator(".tk-chart").CountAsync();
    }

    /// <summary>How many pictures the page has; each has to have a size.</summary>
    public async Task<int> PicturesWithSize()
    {
        const string Script = """
            () => [...document.querySelectorAll('svg, img')]
                .filter(picture => !picture.closest('.tk-chart svg *, symbol, defs, .modebar'))
                .map(picture => ({ box: picture.getBoundingClientRect(), html: picture.outerHTML.slice(0, 200) }))
                .map(({ box, html }) => box.width > 0 && box.height > 0 ? '' : html)
            """;
        var pictures = await Page.EvaluateAsync<string[]>(Script);
        Assert.All(pictures, static withoutSize => Assert.Empty(withoutSize));
        return pictures.Length;
    }

    /// <summary>
    /// Chooses every radio button of every group in turn; each choice has to change which words of the pictures beside
    /// it are seen.
    /// </summary>
    /// <returns>The number of groups.</returns>
    public async Task<int> SwitchLabels()
    {
        var groups = await Page.EvaluateAsync<string[]>(
            "() => [...new Set([...document.querySelectorAll('input[type=radio]')].map(radio => radio.name))]"
        );
        foreach (var group in groups)
        {
            var radios = await Page.Locator($"input[type=radio][name='{group}']").AllAsync();
            var seen = new List<string>();
            foreach (var radio in radios)
            {
                await radio.CheckAsync(new() { Force = true });
                seen.Add(await radio.EvaluateAsync<string>(VisibleWords));
            }

            Assert.True(
                seen.Count == seen.Distinct().Count(),
                $"Two choices of {group} look alike: {string.Join(" / ", seen)}"
            );
        }

        return groups.Length;
    }

    /// <summary>The page may not be wider than its window.</summary>
    public async Task AssertNoSidewaysScrolling()
    {
        var (inner, whole) = (
            await Page.EvaluateAsync<int>("() => innerWidth"),
            await Page.EvaluateAsync<int>("() => document.documentElement.scrollWidth")
        );
        Assert.True(whole <= inner, $"The page is {whole} pixels wide in a window of {inner}.");
    }

    /// <summary>axe may find nothing to object to.</summary>
    public async Task AssertAccessible()
    {
        var result = await Page.RunAxe();
        var found = result.Violations.Select(static violation =>
            $"{violation.Id}: {violation.Help}\n  "
            + string.Join("\n  ", violation.Nodes.Take(5).Select(static node => node.Html))
        );
        Assert.True(result.Violations.Length == 0, string.Join('\n', found));
    }

    public async ValueTask DisposeAsync() => await context.DisposeAsync();

    private const string VisibleWords = """
        radio => {
            let home = radio.parentElement;
            while (home && !home.querySelector('svg')) home = home.parentElement;
            return [...home.querySelectorAll('svg text')]
                .filter(text => { const s = getComputedStyle(text); return s.visibility !== 'hidden' && text.getClientRects().length > 0 && s.opacity !== '0'; })
                .map(text => text.textContent).join(' ');
        }
        """;
}
