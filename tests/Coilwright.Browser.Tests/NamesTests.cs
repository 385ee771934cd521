using System.Net;
using Coilwright.Browser.Tests.Ground;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Browser.Tests;

/// <summary>Names on the pages: a batch begins with what is on record, ends at its number, and is found.</summary>
public sealed class NamesTests : IAsyncLifetime
{
    private readonly HttpClientHandler _handler = new() { AllowAutoRedirect = false, CheckCertificateRevocationList = true };
    private HttpClient _http = null!;
    private HostedShop _shop = null!;

    public async ValueTask InitializeAsync()
    {
        _shop = await HostedShop.StartAsync();
        _http = new HttpClient(_handler) { BaseAddress = _shop.Url };
    }

    public async ValueTask DisposeAsync()
    {
        _http.Dispose();
        _handler.Dispose();
        await _shop.DisposeAsync();
    }

    [Fact]
    public async Task A_batch_is_started_with_a_spool_and_a_winder_made_on_the_spot_and_a_taken_name_comes_back_as_typed()
    {
        RevisionRecord revision = await _shop.ReleasedAsync("harbour-bridge.json");
        string at = $"/recipes/{revision.RecipeId}/batches";
        Assert.Contains("none named", await TextAsync(at + "/new"), StringComparison.Ordinal);
        (string, string)[] form =
        [
            ("number", "1"),
            ("name", "H-40"),
            ("coil", Ground.Demo.FirstCoilOf("harbour-bridge.json")),
            ("quantity", "2"),
            ("prefix", "H-"),
            ("person", "Mara"),
        ];

        (HttpStatusCode spoolStatus, string spool) = await PostAsync(
            at + "?add=spool",
            [.. form, ("spoolLabel", "0200"), ("spoolGauge", "AWG 42"), ("spoolInsulation", "plain-enamel"), ("spoolBuild", "single")]
        );
        (HttpStatusCode winderStatus, string winder) = await PostAsync(at + "?add=winder", [.. form, ("winderName", "Winder 9")]);
        (HttpStatusCode unknown, string refused) = await PostAsync(at, [.. form, ("spool", "0201"), ("machine", "Winder 9")]);
        (HttpStatusCode begun, _) = await PostAsync(at, [.. form, ("spool", "0200"), ("machine", "Winder 9")]);
        (HttpStatusCode twice, string again) = await PostAsync(at, [.. form, ("spool", "0200"), ("machine", "Winder 9")]);

        Assert.Equal(
            (
                HttpStatusCode.OK,
                HttpStatusCode.OK,
                HttpStatusCode.UnprocessableEntity,
                HttpStatusCode.Found,
                HttpStatusCode.UnprocessableEntity
            ),
            (spoolStatus, winderStatus, unknown, begun, twice)
        );
        Assert.Matches("value=\"0200\" selected", spool);
        Assert.Matches("value=\"Winder 9\" selected", winder);
        Assert.All([spool, winder, again], page => Assert.Contains("value=\"H-40\"", page, StringComparison.Ordinal));
        Assert.Contains("there is no spool of this label", refused, StringComparison.Ordinal);
        Assert.Contains("has this name", again, StringComparison.Ordinal);
    }

