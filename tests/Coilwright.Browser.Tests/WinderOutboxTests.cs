using Coilwright.Browser.Tests.Ground;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Coilwright.Browser.Tests;

/// <summary>What is told at the winder outlives a cut network, a killed server and a lost answer.</summary>
public sealed class WinderOutboxTests(Chromium chromium)
{
    [Fact]
    public async Task Stops_told_while_the_network_is_cut_arrive_in_order_and_once()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        (IPage page, Guid batch) = await BegunAsync(shop);
        await page.Context.SetOfflineAsync(true);
        await page.Keyboard.TypeAsync("3000p");
        await Expect(Told(page)).ToContainTextAsync("paused at 3000");
        await Expect(Told(page)).ToContainTextAsync("on this tablet");
        await page.GetByRole(AriaRole.Button, new() { Name = "Resume (R)" }).ClickAsync();
        await Expect(page.GetByLabel("Counter now")).ToBeFocusedAsync();
        await page.Keyboard.TypeAsync("6100b");
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "Splice" })).ToBeVisibleAsync();

        await page.Context.SetOfflineAsync(false);
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "C-001 broke at 6,100 of 8,000 turns" }))
            .ToBeVisibleAsync(new() { Timeout = 30_000 });
        Assert.Equal(["begun on Winder 2", "paused at 3,000", "resumed", "broke at 6,100"], await HappenedAsync(page, batch));
    }

    [Fact]
    public async Task A_break_told_to_a_killed_server_is_kept_over_a_reload_and_arrives_after_the_restart()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        (IPage page, Guid batch) = await BegunAsync(shop);
        await shop.KillAsync();
        await page.Keyboard.TypeAsync("6100b");
        await Expect(Told(page)).ToContainTextAsync("on this tablet");
        await page.GotoAsync("about:blank");
        await shop.RestartAsync();
        await page.GotoAsync($"/batches/{batch}/wind");
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "C-001 broke at 6,100 of 8,000 turns" }))
            .ToBeVisibleAsync(new() { Timeout = 30_000 });
        Assert.Equal(["begun on Winder 2", "broke at 6,100"], await HappenedAsync(page, batch));
    }

    [Fact]
    public async Task A_stop_whose_answer_is_lost_is_sent_again_and_kept_once()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        (IPage page, Guid batch) = await BegunAsync(shop);
        await page.RouteAsync(
            "**/api/batches/*/events",
            async route =>
            {
                await route.FetchAsync();
                await route.AbortAsync();
            },
            new() { Times = 1 }
        );
        await page.Keyboard.TypeAsync("3000p");
        await Expect(page.GetByRole(AriaRole.Main)).ToContainTextAsync("Paused C-001", new() { Timeout = 30_000 });
        Assert.Equal(["begun on Winder 2", "paused at 3,000"], await HappenedAsync(page, batch));
    }

    [Fact]
    public async Task A_count_that_cannot_be_is_refused_and_comes_back_into_its_field()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        (IPage page, Guid batch) = await BegunAsync(shop);
        await page.Keyboard.TypeAsync("90000p");
        await Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("more turns than the coil gets", new() { IgnoreCase = true });
        await Expect(page.GetByLabel("Counter now")).ToHaveValueAsync("90000");
        await Expect(Told(page)).ToContainTextAsync("not saved");
        Assert.Equal(["begun on Winder 2"], await HappenedAsync(page, batch));
    }

    [Fact]
    public async Task A_refused_stop_leaves_the_buttons_of_a_coil_that_is_being_wound()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        (IPage page, Guid batch) = await BegunAsync(shop);
        await page.GetByLabel("Counter now").FillAsync("abc");
        await page.GetByRole(AriaRole.Button, new() { Name = "Pause (P)" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Alert)).ToBeVisibleAsync();
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "Pause (P)" })).ToBeVisibleAsync();
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "Wire broke (B)" })).ToBeVisibleAsync();
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "Resume (R)" })).ToBeHiddenAsync();
        await page.GetByLabel("Counter now").FillAsync("3000"); // and the right figure is kept by the same buttons
        await page.GetByRole(AriaRole.Button, new() { Name = "Pause (P)" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Main)).ToContainTextAsync("Paused C-001", new() { Timeout = 30_000 });
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "Pause (P)" })).ToBeHiddenAsync();
        Assert.Equal(["begun on Winder 2", "paused at 3,000"], await HappenedAsync(page, batch));
    }

    private static ILocator Told(IPage page) => page.GetByRole(AriaRole.List, new() { Name = "Events from this page" });

    private async Task<(IPage Page, Guid Batch)> BegunAsync(ServedShop shop)
    {
        Guid batch = await shop.BatchAsync(await shop.ReleasedRecipeAsync(), 3);
        IPage page = await chromium.PageAsync(shop.Url);
        await page.GotoAsync($"/batches/{batch}/wind");
        await page.GetByRole(AriaRole.Button, new() { Name = "Begin C-001" }).PressAsync("Enter");
        await Expect(page.GetByRole(AriaRole.Main)).ToContainTextAsync("Winding C-001");
        await Expect(page.GetByLabel("Counter now")).ToBeFocusedAsync();
        return (page, batch);
    }

    /// <summary>What the coil's own page says happened, without time and tag.</summary>
    private static async Task<string[]> HappenedAsync(IPage page, Guid batch)
    {
        await page.GotoAsync($"/batches/{batch}/coils/C-001");
        IReadOnlyList<string> items = await page.GetByRole(AriaRole.Listitem).AllInnerTextsAsync();
        return
        [
            .. items
                .Where(item => item.Contains("C-001 ", StringComparison.Ordinal))
                .Select(item => item[(item.IndexOf("C-001 ", StringComparison.Ordinal) + 6)..].Trim()),
        ];
    }
}
