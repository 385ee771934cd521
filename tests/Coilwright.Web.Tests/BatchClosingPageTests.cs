using System.Net;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Web.Tests;

/// <summary>A batch is closed before its number on its page, and reopened there.</summary>
public sealed class BatchClosingPageTests
{
    private const string Recipe = """
        {"format":"coilwright.recipe/1","name":"Pier","coils":[{"name":"main","bobbin":{"coreLength":"64 mm","coreWidth":"6 mm",
         "windingHeight":"11 mm"},"wire":{"gauge":"AWG 42"},"winding":{"turns":8000}}]}
        """;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_closed_batch_says_so_on_every_page_and_comes_back()
    {
        await using PagesOfShop shop = await PagesOfShop.StartAsync();
        RevisionRecord revision = await shop.ReleasedAsync(Recipe);
        BatchRecord batch = await shop.PlantedAsync(revision, "P-1", "main");
        string page = $"/batches/{batch.Id}";
        Assert.Contains("Close the batch before its number", await GetAsync(shop, page), StringComparison.Ordinal);
        Assert.Contains("Enter C-001", await GetAsync(shop, "/"), StringComparison.Ordinal);

        (HttpStatusCode status, string refused) = await PostAsync(shop, page + "/close", ("note", ""), ("person", "Mara"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, status);
        Assert.Contains("Why does it end here?", refused, StringComparison.Ordinal);
        Assert.Contains("value=\"Mara\"", refused, StringComparison.Ordinal);

        await PostAsync(shop, page + "/close", ("note", "the wire ran out"), ("person", "Mara"));
        Assert.Contains("Closed with 0 of 4 coils: the wire ran out", await GetAsync(shop, page), StringComparison.Ordinal);
        Assert.DoesNotContain("P-1", await GetAsync(shop, "/"), StringComparison.Ordinal);
        Assert.DoesNotContain("Enter C-001", await GetAsync(shop, "/batches"), StringComparison.Ordinal);
        Assert.Contains("P-1", await GetAsync(shop, "/batches?state=closed"), StringComparison.Ordinal);
        Assert.DoesNotContain("P-1", await GetAsync(shop, "/batches?state=open"), StringComparison.Ordinal);
        Assert.Contains("reopened", await GetAsync(shop, page + "/enter"), StringComparison.Ordinal);
        Assert.Contains("closed: the wire ran out", await GetAsync(shop, "/recall?code=P-1"), StringComparison.Ordinal);
        (HttpStatusCode late, string told) = await PostAsync(shop, page + "/enter", ("tag", "C-001"), ("resistance", "6.2 k"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, late);
        Assert.Contains("nothing more is wound or entered into it", told, StringComparison.Ordinal);

        await PostAsync(shop, page + "/reopen");
        Assert.Contains("Enter C-001", await GetAsync(shop, page), StringComparison.Ordinal);
    }

    private static async Task<string> GetAsync(PagesOfShop shop, string address) =>
        WebUtility.HtmlDecode(await shop.Client.GetStringAsync(new Uri(address, UriKind.Relative), Cancel));

    private static async Task<(HttpStatusCode Status, string Page)> PostAsync(
        PagesOfShop shop,
        string address,
        params (string Name, string Value)[] fields
    )
    {
        using FormUrlEncodedContent form = new(fields.Select(field => KeyValuePair.Create(field.Name, field.Value)));
        using HttpResponseMessage answer = await shop.Client.PostAsync(new Uri(address, UriKind.Relative), form, Cancel);
        return (answer.StatusCode, WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync(Cancel)));
    }
}
