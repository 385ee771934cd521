using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Coilwright.Application.Instruments;
using Coilwright.Workshop.Instruments;

namespace Coilwright.Web.Tests;

/// <summary>The shop's instruments: entered, tried, shown to pages, and passed on by a bench computer.</summary>
public sealed class InstrumentPagesTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task An_instrument_is_entered_tried_and_taken_out_again()
    {
        await using SimulatedMeter meter = SimulatedMeter.Saying("+6.18210E+03\n");
        await using ServedShop shop = await ServedShop.StartAsync();
        Assert.Equal(HttpStatusCode.Found, (await KeepAsync(shop, "Bench 1", "ohms", "tcp", meter.Address)).Status);
        ShopInstrument kept = Assert.Single((await shop.Services.Pieces.Shelf.Rules.CurrentAsync(Cancel)).Instruments);
        Assert.Equal(("Bench 1", meter.Address), (kept.Name, kept.Address!.Words));

        string tried = (await PostAsync(shop, "/shop/instruments/try", ("instrument", "Bench 1"))).Page;
        Assert.Contains("6.18210 kΩ", tried, StringComparison.Ordinal);
        Assert.Contains("<code>+6.18210E+03</code>", tried, StringComparison.Ordinal);

        Assert.Equal(HttpStatusCode.Found, (await KeepAsync(shop, "bench 1", "ohms-as-set", "", "")).Status); // takes the other's place
        kept = Assert.Single((await shop.Services.Pieces.Shelf.Rules.CurrentAsync(Cancel)).Instruments);
        Assert.Equal(("bench 1", "READ?", null), (kept.Name, kept.Profile.Ask, kept.Address));

        await PostAsync(shop, "/shop/instruments/remove", ("instrument", "Bench 1"));
        Assert.Empty((await shop.Services.Pieces.Shelf.Rules.CurrentAsync(Cancel)).Instruments);
    }

    [Fact]
    public async Task One_that_does_not_answer_says_why()
    {
        string gone;
        await using (SimulatedMeter meter = SimulatedMeter.Saying())
        {
            gone = meter.Address;
        }

        await using ServedShop shop = await ServedShop.StartAsync();
        await KeepAsync(shop, "Bench 1", "ohms", "tcp", gone);
        string tried = (await PostAsync(shop, "/shop/instruments/try", ("instrument", "Bench 1"))).Page;
        Assert.Contains("gave no reading", tried, StringComparison.Ordinal);
        Assert.Contains("Nothing answers at " + gone, tried, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_wrong_is_told_at_its_field_and_what_was_typed_stays()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        (HttpStatusCode status, string page) = await KeepAsync(shop, "", "ohms", "tcp", "");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, status);
        Assert.Contains("What is the instrument called?", page, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("Where is it?", page, StringComparison.OrdinalIgnoreCase);
        (status, page) = await KeepAsync(shop, "Bench 1", "ohms", "tcp", "bench:99999");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, status);
        Assert.Contains("not a name and a port", page, StringComparison.Ordinal);
        Assert.Contains("value=\"bench:99999\"", page, StringComparison.Ordinal);
        (status, page) = await KeepAsync(shop, "Bench 1", "ohms", "", "", own: "{ nonsense");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, status);
        Assert.Contains("no profile", page, StringComparison.OrdinalIgnoreCase);
        Assert.Empty((await shop.Services.Pieces.Shelf.Rules.CurrentAsync(Cancel)).Instruments);
    }

    [Fact]
    public async Task A_profile_of_the_shops_own_is_kept_with_the_instrument()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        string own = """{ "format": "coilwright.meter/1", "name": "mine", "ask": "R?", "unit": "kΩ" }""";
        Assert.Equal(HttpStatusCode.Found, (await KeepAsync(shop, "Bench 1", "ohms", "serial", "/dev/ttyUSB0", own)).Status);
        ShopInstrument kept = Assert.Single((await shop.Services.Pieces.Shelf.Rules.CurrentAsync(Cancel)).Instruments);
        Assert.Equal(("R?", "kΩ"), (kept.Profile.Ask, kept.Profile.Unit.Symbol));
    }

    [Fact]
    public async Task What_a_bench_computer_passes_on_is_shown_once_under_one_id()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        await KeepAsync(shop, "Bench 1", "ohms", "", "");
        Guid id = Guid.NewGuid();
        JsonElement nothing = await ShownAsync(shop, "Bench 1", null);
        await PassAsync(
            shop,
            "Bench 1",
            new
            {
                kind = "live",
                value = 6190.0,
                raw = "6190",
            }
        );
        JsonElement live = await ShownAsync(shop, "Bench 1", nothing.GetProperty("number").GetInt64());
        Assert.Equal("live", live.GetProperty("kind").GetString());
        Task<JsonElement> waiting = ShownAsync(shop, "Bench 1", live.GetProperty("number").GetInt64());
        await PassAsync(
            shop,
            "Bench 1",
            new
            {
                kind = "standing",
                value = 6182.1,
                raw = "6182.1",
                id,
            }
        );
        JsonElement standing = await waiting;
        Assert.Equal(("standing", "6182.1 Ω"), (standing.GetProperty("kind").GetString(), standing.GetProperty("typed").GetString()));
        Assert.Equal(id, standing.GetProperty("id").GetGuid());

        await PassAsync(
            shop,
            "Bench 1",
            new
            {
                kind = "standing",
                value = 6182.1,
                raw = "6182.1",
                id,
            }
        ); // sent again
        JsonElement again = await ShownAsync(shop, "Bench 1", 0);
        Assert.Equal(standing.GetProperty("number").GetInt64(), again.GetProperty("number").GetInt64());
    }

    /// <summary>A value from an hour ago is no coil that is clipped on now: whoever turns hands free on would record it.</summary>
    [Fact]
    public async Task What_nobody_confirms_any_more_is_shown_no_more_and_an_old_count_tells_its_age()
    {
        PassingClock clock = new();
        await using ServedShop shop = await ServedShop.StartAsync(clock);
        await KeepAsync(shop, "Bench 1", "ohms", "", "");
        await PassAsync(
            shop,
            "Bench 1",
            new
            {
                kind = "standing",
                value = 6182.1,
                raw = "6182.1",
                id = Guid.NewGuid(),
            }
        );
        Assert.Equal("standing", (await ShownAsync(shop, "Bench 1", 0)).GetProperty("kind").GetString());
        clock.Pass(TimeSpan.FromSeconds(11));
        JsonElement late = await ShownAsync(shop, "Bench 1", 0);
        Assert.Equal(("trouble", JsonValueKind.Null), (late.GetProperty("kind").GetString(), late.GetProperty("id").ValueKind));

        CountBench counts = new(clock);
        counts.Pass("B-7", new ShownCount(0, 3400, 3400, 4600, 1200, "", 0));
        clock.Pass(TimeSpan.FromHours(1));
        Assert.Equal(3600, (await counts.NextAsync("b-7", 0, TimeSpan.Zero, Cancel)).AgeS);
    }

    [Fact]
    public async Task Taking_out_what_is_not_there_writes_no_rules()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        await PostAsync(shop, "/shop/instruments/remove", ("instrument", "Bench 9"));
        Assert.Null(await shop.Services.Records.Rules.NewestAsync(Cancel));
    }

    [Fact]
    public async Task An_instrument_that_is_not_there_and_a_sight_that_is_none_are_refused()
    {
        await using ServedShop shop = await ServedShop.StartAsync();
        await KeepAsync(shop, "Bench 1", "ohms", "", "");
        Assert.Equal(HttpStatusCode.NotFound, await PassAsync(shop, "Bench 2", new { kind = "off" }));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, await PassAsync(shop, "Bench 1", new { kind = "standing" }));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, await PassAsync(shop, "Bench 1", new { kind = "dancing", value = 1.0 }));
        Assert.Equal(HttpStatusCode.NotFound, await PassAsync(shop, "no such batch", new { counter = 1.0, turns = 1.0 }, "counts"));
    }

    private static async Task<HttpStatusCode> PassAsync(ServedShop shop, string name, object body, string kind = "meters")
    {
        using HttpResponseMessage answer = await shop.Client.PostAsJsonAsync(
            new Uri($"/api/{kind}/{Uri.EscapeDataString(name)}", UriKind.Relative),
            body,
            Cancel
        );
        return answer.StatusCode;
    }

    private static async Task<JsonElement> ShownAsync(ServedShop shop, string name, long? after)
    {
        Uri address = new(FormattableString.Invariant($"/api/meters/{Uri.EscapeDataString(name)}?after={after ?? -1}"), UriKind.Relative);
        return await shop.Client.GetFromJsonAsync<JsonElement>(address, Cancel);
    }

    private static Task<(HttpStatusCode Status, string Page)> KeepAsync(
        ServedShop shop,
        string name,
        string profile,
        string place,
        string address,
        string own = ""
    ) => PostAsync(shop, "/shop/instruments", ("name", name), ("profile", profile), ("place", place), ("address", address), ("own", own));

    private static async Task<(HttpStatusCode Status, string Page)> PostAsync(
        ServedShop shop,
        string path,
        params (string Name, string Value)[] fields
    )
    {
        using FormUrlEncodedContent form = new(fields.ToDictionary(one => one.Name, one => one.Value));
        using HttpResponseMessage answer = await shop.Client.PostAsync(new Uri(path, UriKind.Relative), form, Cancel);
        return (answer.StatusCode, WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync(Cancel)));
    }
}
