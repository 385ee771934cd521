using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;
using System.Text;
using Coilwright.Browser.Tests.Ground;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Coilwright.Browser.Tests;

/// <summary>The bench answers by itself: clip on, the value stands still, the coil is recorded with its verdict; unclip.</summary>
public sealed class HandsFreeTests(Chromium chromium)
{
    private const string Off = "9.9E37";

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Twenty_four_coils_are_entered_hands_free_one_of_them_open_and_one_read_again()
    {
        string showing = Off;
        await using SimulatedMeter meter = new(_ => [showing + "\n"]);
        await using ServedShop shop = await ServedShop.StartAsync();
        Guid batch = await shop.BatchAsync(await shop.ReleasedRecipeAsync(), 24);
        await shop.RoomAsync("20 C");
        IPage page = await chromium.PageAsync(shop.Url);
        await HookUpAsync(page, meter);
        EntryPageDriver entry = new(page, batch);
        await entry.OpenAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Hands free" }).ClickAsync();
        ILocator shows = page.Locator("[data-meter-shows]");
        await Expect(shows).ToContainTextAsync("over range");

        async Task ClipAsync(string tag, double ohm, string kind)
        {
            await Expect(entry.Tag).ToHaveValueAsync(tag);
            showing = ohm.ToString("E5", CultureInfo.InvariantCulture);
            await Expect(entry.Verdict).ToContainTextAsync(tag);
            await Expect(entry.Verdict).ToContainTextAsync(kind);
            showing = Off;
            await Expect(shows).ToContainTextAsync("over range");
        }

        for (int coil = 1; coil <= 24; coil++)
        {
            string tag = string.Create(CultureInfo.InvariantCulture, $"C-{coil:000}");
            if (coil == 7)
            {
                await Expect(entry.Tag).ToHaveValueAsync(tag);
                await page.GetByRole(AriaRole.Button, new() { Name = "This coil is open" }).ClickAsync();
                await Expect(entry.Verdict).ToContainTextAsync(tag);
                await Expect(entry.Verdict).ToContainTextAsync("reject");
                continue;
            }

            await ClipAsync(tag, coil == 12 ? 7100 : 6180 + coil, coil == 12 ? "reject" : "pass"); // 6.18 kΩ ±4 %
        }

        // C-012 is read again: its tag is typed, and the clips go on as ever. Two readings that disagree are never settled by a machine.
        await entry.Tag.FillAsync("C-012");
        await ClipAsync("C-012", 6195, "hold");
        await entry.AllSavedAsync();
        IReadOnlyList<(string Tag, string Typed)> table = await entry.TableAsync();
        Assert.Equal(24, table.Count(row => row.Typed.Length > 0));
        Assert.Equal("open", table.Single(row => row.Tag == "C-007").Typed);
    }

    [Fact]
    public async Task A_coil_that_stays_on_is_recorded_once_also_by_a_second_tablet_and_after_a_reload()
    {
        string showing = Off;
        await using SimulatedMeter meter = new(_ => [showing + "\n"]);
        await using ServedShop shop = await ServedShop.StartAsync();
        Guid batch = await shop.BatchAsync(await shop.ReleasedRecipeAsync(), 5);
        await shop.RoomAsync("20 C");
        (IPage one, IPage other) = (await chromium.PageAsync(shop.Url), await chromium.PageAsync(shop.Url));
        await HookUpAsync(one, meter);
        (EntryPageDriver first, EntryPageDriver second) = (new(one, batch), new(other, batch));
        await first.OpenAsync();
        await second.OpenAsync();
        foreach (IPage page in new[] { one, other })
        {
            await page.GetByRole(AriaRole.Button, new() { Name = "Hands free" }).ClickAsync();
            await Expect(page.Locator("[data-meter-shows]")).ToContainTextAsync("over range");
        }

        showing = "6.18E3";
        await Expect(first.Sent).ToContainTextAsync("saved");
        await Expect(second.Sent).ToContainTextAsync("saved");
        await one.ReloadAsync();
        await one.GetByRole(AriaRole.Button, new() { Name = "Hands free" }).ClickAsync();
        await Expect(one.Locator("[data-meter-shows]")).ToContainTextAsync("6.18000 kΩ");
        Assert.Single(await first.TableAsync(), row => row.Typed.Length > 0);
    }

