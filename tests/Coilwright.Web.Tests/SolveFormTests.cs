using System.Net;

namespace Coilwright.Web.Tests;

/// <summary>Work backwards with scripts off: rows come and go, what is wrong stands beside its row, and a question is an address.</summary>
public sealed class SolveFormTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Rows_and_ticks_are_filled_in_kept_and_become_an_address()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        string at = await RecipeAsync(shop);

        string more = await PageAsync(
            shop,
            at + "?quantity=dcResistance&how=about&value=8.2&upto=&may=turns&turns-from=5,000&turns-to=&more=yes"
        );
        Assert.Contains("from 8.12 kΩ to 8.28 kΩ", more, StringComparison.Ordinal);
        Assert.Contains("Remove want 2", more, StringComparison.Ordinal);
        Assert.Contains("value=\"8.2\"", more, StringComparison.Ordinal);
        Assert.Contains("value=\"5,000\"", more, StringComparison.Ordinal);

        string less = await PageAsync(
            shop,
            at + "?quantity=dcResistance&how=about&value=8.2&upto=&quantity=loadedPeak&how=atleast&value=3.3&upto=&may=turns&away=0"
        );
        Assert.DoesNotContain("Remove want 2", less, StringComparison.Ordinal);
        Assert.Contains("value=\"3.3\"", less, StringComparison.Ordinal);

        using HttpResponseMessage asked = await shop.Client.GetAsync(
            new Uri(
                at + "?quantity=dcResistance&how=between&value=8&upto=8.4&quantity=&how=about&value=&upto=&may=turns&may=gauge",
                UriKind.Relative
            ),
            Cancel
        );
        Assert.Equal(HttpStatusCode.Found, asked.StatusCode);
        Assert.Equal(
            $"{at}?want={Uri.EscapeDataString("dcResistance=8 kΩ..8.4 kΩ")}&vary={Uri.EscapeDataString("turns, gauge")}",
            asked.Headers.Location!.OriginalString
        );
    }

    [Fact]
    public async Task What_is_wrong_stands_beside_its_row_and_stays()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        string at = await RecipeAsync(shop);
        using HttpResponseMessage answer = await shop.Client.GetAsync(
            new Uri(
                at
                    + "?quantity=dcResistance&how=atleast&value=lots&upto=&quantity=loadedPeak&how=between&value=3&upto="
                    + "&may=turns&turns-from=900&turns-to=500",
                UriKind.Relative
            ),
            Cancel
        );
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        string page = WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync(Cancel));
        Assert.Contains("Want 1:", page, StringComparison.Ordinal);
        Assert.Contains("Say up to how much", page, StringComparison.Ordinal);
        Assert.Contains("Turns:", page, StringComparison.Ordinal);
        Assert.Contains("value=\"lots\"", page, StringComparison.Ordinal);
        Assert.Contains("value=\"900\"", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_link_with_the_text_of_a_question_fills_the_rows_and_what_stands_against_what_is_said()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        string at = await RecipeAsync(shop);
        string link =
            at
            + "?want="
            + Uri.EscapeDataString("DC resistance >= 12 kΩ\ninductance <= 2 H")
            + "&vary="
            + Uri.EscapeDataString("turns = 5000..9000");
        string page = await PageAsync(shop, link);
        for (int tried = 0; tried < 60 && page.Contains("http-equiv=\"refresh\"", StringComparison.Ordinal); tried++)
        {
            page = await PageAsync(shop, link);
        }

        Assert.Contains("Cannot be met", page, StringComparison.Ordinal);
        Assert.Contains("DC resistance at 20 °C at least 12.0 kΩ: the nearest it came is", page, StringComparison.Ordinal);
        Assert.Contains("can be met, and then DC resistance at 20 °C comes no nearer than", page, StringComparison.Ordinal);
        Assert.Contains("missed by", page, StringComparison.Ordinal);
        Assert.Contains("value=\"12 kΩ\"", page, StringComparison.Ordinal);
        Assert.Contains("value=\"5000\"", page, StringComparison.Ordinal);
        Assert.DoesNotContain("dcResistance", Visible(page), StringComparison.Ordinal);

        string strange = await PageAsync(shop, at + "?want=loudness%3D3&vary=turns");
        Assert.Contains("value=\"loudness=3\"", strange, StringComparison.Ordinal);
        Assert.Contains("no such quantity", strange, StringComparison.Ordinal);
    }

    private static string Visible(string page) =>
        System.Text.RegularExpressions.Regex.Replace(
            page,
            "<input type=\"hidden\"[^>]*>|<option[^>]*>|href=\"[^\"]*\"|action=\"[^\"]*\"",
            ""
        );

    private static async Task<string> PageAsync(ServedShop shop, string address)
    {
        using HttpResponseMessage answer = await shop.Client.GetAsync(new Uri(address, UriKind.Relative), Cancel);
        return WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync(Cancel));
    }

    private static async Task<string> RecipeAsync(ServedShop shop)
    {
        Guid id = Guid.NewGuid();
        string recipe = await File.ReadAllTextAsync(Path.Combine(AppContext.BaseDirectory, "recipes", "harbour-bridge.json"), Cancel);
        Assert.Empty((await shop.Services.Recipes.SaveAsync(id, recipe, "", "Joss", 0, Cancel)).Problems);
        return $"/recipes/{id}/solve";
    }
}
