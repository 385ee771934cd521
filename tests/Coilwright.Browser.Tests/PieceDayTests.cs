using System.Diagnostics;
using Coilwright.Browser.Tests.Ground;
using Coilwright.Workshop.Recipes;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Coilwright.Browser.Tests;

/// <summary>
/// From two coils to a shipped piece with serial, label and spec sheet, and the way back; by the pages alone, with the clock moved by the
/// test.
/// </summary>
public sealed class PieceDayTests(Chromium chromium)
{
    private const string Serial = "2610-001"; // 2 March 2026 lies in ISO week 10

    [Fact]
    public async Task Two_coils_become_a_shipped_piece()
    {
        await using HostedShop shop = await HostedShop.StartAsync();
        IPage page = await chromium.PageAsync(shop.Url, 820, 1180);
        await WindAsync(shop, page);
        await page.GotoAsync("/shop");
        await page.GetByLabel("Reference").FillAsync("K-031");
        await page.GetByLabel("Name", new() { Exact = true }).FillAsync("Pell & Daughter");
        await page.SendAsync("Enter the customer");

        await page.GotoAsync("/assembly");
        await page.GetByLabel("Recipe").SelectOptionAsync("Breakwater twin");
        await page.SendAsync("Coils at hand");
        await page.GetByLabel("Select B-7/BS-001,B-8/BC-001").CheckAsync();
        await page.GetByLabel("Options").FillAsync("cover nickel");
        await page.SendAsync("Put together");
        await Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("a name and a value are needed", new() { IgnoreCase = true });
        await Expect(page.GetByLabel("Select B-7/BS-001,B-8/BC-001")).ToBeCheckedAsync(); // what was ticked stays
        await page.GetByLabel("Options").FillAsync("cover: nickel");
        await page.GetByLabel("Lot of the magnets").FillAsync("M-5");
        await page.SendAsync("Put together");
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Piece " + Serial })).ToBeVisibleAsync();

        await PotAndMarkAsync(shop, page);
        await page.GotoAsync($"/test?piece={Serial}");
        await page.GetByLabel("Resistance", new() { Exact = true }).FillAsync("7.80 k");
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("ink cures", new() { IgnoreCase = true });
        await Expect(page.GetByLabel("Resistance", new() { Exact = true })).ToHaveValueAsync("7.80 k");
        shop.Clock.Advance(TimeSpan.FromHours(25));
        await page.GetByLabel("Temperature").FillAsync("20 C");
        await page.GetByRole(AriaRole.Radio, new() { Name = "up" }).CheckAsync();
        await page.GetByText("More readings").ClickAsync();
        await page.GetByLabel("Meter").FillAsync("bench meter");
        await page.GetByLabel("Your name", new() { Exact = true }).FillAsync("Joss");
        await PressAsync(page, "Judge the piece");
        await Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync("pass");

        await page.GotoAsync($"/pieces/{Serial}");
        await Expect(page.GetByRole(AriaRole.Main)).ToContainTextAsync("knocked down to 80 % of full, with coil charger 2");
        await Expect(page.GetByRole(AriaRole.Main)).ToContainTextAsync("fully hard on day 6");
        shop.Clock.Advance(TimeSpan.FromDays(6));
        await page.ReloadAsync();
        await page.GetByLabel("To", new() { Exact = true }).SelectOptionAsync("K-031");
        await page.SendAsync("Ship it");
        await Expect(page.GetByRole(AriaRole.Main)).ToContainTextAsync("to K-031 (Pell & Daughter)");

        Assert.Contains(Serial, await ScannedAsync(await FetchAsync(page, $"/pieces/{Serial}/label.pdf")), StringComparison.Ordinal);
        Assert.Matches(@"7\.80\d* kΩ", await TextAsync(await FetchAsync(page, $"/pieces/{Serial}/papers/spec.pdf")));
        await LookAsync(page);
        foreach (
            (string paper, string said) in new[]
            {
                ("traveller", "potting"),
                ("wiring", "screw"),
                ("parts", "M-5"),
                ("certificate", "knocked down to 80 % of full"),
                ("packing", "K-031"),
            }
        )
        {
            string text = await TextAsync(await FetchAsync(page, $"/pieces/{Serial}/papers/{paper}.pdf?size=Letter"));
            Assert.Contains(said, text, StringComparison.Ordinal);
            await page.GotoAsync($"/pieces/{Serial}/papers/{paper}");
            await Expect(page.Locator("body")).ToContainTextAsync(said);
        }
    }

