using System.Globalization;
using Coilwright.Browser.Tests.Ground;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Coilwright.Browser.Tests;

/// <summary>Designs, loads and a measured curve side by side.</summary>
public sealed class ComparePageTests(Chromium chromium)
{
    [Fact]
    public async Task Dragging_a_control_moves_the_peaks_in_the_table()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        await shop.ReleasedRecipeAsync();
        await shop.ReleasedRecipeAsync("sandbar-wide.json");
        IPage page = await chromium.PageAsync(shop.Url);
        await page.GotoAsync("/compare");
        ILocator said = page.GetByRole(AriaRole.Status, new() { Name = "What differs, in words" });
        await Expect(said)
            .ToContainTextAsync(new System.Text.RegularExpressions.Regex("dB (louder|quieter) than .*; its peak is .*kHz .* lower"));
        await page.GetByText("This load: controls, cable and input").ClickAsync();
        await page.GetByText("Peak, Q, −3 dB, level and noise of every curve").ClickAsync();
        ILocator peaks = page.GetByRole(AriaRole.Table, new() { Name = "Peaks" });
        await Expect(peaks.GetByRole(AriaRole.Row)).ToHaveCountAsync(3);
        double before = await PeakKhzAsync(peaks);

        // 500 pF of cable dragged to 1500 pF: the peak falls, by the root of the capacitance at most.
        await page.GetByRole(AriaRole.Slider, new() { Name = "Cable, slider" }).FillAsync("1500");
        await Expect(page.GetByLabel("Cable", new() { Exact = true })).ToHaveValueAsync("1500 pF");
        await Expect(peaks.GetByRole(AriaRole.Row).Nth(1))
            // an interval may end on the old figure
            .Not.ToContainTextAsync("pinned" + before.ToString("0.00", CultureInfo.InvariantCulture) + " kHz");
        double after = await PeakKhzAsync(peaks);
        Assert.InRange(after / before, 1 / Math.Sqrt(3), 0.75);
        await Expect(peaks.GetByRole(AriaRole.Row).Nth(2)).ToContainTextAsync("%");
        await Expect(peaks.GetByRole(AriaRole.Row).Nth(1).GetByRole(AriaRole.Cell).Nth(1)).ToContainTextAsync(" to "); // its interval
        await Expect(page.GetByRole(AriaRole.Status, new() { Name = "Reading at the cursor" })).ToContainTextAsync("dB");
    }

    [Fact]
    public async Task The_cursor_reads_every_curve_and_differences_stand_in_tables()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        await shop.ReleasedRecipeAsync();
        await shop.ReleasedRecipeAsync("sandbar-wide.json");
        IPage page = await chromium.PageAsync(shop.Url);
        await page.GotoAsync("/compare");
        ILocator reading = page.GetByRole(AriaRole.Status, new() { Name = "Reading at the cursor" });
        await Expect(reading).ToContainTextAsync("kHz");
        await page.GetByRole(AriaRole.Slider, new() { Name = "Read the curves at" }).FillAsync("0");
        await Expect(reading).ToContainTextAsync("20 Hz");
        await Expect(page.GetByRole(AriaRole.Img, new() { Name = "Responses compared" })).ToContainTextAsync("Sandbar wide A, ");
        await page.GetByText("What differs in the recipe").First.ClickAsync();
        await Expect(page.GetByRole(AriaRole.Table, new() { Name = "What differs in the recipe" }))
            .ToContainTextAsync("Coil 1, winding, turns");
        await Expect(page.GetByRole(AriaRole.Table, new() { Name = "What differs in the result" })).ToContainTextAsync("DC resistance");
    }

    [Fact]
    public async Task A_measured_curve_is_drawn_over_the_designs_and_a_wrong_one_is_told_with_its_line()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        await shop.ReleasedRecipeAsync();
        IPage page = await chromium.PageAsync(shop.Url);
        await page.GotoAsync("/compare");
        await page.GetByText("A measured curve over it").ClickAsync();
        ILocator table = page.GetByLabel("A table: frequency with gain, or with complex impedance");
        await table.FillAsync("frequency [Hz],gain [dB]\n100,0\n1000,0.4\n3000,loud\n5000,-3");
        await Expect(page.GetByRole(AriaRole.Complementary, new() { Name = "Responses" })).ToContainTextAsync("line 4, column 2");
        await table.FillAsync("frequency [Hz],gain [dB]\n100,0\n1000,0.4\n3000,5\n5000,-3");
        await Expect(page.GetByRole(AriaRole.Status, new() { Name = "Reading at the cursor" })).ToContainTextAsync("Measured gain");
    }

    [Fact]
    public async Task Without_scripts_the_page_still_answers()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        await shop.ReleasedRecipeAsync();
        IPage page = await chromium.PageAsync(shop.Url, scripts: false);
        await page.GotoAsync("/compare");
        await page.GetByText("This load: controls, cable and input").ClickAsync();
        await page.GetByLabel("Cable", new() { Exact = true }).FillAsync("120 %");
        await page.GetByRole(AriaRole.Button, new() { Name = "Show the responses" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Alert).First).ToBeVisibleAsync();
        await page.GetByLabel("Cable", new() { Exact = true }).FillAsync("1 nF"); // where something is wrong, the fields stand open
        await page.GetByRole(AriaRole.Button, new() { Name = "Show the responses" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Img, new() { Name = "Responses compared" })).ToBeVisibleAsync();
        await page.GetByText("Peak, Q, −3 dB, level and noise of every curve").ClickAsync();
        await Expect(page.GetByRole(AriaRole.Table, new() { Name = "Peaks" })).ToContainTextAsync("kHz");
    }

    private static async Task<double> PeakKhzAsync(ILocator peaks) =>
        double.Parse(
            (await peaks.GetByRole(AriaRole.Row).Nth(1).GetByRole(AriaRole.Cell).Nth(1).InnerTextAsync()).Split(' ')[0],
            CultureInfo.InvariantCulture
        );
}
