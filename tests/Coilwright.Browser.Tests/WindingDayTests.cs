using System.Globalization;
using Coilwright.Browser.Tests.Ground;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Coilwright.Browser.Tests;

/// <summary>A day at the winder: sixty coils by keyboard alone, with what goes wrong in a shop.</summary>
public sealed class WindingDayTests(Chromium chromium)
{
    private const int Coils = 60;

    [Fact]
    public async Task Sixty_coils_by_keyboard_survive_a_break_a_network_cut_a_server_kill_and_a_duplicate_send()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        Guid batch = await shop.BatchAsync(await shop.ReleasedRecipeAsync(), Coils);
        await shop.RoomAsync("20 C");
        IPage page = await chromium.PageAsync(shop.Url);
        EntryPageDriver entry = new(page, batch);
        await entry.OpenAsync();
        await Expect(entry.Resistance).ToBeFocusedAsync();

        for (int coil = 1; coil <= Coils; coil++)
        {
            switch (coil)
            {
                case 15:
                    await entry.AllSavedAsync();
                    await BreakAsync(page, batch);
                    await entry.OpenAsync();
                    await Expect(entry.Resistance).ToBeFocusedAsync();
                    await Expect(entry.Tag).ToHaveValueAsync("C-015");
                    break;
                case 25:
                    await page.Context.SetOfflineAsync(true);
                    break;
                case 30:
                    await page.Context.SetOfflineAsync(false);
                    break;
                case 40:
                    await shop.KillAsync();
                    break;
                case 45:
                    await shop.RestartAsync();
                    break;
                case 50:
                    await entry.AllSavedAsync();
                    await LoseNextAnswerAsync(page);
                    break;
            }

            await entry.TypeAsync(Typed(coil));
        }

        await entry.AllSavedAsync();
        IReadOnlyList<(string Tag, string Typed)> table = await entry.TableAsync();
        Assert.Equal(
            Enumerable.Range(1, Coils).Select(coil => (Tag(coil), Typed(coil))),
            table.Select(row => (row.Tag.Split(' ')[0], row.Typed)).OrderBy(row => row.Item1, StringComparer.Ordinal)
        );
        await Expect(page.GetByRole(AriaRole.Row, new() { Name = "C-015 spliced" })).ToBeVisibleAsync();
    }

    /// <summary>The break is logged by the counter's figures and one key; a power cut follows, and the coil is where it was.</summary>
    [Fact]
    public async Task After_a_power_cut_the_machine_view_shows_the_coil_at_its_last_count()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        Guid batch = await shop.BatchAsync(await shop.ReleasedRecipeAsync(), 3);
        IPage page = await chromium.PageAsync(shop.Url);
        await page.GotoAsync($"/batches/{batch}/wind");
        await page.GetByRole(AriaRole.Button, new() { Name = "Begin C-001" }).PressAsync("Enter");
        await Expect(page.GetByLabel("Counter now")).ToBeFocusedAsync();
        await page.Keyboard.TypeAsync("6100b");
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "C-001 broke at 6,100 of 8,000 turns" })).ToBeVisibleAsync();
        await shop.KillAsync();
        await shop.RestartAsync();
        await page.ReloadAsync();
        await Expect(page.GetByRole(AriaRole.Main)).ToContainTextAsync("inductance falls to 58 %");
        await page.GetByRole(AriaRole.Button, new() { Name = "Scrap C-001" }).PressAsync("Enter");
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "Begin C-001" })).ToBeVisibleAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Undo: C-001 scrapped" }).PressAsync("Enter");
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "C-001 broke at 6,100" })).ToBeVisibleAsync();
    }

    [Fact]
    public async Task A_scanned_tag_opens_its_coil_and_in_entry_it_is_taken_for_a_tag()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        Guid batch = await shop.BatchAsync(await shop.ReleasedRecipeAsync(), 20);
        await shop.RoomAsync("20 C");
        IPage page = await chromium.PageAsync(shop.Url);
        EntryPageDriver entry = new(page, batch);
        await entry.OpenAsync();
        await entry.TypeAsync("H-12/C-014");
        await Expect(entry.Tag).ToHaveValueAsync("C-014");
        await Expect(entry.Resistance).ToBeFocusedAsync();
        await entry.TypeAsync("+6.21030E+03,+9.91E+37"); // a meter that types, with a second value behind
        await Expect(entry.Verdict).ToContainTextAsync("6.21");
        await entry.AllSavedAsync();

        await page.GotoAsync("/");
        await page.GetByLabel("Find a serial, tag, spool, lot or customer").FillAsync("H-12/C-014");
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Coil C-014" })).ToBeVisibleAsync();
        await Expect(page.GetByRole(AriaRole.Table, new() { Name = "Readings" })).ToContainTextAsync("6210.3");
    }

    [Fact]
    public async Task The_stop_count_is_read_from_two_metres()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        Guid batch = await shop.BatchAsync(await shop.ReleasedRecipeAsync(), 3);
        IPage page = await chromium.PageAsync(shop.Url, 810, 1080);
        await page.GotoAsync($"/batches/{batch}/wind");
        string size = await page.GetByText("8,000", new() { Exact = true })
            .EvaluateAsync<string>("stop => getComputedStyle(stop).fontSize");

        // A figure 1/200 of its distance high is read (common practice, no source): 10 mm at 2 m. Figures are 0.7 of the type size; a CSS
        // pixel is 0.26 mm at least on a tablet's own scale.
        Assert.True(double.Parse(size.Replace("px", "", StringComparison.Ordinal), CultureInfo.InvariantCulture) * 0.7 * 0.26 >= 10, size);
    }

    private static async Task BreakAsync(IPage page, Guid batch)
    {
        await page.GotoAsync($"/batches/{batch}/wind");
        await page.GetByRole(AriaRole.Button, new() { Name = "Release the series" }).PressAsync("Enter");
        await page.GetByRole(AriaRole.Button, new() { Name = "Begin C-015" }).PressAsync("Enter");
        await Expect(page.GetByLabel("Counter now")).ToBeFocusedAsync();
        await page.Keyboard.TypeAsync("6100b");
        await page.GetByRole(AriaRole.Button, new() { Name = "Splice C-015" }).PressAsync("Enter");
        await Expect(page.GetByRole(AriaRole.Main)).ToContainTextAsync("C-015, spliced");
    }

    /// <summary>The server keeps the next entry and its answer is lost on the way: the tablet sends it again.</summary>
    private static async Task LoseNextAnswerAsync(IPage page) =>
        await page.RouteAsync(
            "**/api/batches/*/coils",
            async route =>
            {
                await route.FetchAsync();
                await route.AbortAsync();
            },
            new() { Times = 1 }
        );

    private static string Tag(int coil) => string.Create(CultureInfo.InvariantCulture, $"C-{coil:000}");

    /// <summary>Every coil has a figure of its own, so that a lost or doubled one shows.</summary>
    private static string Typed(int coil) => string.Create(CultureInfo.InvariantCulture, $"6.1{coil:00} k");
}