    [Fact]
    public async Task A_piece_comes_back_and_everything_is_found_from_the_box_on_every_page()
    {
        await using HostedShop shop = await HostedShop.StartAsync();
        IPage page = await chromium.PageAsync(shop.Url);
        await WindAsync(shop, page);
        Assert.Empty(await shop.Services.Pieces.Customers.AddAsync(Guid.NewGuid(), "K-031", "Pell & Daughter", CancellationToken.None));
        await shop.Services.Pieces.Assembly.MakeAsync(
            new()
            {
                Id = Guid.NewGuid(),
                Coils = ["B-7/1", "B-8/1"],
                MagnetLot = "M-5",
            },
            CancellationToken.None
        );
        await PotAndMarkAsync(shop, page);
        shop.Clock.Advance(TimeSpan.FromDays(7));
        Assert.True((
                await shop.Services.Pieces.Test.TestAsync(
                    new()
                    {
                        Id = Guid.NewGuid(),
                        Serial = Serial,
                        Resistance = "7.80 k",
                        Temperature = "20",
                        Swing = "up",
                    },
                    CancellationToken.None
                )
            ).Verdict!.Passes);
        Assert.Empty(
            await shop.Services.Pieces.DispatchService.ShipAsync(Guid.NewGuid(), [Serial], "K-031", "Ines", CancellationToken.None)
        );

        await page.GotoAsync("/");
        await page.GetByLabel("Find a serial, tag, spool, lot or customer").FillAsync(Serial);
        await page.Keyboard.PressAsync("Enter");
        await page.GetByLabel("What is said to be wrong").FillAsync("silent");
        await page.SendAsync("Book it back in");
        await page.GetByLabel("Resistance", new() { Exact = true }).FillAsync("open");
        await page.SendAsync("Hold it against its dispatch");
        await Expect(page.GetByRole(AriaRole.Main)).ToContainTextAsync("7.80 kΩ → open");
        await page.GetByText("Put another coil in").ClickAsync();
        await page.GetByLabel("Comes out").SelectOptionAsync("BS-001");
        await page.GetByLabel("Goes in, batch/tag").FillAsync("B-7/2");
        await page.GetByLabel("Why", new() { Exact = true }).FillAsync("wire broken at the start");
        await page.SendAsync("Exchange the coil");
        await Expect(page.GetByRole(AriaRole.Row, new() { Name = "slug (taken out)" })).ToBeVisibleAsync();
        await page.GetByText("Write down what was done").ClickAsync();
        await page.GetByLabel("Done").FillAsync("slug coil wound anew");
        await page.GetByLabel("Cost, or warranty").FillAsync("warranty");
        await page.SendAsync("Keep it");
        await page.GotoAsync($"/pieces/{Serial}/papers/repair");
        await Expect(page.Locator("body")).ToContainTextAsync("warranty");
        foreach (string asked in new[] { "M-5", "W-3", "K1", "I-1", "A-11", "K-031", "Breakwater twin" })
        {
            await page.GotoAsync("/find?code=" + Uri.EscapeDataString(asked));
            await Expect(page.GetByRole(AriaRole.Row, new() { Name = Serial }).First).ToContainTextAsync("returned");
        }
    }

    private static async Task WindAsync(HostedShop shop, IPage page)
    {
        RevisionRecord revision = await shop.ReleasedAsync("breakwater-twin.json");
        Assert.Empty(await shop.Services.Winding.SetRoomTemperatureAsync("20 °C", "Mara", CancellationToken.None));
        foreach (
            (string name, string coil, string prefix, string ohms) in new[]
            {
                ("B-7", "slug", "BS-", "3.92 k"),
                ("B-8", "screw", "BC-", "3.90 k"),
            }
        )
        {
            EntryPageDriver entry = new(page, await shop.BatchAsync(revision, name, coil, prefix));
            await entry.OpenAsync();
            await Expect(entry.Resistance).ToBeFocusedAsync();
            await entry.TypeAsync(ohms);
            await entry.TypeAsync("3.99 k");
            await entry.AllSavedAsync();
        }
    }

