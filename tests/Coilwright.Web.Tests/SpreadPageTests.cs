using System.Net;

namespace Coilwright.Web.Tests;

/// <summary>The spread of a run with scripts off: it says that it works, can be stopped, and leads with what to mend.</summary>
public sealed class SpreadPageTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_answer_comes_first_and_the_rest_is_folded()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        Guid id = Guid.NewGuid();
        string recipe = await File.ReadAllTextAsync(Path.Combine(AppContext.BaseDirectory, "recipes", "harbour-bridge.json"), Cancel);
        Assert.Empty((await shop.Services.Recipes.SaveAsync(id, recipe, "", "Joss", 0, Cancel)).Problems);
        string page = await PageAsync(shop, id);
        for (int tried = 0; tried < 90 && page.Contains("http-equiv=\"refresh\"", StringComparison.Ordinal); tried++)
        {
            Assert.Contains("Drawing the run", page, StringComparison.Ordinal);
            Assert.Contains("Stop, and show what was drawn", page, StringComparison.Ordinal);
            page = await PageAsync(shop, id);
        }

        string[] order =
        [
            "% of pieces within limits",
            "Mend first: ",
            "What would narrow it, the most first",
            "upper limit",
            "Every quantity and its causes",
        ];
        int[] places = [.. order.Select(words => page.IndexOf(words, StringComparison.Ordinal))];
        Assert.DoesNotContain(-1, places);
        Assert.Equal(places.Order(), places);
        Assert.DoesNotContain("<details class=\"group\" open", page, StringComparison.Ordinal);

        using FormUrlEncodedContent nothing = KnownHostsTests.Form();
        using HttpResponseMessage again = await shop.Client.PostAsync(
            new Uri($"/recipes/{id}/spread/again", UriKind.Relative),
            nothing,
            Cancel
        );
        Assert.Equal(HttpStatusCode.Found, again.StatusCode);
    }

    private static async Task<string> PageAsync(ServedShop shop, Guid id) =>
        WebUtility.HtmlDecode(await shop.Client.GetStringAsync(new Uri($"/recipes/{id}/spread", UriKind.Relative), Cancel));
}
