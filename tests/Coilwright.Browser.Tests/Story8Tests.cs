using Coilwright.Browser.Tests.Ground;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Coilwright.Browser.Tests;

/// <summary>Will it fit: answered while the maker types.</summary>
public sealed class Story8Tests(Chromium chromium)
{
    [Fact]
    public async Task Story_8_fill_and_the_shops_own_limit_are_answered_while_typing()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        Guid recipe = await shop.ReleasedRecipeAsync();
        IPage page = await chromium.PageAsync(shop.Url);
        await page.GotoAsync($"/recipes/{recipe}");
        ILocator forecast = page.GetByRole(AriaRole.Region, new() { Name = "Five answers" });
        await page.GetByText("Bobbin", new() { Exact = true }).ClickAsync();
        await page.GetByLabel("Our limit of fill").FillAsync("0.74");
        await Expect(forecast.GetByText("0.67").First).ToBeVisibleAsync();
        await Expect(page.GetByText("your own limit")).ToHaveCountAsync(0);
        await page.GetByText("Wire and turns", new() { Exact = true }).ClickAsync();
        await page.GetByLabel("Turns", new() { Exact = true }).FillAsync("9400");
        await Expect(page.GetByText("fill 0.79 is over your own limit of 0.74 for this bobbin")).ToBeVisibleAsync();
    }
}
