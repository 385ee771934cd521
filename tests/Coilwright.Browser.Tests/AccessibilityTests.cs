using System.Text.Json;
using Coilwright.Browser.Tests.Ground;
using Microsoft.Playwright;

namespace Coilwright.Browser.Tests;

/// <summary>Every page and paper through axe-core, the checker of accessibility rules; contrast has a test of its own.</summary>
[Collection("browser")]
public sealed class AccessibilityTests(Chromium chromium)
{
    private static readonly string s_axe = File.ReadAllText(
        Path.Combine(Ground.Demo.Root, "src", "Coilwright.Web", "client", "node_modules", "axe-core", "axe.min.js")
    );

    [Fact]
    public async Task No_page_and_no_paper_breaks_a_rule()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        IReadOnlyList<string> serials = await shop.PiecesAsync(2);
        Guid recipe = await shop.ReleasedRecipeAsync(),
            batch = await shop.BatchAsync(recipe, 4);
        IPage page = await chromium.PageAsync(shop.Url, 810, 1080);
        page.SetDefaultTimeout(90_000); // the first page of its kind is compiled as it is served
        EntryPageDriver entry = new(page, batch);
        await entry.OpenAsync();
        foreach (string typed in new[] { "6.25 k", "7k2" })
        {
            await entry.TypeAsync(typed);
        }

        await entry.AllSavedAsync();
        List<string> broken = [];
        foreach (string address in Addresses(recipe, batch, serials[0]))
        {
            await page.OpenAsync(address);
            broken.AddRange((await BrokenAsync(page)).Select(rule => $"{address} {rule}"));
        }

        Assert.True(broken.Count == 0, string.Join('\n', broken));
    }

    /// <summary>Proof that the check fails where it must.</summary>
    [Theory]
    [InlineData("<main><h1>a</h1><h3>b</h3></main>", "heading-order")]
    [InlineData("<h1>no landmark</h1>", "landmark-one-main")]
    [InlineData("<main><h1>a</h1><button aria-label='other'>this</button></main>", "label-content-name-mismatch")]
    [InlineData("<main><h1>a</h1><input></main>", "label")]
    [InlineData("<main><h1>a</h1><p>as it should be</p></main>", null)]
    public async Task A_broken_rule_is_found(string html, string? rule)
    {
        IPage page = await chromium.PageAsync(new Uri("http://localhost"));
        await page.SetContentAsync($"<!doctype html><html lang='en'><head><title>t</title></head><body>{html}</body></html>");
        string[] broken = await BrokenAsync(page);
        Assert.Equal(rule is null ? 0 : 1, broken.Count(one => rule is null || one.StartsWith(rule + ":", StringComparison.Ordinal)));
    }

    private static async Task<string[]> BrokenAsync(IPage page)
    {
        await page.EvaluateAsync(s_axe);
        JsonElement? found = await page.EvaluateAsync(
            """
            async () => (await axe.run(document, {
              rules: {
                'color-contrast': { enabled: false },
                'label-content-name-mismatch': { enabled: true },
                'target-size': { enabled: true },
              },
              resultTypes: ['violations'],
            })).violations.flatMap(rule => rule.nodes.map(node => `${rule.id}: ${node.target} ${node.html.slice(0, 160)}`))
            """
        );
        return found!.Value.Deserialize<string[]>()!;
    }

    private static string[] Addresses(Guid recipe, Guid batch, string serial) =>
        [
            "/",
            "/recipes",
            $"/recipes/{recipe}",
            $"/recipes/{recipe}?view=strings",
            $"/recipes/{recipe}?view=coil",
            $"/recipes/{recipe}?view=moves",
            $"/recipes/{recipe}?view=numbers",
            $"/recipes/{recipe}?view=history",
            $"/batches/{batch}",
            $"/batches/{batch}/enter",
            $"/batches/{batch}/wind",
            $"/batches/{batch}/coils/C-002",
            $"/charts?batch={batch}",
            "/spools",
            "/machines",
            $"/compare?design0={recipe}",
            $"/recipes/{recipe}/solve?want=dcResistance%3D8.2k%CE%A9&vary=turns,gauge",
            $"/recipes/{recipe}/spread",
            $"/recipes/{recipe}/hold?ohmPerM=5.544",
            $"/recipes/{recipe}/variants?ask=longerCore",
            "/assembly",
            "/sets",
            "/clocks",
            $"/test?piece={serial}",
            "/pieces",
            $"/pieces/{serial}",
            "/find?code=M-5",
            "/recall?code=M-5",
            "/shop",
            "/shop/rules",
            "/shop/files",
            "/magnets",
            "/magnets?show=M-5",
            "/batches?state=closed",
            "/measure",
            "/measure/resonance?peaks[0].frequency=9.19&peaks[1].frequency=4.14&peaks[1].capacitor=470&inductance=2.53",
            "/measure/curve",
            "/measure/sweep",
            "/measure/gauge",
            "/measure/sample?lot=500&aql=1&level=II",
            "/batches",
            "/machines/new",
            "/recipes/new",
            "/recipes/new?shape=bass-rows",
            "/no-such-page",
            $"/recipes/{recipe}/setup",
            $"/recipes/{recipe}/papers/card",
            $"/recipes/{recipe}/papers/wiring",
            $"/batches/{batch}/tags",
            $"/pieces/{serial}/papers/spec",
        ];
}
