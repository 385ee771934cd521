using System.Globalization;
using System.Net.Http.Json;
using Coilwright.Browser.Tests.Ground;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Coilwright.Browser.Tests;

/// <summary>The wall of charts from the menu and from a batch: what is drawn, what it says, and limits taken anew on purpose.</summary>
public sealed class ChartsPageTests(Chromium chromium)
{
    private static readonly string[] s_charts = ["Single coils", "Moving range", "Moving average", "Cumulative sums"];

    [Fact]
    public async Task A_drift_is_named_with_its_rule_and_limits_are_taken_anew_only_with_a_reason()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        Guid batch = await DriftedAsync(shop);
        IPage page = await chromium.PageAsync(shop.Url, 1440, 900);
        page.SetDefaultTimeout(60_000); // the first page of its kind is compiled as it is served
        await page.GotoAsync("/");
        await page.GetByRole(AriaRole.Link, new() { Name = "Wind", Exact = true }).ClickAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Charts", Exact = true }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToContainTextAsync("Charts: Harbour bridge");
        await Expect(page.GetByRole(AriaRole.Main)).ToContainTextAsync("Ω above the centre line");
        await Expect(page.GetByText("What to do:")).ToBeVisibleAsync();
        await Expect(page.GetByRole(AriaRole.Img, new() { Name = "Single coils" })).ToBeInViewportAsync();
        await page.GetByText("The other charts", new() { Exact = true }).ClickAsync();
        await page.GetByText("Signals, rules and capability in tables").ClickAsync();
        foreach (string chart in s_charts)
        {
            await Expect(page.GetByRole(AriaRole.Img, new() { Name = chart })).ToBeVisibleAsync();
        }

        ILocator signals = page.GetByRole(AriaRole.Table, new() { Name = "Signals, the newest first" });
        await Expect(signals).ToContainTextAsync("8 consecutive on one side of the centre line");
        await Expect(page.GetByRole(AriaRole.Table, new() { Name = "Rules and their false alarms" })).ToContainTextAsync("370 points");
        await Expect(page.GetByRole(AriaRole.Table, new() { Name = "Capability against" })).ToContainTextAsync("Cpk");

        await page.GotoAsync($"/batches/{batch}");
        await page.GetByRole(AriaRole.Link, new() { Name = "Charts", Exact = true }).Last.ClickAsync();
        await page.GetByText("Draw a batch, winder, spool, person or quantity by itself").ClickAsync();
        await page.GetByText("Limits, rules, subgroups and capability", new() { Exact = true }).ClickAsync();
        await page.GetByLabel("From this coil on").FillAsync("C-025");
        await page.GetByRole(AriaRole.Button, new() { Name = "Take limits anew and draw" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("say why", new() { IgnoreCase = true });
        await page.GetByLabel("Reason").FillAsync("new spool");
        await page.GetByRole(AriaRole.Button, new() { Name = "Take limits anew and draw" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Main)).ToContainTextAsync("taken anew from the 16 coils from C-025 on, because: new spool");
        await page.GetByLabel("Your name", new() { Exact = true }).FillAsync("Joss");
        await page.SendAsync("Keep them for the shop");
        await page.GotoAsync("/charts"); // nothing of it in the address
        await Expect(page.GetByRole(AriaRole.Main)).ToContainTextAsync("from C-025 on, because: new spool (kept for the shop)");
        await page.GotoAsync("/charts?limits=frozen");
        await Expect(page.GetByRole(AriaRole.Main)).ToContainTextAsync("frozen: from the first 20 coils");
    }

    [Fact]
    public async Task Every_drawn_coil_is_in_the_table_and_the_page_reads_without_scripts()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        Guid batch = await DriftedAsync(shop);
        IPage page = await chromium.PageAsync(shop.Url, 820, 1180, scripts: false);
        await page.GotoAsync($"/charts?batch={batch}&group=5");
        await Expect(page.GetByRole(AriaRole.Img, new() { Name = "Means of subgroups" })).ToBeVisibleAsync();
        int wide = await page.EvaluateAsync<int>("document.documentElement.scrollWidth");
        Assert.InRange(wide, 1, 820);
        IAPIResponse csv = await page.APIRequest.GetAsync($"{shop.Url}charts/coils.csv?batch={batch}");
        string[] lines = (await csv.TextAsync()).TrimEnd().Split('\n');
        Assert.Equal(41, lines.Length);
        Assert.StartsWith("H-12,C-001,6", lines[1], StringComparison.Ordinal);
    }

    /// <summary>Forty coils, the last sixteen a little high.</summary>
    private static async Task<Guid> DriftedAsync(ServedShop shop)
    {
        Guid batch = await shop.BatchAsync(await shop.ReleasedRecipeAsync(), 60);
        await shop.RoomAsync("20 C");
        for (int coil = 1; coil <= 40; coil++)
        {
            using JsonContent entry = JsonContent.Create(
                new
                {
                    id = Guid.NewGuid(),
                    batchId = batch,
                    tag = string.Create(CultureInfo.InvariantCulture, $"C-{coil:000}"),
                    resistance = string.Create(
                        CultureInfo.InvariantCulture,
                        $"{(coil > 24 ? 6.225 : 6.18) + 0.012 * ((coil * 7 % 5) - 2):0.0000} k"
                    ),
                }
            );
            using HttpResponseMessage answer = await shop.SendAsync(batch, entry);
            Assert.True(answer.IsSuccessStatusCode);
        }

        return batch;
    }
}
