using System.Net;
using System.Net.Http.Json;

namespace Coilwright.Web.Tests;

/// <summary>Before an entry is stored by a clock that may be wrong, a person is asked; what was typed goes with the question.</summary>
public sealed class ClockGuardTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_jump_of_the_clock_is_asked_about_and_stored_once_it_is_said_to_be_right()
    {
        HandClock clock = new();
        await using ServedShop shop = await ServedShop.StartAsync(clock);
        Assert.Equal(HttpStatusCode.Found, await RoomAsync(shop, "21"));
        clock.Now += TimeSpan.FromDays(400);
        using (FormUrlEncodedContent form = KnownHostsTests.Form(("room", "25"), ("person", "Mara \"M\"")))
        {
            using HttpResponseMessage asked = await shop.Client.PostAsync(new Uri("/room", UriKind.Relative), form, Cancel);
            Assert.Equal(HttpStatusCode.Conflict, asked.StatusCode);
            string page = await asked.Content.ReadAsStringAsync(Cancel);
            Assert.Contains("is the clock right?", page, StringComparison.Ordinal);
            Assert.Contains("value=\"Mara &quot;M&quot;\"", page, StringComparison.Ordinal);
            Assert.Contains("action=\"/room\"", page, StringComparison.Ordinal);
        }

        Assert.Equal(21, (await shop.Services.Records.Room.LatestAsync(Cancel))!.TemperatureC);
        Assert.Equal(HttpStatusCode.Found, await RoomAsync(shop, "25", ("clock-is-right", "yes")));
        Assert.Equal(25, (await shop.Services.Records.Room.LatestAsync(Cancel))!.TemperatureC);
        Assert.Equal(HttpStatusCode.Found, await RoomAsync(shop, "26")); // asked once
    }

    [Fact]
    public async Task The_api_answers_409_until_the_clock_is_said_to_be_right()
    {
        HandClock clock = new();
        await using ServedShop shop = await ServedShop.StartAsync(clock);
        Assert.Equal(HttpStatusCode.Found, await RoomAsync(shop, "21"));
        clock.Now += TimeSpan.FromDays(30);
        string address = $"/api/batches/{Guid.NewGuid()}/coils";
        var coil = new
        {
            id = Guid.NewGuid(),
            tag = "C-1",
            resistance = "7k43",
        };
        using HttpResponseMessage asked = await shop.Client.PostAsJsonAsync(address, coil, Cancel);
        Assert.Equal(HttpStatusCode.Conflict, asked.StatusCode);
        Assert.Contains("clock-is-right=yes", await asked.Content.ReadAsStringAsync(Cancel), StringComparison.Ordinal);
        using HttpResponseMessage said = await shop.Client.PostAsJsonAsync(address + "?clock-is-right=yes", coil, Cancel);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, said.StatusCode); // read, and there is no such batch
    }

    /// <summary>A weekend and a short holiday are no jump.</summary>
    [Fact]
    public async Task A_few_days_without_an_entry_are_not_asked_about()
    {
        HandClock clock = new();
        await using ServedShop shop = await ServedShop.StartAsync(clock);
        Assert.Equal(HttpStatusCode.Found, await RoomAsync(shop, "21"));
        clock.Now += TimeSpan.FromDays(4);
        Assert.Equal(HttpStatusCode.Found, await RoomAsync(shop, "22"));
    }

    private static async Task<HttpStatusCode> RoomAsync(ServedShop shop, string room, params (string, string)[] more)
    {
        using FormUrlEncodedContent form = KnownHostsTests.Form([("room", room), ("person", "Mara"), .. more]);
        using HttpResponseMessage answer = await shop.Client.PostAsync(new Uri("/room", UriKind.Relative), form, Cancel);
        return answer.StatusCode;
    }

    private sealed class HandClock : TimeProvider
    {
        public DateTimeOffset Now { get; set; } = new(2026, 3, 2, 9, 0, 0, TimeSpan.Zero);

        public override DateTimeOffset GetUtcNow() => Now;
    }
}
