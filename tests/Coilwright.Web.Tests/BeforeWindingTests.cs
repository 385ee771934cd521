using System.Net;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Web.Tests;

/// <summary>A target that leaves out the recipe's own forecast is told before a batch is begun, and refuses nothing.</summary>
public sealed class BeforeWindingTests
{
    private const string Told = "leaves out what this recipe forecasts: a meter would show";

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("2.4 H", true)] // 2.256 to 2.544 H: a good coil shows 2.55 H
    [InlineData("2.5 H", false)]
    public async Task The_page_that_starts_a_batch_warns_and_begins_it(string inductance, bool warns)
    {
        await using PagesOfShop shop = await PagesOfShop.StartAsync();
        string json = await File.ReadAllTextAsync(Path.Combine(AppContext.BaseDirectory, "recipes", "harbour-bridge.json"), Cancel);
        RevisionRecord revision = await shop.ReleasedAsync(json.Replace("\"2.5 H\"", $"\"{inductance}\"", StringComparison.Ordinal));
        foreach (string address in new[] { $"/recipes/{revision.RecipeId}", $"/recipes/{revision.RecipeId}/batches/new" })
        {
            string page = WebUtility.HtmlDecode(await shop.Client.GetStringAsync(new Uri(address, UriKind.Relative), Cancel));
            Assert.True(warns == page.Contains(Told, StringComparison.Ordinal), address);
        }

        using FormUrlEncodedContent form = KnownHostsTests.Form(
            ("id", $"{Guid.NewGuid()}"),
            ("number", "1"),
            ("name", "H-1"),
            ("coil", "main"),
            ("quantity", "4"),
            ("prefix", "C-"),
            ("person", "Mara")
        );
        using HttpResponseMessage begun = await shop.Client.PostAsync(
            new Uri($"/recipes/{revision.RecipeId}/batches", UriKind.Relative),
            form,
            Cancel
        );
        Assert.EndsWith("/enter", begun.RequestMessage!.RequestUri!.AbsolutePath, StringComparison.Ordinal);
    }
}
