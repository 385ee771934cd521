using Coilwright.Browser.Tests.Ground;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Coilwright.Browser.Tests;

/// <summary>
/// What is entered of pieces outlives a killed server, a reload and a lost answer; it arrives in order and once, with the tablet's time.
/// </summary>
public sealed class PieceOutboxTests(Chromium chromium)
{
    [Fact]
    public async Task A_step_and_a_test_entered_while_the_server_is_away_arrive_later_in_order_and_once()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        IReadOnlyList<string> serials = await shop.PiecesAsync(2);
        IPage clocks = await chromium.PageAsync(shop.Url);
        await clocks.Context.Clock.InstallAsync();
        IPage test = await clocks.Context.NewPageAsync();
        await clocks.GotoAsync("/clocks?choose=yes");
        await test.GotoAsync($"/test?piece={serials[0]}");
        await shop.KillAsync();

        await clocks.GetByLabel("Select " + serials[0]).CheckAsync();
        await clocks.GetByLabel("Select " + serials[1]).CheckAsync();
        await clocks.GetByLabel("Step").SelectOptionAsync("magnets");
        await clocks.GetByRole(AriaRole.Button, new() { Name = "Begin or do the step" }).ClickAsync();
        await Expect(Entries(clocks)).ToContainTextAsync($"magnets: {serials[0]}, {serials[1]}");
        await Expect(Entries(clocks)).ToContainTextAsync("on this tablet");
        await JudgeAsync(test, "7.80 k");
        await Expect(Entries(test)).ToContainTextAsync($"{serials[0]}: 7.80 k");
        await test.GetByLabel("Serial, scanned or typed").FillAsync(serials[1]); // its own page cannot be had now
        await test.GetByRole(AriaRole.Button, new() { Name = "Test it" }).ClickAsync();
        await Expect(test.GetByRole(AriaRole.Heading, new() { Name = "Final test of " + serials[1] })).ToBeVisibleAsync();
        await JudgeAsync(test, "open");

        await clocks.GotoAsync("about:blank");
        await test.GotoAsync("about:blank");
        await clocks.Context.Clock.FastForwardAsync("25:00");
        await shop.RestartAsync();
        await clocks.GotoAsync("/"); // any page sends what waits
        await Expect(Entries(clocks).GetByText("saved")).ToHaveCountAsync(3, new() { Timeout = 60_000 });
        await clocks.ReloadAsync();
        await Expect(Entries(clocks)).ToHaveCountAsync(0); // nothing waits any more

