using Coilwright.Browser.Tests.Ground;
using Microsoft.Playwright;

namespace Coilwright.Browser.Tests;

/// <summary>Every page can be read in the dark, in the light and on paper.</summary>
[Collection("browser")]
public sealed class ContrastTests(Chromium chromium)
{
    [Fact]
    public async Task Every_text_of_every_page_stands_out_from_what_lies_behind_it()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        IReadOnlyList<string> serials = await shop.PiecesAsync(2);
        Guid recipe = await shop.ReleasedRecipeAsync(),
            batch = await shop.BatchAsync(recipe, 4);
        IPage page = await chromium.PageAsync(shop.Url, 1024, 768);
        page.SetDefaultTimeout(90_000); // the first page of its kind is compiled as it is served
        EntryPageDriver entry = new(page, batch);
        await entry.OpenAsync();
        foreach (string typed in new[] { "6.25 k", "6.31 k", "7k2" })
        {
            await entry.TypeAsync(typed);
        }

        await entry.AllSavedAsync();
        List<string> faint = [];
        foreach (string address in Addresses(recipe, batch, serials[0]))
        {
            await page.OpenAsync(address);
            await page.EvaluateAsync("() => document.querySelectorAll('details').forEach(part => part.open = true)");
            foreach (
                (ColorScheme scheme, Media media) in new[]
                {
                    (ColorScheme.Dark, Media.Screen),
                    (ColorScheme.Light, Media.Screen),
                    (ColorScheme.Dark, Media.Print),
                }
            )
            {
                await page.EmulateMediaAsync(new() { ColorScheme = scheme, Media = media });
                faint.AddRange((await FaintText.OfAsync(page)).Select(text => $"{address} {scheme} {media}: {text}"));
            }
        }

        Assert.True(faint.Count == 0, string.Join('\n', faint));
    }

    /// <summary>
    /// Proof that the check fails where it must: grey on dark, a half-seen word, an example in an empty field, and a word in a drawing.
    /// </summary>
    [Theory]
    [InlineData("<p style='color:#666'>grey</p>", "p.")]
    [InlineData("<p style='opacity:.4'>half</p>", "p.")]
    [InlineData("<p style='background:#777;color:#aaa'>on a tint</p>", "p.")]
    [InlineData(
        "<style>#faint::placeholder{color:#555}</style><input id='faint' style='background:#20262e' placeholder='7.43 k'>",
        "input."
    )]
    [InlineData("<svg width='90' height='30'><text y='20' fill='#555'>drawn</text></svg>", "text.")]
    [InlineData("<p style='color:#eee'>plain</p>", null)]
    public async Task Faint_text_is_found(string html, string? found)
    {
        IPage page = await chromium.PageAsync(new Uri("http://localhost"));
        await page.SetContentAsync($"<body style='background:#171b21;color:#f1ece3'>{html}</body>");
        string[] faint = await FaintText.OfAsync(page);
        Assert.Equal(found is null ? 0 : 1, faint.Length);
        Assert.All(faint, text => Assert.Contains(" " + found, text, StringComparison.Ordinal));
    }

    private static string[] Addresses(Guid recipe, Guid batch, string serial) =>
        [
            "/",
            "/recipes",
            $"/recipes/{recipe}",
            $"/batches/{batch}",
            $"/batches/{batch}/enter",
            $"/batches/{batch}/wind",
            $"/batches/{batch}/coils/C-003",
            $"/charts?batch={batch}",
            "/spools",
            "/machines",
            "/compare",
            $"/recipes/{recipe}/solve?want=dcResistance%3D8.2k%CE%A9&vary=turns,gauge",
            $"/recipes/{recipe}/spread",
            $"/recipes/{recipe}/hold?ohmPerM=5.544",
            $"/recipes/{recipe}/variants?ask=longerCore",
            "/assembly",
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
        ];
}