    [Fact]
    public async Task At_its_number_the_entry_page_says_done_and_more_are_asked_for()
    {
        RevisionRecord revision = await _shop.ReleasedAsync("harbour-bridge.json");
        Guid batch = await _shop.BatchAsync(revision, "H-12", Ground.Demo.FirstCoilOf("harbour-bridge.json"), "H-");
        for (int at = 1; at <= 4; at++)
        {
            Assert.Equal(
                HttpStatusCode.Found,
                (
                    await PostAsync($"/batches/{batch}/enter", [("tag", $"H-{at:000}"), ("resistance", "6.18 k"), ("temperature", "20")])
                ).Status
            );
        }

        (HttpStatusCode beyond, string page) = await PostAsync($"/batches/{batch}/enter", [("tag", "H-005"), ("resistance", "6.18 k")]);
        (HttpStatusCode silent, _) = await PostAsync($"/batches/{batch}/more", [("counter", "2"), ("note", "")]);
        string list = await TextAsync("/batches"),
            entry = await TextAsync($"/batches/{batch}/enter");
        (HttpStatusCode more, _) = await PostAsync($"/batches/{batch}/more", [("counter", "2"), ("note", "two rejected")]);
        (HttpStatusCode slip, string typed) = await PostAsync($"/batches/{batch}/enter", [("tag", "H-005"), ("resistance", "abc")]);

        Assert.Equal(
            (
                HttpStatusCode.UnprocessableEntity,
                HttpStatusCode.UnprocessableEntity,
                HttpStatusCode.Found,
                HttpStatusCode.UnprocessableEntity
            ),
            (beyond, silent, more, slip)
        );
        Assert.Contains("would be one more than is wanted", page, StringComparison.Ordinal);
        Assert.Contains("value=\"H-005\"", page, StringComparison.Ordinal);
        Assert.Contains("value=\"abc\"", typed, StringComparison.Ordinal);
        Assert.All([list, entry], shown => Assert.Contains("4 of 4 done", shown, StringComparison.Ordinal));
        Assert.Contains("Batches done", list, StringComparison.Ordinal);
        Assert.Contains("4 of 6", await TextAsync("/"), StringComparison.Ordinal); // wanted again, it is under way again
        Assert.Contains("4 of 6", await TextAsync($"/batches/{batch}"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Find_opens_a_batch_lists_a_tag_that_two_coils_hold_and_never_jumps_by_a_part()
    {
        IReadOnlyList<string> serials = await _shop.PiecesAsync(1);
        RevisionRecord revision = (await _shop.Services.Recipes.ListAsync(CancellationToken.None))[0];
        Guid other = await _shop.BatchAsync(revision, "B-9", "slug", "BS-");
        Assert.Empty(
            (
                await _shop.Services.Winding.RecordCoilAsync(
                    new()
                    {
                        Id = Guid.NewGuid(),
                        BatchId = other,
                        Tag = "BS-001",
                        Resistance = "3.93 k",
                    },
                    CancellationToken.None
                )
            ).Problems
        );

        Assert.Equal($"/batches/{other}", await PlaceAsync("b-9"));
        Assert.Equal($"/pieces/{serials[0]}", await PlaceAsync(serials[0]));
        Assert.Equal($"/batches/{other}/coils/BS-001", await PlaceAsync("B-9/BS-001"));
        string both = await TextAsync("/find?code=BS-001"),
            part = await TextAsync("/find?code=breakw");
        Assert.All(["B-7/BS-001", "B-9/BS-001", serials[0], "Breakwater twin A, read 2026-03-02"], wanted =>
            Assert.Contains(wanted, both, StringComparison.Ordinal)
        );
        Assert.Contains($"href=\"/recipes/{revision.RecipeId}\"", part, StringComparison.Ordinal);
        Assert.Contains("part of these names", part, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_name_is_erased_only_after_the_question()
    {
        Assert.Empty(await _shop.Services.Pieces.Customers.AddAsync(Guid.NewGuid(), "K-031", "Pell and Daughter", CancellationToken.None));
        Assert.Contains("href=\"/shop/customers/erase?customer=K-031\"", await TextAsync("/shop"), StringComparison.Ordinal);
        (HttpStatusCode asked, string question) = await PostAsync("/shop/customers/erase", [("customer", "K-031")]);
        Assert.Equal(HttpStatusCode.OK, asked);
        Assert.All(["Erased for good:", "Pell and Daughter", "What stays:", "0 pieces"], wanted =>
            Assert.Contains(wanted, question, StringComparison.Ordinal)
        );
        Assert.Contains("Pell and Daughter", await TextAsync("/shop"), StringComparison.Ordinal);
        for (int sent = 0; sent < 2; sent++)
        {
            Assert.Equal(HttpStatusCode.Found, (await PostAsync("/shop/customers/erase", [("customer", "K-031"), ("sure", "yes")])).Status);
        }

        Assert.DoesNotContain("Pell and Daughter", await TextAsync("/shop"), StringComparison.Ordinal);
        Assert.Contains("Nothing is left to erase", await TextAsync("/shop/customers/erase?customer=K-031"), StringComparison.Ordinal);
    }

    private Task<string> TextAsync(string address) => _http.GetStringAsync(new Uri(address, UriKind.Relative));

    private async Task<string> PlaceAsync(string code)
    {
        using HttpResponseMessage answer = await _http.GetAsync(new Uri("/find?code=" + Uri.EscapeDataString(code), UriKind.Relative));
        return answer.Headers.Location?.ToString() ?? "";
    }

    private async Task<(HttpStatusCode Status, string Text)> PostAsync(string address, (string Name, string Value)[] fields)
    {
        using FormUrlEncodedContent form = new(fields.Select(field => KeyValuePair.Create(field.Name, field.Value)));
        using HttpResponseMessage answer = await _http.PostAsync(new Uri(address, UriKind.Relative), form);
        return (answer.StatusCode, WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync()));
    }
}
