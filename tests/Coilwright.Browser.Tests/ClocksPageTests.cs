using System.Text.RegularExpressions;
using Coilwright.Browser.Tests.Ground;
using Coilwright.Workshop.Steps;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Coilwright.Browser.Tests;

/// <summary>The page of clocks runs by itself, by the shop's clock; an alarm of the bath stands until a person lifts it.</summary>
public sealed class ClocksPageTests(Chromium chromium)
{
    private const string CountTones =
        "window.tones = 0; const make = AudioContext.prototype.createOscillator; AudioContext.prototype.createOscillator = function () "
        + "{ window.tones++; return make.call(this); };";

    [Fact]
    public async Task What_runs_turns_at_its_time_with_a_word_and_a_sound_by_the_shops_clock_and_not_the_tablets()
    {
        await using HostedShop shop = await HostedShop.StartAsync();
        IReadOnlyList<string> serials = await shop.PiecesAsync(2);
        TimeSpan least = await IntoTheBathAsync(shop, serials);
        IPage page = await OpenAsync(shop);
        ILocator row = page.GetByRole(AriaRole.Row, new() { Name = serials[0] }),
            basket = page.GetByRole(AriaRole.Listitem).Filter(new() { HasText = "Basket K9" }).Last;
        await Expect(row).ToContainTextAsync("running");
        await Expect(row)
            .ToContainTextAsync(new Regex(FormattableString.Invariant($"in ({least.TotalMinutes:0}|{least.TotalMinutes - 1:0}) min")));
        await Expect(page.GetByText("Sound waits for a first touch")).ToBeVisibleAsync();
        await page.GetByRole(AriaRole.Heading, new() { Level = 1 }).ClickAsync();
        await Expect(page.GetByText("Sound waits for a first touch")).ToBeHiddenAsync();

        await page.RouteAsync("**/api/now", route => route.AbortAsync()); // the server is away from here on
        await page.Clock.FastForwardAsync((long)(least - TimeSpan.FromSeconds(90)).TotalMilliseconds);
        await Expect(row).ToContainTextAsync("in 1 min");
        await Expect(row).ToContainTextAsync("running");
        await Expect(JustNow(page)).ToHaveCountAsync(0);
        await page.Clock.FastForwardAsync("01:31");
        await Expect(row).ToContainTextAsync("may end");
        await Expect(row).Not.ToContainTextAsync("running");
        await Expect(basket).ToContainTextAsync("potting may end");
        await Expect(JustNow(page).Filter(new() { HasText = "Basket K9: potting may end" })).ToHaveCountAsync(1);
        Assert.Equal(2, await page.EvaluateAsync<int>("window.tones"));

        await page.GetByRole(AriaRole.Button, new() { Name = "Sound on" }).ClickAsync();
        await page.Clock.FastForwardAsync("10:00:00"); // the tablet slept: all that fell due meanwhile stands there at once
        await Expect(row).ToContainTextAsync("late");
        Assert.Equal(2, await page.EvaluateAsync<int>("window.tones"));
    }

    /// <summary>The first touch is meant for a button: what the touch ends must not move the button away before the finger is up.</summary>
    [Fact]
    public async Task The_note_about_sound_goes_and_nothing_moves_under_the_finger()
    {
        await using HostedShop shop = await HostedShop.StartAsync();
        await IntoTheBathAsync(shop, await shop.PiecesAsync(1));
        IPage page = await OpenAsync(shop);
        ILocator note = page.GetByText("Sound waits for a first touch"),
            more = page.GetByText("More", new() { Exact = true });
        await Expect(note).ToBeVisibleAsync();
        LocatorBoundingBoxResult before = (await more.BoundingBoxAsync())!;
        await page.Mouse.MoveAsync(before.X + before.Width / 2, before.Y + before.Height / 2);
        await page.Mouse.DownAsync();
        await Expect(note).ToBeHiddenAsync();
        Assert.Equal(before.Y, (await more.BoundingBoxAsync())!.Y);
        await page.Mouse.UpAsync();
        await Expect(page.GetByLabel("What was entered wrongly")).ToBeVisibleAsync();
    }