    private static async Task PotAndMarkAsync(HostedShop shop, IPage page)
    {
        await page.GotoAsync("/clocks?choose=yes");
        await page.GetByLabel("Select " + Serial).CheckAsync();
        await page.GetByLabel("Step").SelectOptionAsync("magnets");
        await page.GetByLabel("Magnets charged to").FillAsync("80");
        await page.GetByLabel("Charger or means").FillAsync("coil charger 2");
        await PressAsync(page, "Begin or do the step");
        await Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("% of full or gauss", new() { IgnoreCase = true });
        await Expect(page.GetByLabel("Charger or means")).ToHaveValueAsync("coil charger 2");
        await page.GetByLabel("Magnets charged to").FillAsync("80 %");
        await PressAsync(page, "Begin or do the step");
        await Expect(page.GetByRole(AriaRole.Row, new() { Name = Serial })).ToContainTextAsync("may go to potting");
        await page.GetByText("Into a potting basket").ClickAsync();
        await page.GetByLabel("Select " + Serial).CheckAsync();
        await page.GetByLabel("Basket").FillAsync("K1");
        await page.GetByLabel("Lot of the bath").FillAsync("W-3");
        await page.GetByLabel("Bath reads", new() { Exact = true }).FillAsync("66");
        await page.SendAsync("Ticked pieces into the bath");
        await Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("let the bath cool", new() { IgnoreCase = true });
        await page.GetByLabel("Bath reads", new() { Exact = true }).FillAsync("60");
        await page.SendAsync("Ticked pieces into the bath");
        await page.SendAsync("Basket out");
        await Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("stays at least 10 min", new() { IgnoreCase = true });
        shop.Clock.Advance(TimeSpan.FromMinutes(12));
        await page.SendAsync("Basket out");
        await page.GetByLabel("New mix").FillAsync("I-1");
        await page.GetByLabel("Lots of its parts").FillAsync("A-11, B-4");
        await page.GetByLabel("Room", new() { Exact = true }).FillAsync("20 C");
        await page.SendAsync("Record the mix");
        shop.Clock.Advance(TimeSpan.FromMinutes(31));
        await page.GotoAsync("/clocks?choose=yes");
        await page.GetByLabel("Select " + Serial).CheckAsync();
        await page.GetByLabel("Step").SelectOptionAsync("marking");
        await page.GetByLabel("Ink, for marking").SelectOptionAsync("I-1");
        await PressAsync(page, "Begin or do the step");
        await Expect(page.GetByRole(AriaRole.Main)).ToContainTextAsync("ink cures");
    }

    /// <summary>No page of a piece's way is wider than its window.</summary>
    private static async Task LookAsync(IPage page)
    {
        foreach ((int width, int height) in new[] { (810, 1080), (1280, 800) })
        {
            await page.SetViewportSizeAsync(width, height);
            foreach (
                (string name, string address) in new[]
                {
                    ("assembly", "/assembly"),
                    ("clocks", "/clocks"),
                    ("final-test", "/test"),
                    ("pieces", "/pieces"),
                    ("piece", $"/pieces/{Serial}"),
                    ("shop", "/shop"),
                    ("find", "/find?code=M-5"),
                }
            )
            {
                await page.GotoAsync(address);
                await ScreenTests.CheckAsync(page, name, width);
            }
        }
    }

    private static Task PressAsync(IPage page, string button) =>
        page.GetByRole(AriaRole.Button, new() { Name = button }).PressAsync("Enter");

    private static async Task<byte[]> FetchAsync(IPage page, string address)
    {
        IAPIResponse answer = await page.APIRequest.GetAsync(address);
        Assert.Equal("application/pdf", answer.Headers["content-type"]);
        return await answer.BodyAsync();
    }

    private static Task<string> TextAsync(byte[] pdf) => ToolAsync(pdf, "pdftotext -layout in.pdf - ");

    private static Task<string> ScannedAsync(byte[] pdf) =>
        ToolAsync(pdf, "pdftoppm -r 200 -png in.pdf page && zbarimg -q --raw page*.png");

    private static async Task<string> ToolAsync(byte[] pdf, string command)
    {
        string folder = Directory.CreateTempSubdirectory("coilwright-pdf-").FullName;
        try
        {
            await File.WriteAllBytesAsync(Path.Combine(folder, "in.pdf"), pdf);
            using Process tool = Process.Start(
                new ProcessStartInfo("sh", ["-c", command]) { WorkingDirectory = folder, RedirectStandardOutput = true }
            )!;
            string said = await tool.StandardOutput.ReadToEndAsync();
            await tool.WaitForExitAsync();
            Assert.Equal(0, tool.ExitCode);
            return said;
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }
}
