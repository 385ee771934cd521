using Coilwright.Browser.Tests.Ground;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Coilwright.Browser.Tests;

/// <summary>Whoever has nothing yet looks around in the demo shop, without a terminal.</summary>
public sealed class DemoPageTests(Chromium chromium)
{
    [Fact]
    public async Task From_an_empty_shop_into_the_demo_shop_and_back()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        IPage page = await chromium.PageAsync(shop.Url, 810, 1080);
        await page.GotoAsync("/");
        await page.SendAsync("Look around");
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("The demo shop");
        ILocator open = page.GetByRole(AriaRole.Link, new() { Name = "Open the demo shop" });
        await Expect(open).ToBeVisibleAsync(new() { Timeout = 240_000 });
        await open.ClickAsync();

        await Expect(page.GetByRole(AriaRole.Main)).ToContainTextAsync("Lantern Quay workshop");
        Assert.NotEqual(shop.Url.Port, new Uri(page.Url).Port);
        await page.GetByRole(AriaRole.Link, new() { Name = "Wind", Exact = true }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Main)).ToContainTextAsync("H-12");

        await page.GotoAsync(shop.Url.ToString());
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "An empty shop: three ways in" })).ToBeVisibleAsync();
        await page.GetByLabel("Room temperature").FillAsync("21");
        await page.SendAsync("Set room temperature");
        await page.GetByRole(AriaRole.Link, new() { Name = "Wind", Exact = true }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Link, new() { Name = "Room 21 °C, just now" })).ToBeVisibleAsync(); // in the place's line
    }
}