    [Fact]
    public async Task Ink_that_runs_out_warns_also_when_the_tablets_clock_was_set_while_it_slept()
    {
        await using HostedShop shop = await HostedShop.StartAsync();
        Assert.Empty(await shop.Services.Winding.SetRoomTemperatureAsync("20 °C", "Mara", CancellationToken.None));
        Assert.Empty(await shop.Services.Pieces.Ink.MixAsync(Guid.NewGuid(), "I-7", "A-11, B-4", "20 °C", "Ines", CancellationToken.None));
        InkMix mix = Assert.Single(await shop.Services.Records.Steps.InkMixesAsync(5, CancellationToken.None)).ToMix();
        IPage page = await OpenAsync(shop);
        ILocator card = page.GetByRole(AriaRole.Listitem).Filter(new() { HasText = "Mix I-7" }).Last;
        await Expect(card).ToContainTextAsync("throw away at");
        shop.Clock.Advance(mix.DiscardUtc - shop.Clock.GetUtcNow() + TimeSpan.FromMinutes(2));
        await page.Clock.SetSystemTimeAsync(new DateTime(2025, 1, 1, 0, 0, 0, DateTimeKind.Utc));
        await page.EvaluateAsync("document.dispatchEvent(new Event('visibilitychange'))");
        await Expect(card).ToContainTextAsync("was to be thrown away");
        await Expect(JustNow(page)).ToContainTextAsync(["Ink mix I-7 has run out"]);
        Assert.Equal(1, await page.EvaluateAsync<int>("window.tones"));
    }

