using Coilwright.Browser.Tests.Ground;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Pieces.Events;
using Coilwright.Workshop.Recipes;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Coilwright.Browser.Tests;

/// <summary>
/// A clock that jumped is asked about in words, on a page and where a tablet's entries wait; nothing typed is lost meanwhile.
/// </summary>
public sealed class ClockQuestionTests(Chromium chromium)
{
    private const string Right = "The clock is right: save what waits";

    [Theory]
    [InlineData(810, 1080)]
    [InlineData(390, 844)]
    public async Task The_page_of_the_question_fits_and_keeps_what_was_typed(int width, int height)
    {
        await using HostedShop shop = await HostedShop.StartAsync();
        Assert.Empty(await shop.Services.Winding.SetRoomTemperatureAsync("21 °C", "Mara", CancellationToken.None));
        IPage page = await chromium.PageAsync(shop.Url, width, height);
        await page.GotoAsync("/");
        shop.Clock.Advance(TimeSpan.FromDays(30));
        await page.GetByText("Room 21.0 °C").ClickAsync();
        await page.GetByLabel("Room temperature", new() { Exact = false }).FillAsync("25");
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Is the clock right?" })).ToBeVisibleAsync();
        await ScreenTests.CheckAsync(page, "clock-question", width);
        await Expect(page.GetByRole(AriaRole.Main)).ToContainTextAsync("The clock of the computer that keeps the shop says 2026-04-01");
        await Expect(page.GetByRole(AriaRole.Link, new() { Name = "Drop the entry" })).ToBeVisibleAsync();
        ILocator keep = page.GetByRole(AriaRole.Button, new() { Name = "The clock is right: keep the entry" });
        Assert.InRange((await keep.BoundingBoxAsync())!.Height, 44, 200);
        Assert.Equal(21, (await shop.Services.Records.Room.LatestAsync(CancellationToken.None))!.TemperatureC);
        await keep.ClickAsync();
        await Expect(page.GetByText("Room 25.0 °C")).ToBeVisibleAsync();
        Assert.Equal(25, (await shop.Services.Records.Room.LatestAsync(CancellationToken.None))!.TemperatureC);
    }

    [Fact]
    public async Task A_coil_that_waits_for_the_answer_says_so_where_it_was_typed_and_on_Today()
    {
        await using HostedShop shop = await HostedShop.StartAsync();
        Guid batch = await WoundAsync(shop);
        IPage page = await chromium.PageAsync(shop.Url);
        EntryPageDriver entry = new(page, batch);
        await entry.OpenAsync();
        await Expect(entry.Resistance).ToBeFocusedAsync();
        shop.Clock.Advance(TimeSpan.FromDays(30));
        await entry.TypeAsync("6.25 k");
        await entry.TypeAsync("6.31 k");
        await Expect(entry.Sent.GetByText("waits until the question about the clock is answered")).ToHaveCountAsync(2);
        await Expect(Asked(page)).ToContainTextAsync("What was entered here is not saved yet; it waits on this tablet.");
        await Expect(Asked(page)).ToContainTextAsync("is the clock right?");

        await page.GotoAsync("/");
        ILocator waiting = page.GetByRole(AriaRole.Region, new() { Name = "Coils on this tablet" });
        await Expect(waiting).ToContainTextAsync("2 coils wait on this tablet");
        await Expect(waiting.GetByText("waits until the question about the clock is answered")).ToHaveCountAsync(2);
        await ScreenTests.CheckAsync(page, "clock-waits", 1280);
        await Expect(Asked(page)).ToContainTextAsync("is the clock right?");
        await page.GetByRole(AriaRole.Button, new() { Name = Right }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Main)).ToContainTextAsync("2 of 4", new() { Timeout = 30_000 });
        await Expect(Asked(page)).ToHaveCountAsync(0);
        Assert.Equal(
            ["6.25 k", "6.31 k"],
            (await shop.Services.Records.Readings.OfBatchAsync(batch, CancellationToken.None)).Select(reading => reading.Typed)
        );
    }

    /// <summary>A clock that is put right is noticed without a hand.</summary>
    [Fact]
    public async Task An_event_at_the_winder_waits_with_its_reason_and_goes_out_once_the_clock_is_set()
    {
        await using HostedShop shop = await HostedShop.StartAsync();
        Guid batch = await WoundAsync(shop);
        IPage page = await chromium.PageAsync(shop.Url);
        await page.GotoAsync($"/batches/{batch}/wind");
        shop.Clock.Advance(TimeSpan.FromDays(30));
        await page.GetByRole(AriaRole.Button, new() { Name = "Begin" }).First.ClickAsync();
        await Expect(page.GetByText("waits until the question about the clock is answered")).ToBeVisibleAsync();
        await Expect(Asked(page)).ToContainTextAsync("is the clock right?");
        shop.Clock.Advance(TimeSpan.FromDays(-30));
        await Expect(Asked(page)).ToHaveCountAsync(0, new() { Timeout = 40_000 });
        await Expect(page.GetByRole(AriaRole.Main)).ToContainTextAsync("begun on Winder 2");
    }

    /// <summary>The clock is behind the newest record: the answer is kept with the entry that waited for it.</summary>
    [Fact]
    public async Task A_step_of_a_piece_waits_with_its_reason_and_is_saved_by_the_answer()
    {
        await using HostedShop shop = await HostedShop.StartAsync();
        IReadOnlyList<string> serials = await shop.PiecesAsync(2, magnets: false);
        string serial = serials[0];
        Assert.Empty(await shop.Services.Pieces.Steps.HoldAsync(Guid.NewGuid(), [serials[1]], "scratched", "Ines", CancellationToken.None));
        IPage page = await chromium.PageAsync(shop.Url);
        await page.GotoAsync("/clocks?choose=yes");
        await page.GetByLabel("Select " + serial).CheckAsync();
        await page.GetByLabel("Step").SelectOptionAsync("magnets");
        shop.Clock.Advance(TimeSpan.FromHours(-1));
        await page.GetByRole(AriaRole.Button, new() { Name = "Begin or do the step" }).ClickAsync();
        await Expect(page.GetByText("waits until the question about the clock is answered")).ToBeVisibleAsync();
        await Expect(Asked(page)).ToContainTextAsync("which is later: is the clock right?");
        await page.GetByRole(AriaRole.Button, new() { Name = Right }).ClickAsync();
        await Expect(page.GetByText("magnets: " + serial)).ToHaveCountAsync(0); // drawn anew
        PieceSnapshot piece = (await shop.Services.Pieces.Shelf.FindAsync(serial, CancellationToken.None))!;
        Assert.Contains(piece.History.InForce, one => one is StepEvent { Step: "magnets" });
        PieceSnapshot held = (await shop.Services.Pieces.Shelf.FindAsync(serials[1], CancellationToken.None))!;
        Assert.Contains(held.History.All, one => one is ClockSaidRight);
    }

    private static ILocator Asked(IPage page) => page.GetByRole(AriaRole.Alert).Filter(new() { HasText = "it waits on this tablet" });

    private static async Task<Guid> WoundAsync(HostedShop shop)
    {
        Assert.Empty(await shop.Services.Winding.SetRoomTemperatureAsync("21 °C", "Mara", CancellationToken.None));
        RevisionRecord revision = await shop.ReleasedAsync(Ground.Demo.TallSingleCoil);
        return await shop.BatchAsync(revision, "H-12", Ground.Demo.FirstCoilOf(Ground.Demo.TallSingleCoil), "C-");
    }
}
