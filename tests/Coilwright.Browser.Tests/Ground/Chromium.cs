using Microsoft.Playwright;

[assembly: AssemblyFixture(typeof(Coilwright.Browser.Tests.Ground.Chromium))]
[assembly: AssemblyFixture(typeof(Coilwright.Browser.Tests.Ground.DemoShop))]

namespace Coilwright.Browser.Tests.Ground;

/// <summary>One headless Chromium for all browser tests: the system's own, never a downloaded one.</summary>
public sealed class Chromium : IAsyncLifetime
{
    private IPlaywright? _playwright;
    private IBrowser? _browser;

    private static string? Path =>
        new[]
        {
            Environment.GetEnvironmentVariable("COILWRIGHT_CHROMIUM"),
            "/usr/bin/chromium-headless-shell",
            "/usr/bin/chromium",
            "/usr/bin/chromium-browser",
        }.FirstOrDefault(path => path is not null && File.Exists(path));

    public async ValueTask InitializeAsync()
    {
        if (Path is null)
        {
            return;
        }

        // the first page after a restart is compiled as it is served: on a busy machine that takes longer than the usual five seconds
        Assertions.SetDefaultExpectTimeout(20_000);
        _playwright = await Playwright.CreateAsync();
        _browser = await _playwright.Chromium.LaunchAsync(
            new BrowserTypeLaunchOptions
            {
                ExecutablePath = Path,
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

    /// <summary>A fresh page of a fresh profile.</summary>
    public async Task<IPage> PageAsync(Uri baseUrl, int width = 1280, int height = 800, bool scripts = true)
    {
        Assert.True(_browser is not null, "No Chromium at /usr/bin/chromium: apt-get install chromium, or set COILWRIGHT_CHROMIUM.");
        IBrowserContext context = await _browser.NewContextAsync(
            new BrowserNewContextOptions
            {
                BaseURL = baseUrl.ToString(),
                ViewportSize = new ViewportSize { Width = width, Height = height },
                JavaScriptEnabled = scripts,
            }
        );
        ClosesItsPagesAttribute.Opened(context);
        context.SetDefaultTimeout(15_000);
        context.SetDefaultNavigationTimeout(60_000); // patience, no claim: a machine with other work beside it is slow to begin a page
        if (scripts)
        {
            await context.AddInitScriptAsync(Settled.CountsQuestions);
        }

        return await context.NewPageAsync();
    }

    public async ValueTask DisposeAsync()
    {
        if (_browser is not null)
        {
            await _browser.DisposeAsync();
        }

        _playwright?.Dispose();
    }
}
