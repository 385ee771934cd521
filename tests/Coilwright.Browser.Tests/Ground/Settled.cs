using Microsoft.Playwright;

namespace Coilwright.Browser.Tests.Ground;

/// <summary>Opening a page that may look again by itself.</summary>
internal static class Settled
{
    /// <summary>
    /// Opens a page and waits for it to be done. A page of a search under way looks again by itself, which would break off
    /// the way to the next page and show the test an answer half made.
    /// </summary>
    public static async Task OpenAsync(this IPage page, string address)
    {
        await page.GotoAsync(address, new() { WaitUntil = WaitUntilState.NetworkIdle });
        await Assertions.Expect(page.Locator("meta[http-equiv=refresh]")).ToHaveCountAsync(0, new() { Timeout = 60_000 });
        await Assertions.Expect(page.Locator("[aria-busy=true]")).ToHaveCountAsync(0, new() { Timeout = 60_000 }); // dimmed while it works
    }
}
