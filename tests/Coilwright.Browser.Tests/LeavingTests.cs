using Coilwright.Browser.Tests.Ground;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Coilwright.Browser.Tests;

/// <summary>A page that is long in coming says so on the page that is about to go.</summary>
public sealed class LeavingTests(Chromium chromium)
{
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task What_takes_long_says_that_it_is_working(bool byLink)
    {
        await using HostedShop shop = await HostedShop.StartAsync();
        IPage page = await chromium.PageAsync(shop.Url, 810, 1080);
        await page.GotoAsync("/");
        TaskCompletionSource answers = new();
        // the page that goes tells its note itself: a test cannot look at a page on its way out
        await page.ExposeFunctionAsync("tells", (string note) => answers.TrySetResult());
        await page.EvaluateAsync(
            """
            () => new MutationObserver(() => {
              const note = document.querySelector('.leaving');
              if (note?.checkVisibility() && note.textContent.startsWith('Working')) window.tells(note.textContent);
            }).observe(document.body, { childList: true })
            """
        );
        await page.RouteAsync(byLink ? "**/batches" : "**/room", async route =>
        {
            await answers.Task;
            await route.ContinueAsync();
        });

        if (byLink)
        {
            await page.GetByRole(AriaRole.Link, new() { Name = "Wind", Exact = true }).DispatchEventAsync("click");
        }
        else
        {
            await page.GetByLabel("Room temperature").FillAsync("21");
            await page.GetByRole(AriaRole.Button, new() { Name = "Set room temperature" }).DispatchEventAsync("click");
        }

        await answers.Task.WaitAsync(TimeSpan.FromSeconds(30), TestContext.Current.CancellationToken);
        string next = byLink ? "Batches" : "in force: 21 °C";
        await Expect(page.Locator(byLink ? "h1" : "label[for=room]")).ToContainTextAsync(next);
        await Expect(page.Locator(".leaving")).ToHaveCountAsync(0);
    }
}
