using Microsoft.Playwright;

namespace TheoryKit.Hosts;

/// <summary>The machine's Chromium; nothing is downloaded for it.</summary>
public sealed class Browser : IAsyncLifetime
{
    private IPlaywright? playwright;
    private IBrowser? chromium;

    public async Task InitializeAsync()
    {
        if (HostTools.Chromium is null)
        {
            return;
        }

        playwright = await Playwright.CreateAsync();
        chromium = await playwright.Chromium.LaunchAsync(
            new()
            {
                ExecutablePath = HostTools.Chromium,
                Args =
                [
                    "--no-sandbox",
                    "--disable-gpu",
                    "--disable-quic",
                    "--no-first-run",
                    "--disable-background-networking",
                    "--disable-component-update",
                    "--disable-sync",
                ],
            }
        );
    }

    public async Task DisposeAsync()
    {
        if (chromium is not null)
        {
            await chromium.DisposeAsync();
        }

        playwright?.Dispose();
    }

    /// <summary>Opens a page of the disk.</summary>
    public async Task<OpenPage> Open(string file, int width = 1280, ColorScheme scheme = ColorScheme.Light)
    {
        Assert.True(chromium is not null, "There is no Chromium on this machine.");
        var context = await chromium!.NewContextAsync(
            new()
            {
                ViewportSize = new() { Width = width, Height = 900 },
                ColorScheme = scheme,
            }
        );
        return await OpenPage.Of(context, file);
    }
}
