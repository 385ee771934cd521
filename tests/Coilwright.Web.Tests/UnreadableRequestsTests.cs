using System.Net;
using System.Net.Http.Json;
using System.Net.Sockets;
using System.Text;
using System.Text.Json;

namespace Coilwright.Web.Tests;

/// <summary>A request that cannot be read is refused in words, never with "our mistake" and never after something was stored.</summary>
public sealed class UnreadableRequestsTests
{
    private const string Batch = "5b0c2c8e-95a7-4c9b-8d4f-0a4f0f0f8a11";
    private const string Coils = $"/api/batches/{Batch}/coils";

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData(Coils, "{}", "id", "tag", "resistance")]
    [InlineData(
        Coils,
        """{"id":null,"tag":null,"resistance":null,"person":null,"instrument":null}""",
        "id",
        "tag",
        "resistance",
        "person",
        "instrument"
    )]
    [InlineData(Coils, """{"id":"7","tag":4,"resistance":"7k","ohms":"7k"}""", "ohms", "id", "tag")]
    [InlineData(Coils, """{"id":"0b1f6a52-3c7d-4c39-9d0e-5a2c8e7f4b11","tag":"C-1","resistance":"7k\u0000"}""", "resistance")]
    [InlineData(
        Coils,
        """{"id":"0b1f6a52-3c7d-4c39-9d0e-5a2c8e7f4b11","batchId":"0b1f6a52-3c7d-4c39-9d0e-5a2c8e7f4b11","tag":"C-1","resistance":"7k"}""",
        "batchId"
    )]
    [InlineData(Coils, "[1]", "body")]
    [InlineData(Coils, "{\"id\":", "body")]
    [InlineData(Coils, "", "body")]
    [InlineData("/api/predict", "{}", "recipe")]
    [InlineData("/api/pieces/told", """{"id":null,"what":null,"fields":null}""", "id", "what", "fields")]
    [InlineData(
        "/api/pieces/told",
        """{"id":"0b1f6a52-3c7d-4c39-9d0e-5a2c8e7f4b11","what":"begin","fields":[null,["a",null]]}""",
        "fields"
    )]
    [InlineData($"/api/batches/{Batch}/events", """{"id":"x","kind":null}""", "id", "kind")]
    public async Task A_body_that_cannot_be_read_lists_every_problem(string address, string body, params string[] fields)
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        using StringContent content = new(body, Encoding.UTF8, "application/json");
        using HttpResponseMessage answer = await shop.Client.PostAsync(new Uri(address, UriKind.Relative), content, Cancel);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        JsonElement problems = (await answer.Content.ReadFromJsonAsync<JsonElement>(Cancel)).GetProperty("problems");
        Assert.Equal(fields.Order(), problems.EnumerateArray().Select(one => one.GetProperty("field").GetString()!).Order());
        Assert.All(problems.EnumerateArray(), one => Assert.False(string.IsNullOrWhiteSpace(one.GetProperty("message").GetString())));
    }

    [Theory]
    [InlineData("61 mm", HttpStatusCode.OK)]
    [InlineData("61.0 mm", HttpStatusCode.OK)]
    [InlineData("61,5 mm", HttpStatusCode.UnprocessableEntity)] // a document of ours: the point alone is decimal
    public async Task A_recipe_sent_to_be_forecast_has_a_point_for_its_decimals(string coreLength, HttpStatusCode expected)
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        string recipe = $$"""
            { "recipe": { "format": "coilwright.recipe/1", "name": "Sent", "coils": [ { "name": "main",
                "bobbin": { "coreLength": "{{coreLength}}", "coreWidth": "6.2 mm", "windingHeight": "11 mm" },
                "wire": { "gauge": "AWG 42" }, "winding": { "turns": 5000 } } ] } }
            """;
        using StringContent content = new(recipe, Encoding.UTF8, "application/json");
        using HttpResponseMessage answer = await shop.Client.PostAsync(new Uri("/api/predict", UriKind.Relative), content, Cancel);
        Assert.Equal(expected, answer.StatusCode);
        string body = await answer.Content.ReadAsStringAsync(Cancel);
        Assert.Equal(expected != HttpStatusCode.OK, body.Contains("coils[0].bobbin.coreLength", StringComparison.Ordinal));
    }

    /// <summary>The batch stands in the address: such a body is read, and only then is there no such batch.</summary>
    [Fact]
    public async Task The_batch_is_not_asked_for_again_in_the_body()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        using HttpResponseMessage answer = await shop.Client.PostAsJsonAsync(
            Coils,
            new
            {
                id = Guid.NewGuid(),
                tag = "C-1",
                resistance = "7k43",
            },
            Cancel
        );
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Contains("there is no such batch", await answer.Content.ReadAsStringAsync(Cancel), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Another_kind_of_body_is_refused()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        using StringContent text = new("room=25", Encoding.UTF8, "text/plain"),
            more = new("{}", Encoding.UTF8, "text/plain");
        Assert.Equal(
            HttpStatusCode.UnsupportedMediaType,
            (await shop.Client.PostAsync(new Uri("/room", UriKind.Relative), text, Cancel)).StatusCode
        );
        Assert.Equal(
            HttpStatusCode.UnsupportedMediaType,
            (await shop.Client.PostAsync(new Uri(Coils, UriKind.Relative), more, Cancel)).StatusCode
        );
    }

    [Fact]
    public async Task A_form_that_no_page_sends_is_refused_in_words()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        (string, string)[] many = [.. Enumerable.Range(0, 1100).Select(at => ($"f{at}", "1")), ("room", "25")];
        foreach (
            (HttpStatusCode status, (string, string)[] fields) in new[]
            {
                (HttpStatusCode.BadRequest, [("room", "25"), ("person", "Ma\0ra")]),
                (HttpStatusCode.RequestEntityTooLarge, many),
                (HttpStatusCode.RequestEntityTooLarge, [("room", "25"), (new string('k', 3000), "1")]),
                (HttpStatusCode.RequestEntityTooLarge, new[] { ("room", "25"), ("person", new string('p', 5 << 20)) }),
            }
        )
        {
            using FormUrlEncodedContent form = KnownHostsTests.Form(fields);
            // one too large is refused unsent
            using HttpRequestMessage request = new(HttpMethod.Post, "/room") { Content = form, Headers = { ExpectContinue = true } };
            using HttpResponseMessage answer = await shop.Client.SendAsync(request, Cancel);
            Assert.Equal(status, answer.StatusCode);
            Assert.DoesNotContain("our mistake", await answer.Content.ReadAsStringAsync(Cancel), StringComparison.Ordinal);
            Assert.Null(await shop.Services.Records.Room.LatestAsync(Cancel));
        }
    }

    [Theory]
    [InlineData("/ü", "/%C3%BC")]
    [InlineData("/\tx", "/")]
    [InlineData("//evil.example", "/")]
    [InlineData("/\\evil.example", "/")]
    [InlineData("http://evil.example", "/")]
    [InlineData("/spools?x=1", "/spools?x=1")]
    public async Task The_way_back_is_made_safe_before_anything_is_stored(string back, string expected)
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        using FormUrlEncodedContent form = KnownHostsTests.Form(("room", "25"), ("person", "Mara"), ("back", back));
        using HttpResponseMessage answer = await shop.Client.PostAsync(new Uri("/room", UriKind.Relative), form, Cancel);
        Assert.Equal(HttpStatusCode.Found, answer.StatusCode);
        Assert.Equal(expected, answer.Headers.Location!.OriginalString);
    }

    [Theory]
    [InlineData("/")]
    [InlineData("/spools")]
    [InlineData("/api/health")]
    [InlineData("/built/main.css")]
    public async Task Head_is_answered_wherever_get_is(string address)
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        using HttpRequestMessage head = new(HttpMethod.Head, address);
        using HttpResponseMessage answer = await shop.Client.SendAsync(head, Cancel);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Empty(await answer.Content.ReadAsByteArrayAsync(Cancel));
    }

    [Theory]
    [InlineData("GET", "/room", "POST")]
    [InlineData("DELETE", "/spools", "GET")]
    [InlineData("PUT", Coils, "POST")]
    [InlineData("PATCH", "/clocks/undo", "POST")]
    public async Task A_wrong_method_is_named_as_such(string method, string address, string allowed)
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        using HttpRequestMessage wrong = new(new HttpMethod(method), address);
        using HttpResponseMessage answer = await shop.Client.SendAsync(wrong, Cancel);
        Assert.Equal(HttpStatusCode.MethodNotAllowed, answer.StatusCode);
        Assert.Contains(allowed, answer.Content.Headers.Allow);
    }

    [Fact]
    public async Task An_address_where_nothing_stands_is_not_found()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        Assert.Equal(HttpStatusCode.NotFound, (await shop.Client.GetAsync(new Uri("/nothing.here", UriKind.Relative), Cancel)).StatusCode);
        Assert.Equal(
            HttpStatusCode.NotFound,
            (await shop.Client.GetAsync(new Uri("/batches/not-an-id/coils", UriKind.Relative), Cancel)).StatusCode
        );
    }

    /// <summary>A length told twice is how a proxy and a server are made to disagree on where a request ends.</summary>
    [Fact]
    public async Task A_request_with_two_lengths_is_refused()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        using TcpClient line = new();
        await line.ConnectAsync(shop.Url.Host, shop.Url.Port, Cancel);
        const string Request =
            "POST /room HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/x-www-form-urlencoded\r\nContent-Length: "
            + "7\r\nTransfer-Encoding: chunked\r\nConnection: close\r\n\r\n7\r\nroom=25\r\n0\r\n\r\n";
        await line.GetStream().WriteAsync(Encoding.ASCII.GetBytes(Request), Cancel);
        using StreamReader reader = new(line.GetStream(), Encoding.ASCII);
        Assert.StartsWith("HTTP/1.1 400 ", await reader.ReadLineAsync(Cancel), StringComparison.Ordinal);
        Assert.Null(await shop.Services.Records.Room.LatestAsync(Cancel));
    }
}
