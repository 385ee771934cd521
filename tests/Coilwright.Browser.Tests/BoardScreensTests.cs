using Coilwright.Browser.Tests.Ground;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Coilwright.Browser.Tests;

/// <summary>
/// The pages of the day in the demo's shop: the answer and the thing to do stand on the first screen of a phone, a tablet and a laptop; no
/// page is longer than two screens of a tablet or wider than its window.
/// </summary>
public sealed class BoardScreensTests(Chromium chromium, DemoShop demo)
{
    private const int Tablet = 810,
        TwoTabletScreens = 2 * 1080,
        NavigationOfPhone = 57;

    [Theory]
    [InlineData(390, 844)]
    [InlineData(Tablet, 1080)]
    [InlineData(1280, 800)]
    public async Task Answer_and_action_stand_on_the_first_screen_of_every_board(int width, int height)
    {
        IPage page = await chromium.PageAsync(demo.Url, width, height);
        await page.GotoAsync("/");
        ILocator needed = page.GetByRole(AriaRole.Region, new() { Name = "Needs a person" });
        await OnFirstScreenAsync(page, "today", needed.GetByRole(AriaRole.Heading), needed.GetByRole(AriaRole.Link).First);
        string batch = await AddressAsync(page, "H-12"),
            thin = await AddressAsync(page, "S-4");

        await page.GotoAsync(batch);
        await OnFirstScreenAsync(page, "batch", Link(page, "Enter H-021"), page.GetByText("20 of 24").First, Link(page, "Set-up sheet"));
        await page.GotoAsync(batch + "/enter");
        await OnFirstScreenAsync(
            page,
            "enter",
            page.GetByText("pass", new() { Exact = true }).First,
            Field(page, "Resistance"),
            Button(page, "Save coil")
        );
        await page.GotoAsync(batch + "/wind");
        ILocator stop = page.GetByText("7,952", new() { Exact = true });
        await OnFirstScreenAsync(page, "wind", stop, Button(page, "Wire broke (B)"), Button(page, "Resume (R)"));
        Assert.True((await stop.BoundingBoxAsync())!.Height <= height / 4.0);
        await page.GotoAsync(thin + "/wind");
        await OnFirstScreenAsync(page, "wind of a first piece", Button(page, "Release the series"));

        await page.GotoAsync("/clocks");
        ILocator potting = page.GetByRole(AriaRole.Region, new() { Name = "Potting" });
        await OnFirstScreenAsync(
            page,
            "clocks",
            potting.GetByRole(AriaRole.Heading, new() { Name = "Basket K2" }),
            Button(page, "Basket out")
        );
        await page.GotoAsync("/test?piece=2647-002");
        ILocator up = page.GetByRole(AriaRole.Radio, new() { Name = "up" });
        await OnFirstScreenAsync(page, "test", Field(page, "Resistance"), up, Button(page, "Judge the piece"));
        await page.GotoAsync("/pieces");
        await OnFirstScreenAsync(page, "pieces", Button(page, "Show them"), page.GetByLabel("Part of the serial"));
        await page.GotoAsync("/pieces/2647-002");
        await OnFirstScreenAsync(page, "piece", page.GetByText("may move").First, Link(page, "Final test").Last);
    }

    [Fact]
    public async Task Finished_batches_are_not_under_way_and_the_day_tells_its_reasons()
    {
        IPage page = await chromium.PageAsync(demo.Url, Tablet, 1080);
        await page.GotoAsync("/");
        ILocator winders = page.GetByRole(AriaRole.Region, new() { Name = "On the winders" }),
            needed = page.GetByRole(AriaRole.Region, new() { Name = "Needs a person" }),
            due = page.GetByRole(AriaRole.Region, new() { Name = "Due" });
        await Expect(winders.GetByRole(AriaRole.Listitem)).ToHaveCountAsync(3);
        await Expect(winders).Not.ToContainTextAsync("B-5");
        await Expect(needed.GetByRole(AriaRole.Listitem).Filter(new() { HasText = "coil H-001" }))
            .ToContainTextAsync("temperature not recorded");
        await Expect(needed.GetByRole(AriaRole.Listitem).Filter(new() { HasText = "S-4" }).First).ToContainTextAsync("rejected in a row");
        await Expect(due).ToContainTextAsync("2647-002 waits for final test");
        await Link(page, "Read it again: H-12, coil H-001").ClickAsync();
        await Expect(page.GetByLabel("Tag", new() { Exact = true })).ToHaveValueAsync("H-001");
    }

    [Theory]
    [InlineData(390, 844)]
    [InlineData(Tablet, 1080)]
    [InlineData(1280, 800)]
    public async Task Measurements_answer_without_scripts_and_magnets_fit_every_screen(int width, int height)
    {
        IPage page = await chromium.PageAsync(demo.Url, width, height, scripts: false);
        await page.GotoAsync("/measure/sample");
        await page.GetByLabel("Pieces in the lot").FillAsync("500");
        await page.GetByLabel("Pieces in the lot").PressAsync("Enter");
        await OnFirstScreenAsync(page, "sample", page.GetByText("50 pieces", new() { Exact = true }));
        await page.GotoAsync("/measure/resonance?peaks[0].frequency=9.19&peaks[1].frequency=4.14&peaks[1].capacitor=470");
        await OnFirstScreenAsync(page, "resonance", page.GetByText("2.50", new() { Exact = false }).First);
        foreach (string address in (string[])["/measure", "/measure/curve", "/measure/sweep", "/measure/gauge", "/magnets", "/batches"])
        {
            await page.GotoAsync(address);
            int wide = await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth");
            Assert.True(wide <= width, $"{address} is {wide} wide in {width}");
        }
    }

    private static ILocator Button(IPage page, string name) => page.GetByRole(AriaRole.Button, new() { Name = name });

    private static ILocator Link(IPage page, string name) => page.GetByRole(AriaRole.Link, new() { Name = name });

    private static ILocator Field(IPage page, string label) => page.GetByLabel(label, new() { Exact = true });

    private static async Task<string> AddressAsync(IPage page, string batch) =>
        (await page.GetByRole(AriaRole.Link, new() { Name = batch, Exact = true }).GetAttributeAsync("href"))!;

    private static async Task OnFirstScreenAsync(IPage page, string name, params ILocator[] parts)
    {
        (int width, int height) = (
            page.ViewportSize!.Width,
            page.ViewportSize.Height - (page.ViewportSize.Width < 600 ? NavigationOfPhone : 0)
        );
        foreach (ILocator part in parts)
        {
            LocatorBoundingBoxResult box = (await part.BoundingBoxAsync())!;
            Assert.True(box.Y + box.Height <= height, $"{name}: {part} ends at {box.Y + box.Height} of {height}");
        }

        int[] whole = await page.EvaluateAsync<int[]>(
            "() => [document.documentElement.scrollWidth, document.documentElement.scrollHeight]"
        );
        Assert.True(whole[0] <= width, $"{name} is {whole[0]} wide in {width}");
        Assert.True(width != Tablet || whole[1] <= TwoTabletScreens, $"{name} is {whole[1]} long");
    }
}
