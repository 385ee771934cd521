using Coilwright.Browser.Tests.Ground;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Coilwright.Browser.Tests;

/// <summary>A slip is taken back where it is seen: on the piece's page and on the clocks.</summary>
public sealed class UndoTests(Chromium chromium)
{
    [Fact]
    public async Task A_step_and_a_basket_entered_wrongly_are_taken_back_on_the_pages()
    {
        await using HostedShop shop = await HostedShop.StartAsync();
        IReadOnlyList<string> serials = await shop.PiecesAsync(2);
        IPage page = await chromium.PageAsync(shop.Url, 1024, 768);

        await page.GotoAsync($"/pieces/{serials[0]}");
        await page.GetByText("Take back what was entered wrongly").ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Take back: magnets done" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("What was entered wrongly?", new() { IgnoreCase = true });
        await page.GetByLabel("What was wrong with it").FillAsync("the other piece was meant");
        await page.GetByRole(AriaRole.Button, new() { Name = "Take back: magnets done" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Main)).ToContainTextAsync("may go to magnets");
        await Expect(page.GetByRole(AriaRole.Main)).ToContainTextAsync("magnets begun (taken back)");
        await Expect(page.GetByRole(AriaRole.Main)).ToContainTextAsync("taken back: magnets begun, because the other piece was meant");

        Assert.Empty(
            await shop.Services.Pieces.Potting.InAsync(
                new()
                {
                    Id = Guid.NewGuid(),
                    Label = "K1",
                    Lot = "W-3",
                    Bath = "60",
                    Limit = "65",
                    Pieces = [serials[1]],
                },
                CancellationToken.None
            )
        );
        await page.GotoAsync("/clocks?choose=yes");
        await page.GetByText("More", new() { Exact = true }).ClickAsync();
        await page.GetByLabel("What was entered wrongly").FillAsync("bath was cold");
        await page.SendAsync("Take basket K1 back");
        await page.GotoAsync("/clocks?choose=yes");
        await Expect(page.GetByRole(AriaRole.Row, new() { Name = serials[1] })).ToContainTextAsync("may go to potting");
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Basket K1" })).ToHaveCountAsync(0);

        await page.GetByLabel("Select " + serials[1]).CheckAsync();
        await page.GetByText("take back the newest entry").First.ClickAsync();
        await page.GetByLabel("Reason").FillAsync("magnets not in yet");
        await page.GetByRole(AriaRole.Button, new() { Name = "Take back the newest entry of the ticked" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Row, new() { Name = serials[1] })).ToContainTextAsync("may go to magnets");
    }
}