    [Fact]
    public async Task An_alarm_of_the_bath_stands_on_every_page_until_a_person_lifts_it()
    {
        await using HostedShop shop = await HostedShop.StartAsync();
        IReadOnlyList<string> serials = await shop.PiecesAsync(2);
        await IntoTheBathAsync(shop, [serials[1]]);
        IPage page = await chromium.PageAsync(shop.Url);
        await page.GotoAsync("/clocks?choose=yes");
        await page.GetByLabel("Bath reads now").FillAsync("67");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep the reading" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("the bath read 67.0 °C", new() { IgnoreCase = true });
        await page.GotoAsync("/clocks?choose=yes");
        await Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("the bath read 67.0 °C", new() { IgnoreCase = true });
        await Expect(page.GetByRole(AriaRole.Listitem).Filter(new() { HasText = "Basket K9" }).Last).ToContainTextAsync("ALARM");
        await Expect(page.GetByRole(AriaRole.Table).GetByRole(AriaRole.Row).Nth(1)).ToContainTextAsync("HELD");
        await Expect(page.GetByRole(AriaRole.Table).GetByRole(AriaRole.Row).Nth(1)).ToContainTextAsync(serials[1]);
        await page.GotoAsync("/");
        ILocator needed = page.GetByRole(AriaRole.Region, new() { Name = "Needs a person" });
        await Expect(needed.GetByRole(AriaRole.Listitem).Filter(new() { HasText = "Basket K9" }))
            .ToContainTextAsync("the bath read 67.0 °C");
        await Expect(needed).ToContainTextAsync("One piece is held");
        await page.GotoAsync($"/pieces/{serials[1]}");
        await Expect(page.GetByText(new Regex("HELD: the bath read 67.0 °C, over the 65.0 °C"))).ToBeVisibleAsync();
        await Expect(page.GetByRole(AriaRole.Main).GetByRole(AriaRole.Link, new() { Name = "Final test" })).ToHaveCountAsync(0);

        await page.GetByLabel("What was found, and why it may go on").FillAsync("no bobbin is warped");
        await page.GetByRole(AriaRole.Button, new() { Name = "Lift the hold" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "Lift the hold" })).ToHaveCountAsync(0);
        await page.GotoAsync("/clocks?choose=yes");
        await Expect(page.GetByRole(AriaRole.Alert)).ToHaveCountAsync(0);
        await Expect(page.GetByRole(AriaRole.Row, new() { Name = serials[1] })).ToContainTextAsync("running");
    }

    [Fact]
    public async Task A_piece_that_failed_its_final_test_is_held_and_says_why_until_it_is_tested_again()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        string serial = (await shop.PiecesAsync(1))[0];
        IPage page = await chromium.PageAsync(shop.Url);
        await page.GotoAsync("/clocks?choose=yes");
        await page.GetByLabel("Select " + serial).CheckAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Begin or do the step" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Row, new() { Name = serial })).ToContainTextAsync("may go to final test");
        await page.GotoAsync($"/test?piece={serial}");
        await page.GetByLabel("Resistance", new() { Exact = true }).FillAsync("open");
        await page.GetByRole(AriaRole.Button, new() { Name = "Judge the piece" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync("fail: open", new() { Timeout = 30_000 });
        await page.GotoAsync("/test");
        ILocator card = page.GetByRole(AriaRole.Listitem).Filter(new() { HasText = serial });
        await Expect(card).ToContainTextAsync("HELD");
        await Expect(card).ToContainTextAsync("fail: open");
        await Expect(card).Not.ToContainTextAsync("may move");
        await page.GotoAsync($"/pieces/{serial}");
        await Expect(page.GetByRole(AriaRole.Link, new() { Name = "Test it again" })).ToBeVisibleAsync();
    }

    [Fact]
    public async Task Without_scripts_a_card_says_how_long_and_leads_to_its_next_step_with_its_pieces_ticked()
    {
        await using HostedShop shop = await HostedShop.StartAsync();
        IReadOnlyList<string> serials = await shop.PiecesAsync(2, magnets: false);
        Assert.Empty(await shop.Services.Pieces.Ink.MixAsync(Guid.NewGuid(), "I-7", "A-11", "20 °C", "Ines", CancellationToken.None));
        IPage page = await chromium.PageAsync(shop.Url, 810, 1080, scripts: false);
        await page.GotoAsync("/clocks");
        await Expect(Station(page, "Marking")).ToContainTextAsync("8 h 0 min");
        await Expect(Station(page, "Magnets")).ToContainTextAsync($"{serials[0]}, {serials[1]}");
        await Station(page, "Magnets").GetByRole(AriaRole.Link, new() { Name = "Charge them" }).ClickAsync();
        await Expect(page.GetByLabel("Select " + serials[0])).ToBeCheckedAsync();
        await Expect(page.GetByLabel("Select " + serials[1])).ToBeCheckedAsync();
        await page.GetByLabel("Magnets charged to").FillAsync("full");
        await page.GetByRole(AriaRole.Button, new() { Name = "Begin or do the step" }).ClickAsync();
        await Station(page, "Potting").GetByRole(AriaRole.Link, new() { Name = "Into a basket" }).ClickAsync();
        await page.GetByLabel("Basket").FillAsync("K1");
        await page.GetByLabel("Lot of the bath").FillAsync("W-3");
        await page.GetByLabel("Bath reads", new() { Exact = true }).FillAsync("60");
        await page.GetByLabel("Plastics bear").FillAsync("65");
        await page.GetByRole(AriaRole.Button, new() { Name = "Ticked pieces into the bath" }).ClickAsync();
        await Expect(Station(page, "Potting")).ToContainTextAsync("2 pieces, wax lot W-3");
        await Expect(Station(page, "Potting")).ToContainTextAsync("10 min");
    }

    [Fact]
    public async Task A_card_does_its_own_step_at_one_press()
    {
        await using HostedShop shop = await HostedShop.StartAsync();
        string serial = (await shop.PiecesAsync(1))[0];
        await IntoTheBathAsync(shop, [serial]);
        shop.Clock.Advance(TimeSpan.FromMinutes(12));
        IPage page = await chromium.PageAsync(shop.Url, 810, 1080);
        await page.GotoAsync("/clocks");
        await page.SendAsync("Basket out");
        shop.Clock.Advance(TimeSpan.FromMinutes(31));
        Assert.Empty(await shop.Services.Pieces.Ink.MixAsync(Guid.NewGuid(), "I-7", "A-11", "20 °C", "Ines", CancellationToken.None));
        await page.GotoAsync("/clocks");
        await Expect(page.GetByLabel("With the mix")).ToHaveValueAsync("I-7");
        await Station(page, "Marking").GetByRole(AriaRole.Button, new() { Name = "Marking is done" }).ClickAsync();
        await Expect(Station(page, "Final test")).ToContainTextAsync("ink cures", new() { Timeout = 30_000 });
        await Expect(Station(page, "Final test")).ToContainTextAsync("24 h 0 min");
    }

    private static ILocator Station(IPage page, string name) => page.GetByRole(AriaRole.Region, new() { Name = name });

    private static ILocator JustNow(IPage page) => page.GetByRole(AriaRole.List, new() { Name = "Just now" }).GetByRole(AriaRole.Listitem);

    private static async Task<TimeSpan> IntoTheBathAsync(HostedShop shop, IReadOnlyList<string> serials)
    {
        Assert.Empty(
            await shop.Services.Pieces.Potting.InAsync(
                new BasketEntry
                {
                    Id = Guid.NewGuid(),
                    Label = "K9",
                    Lot = "W-3",
                    Bath = "60 °C",
                    Limit = "65 °C",
                    Pieces = serials,
                },
                CancellationToken.None
            )
        );
        return Assert.Single(await shop.Services.Pieces.Potting.GoingAsync(CancellationToken.None)).ToBasket().EarliestOutUtc
            - shop.Clock.GetUtcNow();
    }

    /// <summary>The page of clocks on a tablet whose own clock is months off.</summary>
    private async Task<IPage> OpenAsync(HostedShop shop)
    {
        IPage page = await chromium.PageAsync(shop.Url, 810, 1080);
        await page.AddInitScriptAsync(CountTones);
        await page.Clock.InstallAsync(new() { TimeDate = new DateTime(2026, 7, 1, 4, 0, 0, DateTimeKind.Utc) });
        await page.GotoAsync("/clocks?choose=yes");
        return page;
    }
}
