using Coilwright.Browser.Tests.Ground;
using Coilwright.Workshop;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Coilwright.Browser.Tests;

/// <summary>Three pieces at hand, two of them matched to a set, by the pages alone.</summary>
public sealed class SetsPageTests(Chromium chromium)
{
    [Fact]
    public async Task The_closest_pieces_become_a_set_and_it_is_broken_again()
    {
        await using HostedShop shop = await HostedShop.StartAsync();
        await PiecesAsync(shop);
        IPage page = await chromium.PageAsync(shop.Url, 1280, 800);
        await page.GotoAsync("/assembly");
        await page.GetByRole(AriaRole.Link, new() { Name = "Sets of finished pieces" }).ClickAsync();
        await page.GetByLabel("Recipe, or a serial").Nth(0).FillAsync("Breakwater twin");
        await page.GetByLabel("Recipe, or a serial").Nth(2).FillAsync("Breakwater twin");
        await page.GetByLabel("Target level difference").Nth(2).FillAsync("loud");
        await page.SendAsync("Find the closest");
        await Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("not an offset for bridge", new() { IgnoreCase = true });
        await Expect(page.GetByLabel("Target level difference").Nth(1)).ToHaveValueAsync("loud"); // the middle was left out
        await page.GetByLabel("Target level difference").Nth(1).FillAsync("+0.1 dB");
        await page.SendAsync("Find the closest");
        await Expect(page.GetByRole(AriaRole.Radio, new() { Name = "Select P-1,P-2" })).ToBeCheckedAsync();
        await Expect(page.GetByRole(AriaRole.Main)).ToContainTextAsync("in phase, hum cancels");
        await Expect(page.GetByRole(AriaRole.Main)).ToContainTextAsync("Left in stock by the closest: P-3");
        foreach (int width in new[] { 810, 1280 })
        {
            await page.SetViewportSizeAsync(width, 1080);
            await ScreenTests.CheckAsync(page, "sets", width);
        }

        await page.GetByRole(AriaRole.Radio, new() { Name = "Select P-1,P-3" }).CheckAsync();
        await page.GetByLabel("Name of the set").FillAsync("Lantern 3");
        await page.SendAsync("Make it a set");
        await Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("closer ones are at hand", new() { IgnoreCase = true });
        // nothing typed or ticked is lost
        await Expect(page.GetByRole(AriaRole.Radio, new() { Name = "Select P-1,P-3" })).ToBeCheckedAsync();
        await Expect(page.GetByLabel("Name of the set")).ToHaveValueAsync("Lantern 3");
        await page.GetByLabel("Reason, if not the closest").FillAsync("the customer heard these");
        await page.SendAsync("Make it a set");
        await page.GetByRole(AriaRole.Link, new() { Name = "P-3" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Main)).ToContainTextAsync("set Lantern 3, bridge, with neck P-1");
        await page.GotoAsync("/find?code=Lantern+3");
        await Expect(page.GetByRole(AriaRole.Row, new() { Name = "P-1" })).ToContainTextAsync("neck");

        await page.GotoAsync("/sets");
        await page.GetByText("Break it").ClickAsync();
        await page.GetByLabel("Reason", new() { Exact = true }).FillAsync("order cancelled");
        await page.SendAsync("Take them out of the set");
        await Expect(page.GetByRole(AriaRole.Main)).ToContainTextAsync("Matched pieces will stand here.");
    }

    private static async Task PiecesAsync(HostedShop shop)
    {
        RevisionRecord revision = await shop.ReleasedAsync("breakwater-twin.json");
        Assert.Empty(await shop.Services.Winding.SetRoomTemperatureAsync("20 °C", "Mara", CancellationToken.None));
        foreach ((string name, string coil, string prefix) in new[] { ("B-7", "slug", "BS-"), ("B-8", "screw", "BC-") })
        {
            BatchRecord batch = (
                await shop.Services.Records.Batches.FindAsync(await shop.BatchAsync(revision, name, coil, prefix), CancellationToken.None)
            )!;
            foreach ((string tag, string ohms) in new[] { ("001", "3.90 k"), ("002", "3.94 k"), ("003", "3.97 k") })
            {
                Assert.Empty(
                    (
                        await shop.Services.Winding.RecordCoilAsync(
                            new CoilEntry
                            {
                                Id = Guid.NewGuid(),
                                BatchId = batch.Id,
                                Tag = prefix + tag,
                                Resistance = ohms,
                                Temperature = "20 °C",
                                Person = "Mara",
                            },
                            CancellationToken.None
                        )
                    ).Problems
                );
            }
        }

        foreach (int number in Enumerable.Range(1, 3))
        {
            IReadOnlyList<Problem> problems = (
                await shop.Services.Pieces.Assembly.MakeAsync(
                    new()
                    {
                        Id = Guid.NewGuid(),
                        Coils = [FormattableString.Invariant($"B-7/{number}"), FormattableString.Invariant($"B-8/{number}")],
                        MagnetLot = "M-5",
                        Serial = FormattableString.Invariant($"P-{number}"),
                    },
                    CancellationToken.None
                )
            ).Problems;
            Assert.Empty(problems);
        }
    }
}