        await clocks.GotoAsync($"/pieces/{serials[0]}");
        ILocator life = clocks.GetByRole(AriaRole.List, new() { Name = "History" }).GetByRole(AriaRole.Listitem);
        await Expect(life.Filter(new() { HasText = "magnets begun (made " })).ToHaveCountAsync(1);
        await Expect(life.Filter(new() { HasText = "final test: pass" })).ToHaveCountAsync(1);
        await Expect(life.Filter(new() { HasText = "final test: pass" })).ToContainTextAsync("by the tablet's clock, sent 25 min later");
        await clocks.GotoAsync($"/pieces/{serials[1]}");
        await Expect(life.Filter(new() { HasText = "final test: fail: open" })).ToHaveCountAsync(1);
    }

    [Fact]
    public async Task A_test_whose_answer_is_lost_is_sent_again_and_kept_once_and_a_refused_one_comes_back()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        string serial = (await shop.PiecesAsync(1))[0];
        IPage page = await chromium.PageAsync(shop.Url);
        await page.GotoAsync($"/test?piece={serial}");
        await JudgeAsync(page, "7.80 k");
        await Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("magnets comes before final test", new() { IgnoreCase = true });
        await Expect(page.GetByLabel("Resistance", new() { Exact = true })).ToHaveValueAsync("7.80 k");
        await Expect(Entries(page)).ToContainTextAsync("not saved");
        await page.ReloadAsync();
        await Expect(page.GetByLabel("Resistance", new() { Exact = true })).ToHaveValueAsync("7.80 k"); // refused, and not lost

        await page.GotoAsync("/clocks?choose=yes");
        await page.GetByLabel("Select " + serial).CheckAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Begin or do the step" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Row, new() { Name = serial })).ToContainTextAsync("may go to final test");
        await page.GotoAsync($"/test?piece={serial}");
        await page.RouteAsync(
            "**/api/pieces/told",
            async route =>
            {
                await route.FetchAsync();
                await route.AbortAsync();
            },
            new() { Times = 1 }
        );
        await page.GetByRole(AriaRole.Button, new() { Name = "Judge the piece" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync("pass", new() { Timeout = 30_000 });
        await page.GotoAsync($"/pieces/{serial}");
        await Expect(
                page.GetByRole(AriaRole.List, new() { Name = "History" })
                    .GetByRole(AriaRole.Listitem)
                    .Filter(new() { HasText = "final test: pass" })
            )
            .ToHaveCountAsync(1);
        await page.GotoAsync($"/test?piece={serial}");
        await Expect(page.GetByLabel("Resistance", new() { Exact = true })).ToHaveValueAsync(""); // the draft went with the answer
    }

    [Fact]
    public async Task What_was_typed_and_ticked_stands_there_again_after_a_restart_until_it_is_kept()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        string serial = (await shop.PiecesAsync(1))[0];
        IPage page = await chromium.PageAsync(shop.Url);
        await page.GotoAsync("/clocks?choose=yes");
        await page.GetByLabel("Select " + serial).CheckAsync();
        await page.GetByLabel("New mix").FillAsync("I-12");
        await page.GetByLabel("Lots of its parts").FillAsync("A-11, B-4");
        await page.GetByText("take back the newest entry").First.ClickAsync();
        await page.GetByLabel("Reason").FillAsync("lead nicked");
        await page.GotoAsync($"/pieces/{serial}");
        await page.GetByText("Write down what was done").ClickAsync();
        await page.GetByLabel("Answer for the customer").FillAsync("A joint had come loose.");
        await page.GotoAsync("/assembly");
        await page.SendAsync("Coils at hand"); // its script must have come before the server goes
        await page.GetByLabel("Lot of the magnets").FillAsync("M-6");

        await shop.KillAsync();
        await page.GotoAsync("about:blank");
        await shop.RestartAsync();

        await page.GotoAsync("/assembly");
        await page.SendAsync("Coils at hand");
        await Expect(page.GetByLabel("Lot of the magnets")).ToHaveValueAsync("M-6");
        await page.GotoAsync($"/pieces/{serial}");
        await Expect(page.GetByLabel("Answer for the customer")).ToHaveValueAsync("A joint had come loose.");
        await page.GotoAsync("/clocks?choose=yes");
        await Expect(page.GetByLabel("Select " + serial)).ToBeCheckedAsync();
        await Expect(page.GetByLabel("Reason")).ToHaveValueAsync("lead nicked");
        await page.GetByRole(AriaRole.Button, new() { Name = "Hold the ticked" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Row, new() { Name = serial })).ToContainTextAsync("lead nicked");
        await Expect(page.GetByLabel("Select " + serial)).Not.ToBeCheckedAsync();
        await Expect(page.GetByLabel("New mix")).ToHaveValueAsync("I-12"); // another form's draft stays
    }

    private static ILocator Entries(IPage page) => page.GetByRole(AriaRole.List, new() { Name = "Entries from this tablet" });

    private static async Task JudgeAsync(IPage page, string resistance)
    {
        await page.GetByLabel("Resistance", new() { Exact = true }).FillAsync(resistance);
        await page.GetByLabel("Temperature").FillAsync("20 C");
        await page.GetByRole(AriaRole.Radio, new() { Name = "up" }).CheckAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Judge the piece" }).ClickAsync();
    }
}
