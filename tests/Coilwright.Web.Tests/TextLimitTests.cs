using System.Net;
using System.Net.Http.Json;

namespace Coilwright.Web.Tests;

/// <summary>Names, reasons and tags are kept for good; none may be a book, a markup of lines, or hold what cannot be written.</summary>
public sealed class TextLimitTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("person", 81, "80")]
    [InlineData("instrument", 81, "80")]
    [InlineData("reason", 1001, "1000")]
    [InlineData("tag", 41, "40")]
    public async Task The_api_names_the_allowed_length(string field, int length, string allowed)
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        Dictionary<string, string> body = new()
        {
            ["id"] = Guid.NewGuid().ToString(),
            ["tag"] = "C-1",
            ["resistance"] = "7k43",
            ["person"] = "Mara",
            ["instrument"] = "bench meter",
            ["reason"] = "typed wrongly",
        };
        foreach (string text in new[] { new string('x', length), "two\nlines" })
        {
            using HttpResponseMessage answer = await shop.Client.PostAsJsonAsync(
                $"/api/batches/{Guid.NewGuid()}/coils",
                new Dictionary<string, string>(body) { [field] = text },
                Cancel
            );
            Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
            string said = await answer.Content.ReadAsStringAsync(Cancel);
            Assert.Contains($"\"field\":\"{field}\"", said, StringComparison.Ordinal);
            Assert.Contains($"up to {allowed} letters", said, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task A_form_names_the_allowed_length_and_stores_nothing()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        foreach (string person in new[] { new string('p', 81), "Ma\nra" })
        {
            using FormUrlEncodedContent form = KnownHostsTests.Form(("room", "25"), ("person", person));
            using HttpResponseMessage answer = await shop.Client.PostAsync(new Uri("/room", UriKind.Relative), form, Cancel);
            Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
            Assert.Contains("up to 80 letters", await answer.Content.ReadAsStringAsync(Cancel), StringComparison.Ordinal);
            Assert.Null(await shop.Services.Records.Room.LatestAsync(Cancel));
        }
    }
}
