using System.Globalization;
using System.Net.Http.Json;
using System.Text.Json;
using Coilwright.Browser.Tests.Ground;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Coilwright.Browser.Tests;

/// <summary>The server dies as in a power cut; what was typed and what was confirmed is still there.</summary>
public sealed class PowerCutTests(Chromium chromium)
{
    [Fact]
    public async Task Ten_kills_during_a_hundred_coils_lose_no_reading_and_double_none()
    {
        const int Coils = 100;
        await using ServedShop shop = await ServedShop.StartAsync();
        Guid batch = await shop.BatchAsync(await shop.ReleasedRecipeAsync(), Coils);
        await shop.RoomAsync("20 C");
        EntryPageDriver entry = new(await chromium.PageAsync(shop.Url), batch);
        await entry.OpenAsync();
        await Expect(entry.Resistance).ToBeFocusedAsync();

        int kills = 0;
        for (int coil = 1; coil <= Coils; coil++)
        {
            await entry.TypeAsync(Typed(coil));
            if (coil % 10 == 3)
            {
                await shop.KillAsync();
                kills++;
            }
            else if (coil % 10 == 6)
            {
                await shop.RestartAsync();
            }
        }

        Assert.Equal(10, kills);
        await entry.AllSavedAsync();
        IReadOnlyList<(string Tag, string Typed)> table = await entry.TableAsync();
        Assert.Equal(Enumerable.Range(1, Coils).Select(Typed), table.Select(row => row.Typed).Order(StringComparer.Ordinal));
        Assert.Equal(Coils, table.Select(row => row.Tag).Distinct().Count());
    }

    [Fact]
    public async Task Typed_but_unsent_values_are_still_on_the_page_after_a_kill_and_a_restart()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        Guid recipe = await shop.ReleasedRecipeAsync();
        Guid batch = await shop.BatchAsync(recipe, 5);
        IPage page = await chromium.PageAsync(shop.Url);
        EntryPageDriver entry = new(page, batch);
        await entry.OpenAsync();
        await page.Keyboard.TypeAsync("6.2");
        IPage second = await page.Context.NewPageAsync();
        await second.GotoAsync($"/recipes/{recipe}");
        await second.GetByLabel("Turns", new() { Exact = true }).FillAsync("8050");
        await second.GetByLabel("Reason for the change").FillAsync("a little hotter");

        await shop.KillAsync();
        await shop.RestartAsync();
        await page.ReloadAsync();
        await second.ReloadAsync();

        await Expect(entry.Resistance).ToHaveValueAsync("6.2");
        await Expect(second.GetByLabel("Turns", new() { Exact = true })).ToHaveValueAsync("8050");
        await Expect(second.GetByLabel("Reason for the change")).ToHaveValueAsync("a little hotter");
    }

    [Fact]
    public async Task An_entry_sent_twice_is_kept_once()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        Guid batch = await shop.BatchAsync(await shop.ReleasedRecipeAsync(), 5);
        object entry = new
        {
            id = Guid.NewGuid(),
            batchId = batch,
            tag = "C-001",
            resistance = "6.18 k",
            temperature = "20 C",
        };
        foreach (bool repeated in new[] { false, true })
        {
            using HttpContent content = JsonContent.Create(entry);
            using HttpResponseMessage answer = await shop.SendAsync(batch, content);
            JsonElement outcome = await answer.Content.ReadFromJsonAsync<JsonElement>(TestContext.Current.CancellationToken);
            Assert.Equal(repeated, outcome.GetProperty("duplicate").GetBoolean());
        }

        Assert.Single(await new EntryPageDriver(await chromium.PageAsync(shop.Url), batch).TableAsync());
    }

    /// <summary>Every coil has a figure of its own, so that a lost or doubled one shows.</summary>
    private static string Typed(int coil) => string.Create(CultureInfo.InvariantCulture, $"6.{coil:000} k");
}