    [Fact]
    public async Task The_meter_is_read_into_the_field_and_the_person_decides()
    {
        await using SimulatedMeter meter = SimulatedMeter.Saying("6.18E3\n");
        await using ServedShop shop = await ServedShop.StartAsync();
        Guid batch = await shop.BatchAsync(await shop.ReleasedRecipeAsync(), 5);
        await shop.RoomAsync("20 C");
        IPage page = await chromium.PageAsync(shop.Url);
        await HookUpAsync(page, meter);
        EntryPageDriver entry = new(page, batch);
        await entry.OpenAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Read the meter" }).ClickAsync();
        await Expect(entry.Resistance).ToHaveValueAsync("6180 Ω");
        await Expect(entry.Resistance).ToBeFocusedAsync();
        Assert.DoesNotContain(await TableOfAnotherPageAsync(shop, batch), row => row.Typed.Length > 0);
        await page.Keyboard.PressAsync("Enter");
        await Expect(entry.Verdict).ToContainTextAsync("pass");
    }

    [Fact]
    public async Task An_old_winders_counter_is_seen_on_the_winders_page_and_a_break_with_it()
    {
        using TcpListener board = new(IPAddress.Loopback, 0);
        board.Start();
        await using ServedShop shop = await ServedShop.StartAsync();
        Guid batch = await shop.BatchAsync(await shop.ReleasedRecipeAsync(), 5);
        IPage page = await chromium.PageAsync(shop.Url);
        await page.GotoAsync($"/batches/{batch}/enter");
        string name = (await page.Locator("form[data-entry]").GetAttributeAsync("data-name"))!;
        using Process count = Count(board, shop.Url, name);
        try
        {
            using TcpClient link = await board.AcceptTcpClientAsync(Cancel);
            await page.GotoAsync($"/batches/{batch}/wind");
            ILocator live = page.Locator("[data-live-count]");
            for (int turns = 100; turns <= 800; turns += 100)
            {
                await link.GetStream().WriteAsync(Encoding.ASCII.GetBytes(FormattableString.Invariant($"{turns}\n")), Cancel);
                await Task.Delay(500, Cancel); // twelve thousand turns a minute: a fast winder
            }

            await Expect(live).ToContainTextAsync("800 turns");
            await Expect(live).ToContainTextAsync("the turns ended before the stop");
            await Expect(live).ToContainTextAsync("7\u202F200 to go");
        }
        finally
        {
            count.Kill();
        }
    }

    private static Process Count(TcpListener board, Uri shop, string batch)
    {
        ProcessStartInfo start = new("dotnet") { RedirectStandardError = true, RedirectStandardOutput = true };
        string[] arguments =
        [
            Path.Combine(AppContext.BaseDirectory, "coilwright.dll"),
            "count",
            "--tcp",
            FormattableString.Invariant($"127.0.0.1:{((IPEndPoint)board.LocalEndpoint).Port}"),
            "--stop",
            "8000",
            "--send",
            shop.ToString(),
            "--batch",
            batch,
        ];
        arguments.ToList().ForEach(start.ArgumentList.Add);
        return Process.Start(start)!;
    }

    /// <summary>By labels alone, as a person hooks a meter up; tried before it is used.</summary>
    private static async Task HookUpAsync(IPage page, SimulatedMeter meter)
    {
        await page.GotoAsync("/shop/instruments");
        await page.GetByLabel("Name", new() { Exact = true }).FillAsync("Bench 1");
        await page.GetByLabel("How it is asked").SelectOptionAsync("DC resistance, two wires, by SCPI");
        await page.GetByLabel("Where it hangs").SelectOptionAsync("on the network");
        await page.GetByLabel("Address").FillAsync(meter.Address);
        await page.SendAsync("Keep the instrument");
        await page.SendAsync("Try it: Bench 1");
        await Expect(page.GetByText("was understood as")).ToBeVisibleAsync();
    }

    private async Task<IReadOnlyList<(string Tag, string Typed)>> TableOfAnotherPageAsync(ServedShop shop, Guid batch) =>
        await new EntryPageDriver(await chromium.PageAsync(shop.Url), batch).TableAsync();
}
